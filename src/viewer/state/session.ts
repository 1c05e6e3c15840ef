import { batch, computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import {
  applyVariant,
  type Issue,
  type JsonObject,
  type JsonValue,
  parseScenario,
  stepsOf,
  withValue,
} from '../../sim/index.ts';
import { type Car, type CarRun, changedPaths, NO_RUN, readCar, valueAt } from './cars.ts';

/** What undo and redo go between. Documents are never changed, only replaced. */
interface Snapshot {
  readonly before: Car | undefined;
  readonly after: Car | undefined;
}

interface UndoStep extends Snapshot {
  /** what the gesture did, in words: "core: airside conductance" */
  readonly label: string;
}

/** A box whose text is no value yet: the text stays, the run goes on with the last good value. */
export interface Draft {
  readonly path: string;
  readonly text: string;
  readonly issues: readonly Issue[];
}

const MOST_UNDO_STEPS = 100;

/**
 * The cars on screen and what was done to them; no DOM, no worker. Before is the car that was opened; the first
 * change makes After. Edits come as previews (while a finger moves) and end in a commit, which is one undo step.
 */
export class Session {
  readonly before: Signal<Car | undefined> = signal(undefined);
  readonly after: Signal<Car | undefined> = signal(undefined);
  readonly beforeRun: Signal<CarRun> = signal(NO_RUN);
  readonly afterRun: Signal<CarRun> = signal(NO_RUN);
  readonly draft: Signal<Draft | undefined> = signal(undefined);
  readonly undoSteps: Signal<readonly UndoStep[]> = signal([]);
  readonly redoSteps: Signal<readonly UndoStep[]> = signal([]);
  /** true between the first preview of a gesture and its commit */
  readonly isDragging: ReadonlySignal<boolean>;
  /** the car that edits go to, and its run */
  readonly inHand: ReadonlySignal<Car | undefined> = computed(() => this.after.value ?? this.before.value);
  readonly inHandRun: ReadonlySignal<CarRun> = computed(() =>
    this.after.value === undefined ? this.beforeRun.value : this.afterRun.value,
  );
  /** paths in which After differs from Before */
  readonly changes: ReadonlySignal<readonly string[]> = computed(() => {
    const [before, after] = [this.before.value, this.after.value];
    return before === undefined || after === undefined ? [] : changedPaths(before.document, after.document);
  });
  private readonly gesture: Signal<Snapshot | undefined> = signal(undefined);

  constructor() {
    this.isDragging = computed(() => this.gesture.value !== undefined);
  }

  /** Opens a file's text as Before; where it has errors nothing changes and the issues say why. */
  open(text: string, label?: string): readonly Issue[] {
    const { scenario, issues } = parseScenario(text);
    if (scenario === undefined) return issues;
    const { car } = readCar(label ?? 'stock car', scenario.document);
    this.step(`open ${scenario.values.name}`, () => this.put(car, undefined));
    return issues;
  }

  /** Puts both cars back as they were stored, without an undo step. */
  restore(before: JsonObject, beforeLabel: string, after?: JsonObject, afterLabel?: string): boolean {
    const { car } = readCar(beforeLabel, before);
    if (car === undefined) return false;
    const second = after && readCar(afterLabel ?? 'changed', after).car;
    this.put(car, second);
    return true;
  }

  /** Takes both cars away: the empty page. */
  clear(): void {
    this.step('new', () => this.put(undefined, undefined));
  }

  /**
   * Tries values while a gesture is under way. What cannot be read becomes the draft and leaves the cars alone.
   *
   * @param changes - paths of the file and their new values, as typed; the first names the box
   */
  preview(changes: Readonly<Record<string, JsonValue>>, label: string): readonly Issue[] {
    const base = this.inHand.value;
    if (base === undefined) return [];
    let document: JsonValue = base.document;
    for (const [path, value] of Object.entries(changes)) {
      document = withValue(document, stepsOf(path), value) ?? document;
    }
    const { car, issues } = readCar(this.labelFor(changes, label), document as JsonObject);
    const [first] = Object.keys(changes);
    if (car === undefined) {
      this.draft.value = { path: first, text: String(changes[first]), issues };
      return issues;
    }
    batch(() => {
      this.gesture.value ??= { before: this.before.value, after: this.after.value };
      if (this.draft.value?.path === first) this.draft.value = undefined;
      this.put(this.before.value, car);
    });
    return issues;
  }

  /** Ends a gesture: one undo step; an After that equals Before is taken away. */
  commit(label: string): void {
    const start = this.gesture.value;
    if (start === undefined) return;
    batch(() => {
      this.gesture.value = undefined;
      if (this.changes.value.length === 0) this.put(this.before.value, undefined);
      if (start.after !== this.after.value) this.remember({ ...start, label });
    });
  }

  /** One change with its own undo step. */
  change(changes: Readonly<Record<string, JsonValue>>, label: string): readonly Issue[] {
    const issues = this.preview(changes, label);
    this.commit(label);
    return issues;
  }

  /** Forgets a text that could not be read. */
  dropDraft(): void {
    this.draft.value = undefined;
  }

  /** Gives paths the values that Before has. */
  putBack(paths: readonly string[], label: string): void {
    const before = this.before.value;
    if (before === undefined) return;
    const values = paths.map((path): [string, JsonValue | undefined] => [path, valueAt(before.document, path)]);
    const known = values.filter((entry): entry is [string, JsonValue] => entry[1] !== undefined);
    this.change(Object.fromEntries(known), `put back ${label}`);
  }

  /** Makes After a variant that the opened file lists. */
  tryVariant(name: string): readonly Issue[] {
    const before = this.before.value;
    if (before === undefined) return [];
    const { scenario, issues } = applyVariant(before.scenario, name);
    if (scenario === undefined) return issues;
    const { car } = readCar(name, scenario.document);
    this.step(name, () => this.put(before, car));
    return issues;
  }

  /** After becomes Before, with its results. */
  keepAsBefore(): void {
    const after = this.after.value;
    if (after === undefined) return;
    const run = this.afterRun.value;
    this.step(`keep ${after.label} as before`, () => {
      this.put(after, undefined);
      this.beforeRun.value = run;
    });
  }

  undo(): void {
    const steps = this.undoSteps.value;
    const last = steps[steps.length - 1];
    if (last === undefined) return;
    batch(() => {
      this.redoSteps.value = [...this.redoSteps.value, { ...this.snapshot(), label: last.label }];
      this.undoSteps.value = steps.slice(0, -1);
      this.draft.value = undefined;
      this.put(last.before, last.after);
    });
  }

  redo(): void {
    const steps = this.redoSteps.value;
    const last = steps[steps.length - 1];
    if (last === undefined) return;
    batch(() => {
      this.undoSteps.value = [...this.undoSteps.value, { ...this.snapshot(), label: last.label }];
      this.redoSteps.value = steps.slice(0, -1);
      this.draft.value = undefined;
      this.put(last.before, last.after);
    });
  }

  private step(label: string, act: () => void): void {
    const start = this.snapshot();
    batch(() => {
      this.gesture.value = undefined;
      this.draft.value = undefined;
      act();
      if (start.before !== undefined) this.remember({ ...start, label });
    });
  }

  private snapshot(): Snapshot {
    return { before: this.before.value, after: this.after.value };
  }

  private remember(step: UndoStep): void {
    this.undoSteps.value = [...this.undoSteps.value, step].slice(-MOST_UNDO_STEPS);
    this.redoSteps.value = [];
  }

  private put(before: Car | undefined, after: Car | undefined): void {
    this.before.value = before;
    this.after.value = after;
  }

  /** After is called by what was changed last, as long as it is one thing; else by how many things differ. */
  private labelFor(changes: Readonly<Record<string, JsonValue>>, label: string): string {
    const others = this.changes.value.filter((path) => !(path in changes));
    return others.length === 0 ? label : `${others.length + Object.keys(changes).length} changes`;
  }
}

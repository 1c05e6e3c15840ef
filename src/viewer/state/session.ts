import { batch, computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import {
  applyVariant,
  carAlone,
  type Issue,
  type JsonObject,
  type JsonValue,
  measuredOnOneOf,
  parseScenario,
  stepsOf,
  withoutValue,
  withValue,
} from '../../sim/index.ts';
import {
  areRelated,
  asFile,
  type Car,
  type CarRun,
  changedPaths,
  changesBetween,
  NO_RUN,
  readAgain,
  readCar,
  readChanged,
  valueAt,
  withListsOf,
  withValueOf,
} from './cars.ts';
import { type Gauge, NOTHING_READ, readingsOf } from './gauge.ts';

/** What undo and redo go between. Documents are never changed, only replaced. */
interface Snapshot {
  readonly before: Car | undefined;
  readonly after: Car | undefined;
}

interface UndoStep extends Snapshot {
  /** what the gesture did, in words: "core: airside conductance" */
  readonly label: string;
  /** what the gauge had shown, where the step led to another file or cleared it */
  readonly gauge?: Gauge;
}

/** New values by their path in the file, as typed; `undefined` takes the key out of the file. */
export type Changes = Readonly<Record<string, JsonValue | undefined>>;

/** What stands in a box: where it belongs and the user's own text. */
export interface Typed {
  readonly path: string;
  readonly text: string;
}

/** A box whose text is no value yet: the text stays, the run goes on with the last good value. */
export interface Draft extends Typed {
  readonly issues: readonly Issue[];
  /** what could not be done */
  readonly changes: Changes;
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
  /** what the gauge of the opened car showed: it stays while parts are changed, and goes with the file */
  readonly gauge: Signal<Gauge> = signal(NOTHING_READ);
  readonly drafts: Signal<readonly Draft[]> = signal([]);
  /** the newest of the drafts */
  readonly draft: ReadonlySignal<Draft | undefined> = computed(() => this.drafts.value.at(-1));
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
    this.step(`open ${scenario.values.name}`, () => this.put(car, undefined), NOTHING_READ);
    return issues;
  }

  /** Puts both cars back as they were stored, without an undo step. */
  restore(before: Car, after: Car | undefined): void {
    this.put(before, after);
  }

  /** Takes both cars away: the empty page. */
  clear(): void {
    this.step('new', () => this.put(undefined, undefined), NOTHING_READ);
  }

  /** Forgets what the gauge showed; its step stays. */
  clearReadings(): void {
    const { gauge } = this;
    if (readingsOf(gauge.value).length === 0) return;
    batch(() => {
      this.remember({ ...this.snapshot(), label: 'clear readings', gauge: gauge.value });
      gauge.value = { ...gauge.value, byPull: [] };
    });
  }

  /**
   * Tries values while a gesture is under way. What cannot be read becomes a draft and leaves the cars alone.
   *
   * @param label - what After is called while this is all that differs: "core air conductance 468 W/K"
   * @param typed - the box it came from; without it the first path names the box
   */
  preview(changes: Changes, label: string, typed?: Typed): readonly Issue[] {
    const base = this.inHand.value;
    if (base === undefined) return [];
    const paths = Object.keys(changes);
    const isOfLimit = paths.length > 0 && paths.every((path) => path.startsWith('limit.'));
    return isOfLimit
      ? this.attemptLimit(changes, label, typed)
      : this.attempt(withChanges(base.document, changes), changes, label, typed);
  }

  /** Ends a gesture: one undo step; an After that equals Before is taken away. */
  commit(label: string): void {
    const start = this.gesture.value;
    if (start === undefined) return;
    batch(() => {
      this.gesture.value = undefined;
      if (this.changes.value.length === 0) this.put(this.before.value, undefined);
      const isMoved = start.before !== this.before.value || start.after !== this.after.value;
      if (isMoved) this.remember({ ...start, label });
    });
  }

  /** Ends a gesture and takes back what it has tried. Drafts stay. */
  abandon(): void {
    const start = this.gesture.value;
    if (start === undefined) return;
    batch(() => {
      this.gesture.value = undefined;
      this.put(start.before, start.after);
    });
  }

  /** One change with its own undo step. */
  change(changes: Changes, label: string, typed?: Typed): readonly Issue[] {
    const issues = this.preview(changes, label, typed);
    this.commit(label);
    return issues;
  }

  /** Forgets a text that could not be read, or all of them. */
  dropDraft(path?: string): void {
    const kept = path === undefined ? [] : this.drafts.value.filter((draft) => draft.path !== path);
    if (kept.length < this.drafts.value.length) this.drafts.value = kept;
  }

  /** Gives paths the values that Before has: what is absent there is taken out, and lists get their length back. */
  putBack(paths: readonly string[], label: string): readonly Issue[] {
    const before = this.before.value;
    const base = this.inHand.value;
    if (before === undefined || base === undefined) return [];
    const document = paths.reduce((changed, path) => withValueOf(changed, before.document, path), base.document);
    const said = `put back ${label}`;
    const values = Object.fromEntries(paths.map((path) => [path, valueAt(before.document, path)]));
    const issues = this.attempt(document, values, said);
    this.commit(said);
    return issues;
  }

  /** Gives the car in hand another name or other notes; no change of the car itself, so Before stays Before. */
  describe(words: { readonly name?: string; readonly notes?: string }): void {
    const { before, after } = this.snapshot();
    const inHand = after ?? before;
    if (inHand === undefined) return;
    const { car } = readAgain(inHand, { ...inHand.document, ...words });
    if (car === undefined) return;
    this.step('name and notes', () => (after === undefined ? this.put(car, undefined) : this.put(before, car)));
  }

  /** Adds After to the variants of Before's file; the issues say why where that cannot be. */
  addVariant(name: string): readonly Issue[] {
    const { before, after } = this.snapshot();
    if (before === undefined || after === undefined) return [];
    const { changes, removed } = changesBetween(before.document, asVariantOf(before, after));
    if (removed.length > 0) return removed.map(cannotRemove);
    const { variants = [] } = before.document;
    const document = { ...before.document, variants: [...(variants as readonly JsonValue[]), { name, changes }] };
    const { car, issues } = readAgain(before, document);
    if (car !== undefined) this.step(`add variant ${name}`, () => this.put(car, { ...after, label: name }));
    return car === undefined ? issues : [];
  }

  /** Makes After a variant that the opened file lists. */
  tryVariant(name: string): readonly Issue[] {
    const before = this.before.value;
    if (before === undefined) return [];
    const { scenario, issues } = applyVariant(before.scenario, name);
    if (scenario === undefined) return issues;
    const { car } = readCar(name, scenario.document, scenario.measuredOn);
    this.step(name, () => this.put(before, car));
    return issues;
  }

  /** After becomes Before, with its results and with the variants and upgrades of the file as far as they fit it. */
  keepAsBefore(): void {
    const { before, after } = this.snapshot();
    if (before === undefined || after === undefined) return;
    const kept = withListsOf(after, before);
    const { of, ...run } = this.afterRun.value;
    this.step(`keep ${after.label} as Before`, () => {
      this.put(kept, undefined);
      this.beforeRun.value = { ...run, ...(of && { of: of === after ? kept : of }) };
    });
  }

  /** Gives Before what After has at some paths, for both to be asked alike; the issues say why where that cannot be. */
  alsoBefore(paths: readonly string[], label: string): readonly Issue[] {
    const { before, after } = this.snapshot();
    if (before === undefined || after === undefined) return [];
    const document = paths.reduce((changed, path) => withValueOf(changed, after.document, path), before.document);
    const { car, issues } = readChanged(before.label, document, [before, after]);
    if (car === undefined) return issues;
    const isSame = changedPaths(document, after.document).length === 0;
    this.step(label, () => this.put(car, isSame ? undefined : after));
    return issues;
  }

  /** Goes back one step; in the midst of a gesture, to where it began. */
  undo(): void {
    if (this.gesture.value !== undefined) {
      this.abandon();
      return;
    }
    const steps = this.undoSteps.value;
    const last = steps[steps.length - 1];
    if (last === undefined) return;
    batch(() => {
      this.redoSteps.value = [...this.redoSteps.value, this.turnedRound(last)];
      this.undoSteps.value = steps.slice(0, -1);
      this.goTo(last);
    });
  }

  redo(): void {
    this.abandon();
    const steps = this.redoSteps.value;
    const last = steps[steps.length - 1];
    if (last === undefined) return;
    batch(() => {
      this.undoSteps.value = [...this.undoSteps.value, this.turnedRound(last)];
      this.redoSteps.value = steps.slice(0, -1);
      this.goTo(last);
    });
  }

  /** The step that leads back from where `step` leads. */
  private turnedRound({ label, gauge }: UndoStep): UndoStep {
    return { ...this.snapshot(), label, ...(gauge && { gauge: this.gauge.value }) };
  }

  private goTo({ before, after, gauge }: UndoStep): void {
    this.drafts.value = [];
    this.put(before, after);
    if (gauge !== undefined) this.gauge.value = gauge;
  }

  /**
   * Puts a changed document in hand, or keeps it as a draft where it has errors. Variants and upgrades belong to the
   * file that was opened: they neither come along nor stand in the way of a change that does not fit them.
   */
  private attempt(whole: JsonObject, changes: Changes, label: string, typed?: Typed): readonly Issue[] {
    const document = carAlone(whole);
    const [first] = Object.keys(changes);
    const { path, text } = typed ?? { path: first, text: String(changes[first] ?? '') };
    const { car: alone, issues } = this.read(document, changes, label);
    const others = this.drafts.value.filter((draft) => draft.path !== path);
    const car = alone ?? this.withDrafts(document, changes, others, label);
    if (car === undefined) {
      this.drafts.value = [...others, { path, text, issues, changes }];
      return issues;
    }
    const left = alone === undefined ? [] : others;
    batch(() => {
      this.gesture.value ??= this.snapshot();
      if (left.length < this.drafts.value.length) this.drafts.value = left;
      this.put(this.before.value, car);
    });
    return car.warnings;
  }

  /** Two values that need each other are typed one after the other: what neither can be alone, both may be together. */
  private withDrafts(document: JsonObject, changes: Changes, drafts: readonly Draft[], label: string): Car | undefined {
    if (drafts.length === 0) return undefined;
    const all: Changes = Object.assign({}, ...drafts.map((draft) => draft.changes), changes);
    const together = withChanges(document, all);
    return this.read(together, all, label).car;
  }

  /** A changed document: its flow stays measured on Before, or on the car in hand where that has a flow of its own. */
  private read(document: JsonObject, changes: Changes, label: string): ReturnType<typeof readChanged> {
    return readChanged(this.labelFor(document, changes, label), document, [this.before.value, this.inHand.value]);
  }

  /** The limit is one line through both cars: it is changed in both and makes no After. */
  private attemptLimit(changes: Changes, label: string, typed?: Typed): readonly Issue[] {
    const { before, after } = this.snapshot();
    const limited = (car: Car | undefined) => car && readAgain(car, withChanges(car.document, changes)).car;
    const first = limited(before);
    if (before === undefined || first === undefined) {
      return this.attempt(withChanges((after ?? before)?.document ?? {}, changes), changes, label, typed);
    }
    const [path] = Object.keys(changes);
    batch(() => {
      this.gesture.value ??= { before, after };
      this.dropDraft(typed?.path ?? path);
      this.put(first, limited(after));
    });
    return first.warnings;
  }

  /** @param gauge - what its gauge shows, where another car comes */
  private step(label: string, act: () => void, gauge?: Gauge): void {
    const start = this.gesture.value ?? this.snapshot();
    batch(() => {
      this.gesture.value = undefined;
      this.drafts.value = [];
      act();
      if (start.before !== undefined) this.remember({ ...start, label, ...(gauge && { gauge: this.gauge.value }) });
      if (gauge !== undefined) this.gauge.value = gauge;
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
  private labelFor(document: JsonObject, changes: Changes, label: string): string {
    const before = this.before.value;
    const differing = before === undefined ? [] : changedPaths(before.document, document);
    const isOwn = (path: string) => Object.keys(changes).some((own) => areRelated(path, own));
    const others = differing.filter((path) => !isOwn(path)).length;
    if (others === 0) return label;
    const count = differing.length;
    return count === 1 ? '1 change' : `${count} changes`;
  }
}

/** After's document for a variant of Before, which keeps Before's measured flow or gives one measured on the variant. */
function asVariantOf(before: Car, after: Car): JsonObject {
  const isOfBefore = measuredOnOneOf([before.scenario], after.document) !== undefined;
  const [first, second] = [before, after].map(({ config }) => JSON.stringify(config.measuredFlow));
  return isOfBefore && first === second ? after.document : asFile(after).document;
}

function cannotRemove(path: string): Issue {
  const message = `After has no ${path}, and a variant cannot take a key out of a file. Save After as a file of its own.`;
  return { severity: 'error', path, message, found: 'nothing', expected: 'a value' };
}

/** A document with new values at paths; `undefined` takes a key out. */
export function withChanges(document: JsonObject, changes: Changes): JsonObject {
  let changed: JsonValue = document;
  for (const [path, value] of Object.entries(changes)) {
    const steps = stepsOf(path);
    changed = value === undefined ? withoutValue(changed, steps) : (withValue(changed, steps, value) ?? changed);
  }
  return changed as JsonObject;
}

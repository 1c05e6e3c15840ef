import type { JsonObject } from '../../sim/index.ts';
import { tracesOf } from '../plots/traces.ts';
import {
  CAMERAS,
  COLOUR_BY,
  type Display,
  INPUT_PARTS,
  PLOT_SPANS,
  SHOW_CORE,
  THEMES,
  UNIT_CHOICES,
  type UnitChoice,
} from '../state/display.ts';
import { APART_CHOICES, TUBE_CHOICES } from '../state/drawing.ts';
import type { Gauge } from '../state/gauge.ts';
import type { Draft, Session } from '../state/session.ts';
import {
  areStoredSteps,
  asStored,
  carOf,
  isGauge,
  isRecord,
  isStoredCar,
  restoreSteps,
  type StoredCar,
  type StoredSteps,
  storedSteps,
} from './stored-steps.ts';

/** Version of the stored text; another one is not read. */
const VERSION = 1;

/** What the browser keeps of the page between visits. */
interface Stored {
  readonly version: typeof VERSION;
  readonly before?: StoredCar;
  readonly after?: StoredCar;
  readonly gauge: Gauge;
  /** in their changes null takes a key out */
  readonly drafts: readonly (Pick<Draft, 'path' | 'text'> & { readonly changes: JsonObject })[];
  readonly steps: StoredSteps;
  readonly view: Readonly<Record<string, unknown>>;
}

/** Cars, readings, texts that could not be read, steps to undo and redo, units, theme and view as one text. */
export function toStoredText(session: Session, display: Display): string {
  const { drawing } = display;
  const [before, after] = [session.before.value, session.after.value];
  const stored: Stored = {
    version: VERSION,
    ...(before && { before: asStored(before) }),
    ...(after && { after: asStored(after) }),
    gauge: session.gauge.value,
    drafts: session.drafts.value.map(({ path, text, changes }) => ({
      path,
      text,
      changes: mapped(changes, (value) => value ?? null),
    })),
    steps: storedSteps(session),
    view: {
      units: display.units.value,
      theme: display.theme.value,
      colourBy: display.colourBy.value,
      show: display.show.value,
      camera: display.camera.value,
      span: display.span.value,
      openedPart: display.openedPart.value,
      traces: display.traces.value,
      hasCellLines: drawing.hasCellLines.value,
      tubes: drawing.tubes.value,
      apart: drawing.apart.value,
      letterhead: display.letterhead.value,
    },
  };
  return JSON.stringify(stored);
}

/**
 * Puts page and cars back as a stored text says. What it says of the view is taken as far as it can be read.
 *
 * @returns whether all cars came back; false where the text is no such text, or a car in it has errors. Never throws
 */
export function restoreFrom(text: string, session: Session, display: Display): boolean {
  let stored: unknown;
  try {
    stored = JSON.parse(text);
  } catch {
    return false;
  }
  if (!isRecord(stored) || stored.version !== VERSION) return false;
  if (isRecord(stored.view)) restoreView(stored.view, display);
  const { before, after, gauge, drafts, steps } = stored;
  if (before === undefined) {
    if (areStoredSteps(steps)) restoreSteps(steps, session);
    return true;
  }
  if (!isStoredCar(before) || (after !== undefined && !isStoredCar(after))) return false;
  const [first, second] = [carOf(before), after && carOf(after)];
  if (first === undefined) return false;
  session.restore(first, second);
  if (isGauge(gauge)) session.gauge.value = gauge;
  if (areStoredSteps(steps)) restoreSteps(steps, session);
  for (const draft of Array.isArray(drafts) ? drafts : []) restoreDraft(draft, session);
  return after === undefined || session.after.value !== undefined;
}

/** A text that cannot be read is tried once more: it says again what is wrong with it. */
function restoreDraft(draft: unknown, session: Session): void {
  if (!isRecord(draft)) return;
  const { path, text, changes } = draft;
  if (typeof path !== 'string' || typeof text !== 'string' || !isRecord(changes)) return;
  if (Object.keys(changes).length === 0) return;
  const tried = mapped(changes as JsonObject, (value) => value ?? undefined);
  session.preview(tried, path, { path, text });
  session.abandon();
}

/** The same keys, each with what is made of its value. */
function mapped<From, To>(values: Readonly<Record<string, From>>, to: (value: From) => To): Record<string, To> {
  return Object.fromEntries(Object.entries(values).map(([key, value]) => [key, to(value)]));
}

function restoreView(view: Readonly<Record<string, unknown>>, display: Display): void {
  const take = <Choice>(name: string, choices: readonly Choice[], put: (choice: Choice) => void): void => {
    const choice = choices.find((each) => each === view[name]);
    if (choice !== undefined) put(choice);
  };
  take('theme', THEMES, (theme) => {
    display.theme.value = theme;
  });
  take('colourBy', COLOUR_BY, (colourBy) => {
    display.colourBy.value = colourBy;
  });
  take('show', SHOW_CORE, (show) => {
    display.show.value = show;
  });
  take('camera', CAMERAS, (camera) => {
    display.camera.value = camera;
  });
  take('span', PLOT_SPANS, (span) => {
    display.span.value = span;
  });
  take('openedPart', INPUT_PARTS, (part) => {
    display.openedPart.value = part;
  });
  take('hasCellLines', [true, false], (hasCellLines) => {
    display.drawing.hasCellLines.value = hasCellLines;
  });
  take('tubes', TUBE_CHOICES, (tubes) => {
    display.drawing.tubes.value = tubes;
  });
  take('apart', Object.values(APART_CHOICES), (apart) => {
    display.drawing.apart.value = apart;
  });
  const { units, traces, letterhead } = view;
  if (isRecord(letterhead)) {
    const known = Object.entries(letterhead).filter(
      ([key, text]) => key in display.letterhead.value && typeof text === 'string',
    );
    display.letterhead.value = { ...display.letterhead.value, ...Object.fromEntries(known) };
  }
  if (Array.isArray(traces)) display.traces.value = tracesOf(traces).map(({ column }) => column);
  if (!isRecord(units)) return;
  const known = Object.entries(UNIT_CHOICES).filter(([quantity, choices]) =>
    (choices as readonly unknown[]).includes(units[quantity]),
  );
  const chosen = Object.fromEntries(known.map(([quantity]) => [quantity, units[quantity]]));
  display.units.value = { ...display.units.value, ...(chosen as Partial<UnitChoice>) };
}

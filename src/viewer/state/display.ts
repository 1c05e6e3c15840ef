import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { BottleneckPart, ColumnName, FileUnit } from '../../sim/index.ts';
import { type Drawing, makeDrawing } from './drawing.ts';

/** Units a quantity may be shown in; the first is the one of the files. Stored values are never changed. */
export const UNIT_CHOICES = {
  temperature: ['degC', 'degF'],
  coolantFlow: ['L/min', 'gpm'],
  pressure: ['kPa', 'psi'],
  length: ['mm', 'in'],
  power: ['kW', 'hp'],
} as const;
export type UnitQuantity = keyof typeof UNIT_CHOICES;
export type UnitChoice = { readonly [Quantity in UnitQuantity]: (typeof UNIT_CHOICES)[Quantity][number] };

export const METRIC: UnitChoice = {
  temperature: 'degC',
  coolantFlow: 'L/min',
  pressure: 'kPa',
  length: 'mm',
  power: 'kW',
};
export const IMPERIAL: UnitChoice = {
  temperature: 'degF',
  coolantFlow: 'gpm',
  pressure: 'psi',
  length: 'in',
  power: 'hp',
};

/** Which choice decides about a file unit; the others are always shown as they are. */
const DECIDED_BY: Partial<Record<FileUnit, UnitQuantity>> = {
  degC: 'temperature',
  K: 'temperature',
  'L/min': 'coolantFlow',
  kPa: 'pressure',
  'kPa abs': 'pressure',
  mm: 'length',
  kW: 'power',
};

/** Symbol of the unit in which a key or column of this file unit is shown. */
export function shownUnit(fileUnit: FileUnit, units: UnitChoice): string {
  const quantity = DECIDED_BY[fileUnit];
  if (quantity === undefined) return fileUnit;
  const chosen = units[quantity];
  if (chosen === UNIT_CHOICES[quantity][0]) return fileUnit;
  return fileUnit === 'kPa abs' ? `${chosen} abs` : chosen;
}

export const THEMES = ['system', 'light', 'dark'] as const;
export type Theme = (typeof THEMES)[number];
/** Two ways to look at the same state: all of it at once, or as the letter a customer gets. */
export type View = 'workbench' | 'letter';

/** What the shop writes at the head of a letter, in its own words; '' where it writes nothing. */
export interface Letterhead {
  readonly shop: string;
  readonly customer: string;
  /** '' stands for today */
  readonly date: string;
}

export const COLOUR_BY = ['metal', 'coolant', 'air'] as const;
export type ColourBy = (typeof COLOUR_BY)[number];
export const SHOW_CORE = ['whole', 'cut', 'apart'] as const;
export type ShowCore = (typeof SHOW_CORE)[number];
export const CAMERAS = ['corner', 'above', 'air side'] as const;
export type Camera = (typeof CAMERAS)[number];
export const PLOT_SPANS = ['one pull', 'whole run'] as const;
export type PlotSpan = (typeof PLOT_SPANS)[number];

/** Parts of the car as the inputs group them, in the order of the page. */
export const INPUT_PARTS = [
  'core',
  'pump',
  'lines',
  'exchanger',
  'tank',
  'compressor',
  'air',
  'pulls',
  'sensor',
] as const;
export type InputPart = (typeof INPUT_PARTS)[number];

const PART_OF_CAUSE: Record<BottleneckPart, InputPart> = {
  'core conductance': 'core',
  'coolant flow': 'pump',
  'front exchanger': 'exchanger',
  'stored coolant': 'tank',
  'core pressure drop': 'core',
  'intake air': 'air',
};

/** How the page shows things: settings of the viewer that never touch a car. */
export class Display {
  readonly units: Signal<UnitChoice> = signal(METRIC);
  readonly theme: Signal<Theme> = signal('system');
  readonly systemIsDark: Signal<boolean> = signal(false);
  readonly isDark: ReadonlySignal<boolean> = computed(() =>
    this.theme.value === 'system' ? this.systemIsDark.value : this.theme.value === 'dark',
  );
  readonly hasReducedMotion: Signal<boolean> = signal(false);
  readonly colourBy: Signal<ColourBy> = signal('metal');
  readonly show: Signal<ShowCore> = signal('cut');
  readonly camera: Signal<Camera> = signal('corner');
  readonly span: Signal<PlotSpan> = signal('one pull');
  readonly drawing: Drawing = makeDrawing();
  /** quantities with a strip of their own; undefined as long as none has been chosen */
  readonly traces: Signal<readonly ColumnName[] | undefined> = signal(undefined);
  /** part whose inputs are open; one at a time */
  readonly openedPart: Signal<InputPart | undefined> = signal('core');
  /** whether the routes of the recirculated air are shown, below the causes */
  readonly isRoutesOpen: Signal<boolean> = signal(false);
  /** whether the coolant loop is shown there: its parts, where pump and loop meet, what takes the pressure */
  readonly isLoopOpen: Signal<boolean> = signal(false);
  /** whether answers of many runs may be asked for there, and which is looked at */
  readonly isQuestionsOpen: Signal<boolean> = signal(false);
  readonly question: Signal<string> = signal('');
  /** on a narrow screen the inputs are a sheet that is opened and closed */
  readonly isSheetOpen: Signal<boolean> = signal(false);
  /** part whose inputs another part of the page has asked for: they take the focus */
  readonly askedPart: Signal<InputPart | undefined> = signal(undefined);
  readonly view: Signal<View> = signal('workbench');
  readonly letterhead: Signal<Letterhead> = signal({ shop: '', customer: '', date: '' });
  /** something about the page itself that the user must know, such as work that cannot be stored */
  readonly notice: Signal<string | undefined> = signal(undefined);

  /** Opens the inputs of the part that a cause stands for. */
  openPart(cause: BottleneckPart): void {
    this.openInputs(PART_OF_CAUSE[cause]);
  }

  /** Opens the inputs of a part and puts the focus there. */
  openInputs(part: InputPart): void {
    this.openedPart.value = part;
    this.isSheetOpen.value = true;
    this.askedPart.value = part;
  }
}

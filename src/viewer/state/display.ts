import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { BottleneckPart, FileUnit } from '../../sim/index.ts';

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
  W: 'power',
};

/** Symbol of the unit in which a key or column of this file unit is shown. */
export function shownUnit(fileUnit: FileUnit, units: UnitChoice): string {
  const quantity = DECIDED_BY[fileUnit];
  if (quantity === undefined) return fileUnit;
  const chosen = units[quantity];
  if (chosen === UNIT_CHOICES[quantity][0]) return fileUnit;
  return fileUnit === 'kPa abs' ? `${chosen} abs` : chosen;
}

export type Theme = 'system' | 'light' | 'dark';
export type ColourBy = 'metal' | 'coolant' | 'air';
export type ShowCore = 'whole' | 'cut' | 'apart';
export type Camera = 'corner' | 'above' | 'air side';
export type PlotSpan = 'one pull' | 'whole run';

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
  /** part whose inputs are open; one at a time */
  readonly openedPart: Signal<InputPart | undefined> = signal('core');

  /** Opens the inputs of the part that a cause stands for. */
  openPart(cause: BottleneckPart): void {
    this.openedPart.value = PART_OF_CAUSE[cause];
  }
}

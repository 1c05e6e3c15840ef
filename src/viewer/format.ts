import {
  COLUMNS,
  type ColumnName,
  convert,
  decimals,
  durationFigure,
  type FileUnit,
  toSi,
  type Wording,
} from '../sim/index.ts';
import { shownUnit, type UnitChoice } from './state/display.ts';

/** A number as text and its unit as it is written on screen; a pure number has no unit. */
export interface Shown {
  readonly value: string;
  readonly unit: string;
}

/** Between a number and its unit: never broken over two lines. */
export const NO_BREAK_SPACE = '\u00a0';

/** Digits behind the point by shown unit: what a run's report prints, and about the same steps in the other units. */
const DIGITS: Readonly<Record<string, number>> = {
  degC: 1,
  degF: 1,
  K: 1,
  'kPa abs': 1,
  'psi abs': 2,
  kPa: 1,
  psi: 2,
  'L/min': 1,
  gpm: 2,
  kW: 1,
  hp: 1,
  kJ: 1,
  'kg/s': 4,
  s: 1,
  rpm: 0,
  '-': 3,
};

/** A quantity between SI and the unit in which it is shown: for axes, sliders and boxes. */
export interface Scale {
  /** as it is written: "°C" */
  readonly unit: string;
  readonly digits: number;
  readonly fromSi: (si: number) => number;
  readonly toSi: (shown: number) => number;
}

const knownScales = new Map<string, Scale>();

/**
 * How a quantity of a file or column is shown in the chosen units. Every unit is a straight line in every other, so
 * two points fix it; the line is kept, because thousands of points of a plot go through it.
 *
 * @param fileUnit - unit of the key or column in files
 */
export function scaleOf(fileUnit: FileUnit, units: UnitChoice): Scale {
  const symbol = shownUnit(fileUnit, units);
  const key = `${fileUnit} as ${symbol}`;
  const known = knownScales.get(key);
  if (known !== undefined) return known;
  const zero = toSi(symbol === fileUnit ? 0 : convert(0, symbol, fileUnit), fileUnit);
  const one = toSi(symbol === fileUnit ? 1 : convert(1, symbol, fileUnit), fileUnit) - zero;
  const scale: Scale = {
    unit: writtenUnit(symbol),
    digits: DIGITS[symbol] ?? 1,
    fromSi: (si) => (si - zero) / one,
    toSi: (shown) => zero + one * shown,
  };
  knownScales.set(key, scale);
  return scale;
}

/** The minus of the page; what is typed, and what goes into a file, has that of the keyboard. */
export const MINUS = '\u2212';

const SUPERSCRIPTS: Readonly<Record<string, string>> = { 2: '²', 3: '³' };

/** A unit as it is written on screen: "degC" is "°C", "m2" is "m²", and what counts without a unit has none. */
export function writtenUnit(symbol: string): string {
  if (symbol === '-' || symbol === 'share') return '';
  return symbol
    .replace(/^deg(?=[CF])/, '°')
    .replace(/(?<=m)[23](?!\d)/g, (power) => SUPERSCRIPTS[power])
    .replace('(L/min)^1.8', '(L/min)¹·⁸')
    .replace(/^um$/, 'µm')
    .replace(' K)', `${NO_BREAK_SPACE}K)`);
}

/** A number with fixed digits; a zero carries no minus. */
export function fixed(value: number, digits: number): string {
  return decimals(value, digits).replace('-', MINUS);
}

/** A change as it is written, with or without its unit, with a plus too: "+0.7 K"; nothing has no sign. */
export function signed(text: string): string {
  return text.startsWith(MINUS) || !/[1-9]/.test(text) ? text : `+${text}`;
}

/** A number beside an axis: tenths only where they are not nought and there is room for them. */
export function briefly(value: number): string {
  const text = fixed(value, 1);
  return text.endsWith('.0') || text.length > 4 ? fixed(value, 0) : text;
}

/** First letter in upper case. */
export const capitalised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What a text without special signs has in their place: quoted, "5 degC", "-5", "11 h", "x1.5", "0.18 m2". */
const PLAIN_SIGNS =
  /"[^"]*"| deg(?=[CF]\b)|(?<![\w.)\]-])-(?=\d)|(?<=\d) (?=(?:%|h|kg|L)(?![\w/]))|(?<![\w.])x(?=\d)|(?<=(?:^|[^A-Za-z])[cm]?m)[23](?!\w|\.\d)/g;

/**
 * A text of the simulator or of a file as the page writes it, with units and signs of its own; what is quoted stays as
 * it was typed.
 *
 * @example
 * onScreen('x0.85 of 0.18 m2 at -5 degC') // "×0.85 of 0.18 m² at −5 °C"
 */
export function onScreen(text: string): string {
  return text.replace(PLAIN_SIGNS, (found) => {
    if (found === ' deg') return `${NO_BREAK_SPACE}°`;
    if (found === '-') return MINUS;
    if (found === ' ') return NO_BREAK_SPACE;
    return found === 'x' ? '×' : (SUPERSCRIPTS[found] ?? found);
  });
}

/** A number with its unit, held together by a no-break space: "63.5 °C". */
export function joined({ value, unit }: Shown): string {
  return unit === '' ? value : `${value}${NO_BREAK_SPACE}${unit}`;
}

/** A quantity's name with its unit, so that its axis, or the cells of its row or column, are bare numbers. */
export const named = (name: string, unit: string): string => (unit === '' ? name : `${name}, ${unit}`);

/** An SI value of a key or column in the chosen units. */
function shownAs(si: number, fileUnit: FileUnit, units: UnitChoice, digits?: number): Shown {
  const scale = scaleOf(fileUnit, units);
  return { value: fixed(scale.fromSi(si), digits ?? scale.digits), unit: scale.unit };
}

/** A recorded quantity, as the report prints it: the drop across the core has one digit more than other pressures. */
export function columnShown(si: number, name: ColumnName, units: UnitChoice): Shown {
  const [fileUnit] = COLUMNS[name];
  return shownAs(si, fileUnit, units, scaleOf(fileUnit, units).digits + (name === 'coreAirDrop' ? 1 : 0));
}

/** @param kelvin - a temperature [K] */
export const temperature = (kelvin: number, units: UnitChoice, digits?: number): Shown =>
  shownAs(kelvin, 'degC', units, digits);

/** @param kelvin - how far two temperatures are apart [K] */
export const difference = (kelvin: number, units: UnitChoice, digits?: number): Shown =>
  shownAs(kelvin, 'K', units, digits);

/** A temperature [K] with its unit: "63.5 °C". */
export const degrees = (kelvin: number, units: UnitChoice, digits?: number): string =>
  joined(temperature(kelvin, units, digits));

/** A temperature difference [K] with its unit: "8.7 K". */
export const kelvins = (kelvin: number, units: UnitChoice): string => joined(difference(kelvin, units));

/** A difference with its sign and without its unit: "+1.2". */
export function signedDifference(kelvin: number, units: UnitChoice): string {
  return signed(difference(kelvin, units).value);
}

/** @param flow - coolant flow [m3/s] */
export const flow = (flow: number, units: UnitChoice): Shown => shownAs(flow, 'L/min', units);

/** Three figures without a row of noughts behind them; never as a power of ten. */
export const threeFigures = (value: number): string => String(Number(value.toPrecision(3)));

/** @param metres - a measure [m]: "1.81 mm", "0.0714 in" */
export function length(metres: number, units: UnitChoice): string {
  const { fromSi, unit } = scaleOf('mm', units);
  return joined({ value: threeFigures(fromSi(metres)), unit });
}

/** @param pascal - a pressure drop [Pa] with its unit: two digits of a kPa, three of a psi */
export function pressure(pascal: number, units: UnitChoice): string {
  return joined(shownAs(pascal, 'kPa', units, scaleOf('kPa', units).digits + 1));
}

/** @param s - a length of time [s] */
export const seconds = (s: number, digits = 1): Shown => ({ value: fixed(s, digits), unit: 's' });

/**
 * A time of the run as a clock shows it.
 *
 * @param s - time since the start [s]
 * @example
 * clockTime(312) // "5:12.0"
 */
export function clockTime(s: number, digits = 1): string {
  // Rounded first, so that 59.96 s becomes a minute and not sixty seconds.
  const rounded = Number(s.toFixed(digits));
  const whole = Math.floor(rounded);
  const twoDigits = (count: number): string => String(count).padStart(2, '0');
  const rest = (rounded - 60 * Math.floor(whole / 60)).toFixed(digits);
  const restOfMinute = rest.padStart(digits === 0 ? 2 : 3 + digits, '0');
  const minutes = Math.floor(whole / 60);
  return minutes < 60
    ? `${minutes}:${restOfMinute}`
    : `${Math.floor(minutes / 60)}:${twoDigits(minutes % 60)}:${restOfMinute}`;
}

/** @param watts - drive power [W], to the hundredth, as at the terminal: what parts move in it is small beside the whole */
export const drivePower = (watts: number, units: UnitChoice): Shown => shownAs(watts, 'kW', units, 2);

/** Below this a power is written in watts where the unit is the kilowatt [W]. */
const IN_KILOWATTS_FROM = 1000;

/** @param watts - a power [W]: "985 W", "12.4 kW", "1.32 hp" */
export function powerInWords(watts: number, units: UnitChoice): string {
  if (units.power === 'kW' && Math.abs(watts) < IN_KILOWATTS_FROM) return `${fixed(watts, 0)}${NO_BREAK_SPACE}W`;
  return joined(shownAs(watts, 'kW', units, units.power === 'kW' ? 1 : 2));
}

/** How long something lasts, as in the simulator's sentences: "12.0 s", "1800 s". */
export const duration = (s: number): string => joined({ value: durationFigure(s), unit: 's' });

/** How sentences of the simulator write sizes in the chosen units; what they take is SI. */
export const wordingIn = (units: UnitChoice): Wording => ({
  temperature: (kelvin) => degrees(kelvin, units),
  difference: (kelvin) => kelvins(kelvin, units),
  pressure: (pascal) => joined(shownAs(pascal, 'kPa', units)),
  power: (watts) => powerInWords(watts, units),
  flow: (volume) => joined(flow(volume, units)),
  time: (s) => clockTime(s),
  duration,
});

/**
 * Units at the edge of the program: what a user may type, what is shown, and the SI value inside.
 *
 *     SI value = factor * value + offset,  of a count per length factor / value
 *
 * Factors are the exact definitions (inch 25.4 mm, pound 0.45359237 kg, US gallon 3.785411784 L, imperial gallon
 * 4.54609 L, standard gravity 9.80665 m/s2) and, for inHg and inH2O, the conventional columns of NIST SP 811 (2008),
 * appendix B.8.
 */
interface Unit {
  readonly symbol: string;
  readonly factor: number;
  readonly also: readonly string[];
  readonly offset: number;
  readonly isReciprocal: boolean;
}

const unit = (symbol: string, factor: number, also: readonly string[] = [], offset = 0): Unit => ({
  symbol,
  factor,
  also,
  offset,
  isReciprocal: false,
});

const perLength = (symbol: string, length: number, also: readonly string[]): Unit => ({
  ...unit(symbol, length, also),
  isReciprocal: true,
});

const POUND = 0.45359237;
const INCH = 0.0254;
const POUND_PER_SQUARE_INCH = (POUND * 9.80665) / INCH ** 2;
const LITRE_PER_MINUTE = 1e-3 / 60;

/** Units of one quantity; of two that would fit a mistyped number, the earlier is proposed. */
const QUANTITIES = {
  temperature: [
    unit('degC', 1, ['C', 'celsius'], 273.15),
    unit('degF', 5 / 9, ['F', 'fahrenheit'], (459.67 * 5) / 9),
    unit('K', 1, ['kelvin']),
  ],
  temperatureDifference: [unit('K', 1, ['degC', 'C', 'kelvin']), unit('degF', 5 / 9, ['F'])],
  absolutePressure: [
    unit('kPa abs', 1e3, ['kPa', 'kPa absolute', 'kPa a']),
    unit('psi abs', POUND_PER_SQUARE_INCH, ['psi', 'psia']),
    unit('bar abs', 1e5, ['bar', 'bara']),
    unit('mbar', 100, ['hPa', 'millibar']),
    unit('inHg', 3386.389, ['inch Hg', 'in Hg']),
    unit('Pa', 1, ['pascal']),
  ],
  pressure: [
    unit('kPa', 1e3),
    unit('psi', POUND_PER_SQUARE_INCH),
    unit('bar', 1e5),
    unit('mbar', 100, ['hPa', 'millibar']),
    unit('inH2O', 249.0889, ['in H2O', 'inch H2O']),
    unit('Pa', 1, ['pascal']),
  ],
  mass: [unit('kg', 1), unit('lb', POUND, ['lbs', 'pound', 'pounds']), unit('g', 1e-3)],
  massFlow: [
    unit('kg/s', 1),
    unit('g/s', 1e-3),
    unit('lb/min', POUND / 60, ['lbs/min', 'lb/m']),
    unit('kg/h', 1 / 3600, ['kg/hr']),
  ],
  volumeFlow: [
    unit('L/min', LITRE_PER_MINUTE, ['lpm', 'litre/min', 'liter/min']),
    unit('gpm', 3.785411784 * LITRE_PER_MINUTE, ['US gpm', 'gal/min']),
    unit('L/h', 1e-3 / 3600, ['L/hr', 'lph']),
    unit('imp gpm', 4.54609 * LITRE_PER_MINUTE, ['UK gpm', 'igpm']),
    unit('m3/h', 1 / 3600, ['m3/hr']),
    unit('m3/s', 1),
  ],
  volume: [
    unit('L', 1e-3, ['litre', 'liter', 'litres', 'liters']),
    unit('cm3', 1e-6, ['cc', 'ml']),
    unit('cu in', INCH ** 3, ['in3', 'cubic inch', 'ci', 'cid']),
    unit('gal', 3.785411784e-3, ['US gal', 'gallon', 'gallons']),
    unit('m3', 1),
  ],
  volumePerTurn: [
    unit('L/rev', 1e-3, ['L', 'litre', 'liter']),
    unit('cm3/rev', 1e-6, ['cc/rev', 'cc', 'cm3']),
    unit('cu in/rev', INCH ** 3, ['in3/rev', 'cu in', 'in3', 'ci']),
  ],
  length: [
    unit('mm', 1e-3),
    unit('in', INCH, ['inch', 'inches', '"', '″']),
    unit('cm', 1e-2),
    unit('m', 1, ['metre', 'meter']),
    unit('ft', 12 * INCH, ['foot', 'feet']),
    unit('um', 1e-6, ['µm', 'μm', 'micrometre', 'micron']),
  ],
  pitch: [
    unit('mm/fin', 1e-3, ['mm']),
    perLength('fpi', INCH, ['fins per inch', 'fins/inch', 'fins/in']),
    unit('in/fin', INCH, ['in', 'inch', '"']),
    perLength('fins/cm', 1e-2, ['fins per cm']),
  ],
  area: [
    unit('m2', 1),
    unit('cm2', 1e-4),
    unit('mm2', 1e-6, ['sq mm']),
    unit('sq in', INCH ** 2, ['in2']),
    unit('sq ft', (12 * INCH) ** 2, ['ft2']),
  ],
  speed: [
    unit('m/s', 1),
    unit('km/h', 1 / 3.6, ['kph', 'kmh']),
    unit('mph', (5280 * 12 * INCH) / 3600),
    unit('ft/min', (12 * INCH) / 60, ['fpm']),
  ],
  duration: [
    unit('s', 1, ['sec', 'second', 'seconds']),
    unit('min', 60, ['minute', 'minutes']),
    unit('h', 3600, ['hr', 'hour', 'hours']),
    unit('ms', 1e-3),
  ],
  voltage: [unit('V', 1, ['volt', 'volts']), unit('mV', 1e-3)],
  turning: [unit('rpm', 1, ['1/min', 'rev/min', 'r/min'])],
  power: [unit('W', 1, ['watt', 'watts']), unit('kW', 1e3), unit('hp', 550 * 12 * INCH * POUND * 9.80665)],
  conductance: [unit('W/K', 1, ['W/degC']), unit('kW/K', 1e3, ['kW/degC'])],
  conductancePerLength: [unit('W/(m K)', 1, ['W/m/K', 'W/mK'])],
  conductancePerMass: [unit('W/(K kg)', 1, ['W/K/kg', 'W/(kg K)'])],
  heatCapacity: [unit('kJ/K', 1e3, ['kJ/degC']), unit('J/K', 1, ['J/degC'])],
  heatCapacityPerLength: [unit('J/(m K)', 1, ['J/m/K', 'J/mK']), unit('kJ/(m K)', 1e3, ['kJ/m/K'])],
  density: [unit('kg/m3', 1)],
  coolantDropFactor: [unit('Pa/(L/min)^1.8', LITRE_PER_MINUTE ** -1.8)],
  leak: [unit('krpm', 1)],
  heatPerMass: [unit('MJ/kg', 1e6), unit('kJ/kg', 1e3)],
  share: [unit('share', 1, ['-']), unit('%', 0.01, ['percent', 'per cent'])],
  percentage: [unit('%', 0.01, ['percent', 'per cent', '% by volume', '% vol', 'vol%', 'vol %', '% v/v'])],
  angle: [unit('deg', 1, ['degree', 'degrees', '°'])],
  number: [unit('-', 1)],
} as const satisfies Record<string, readonly Unit[]>;

/** The units that keys of a scenario file are in, each with its quantity. */
const FILE_UNITS = {
  degC: 'temperature',
  K: 'temperatureDifference',
  'kPa abs': 'absolutePressure',
  kPa: 'pressure',
  kg: 'mass',
  'kg/s': 'massFlow',
  'L/min': 'volumeFlow',
  L: 'volume',
  m3: 'volume',
  'm3/s': 'volumeFlow',
  'm3/h': 'volumeFlow',
  'MJ/kg': 'heatPerMass',
  'L/rev': 'volumePerTurn',
  mm: 'length',
  m: 'length',
  um: 'length',
  'mm/fin': 'pitch',
  m2: 'area',
  mm2: 'area',
  V: 'voltage',
  cm2: 'area',
  'm/s': 'speed',
  'km/h': 'speed',
  s: 'duration',
  h: 'duration',
  rpm: 'turning',
  W: 'power',
  kW: 'power',
  'W/K': 'conductance',
  'W/(m K)': 'conductancePerLength',
  'W/(K kg)': 'conductancePerMass',
  'kJ/K': 'heatCapacity',
  'J/(m K)': 'heatCapacityPerLength',
  'kg/m3': 'density',
  'Pa/(L/min)^1.8': 'coolantDropFactor',
  krpm: 'leak',
  share: 'share',
  '%': 'percentage',
  deg: 'angle',
  '-': 'number',
} as const satisfies Record<string, keyof typeof QUANTITIES>;
export type FileUnit = keyof typeof FILE_UNITS;

const unitsOf = (fileUnit: FileUnit): readonly Unit[] => QUANTITIES[FILE_UNITS[fileUnit]];

/** Symbols of every unit that may be typed where the file unit is `fileUnit`. */
export const unitSymbols = (fileUnit: FileUnit): string[] => unitsOf(fileUnit).map(({ symbol }) => symbol);

const spelled = (text: string): string =>
  text.toLowerCase().replace(/\s+/g, '').replace(/[°º]/g, 'deg').replace(/³/g, '3').replace(/²/g, '2');

function findUnit(symbol: string, fileUnit: FileUnit): Unit | undefined {
  const wanted = spelled(symbol);
  return unitsOf(fileUnit).find((each) => [each.symbol, ...each.also].some((name) => spelled(name) === wanted));
}

function unitNamed(symbol: string, fileUnit: FileUnit): Unit {
  const found = findUnit(symbol, fileUnit);
  if (found === undefined) throw new RangeError(`unit is ${symbol}; expected ${unitSymbols(fileUnit).join(', ')}`);
  return found;
}

/**
 * A value of a scenario file in SI.
 *
 * @param value - number in `fileUnit`
 * @param fileUnit - unit of the key
 * @returns the value in SI (kelvin, pascal, kg/s, m3/s, m, W, J; rpm stays rpm, shares 0 to 1)
 * @example
 * toSi(27, 'degC') // 300.15
 */
export function toSi(value: number, fileUnit: FileUnit): number {
  return siOf(unitNamed(fileUnit, fileUnit), value);
}

const siOf = ({ factor, offset, isReciprocal }: Unit, value: number): number =>
  isReciprocal ? factor / value : factor * value + offset;

const inUnit = ({ factor, offset, isReciprocal }: Unit, si: number): number =>
  isReciprocal ? factor / si : (si - offset) / factor;

/**
 * An SI value in a unit to show: the inverse of `toSi`.
 *
 * @param value - number in SI
 * @param fileUnit - unit to show it in
 * @returns the value in `fileUnit`
 * @example
 * fromSi(300.15, 'degC') // 27
 */
export function fromSi(value: number, fileUnit: FileUnit): number {
  return inUnit(unitNamed(fileUnit, fileUnit), value);
}

/**
 * A value from one unit to the unit of a key.
 *
 * @param value - number in the unit `symbol`
 * @param symbol - any unit of the same quantity
 * @param fileUnit - unit of the key
 * @returns the value in `fileUnit`
 * @throws {RangeError} when `symbol` is no unit of that quantity
 * @example
 * convert(14, 'psi', 'kPa') // 96.5266
 */
export function convert(value: number, symbol: string, fileUnit: FileUnit): number {
  const typed = unitNamed(symbol, fileUnit);
  const wanted = unitNamed(fileUnit, fileUnit);
  // Equal factors must give back the very number that was typed.
  return typed === wanted ? value : inUnit(wanted, siOf(typed, value));
}

/** What a typed text turned out to be. */
export type Reading =
  | { readonly kind: 'value'; readonly value: number; readonly unit: string | undefined }
  | { readonly kind: 'unknown unit'; readonly unit: string }
  | { readonly kind: 'ambiguous'; readonly decimal: string; readonly thousands: string }
  | { readonly kind: 'not a number' };

const NUMBER = /^([-+]?(?:\d[\d.,]*|[.,]\d+)(?:e[-+]?\d+)?)(.*)$/i;
const FRACTION = /^(?:(\d+)[ -])?(\d+)\/(\d+)(.*)$/;

/**
 * Reads a number that may carry a unit: "14 psi", "2,5 kPa", "95 degF", "3/4 in", or a bare "40" in the file unit.
 *
 * A comma is a decimal comma. Where it could be a thousands separator as well ("1,234", "1,234.5") the text is
 * ambiguous and no value is given. A minus may be that of the keyboard or that of print.
 *
 * @param text - what was typed
 * @param fileUnit - unit of the key: it fixes the quantity and stands in where no unit was typed
 * @returns the value in `fileUnit`, or why there is none
 * @example
 * readQuantity('2,5 kPa', 'kPa') // { kind: 'value', value: 2.5, unit: 'kPa' }
 */
export function readQuantity(text: string, fileUnit: FileUnit): Reading {
  const trimmed = text.trim().replaceAll('\u2212', '-');
  const fraction = FRACTION.exec(trimmed);
  if (fraction !== null) {
    const [, whole = '0', over = '', under = '', rest = ''] = fraction;
    if (Number(under) === 0) return { kind: 'not a number' };
    return withUnit(Number(whole) + Number(over) / Number(under), rest.trim(), fileUnit);
  }
  const match = NUMBER.exec(trimmed);
  if (match === null) return { kind: 'not a number' };
  const [, digits = '', rest = ''] = match;
  const separators = digits.replace(/[^.,]/g, '');
  if (separators.length > 1 || /^[-+]?[1-9]\d{0,2},\d{3}$/.test(digits)) {
    const lastSeparator = Math.max(digits.lastIndexOf('.'), digits.lastIndexOf(','));
    const bare = (part: string): string => part.replace(/[.,]/g, '');
    const decimal = `${bare(digits.slice(0, lastSeparator))}.${digits.slice(lastSeparator + 1)}`;
    return { kind: 'ambiguous', decimal, thousands: bare(digits) };
  }
  return withUnit(Number(digits.replace(',', '.')), rest.trim(), fileUnit);
}

function withUnit(value: number, symbol: string, fileUnit: FileUnit): Reading {
  if (symbol === '') return { kind: 'value', value, unit: undefined };
  const typed = findUnit(symbol, fileUnit);
  if (typed === undefined) return { kind: 'unknown unit', unit: symbol };
  return { kind: 'value', value: convert(value, typed.symbol, fileUnit), unit: typed.symbol };
}

/**
 * A number to so many decimals; what rounds to nothing has no sign.
 *
 * @example
 * decimals(-0.04, 1) // '0.0'
 */
export const decimals = (value: number, digits: number): string => value.toFixed(digits).replace(/^-(?=[0.]*$)/, '');

/** A number as messages show it: four figures, whole numbers in full. */
export function figure(value: number): string {
  return String(Math.abs(value) >= 1000 ? Math.round(value) : Number(value.toPrecision(4)));
}

/** A number with its unit as messages show it; pure numbers and shares stand alone. */
export function figureWithUnit(value: number, symbol: string): string {
  return symbol === '-' || symbol === 'share' ? figure(value) : `${figure(value)} ${symbol}`;
}

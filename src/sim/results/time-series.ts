import type { PhaseKind } from '../scenario/config/cycle.ts';
import type { Sentence } from '../sentence.ts';
import type { FileUnit } from '../units.ts';

/**
 * Every recorded quantity with the unit it is shown in and what it is; the values themselves are SI, NaN where the car
 * has no such part. Means of metal and coolant are by heat capacity, so that `capacity * mean` is the stored heat of a
 * part.
 */
export const COLUMNS = {
  time: ['s', 'time since the start of the first phase'],
  engineSpeed: ['rpm', 'engine speed'],
  outsideTemperature: ['degC', 'air round the car: outside, or in the room'],
  chargeTemperature: ['degC', 'true charge temperature, behind core and plenum'],
  indicatedTemperature: ['degC', 'charge temperature as the sensor shows it'],
  compressorInletTemperature: ['degC', 'air at the compressor inlet, after mixing'],
  dischargeTemperature: ['degC', 'air after compressor and casing, before the core'],
  coreOutletTemperature: ['degC', 'air leaving the core, or the mean core metal where no air flows'],
  airFlow: ['kg/s', 'air into the engine'],
  compressorSpeed: ['rpm', 'compressor speed'],
  recirculation: ['-', 'recirculated air over engine air'],
  compressorInletPressure: ['kPa abs', 'absolute pressure at the compressor inlet'],
  pressureRatio: ['-', 'compressor pressure ratio'],
  manifoldPressure: ['kPa abs', 'absolute manifold pressure'],
  coreAirDrop: ['kPa', 'core pressure drop'],
  drivePower: ['kW', 'shaft power of the compressor'],
  gasPower: ['kW', 'power into the gas, idle power included'],
  airToCorePower: ['kW', 'heat from charge air into the core'],
  condensationPower: ['kW', 'heat given up by water condensing in the core'],
  condensateFlow: ['kg/s', 'water condensing in the core'],
  coolantFlow: ['L/min', 'coolant flow round the loop'],
  coolantIntoCore: ['degC', 'coolant entering the core'],
  coolantOutOfCore: ['degC', 'coolant leaving the core'],
  coolantOutOfExchanger: ['degC', 'coolant leaving the front exchanger'],
  coolantOutOfSecondExchanger: ['degC', 'coolant leaving the second exchanger'],
  exchangerPower: ['kW', 'heat from the cooling air of all exchangers; below 0 while they cool'],
  heatSinkPower: ['kW', 'heat out of the coolant in the extra heat sink'],
  reservoirTemperature: ['degC', 'coolant leaving the tank'],
  reservoirMean: ['degC', 'mean coolant temperature in the tank'],
  iceMass: ['kg', 'ice left in the tank'],
  coreMetalMean: ['degC', 'mean core metal temperature'],
  coreMetalLowest: ['degC', 'lowest core metal temperature'],
  coreCoolantMean: ['degC', 'mean coolant temperature in the core'],
  exchangerMetalMean: ['degC', 'mean metal temperature of the front exchanger'],
  exchangerCoolantMean: ['degC', 'mean coolant temperature in the front exchanger'],
  exchangerAirOutlet: ['degC', 'cooling air leaving the front exchanger; its inlet temperature where none flows'],
  secondExchangerMetalMean: ['degC', 'mean metal temperature of the second exchanger'],
  secondExchangerCoolantMean: ['degC', 'mean coolant temperature in the second exchanger'],
  secondExchangerAirOutlet: [
    'degC',
    'cooling air leaving the second exchanger; its inlet temperature where none flows',
  ],
  lineCoolantMean: ['degC', 'mean coolant temperature in all lines, by volume'],
  lineWallMean: ['degC', 'mean wall temperature of all lines, by length: walls are alike along the loop'],
  casingTemperature: ['degC', 'compressor casing'],
  plenumTemperature: ['degC', 'plenum metal'],
  hottestCoolant: ['degC', 'hottest coolant anywhere in the loop'],
  coldestCoolant: ['degC', 'coldest coolant anywhere in the loop, a tank of ice not counted'],
  chargeDewPoint: ['degC', 'dew point of the charge at core outlet pressure'],
} as const satisfies Record<string, readonly [FileUnit, string]>;
export type ColumnName = keyof typeof COLUMNS;

/** Rows `firstRow` to `lastRow` belong to this phase; both its ends are recorded, so neighbours repeat the time. */
export interface PhaseSpan {
  readonly name: string;
  readonly kind: PhaseKind;
  readonly start: number;
  readonly end: number;
  readonly firstRow: number;
  readonly lastRow: number;
  /** number of the repetition, from 1; 0 outside the repeated block */
  readonly block: number;
  /** false where the run ended inside it */
  readonly isWhole: boolean;
}

export interface RunEvent {
  readonly time: number;
  readonly kind:
    | 'limit exceeded'
    | 'limit met again'
    | 'core below dew point'
    | 'core above dew point again'
    | 'target pressure lost'
    | 'target pressure regained'
    | 'ice gone'
    | 'ice forms';
}

/** How a run ended. A run that stopped keeps everything up to then. */
export type Outcome = { readonly kind: 'finished' } | { readonly kind: 'cancelled'; readonly time: number } | Stopped;

export interface Stopped {
  readonly kind: 'stopped';
  readonly time: number;
  readonly cause: 'boiling' | 'freezing' | 'no answer';
  readonly reason: Sentence;
}

/** Energy that crossed each boundary, J, positive into metal, coolant and charge air; `stored` is the rise inside. */
export const ENERGY_TERMS = {
  shaft: 'compressor shaft',
  mechanicalLoss: 'mechanical loss carried away by the compressor oil',
  throughflow: 'intake air in less charge air out to the engine',
  condensation: 'heat given up by water condensing in the core',
  exchanger: 'cooling air at all exchangers',
  heatSink: 'extra heat sink',
  pump: 'pump heat into the coolant',
  lines: 'bay air to the coolant lines',
  reservoir: 'surroundings to the tank',
  coreBay: 'bay air to the core metal',
  casingBay: 'bay air to the casing',
  casingOil: 'oil to the casing',
  plenumBay: 'bay air to the plenum',
  plenumEngine: 'engine metal to the plenum',
} as const;
type EnergyTerm = keyof typeof ENERGY_TERMS;

export interface EnergyBalance {
  readonly terms: Readonly<Record<EnergyTerm, number>>;
  /** exchanges between parts, for information; not terms of the balance */
  readonly internal: { readonly airToCore: number; readonly casingToCore: number; readonly casingToPlenum: number };
  readonly stored: number;
  /** worst gap of any accepted step over the heat moved until then */
  readonly worstStepGap: number;
}

/**
 * Temperatures of every core cell at every recorded row, K. Row-major [row][along the air][along the coolant]:
 * cell (i, j) of row r stands at (r nx + i) ny + j. Air is the mean of what enters and leaves the cell; where no
 * air flows it is the metal's.
 */
export interface CoreFields {
  readonly nx: number;
  readonly ny: number;
  readonly metal: Float32Array;
  readonly coolant: Float32Array;
  readonly air: Float32Array;
}

export interface TimeSeries {
  readonly columns: Readonly<Record<ColumnName, Float64Array>>;
  readonly rowCount: number;
  /** only where the run was asked to keep them */
  readonly core?: CoreFields;
  readonly phases: readonly PhaseSpan[];
  readonly events: readonly RunEvent[];
  readonly outcome: Outcome;
  readonly energy: EnergyBalance;
  readonly work: { readonly steps: number; readonly rejected: number; readonly sweeps: number };
}

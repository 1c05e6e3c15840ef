import type { PhaseKind } from '../scenario/config.ts';

/**
 * Every recorded quantity with its SI unit and what it is. Temperatures of metal and coolant named "...Mean" are
 * heat-capacity means over the part, so that `capacity * mean` is its stored heat.
 */
export const COLUMNS = {
  time: ['s', 'time since the start of the first phase'],
  engineSpeed: ['rpm', 'engine speed'],
  chargeTemperature: ['K', 'true charge temperature, behind core and plenum'],
  indicatedTemperature: ['K', 'charge temperature as the sensor shows it'],
  compressorInletTemperature: ['K', 'air at the compressor inlet, after mixing'],
  dischargeTemperature: ['K', 'air after compressor and casing, before the core'],
  coreOutletTemperature: ['K', 'air leaving the core'],
  airFlow: ['kg/s', 'air into the engine'],
  recirculation: ['-', 'recirculated air over engine air'],
  compressorInletPressure: ['Pa', 'absolute pressure at the compressor inlet'],
  pressureRatio: ['-', 'compressor pressure ratio'],
  manifoldPressure: ['Pa', 'absolute manifold pressure'],
  coreAirDrop: ['Pa', 'air pressure drop across the core'],
  drivePower: ['W', 'shaft power of the compressor'],
  gasPower: ['W', 'power into the gas, idle power included'],
  heatAirToCore: ['W', 'heat from charge air into the core'],
  coolantFlow: ['m3/s', 'coolant flow round the loop'],
  coolantIntoCore: ['K', 'coolant entering the core'],
  coolantOutOfCore: ['K', 'coolant leaving the core'],
  coolantOutOfExchanger: ['K', 'coolant leaving the front exchanger'],
  reservoirTemperature: ['K', 'coolant in the reservoir'],
  coreMetalMean: ['K', 'mean core metal temperature'],
  coreMetalLowest: ['K', 'lowest core metal temperature'],
  coreCoolantMean: ['K', 'mean coolant temperature in the core'],
  exchangerMetalMean: ['K', 'mean exchanger metal temperature'],
  exchangerCoolantMean: ['K', 'mean coolant temperature in the exchanger'],
  exchangerAirOutlet: ['K', 'cooling air leaving the exchanger; its inlet temperature where none flows'],
  lineCoolantMean: ['K', 'mean coolant temperature in all lines, by volume'],
  lineWallMean: ['K', 'mean wall temperature of all lines, by heat capacity'],
  lineWallMeanByLength: ['K', 'mean wall temperature of all lines, by length'],
  casingTemperature: ['K', 'compressor casing'],
  plenumTemperature: ['K', 'plenum metal'],
  hottestCoolant: ['K', 'hottest coolant anywhere in the loop'],
  coldestCoolant: ['K', 'coldest coolant anywhere in the loop'],
  chargeDewPoint: ['K', 'dew point of the charge at core outlet pressure'],
} as const;
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
}

export interface RunEvent {
  readonly time: number;
  readonly kind: 'limit exceeded' | 'limit met again' | 'core below dew point' | 'core above dew point again';
}

/** How a run ended. A run that stopped keeps everything up to then. */
export type Outcome =
  | { readonly kind: 'finished' }
  | { readonly kind: 'cancelled'; readonly time: number }
  | { readonly kind: 'stopped'; readonly time: number; readonly reason: string };

/** Energy that crossed each boundary, J, positive into metal, coolant and charge air; `stored` is the rise inside. */
export const ENERGY_TERMS = {
  shaft: 'compressor shaft',
  mechanicalLoss: 'mechanical loss carried away by the compressor oil',
  throughflow: 'intake air in less charge air out to the engine',
  exchanger: 'cooling air at the front exchanger',
  pump: 'pump heat into the coolant',
  lines: 'bay air to the coolant lines',
  reservoir: 'surroundings to the reservoir',
  coreBay: 'bay air to the core metal',
  casingBay: 'bay air to the casing',
  casingOil: 'oil to the casing',
  plenumBay: 'bay air to the plenum',
  plenumEngine: 'engine metal to the plenum',
} as const;
export type EnergyTerm = keyof typeof ENERGY_TERMS;

export interface EnergyBalance {
  readonly terms: Readonly<Record<EnergyTerm, number>>;
  /** exchanges between parts, for information; not terms of the balance */
  readonly internal: { readonly airToCore: number; readonly casingToCore: number; readonly casingToPlenum: number };
  readonly stored: number;
  /** worst gap of any accepted step over the heat moved until then */
  readonly worstStepGap: number;
}

export interface TimeSeries {
  readonly columns: Readonly<Record<ColumnName, Float64Array>>;
  readonly rowCount: number;
  readonly phases: readonly PhaseSpan[];
  readonly events: readonly RunEvent[];
  readonly outcome: Outcome;
  readonly energy: EnergyBalance;
  readonly work: { readonly steps: number; readonly rejected: number; readonly sweeps: number };
}

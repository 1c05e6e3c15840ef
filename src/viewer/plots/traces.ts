import type { ColumnName } from '../../sim/index.ts';

/** A recorded quantity that can be drawn in a strip of its own. */
export interface Trace {
  readonly column: ColumnName;
  readonly title: string;
  /** where the height axis starts, in the unit of files; absent for temperatures, which start where they are */
  readonly from?: number;
}

/** What can be drawn below the charge temperature, by group. */
export const TRACE_GROUPS: readonly { readonly title: string; readonly traces: readonly Trace[] }[] = [
  {
    title: 'Coolant',
    traces: [
      { column: 'coolantOutOfCore', title: 'Coolant out of core' },
      { column: 'coolantIntoCore', title: 'Coolant into core' },
      { column: 'coolantOutOfExchanger', title: 'Coolant out of front exchanger' },
      { column: 'reservoirTemperature', title: 'Coolant in the tank' },
      { column: 'iceMass', title: 'Ice left in the tank', from: 0 },
      { column: 'coolantFlow', title: 'Coolant flow', from: 0 },
    ],
  },
  {
    title: 'Air',
    traces: [
      { column: 'manifoldPressure', title: 'Manifold pressure', from: 0 },
      { column: 'pressureRatio', title: 'Pressure ratio', from: 1 },
      { column: 'coreAirDrop', title: 'Core pressure drop', from: 0 },
      { column: 'airFlow', title: 'Air flow', from: 0 },
      { column: 'recirculation', title: 'Recirculated over engine air', from: 0 },
      { column: 'outsideTemperature', title: 'Air round the car' },
      { column: 'compressorInletTemperature', title: 'Air at compressor inlet' },
      { column: 'compressorInletPressure', title: 'Pressure at compressor inlet' },
      { column: 'dischargeTemperature', title: 'Air at discharge' },
      { column: 'coreOutletTemperature', title: 'Air leaving the core' },
      { column: 'chargeDewPoint', title: 'Dew point of the charge' },
      { column: 'condensateFlow', title: 'Water condensing in the core', from: 0 },
    ],
  },
  {
    title: 'Power and metal',
    traces: [
      { column: 'compressorSpeed', title: 'Compressor speed', from: 0 },
      { column: 'drivePower', title: 'Drive power', from: 0 },
      { column: 'gasPower', title: 'Power into the gas', from: 0 },
      { column: 'airToCorePower', title: 'Heat into core', from: 0 },
      { column: 'condensationPower', title: 'Heat of condensing water', from: 0 },
      { column: 'casingTemperature', title: 'Compressor casing' },
      { column: 'plenumTemperature', title: 'Plenum' },
    ],
  },
];

const TRACES = TRACE_GROUPS.flatMap(({ traces }) => traces);

/** Strips that are drawn at first, the most telling first. */
export const USUAL_TRACES: readonly ColumnName[] = ['coolantOutOfCore', 'coolantFlow', 'manifoldPressure'];

/** The traces of some columns, in the order of the list. */
export const tracesOf = (columns: readonly ColumnName[]): Trace[] =>
  TRACES.filter(({ column }) => columns.includes(column));

import type { TimeSeries } from '../results/time-series.ts';
import { firstPullOf } from '../scenario/config/cycle.ts';
import type { Config } from '../scenario/config.ts';
import { summarisePulls } from './pull-summary.ts';
import type { Wording } from './wording.ts';

/** Something else to measure, at the end of the same pull unless its name says otherwise. */
interface Quantity {
  readonly name: string;
  /** what a shop's instrument may be off by, SI: common practice, no published source */
  readonly doubt: number;
  readonly read: (config: Config, series: TimeSeries, row: number) => number;
  readonly write: (value: number, wording: Wording) => string;
}

const asDifference = (value: number, { difference }: Wording): string => difference(value);

/** The run of each car ends with this pull, and the gauge is looked at again there. */
export const LAST_PULL_OF_TRIAGE = 3;

/** What a shop may measure besides the two figures that it has. */
export const QUANTITIES: readonly Quantity[] = [
  {
    name: 'coolant flow',
    doubt: 1e-3 / 60,
    read: (_, { columns }, row) => columns.coolantFlow[row],
    write: (value, { flow }) => flow(value),
  },
  {
    name: 'voltage at the pump over its rated voltage',
    doubt: 0.03,
    read: ({ cycle }) => firstPullOf(cycle)?.pumpVoltageRatio ?? Number.NaN,
    write: (value) => value.toFixed(2),
  },
  {
    name: 'coolant in the tank',
    doubt: 2e-4,
    read: ({ reservoir }) => reservoir.coolantVolume,
    write: (value) => `${(1e3 * value).toFixed(1)} L`,
  },
  {
    name: 'coolant leaving the front exchanger over the air outside',
    doubt: 1,
    read: (_, { columns }, row) => columns.coolantOutOfExchanger[row] - columns.outsideTemperature[row],
    write: asDifference,
  },
  {
    name: 'coolant rise through the core at the end of the pull',
    doubt: 1,
    read: (_, { columns }, row) => columns.coolantOutOfCore[row] - columns.coolantIntoCore[row],
    write: asDifference,
  },
  {
    name: 'core pressure drop',
    doubt: 500,
    read: (_, { columns }, row) => columns.coreAirDrop[row],
    write: (value, { pressure }) => pressure(value),
  },
  {
    name: `rise of the gauge from that pull to pull ${LAST_PULL_OF_TRIAGE}`,
    doubt: 1,
    read: ({ limit }, series, row) => {
      const later = summarisePulls(series, limit.chargeTemperature)[LAST_PULL_OF_TRIAGE - 1];
      return (later?.atEnd.indicatedTemperature ?? Number.NaN) - series.columns.indicatedTemperature[row];
    },
    write: asDifference,
  },
];

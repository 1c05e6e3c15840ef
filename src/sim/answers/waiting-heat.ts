import { createCoolant } from '../fluids/coolant.ts';
import { HEAT_OF_MELTING } from '../fluids/ice.ts';
import { layOutCycle } from '../model/drive-cycle.ts';
import { pumpHeat } from '../model/loop-devices.ts';
import type { TimeSeries } from '../results/time-series.ts';
import type { Config } from '../scenario/config.ts';

/** What the coolant takes up outside the pulls, by name [J]; negative is given off. */
export interface WaitingHeat {
  /** s */
  readonly duration: number;
  readonly pump: number;
  /** from the bay through the walls of all lines */
  readonly lines: number;
  readonly reservoir: number;
  /** from charge air, bay and casing in the core, condensing water among it */
  readonly core: number;
  /** from the exchangers' cooling air */
  readonly exchanger: number;
  readonly heatSink: number;
  /** kg that all of it together melts at 0 degC, 0 where it is not above 0 */
  readonly asIce: number;
}

/**
 * Heat into the coolant between the pulls, by trapezoid over the recorded rows; undefined where nothing is waited for.
 * What the walls of core, exchanger and lines store on the way is not taken off.
 */
export function heatWhileWaiting(config: Config, series: TimeSeries): WaitingHeat | undefined {
  const { columns, phases } = series;
  const segments = layOutCycle(config);
  const coolant = createCoolant(config.coolant.glycolByVolume, config.coolant.glycol);
  const { propertiesAt } = config.coolant;
  const perVolume = coolant.density(propertiesAt) * coolant.heatCapacity(propertiesAt);
  const wallToBay = config.lines.reduce(
    (sum, { wallToBay: each, segments: parts }) => sum + each * parts.reduce((length, part) => length + part.length, 0),
    0,
  );
  const sums = { duration: 0, pump: 0, lines: 0, reservoir: 0, core: 0, exchanger: 0, heatSink: 0 };
  phases.forEach(({ kind, firstRow, lastRow }, n) => {
    if (kind === 'pull') return;
    const { phase } = segments[n];
    const pumped = (['pump', 'secondPump'] as const).reduce((sum, name) => {
      const pump = config[name];
      return pump === undefined ? sum : sum + pumpHeat(pump, phase[`${name}VoltageRatio`]);
    }, 0);
    const powersAt = (row: number) => {
      const outside = columns.outsideTemperature[row];
      const bay = outside + phase.bayAboveOutside;
      const rate = columns.coolantFlow[row] * perVolume;
      const around = config.reservoir.gainFrom === 'bay' ? bay : outside;
      const throughExchanger = columns.exchangerPower[row];
      return {
        pump: rate > 0 ? pumped : 0,
        lines: wallToBay === 0 ? 0 : wallToBay * (bay - columns.lineWallMean[row]),
        reservoir: config.reservoir.gain * (around - columns.reservoirMean[row]),
        core: rate * (columns.coolantOutOfCore[row] - columns.coolantIntoCore[row]),
        exchanger: throughExchanger,
        heatSink: config.heatSink === undefined ? 0 : -columns.heatSinkPower[row],
      };
    };
    for (let row = firstRow; row < lastRow; row++) {
      const step = columns.time[row + 1] - columns.time[row];
      const [before, after] = [powersAt(row), powersAt(row + 1)];
      sums.duration += step;
      for (const name of Object.keys(before) as (keyof typeof before)[]) {
        sums[name] += 0.5 * step * (before[name] + after[name]);
      }
    }
  });
  if (sums.duration === 0) return undefined;
  const { duration: _, ...heats } = sums;
  const total = Object.values(heats).reduce((sum, heat) => sum + heat, 0);
  return { ...sums, asIce: Math.max(0, total) / HEAT_OF_MELTING };
}

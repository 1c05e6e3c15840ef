import { expect } from 'vitest';
import { createCoolant } from '../../src/sim/fluids/coolant.ts';
import type { TimeSeries } from '../../src/sim/results/time-series.ts';
import type { Config } from '../../src/sim/scenario/config.ts';
import { startRun } from '../../src/sim/simulate.ts';

/** Heat that all metal and coolant hold above 0 K, about [J]: the last digit of the energy account is of this. */
function heldHeat(config: Config): number {
  const { coolant, core, exchanger, secondExchanger, reservoir, lines, casing, plenum } = config;
  const { density, heatCapacity } = createCoolant(coolant.glycolByVolume);
  const perVolume = density(coolant.propertiesAt) * heatCapacity(coolant.propertiesAt);
  const ofLines = lines.flatMap(({ segments, wallHeatCapacity }) =>
    segments.map(({ length, bore }) => length * (wallHeatCapacity + (perVolume * Math.PI * bore * bore) / 4)),
  );
  const ofParts = [core, exchanger ?? [], secondExchanger ?? []]
    .flat()
    .map((part) => part.metalHeatCapacity + perVolume * part.coolantVolume);
  const ofLumps = [
    casing.heatCapacity,
    plenum.heatCapacity,
    perVolume * reservoir.coolantVolume + 4200 * reservoir.iceMass,
  ];
  return 300 * [...ofLines, ...ofParts, ...ofLumps].reduce((sum, each) => sum + each, 0);
}

const movedIn = ({ energy }: TimeSeries): number =>
  Object.values(energy.terms).reduce((sum, joules) => sum + Math.abs(joules), 0);

function firstStepsOf(config: Config): TimeSeries {
  const run = startRun(config);
  for (let steps = 0; run.step() && steps < 1; steps++);
  return run.finish();
}

/** The account of each step closes to 1e-9 of the heat moved until then, and to rounding of the heat that is held. */
export function expectEnergyToClose(config: Config, series: TimeSeries): void {
  if (series.work.steps === 0) return;
  // Most close without asking what rounding may do in the first steps.
  if (series.energy.worstStepGap < 1e-9) return;
  const rounding = (100 * Number.EPSILON * heldHeat(config)) / movedIn(firstStepsOf(config));
  expect(series.energy.worstStepGap).toBeLessThan(1e-9 + rounding);
}

import { AIR_HEAT_CAPACITY } from '../fluids/moist-air.ts';
import type { EnergyBalance } from '../results/time-series.ts';
import type { Config } from '../scenario/config.ts';
import { flowsOfOneCore } from '../scenario/laws.ts';
import { moreCooling } from './coolant-findings.ts';
import { type FindingSource, whenAt } from './finding.ts';
import { metalConductionShare } from './metal-conduction.ts';
import { written } from './wording.ts';

/** A balance that misses more than this share of the heat moved is none: own judgement, runs close to rounding. */
const OPEN_BALANCE = 1e-3;

const WAY_ON = {
  boiling: (config: Config) => `${moreCooling(config)} keeps it liquid.`,
  freezing: () => 'It takes more glycol, or a warmer start.',
  'no answer': () => 'Nothing after that is worked out.',
} as const;

export const runStopped: FindingSource = (run) => {
  const { outcome } = run.series;
  if (outcome.kind !== 'stopped') return [];
  const { time, cause, reason } = outcome;
  const text = `The run stopped ${whenAt(run, time)}: ${written(reason, run.wording)}. ${WAY_ON[cause](run.config)}`;
  return [{ rank: 'stop', kind: 'run stopped', text, time, place: cause === 'no answer' ? 'air' : 'coolant' }];
};

export const energyNotClosed: FindingSource = ({ series: { energy } }) => {
  const gap = Math.max(energy.worstStepGap, wholeGap(energy));
  if (gap <= OPEN_BALANCE) return [];
  const text = `The energy balance does not close: ${(100 * gap).toFixed(2)} % of the heat moved is missing. No number of this run can be relied on; try a smaller numerics.tolerance, and report the file.`;
  return [{ rank: 'stop', kind: 'energy not closed', text }];
};

/** Gap of the whole run over the heat that crossed the boundary. */
function wholeGap({ terms, stored }: EnergyBalance): number {
  const joules = Object.values(terms);
  const moved = joules.reduce((sum, term) => sum + Math.abs(term), 0);
  const gap = joules.reduce((sum, term) => sum + term, -stored);
  return moved === 0 ? 0 : Math.abs(gap) / moved;
}

export const coreMarks: FindingSource = ({ config: { core } }) =>
  core.marks.map((text) => ({ rank: 'note', kind: 'core mark', text, place: 'core' }));

/** What only the measures of a core tell: of typed conductances nothing can be said. */
export const metalConduction: FindingSource = ({ config: { core }, pulls }) => {
  const atEnd = pulls.at(0)?.atEnd;
  if (core.geometry === undefined || atEnd === undefined) return [];
  const { density, heatCapacity } = core.geometry.coolant;
  const { air, coolant } = flowsOfOneCore(core, atEnd.airFlow, atEnd.coolantFlow);
  const rate = Math.min(air * AIR_HEAT_CAPACITY, coolant * density * heatCapacity);
  // Where one side stands still nothing is exchanged that it could take a share of.
  if (rate === 0) return [];
  const share = metalConductionShare(core.geometry, rate);
  const text = `Metal conduction along the core is left out: by its measures it would take ${(100 * share).toFixed(1)} % of the heat at most.`;
  return [{ rank: 'note', kind: 'metal conduction', text, place: 'core' }];
};

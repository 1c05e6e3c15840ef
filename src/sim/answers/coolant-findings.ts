import { createCoolant } from '../fluids/coolant.ts';
import { lowestPressure } from '../model/coolant-ring.ts';
import { layOutCycle } from '../model/drive-cycle.ts';
import type { Config } from '../scenario/config.ts';
import { hasExchanger } from './car-changes.ts';
import { type FindingSource, highestRow, type RunView, whenAt, whenAtRow } from './finding.ts';

/** Nearer than this to boiling or freezing is worth a warning [K]: common practice, no published source. */
const NEAR = 5;

const coolantOf = ({ config: { coolant } }: RunView) => createCoolant(coolant.glycolByVolume, coolant.glycol);

const stoppedBy = ({ series: { outcome } }: RunView): string | undefined =>
  outcome.kind === 'stopped' ? outcome.cause : undefined;

/** What keeps the coolant of a car cooler, as a sentence begins. */
export const moreCooling = (config: Config): string =>
  `More coolant flow or ${hasExchanger(config) ? 'more air at the front exchanger' : 'a front exchanger'}`;

export const coolantNearBoiling: FindingSource = (run) => {
  const { config, series, wording } = run;
  const boils = coolantOf(run).boilingPoint(lowestPressure(config) + config.coolant.capPressure);
  const { hottestCoolant, time } = series.columns;
  const row = highestRow(series.rowCount, (k) => hottestCoolant[k]);
  if (row === undefined || boils - hottestCoolant[row] > NEAR || stoppedBy(run) === 'boiling') return [];
  const text = `Coolant reaches ${wording.temperature(hottestCoolant[row])} ${whenAtRow(run, row)}, ${wording.difference(boils - hottestCoolant[row])} below where it boils under its cap. ${moreCooling(config)} gives room.`;
  return [{ rank: 'check', kind: 'coolant near boiling', text, time: time[row], place: 'coolant' }];
};

/** Not asked where ice is loaded: there the loop is meant to be as cold as ice. */
export const coolantNearFreezing: FindingSource = (run) => {
  const { config, series, wording } = run;
  const { freezingPoint } = coolantOf(run);
  const { coldestCoolant, time } = series.columns;
  const row = highestRow(series.rowCount, (k) => -coldestCoolant[k]);
  if (row === undefined || config.reservoir.iceMass > 0 || stoppedBy(run) === 'freezing') return [];
  if (coldestCoolant[row] - freezingPoint > NEAR) return [];
  const text = `Coolant is down to ${wording.temperature(coldestCoolant[row])} ${whenAtRow(run, row)}, ${wording.difference(coldestCoolant[row] - freezingPoint)} above its first ice. Frozen coolant splits pump and core: mix in more glycol.`;
  return [{ rank: 'check', kind: 'coolant near freezing', text, time: time[row], place: 'coolant' }];
};

/** Gone before the last pull is over, or what is left then. */
export const iceLasts: FindingSource = (run) => {
  const { config, series, pulls } = run;
  const loaded = config.reservoir.iceMass;
  const last = pulls.at(-1);
  if (loaded === 0 || last === undefined) return [];
  const gone = series.events.find(({ kind }) => kind === 'ice gone');
  if (gone !== undefined && gone.time < last.start + last.duration) {
    const text = `The ice is gone ${whenAt(run, gone.time)}, before the end of pull ${last.pull}, the last: from then on the tank warms. More ice at the start lasts longer.`;
    return [{ rank: 'check', kind: 'ice gone', text, time: gone.time, place: 'tank' }];
  }
  const left = ((100 * last.atEnd.iceMass) / loaded).toFixed(0);
  return [
    { rank: 'note', kind: 'ice left', text: `${left} % of the ice is left after pull ${last.pull}.`, place: 'tank' },
  ];
};

export const iceForms: FindingSource = (run) => {
  const forms = run.series.events.find(({ kind }) => kind === 'ice forms');
  if (forms === undefined) return [];
  const text = `Ice forms in the tank again ${whenAt(run, forms.time)}: the loop brings coolant colder than its first ice.`;
  return [{ rank: 'note', kind: 'ice forms', text, time: forms.time, place: 'tank' }];
};

export const pumpOff: FindingSource = ({ config, series }) => {
  const segments = layOutCycle(config);
  const off = series.phases.filter((_, k) => segments[k].phase.pumpVoltageRatio === 0);
  if (off.length === 0) return [];
  const seconds = new Map<string, number>();
  for (const { name, start, end } of off) seconds.set(name, (seconds.get(name) ?? 0) + end - start);
  const names = [...seconds].map(([name, s]) => `${name} (${s.toFixed(0)} s)`).join(', ');
  const text = `The pump is off in ${names}: the coolant stands still, and what heat reaches the core stays there.`;
  return [{ rank: 'note', kind: 'pump off', text, time: off[0].start, place: 'pump' }];
};

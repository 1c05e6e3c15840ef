import { CoolantRing, type LoopSetting } from '../model/coolant-ring.ts';
import type { Config } from '../scenario/config.ts';
import { withExchangers, withPumpCurve } from './car-changes.ts';

/** What one change by itself makes of the flow [m3/s]. */
export interface FlowStep {
  readonly name: string;
  readonly flow: number;
}

/** Inside diameters of common hose [m]: common practice, no published source. */
const HOSE_BORES = [0.013, 0.016, 0.019, 0.022, 0.025, 0.032, 0.038, 0.045, 0.051];

/**
 * What the next bore or pump buys, most first.
 *
 * @param setting - of the pumps, as in the phase that is looked at
 * @param temperature - of all coolant [K]
 */
export function flowSteps(config: Config, setting: LoopSetting, temperature: number): FlowStep[] {
  return carsOf(config)
    .map(({ name, config: next }) => ({ name, flow: new CoolantRing(next).flowAt(setting, temperature) }))
    .sort((a, b) => b.flow - a.flow);
}

/** The car with the next bore, and with the next pump: each alone. */
function carsOf(config: Config): { readonly name: string; readonly config: Config }[] {
  const widest = Math.max(...config.lines.flatMap(({ segments }) => segments.map(({ bore }) => bore)));
  const next = HOSE_BORES.find((bore) => bore > 1.05 * widest);
  const [another, first] = config.secondPump
    ? ['another pump like the first', 'it']
    : ['a second pump like it', 'the first'];
  const steps = [
    { name: `${another}, behind ${first}`, config: withPumpCurve(config, 1, 2) },
    { name: `${another}, beside ${first}`, config: withPumpCurve(config, 2, 1) },
    { name: 'core and exchangers without loss: the most that wider ports could buy', config: withoutPartLoss(config) },
  ];
  if (next === undefined || config.lines.length === 0) return steps;
  const lines = config.lines.map((line) => ({
    ...line,
    segments: line.segments.map((segment) => ({ ...segment, bore: Math.max(segment.bore, next) })),
  }));
  return [{ name: `all lines ${(1000 * next).toFixed(0)} mm`, config: { ...config, lines } }, ...steps];
}

function withoutPartLoss(config: Config): Config {
  const free = { kind: 'power', factor: 0 } as const;
  const ofCore = { ...config, core: { ...config.core, coolantDrop: free } };
  return withExchangers(ofCore, (exchanger) => ({ ...exchanger, coolantDrop: free }));
}

import type { RangeMark } from '../correlations/range-mark.ts';
import { figure } from '../units.ts';
import type { CoreGeometryConfig, GeometryFactor } from './config/exchangers.ts';

type Breach = Exclude<RangeMark, 'inside'>[number];

/** What past the depth of its data a louvred fin may be off: own judgement, the data have no deeper core. */
const IN_DEPTH = ': extrapolated in depth, +-20 %';

/** One sentence for each quantity that some of the marks name, at its farthest. */
export function rangeMarks(side: string, marks: readonly RangeMark[]): string[] {
  const breaches = marks.flatMap((mark) => (mark === 'inside' ? [] : mark));
  const isEverywhere = ({ quantity }: Breach): boolean =>
    breaches.filter((breach) => breach.quantity === quantity).length >= marks.length;
  const farthestFirst = breaches.toSorted((a, b) => b.beyond - a.beyond);
  const seen = new Set<string>();
  const worst = farthestFirst.filter(({ quantity }) => !seen.has(quantity) && seen.add(quantity));
  return worst.map((breach) => {
    const where = isEverywhere(breach) ? '' : ` at the ${breach.value < breach.low ? 'lowest' : 'highest'} flow`;
    return `${side}: ${sentenceOf(breach, where)}.`;
  });
}

function sentenceOf({ quantity, value, low, high }: Breach, where: string): string {
  const [, name, unit] = /^(.*?)(?: \[(.*)\])?$/.exec(quantity) ?? ['', quantity, ''];
  const shown = unit === undefined || unit === '-' ? '' : ` ${unit}`;
  if (name.includes('no published law')) return `${name}; taken as ${figure(value)} times the plain tube`;
  const range = high === Number.POSITIVE_INFINITY ? `from ${figure(low)}` : `${figure(low)} to ${figure(high)}`;
  const depth = name.includes('depth') && value > high ? IN_DEPTH : '';
  return `${name} ${figure(value)}${shown}${where}, published ${range}${shown}${depth}`;
}

const NAMES: Readonly<Record<GeometryFactor, string>> = {
  airConductance: 'Air conductance of the core',
  coolantConductance: 'Coolant conductance of the core',
  airDrop: 'Core pressure drop',
  metalHeatCapacity: 'Heat capacity of the core metal',
  coolantVolume: 'Coolant in the core',
};

/** What typed values make of a geometry. */
export function calibrationMarks(factors: CoreGeometryConfig['factors']): string[] {
  const typed = (Object.keys(NAMES) as GeometryFactor[]).filter((name) => factors[name] !== 1);
  return typed.map((name) => `${NAMES[name]} as typed, ${figure(factors[name])} times what its measures give.`);
}

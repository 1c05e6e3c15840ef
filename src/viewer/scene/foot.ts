import type { ColumnName, Config, LoopPart } from '../../sim/index.ts';

/** A part of the loop at the foot of the picture; two of a kind share a box. */
export type FootPart = 'pump' | 'tank' | 'exchanger';
/** From the core's outlet at the right to its inlet at the left: two or three boxes, each once. */
export type FootOrder = readonly FootPart[];

type Loop = Pick<Config, 'loop'>;

const OF_PARTS: Partial<Record<LoopPart, FootPart>> = {
  pump: 'pump',
  secondPump: 'pump',
  reservoir: 'tank',
  exchanger: 'exchanger',
  secondExchanger: 'exchanger',
};
const FIRST_OF: Partial<Record<LoopPart, LoopPart>> = { secondPump: 'pump', secondExchanger: 'exchanger' };

/** Every part from behind the core round to it. */
function behindCore({ loop }: Loop): LoopPart[] {
  const parts = loop.flatMap((item) => (typeof item === 'string' ? [item] : item.flat()));
  const core = parts.indexOf('core');
  return [...parts.slice(core + 1), ...parts.slice(0, core)];
}

/** The boxes at the foot in the order of a loop; a second of a kind stands with the first, a heat sink has no box. */
export function footOrder(config: Loop): FootPart[] {
  const parts = behindCore(config);
  const standing = parts.filter((part) => !parts.includes(FIRST_OF[part] ?? 'core'));
  return [...new Set(standing.flatMap((part) => OF_PARTS[part] ?? []))];
}

/** How many of a kind a box stands for. */
export const countAt = (config: Loop, name: FootPart): number =>
  behindCore(config).filter((part) => OF_PARTS[part] === name).length;

const OUT_OF = { exchanger: 'coolantOutOfExchanger', secondExchanger: 'coolantOutOfSecondExchanger' } as const;

/** What is recorded of the coolant that leaves the exchangers: of two in a row the last, else of each. */
export function exchangerColumns(config: Loop): ColumnName[] {
  const parts = behindCore(config);
  const there = parts.filter((part) => part === 'exchanger' || part === 'secondExchanger');
  const columns = there.map((part) => OUT_OF[part]);
  const isRow = parts.indexOf(there[1]) === parts.indexOf(there[0]) + 1;
  return isRow && !isDivided(config) ? columns.slice(-1) : columns;
}

/** Whether the exchangers stand in two ways beside each other. */
const isDivided = ({ loop }: Loop): boolean =>
  loop.some(
    (item) =>
      typeof item !== 'string' && item.every((way) => way.includes('exchanger') || way.includes('secondExchanger')),
  );

/**
 * What is recorded of the coolant between a box at the foot and the next one; a pump passes on what it gets.
 * Undefined where two ways have come together: of their mix nothing is recorded.
 */
export function columnBehind(config: Loop, order: FootOrder, index: number): ColumnName | undefined {
  if (index < 0) return 'coolantOutOfCore';
  switch (order[index]) {
    case 'tank':
      return 'reservoirTemperature';
    case 'exchanger':
      return isDivided(config) ? undefined : exchangerColumns(config)[0];
    case 'pump':
      return columnBehind(config, order, index - 1);
  }
}

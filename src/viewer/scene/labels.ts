import { cornersOf, freePlace, type Outline, type Rectangle } from './free-place.ts';
import type { PlacedBlock, PlacedLabel } from './layout.ts';
import { PIPE_WIDTH, type Pipes } from './loop-layout.ts';
import type { Room } from './measures.ts';
import type { Point } from './projection.ts';

/** Numbers beside the blocks; 'coolantBoth' is the car without a loop: coolant in and out in one. */
export type LabelName =
  | 'charge'
  | 'airIn'
  | 'coolantIn'
  | 'coolantOut'
  | 'coolantBoth'
  | 'bypass'
  | 'bypassBehind'
  | 'pastCore';

interface Words {
  readonly caption: string;
  /** for where there is little room; what is left out is still read out */
  readonly short?: string;
  /** the number at its widest, to keep room for it whatever it is */
  readonly widest: string;
  readonly shortWidest?: string;
}

export const WORDS: Readonly<Record<LabelName, Words>> = {
  charge: { caption: 'charge', widest: '118.8 °C' },
  airIn: { caption: 'air in', widest: '118.8 °C' },
  coolantIn: { caption: 'coolant in', short: 'in', widest: '118.8 °C' },
  coolantOut: { caption: 'coolant out', short: 'out', widest: '118.8 °C' },
  coolantBoth: {
    caption: 'coolant in, out',
    short: 'coolant out',
    widest: '88.8 → 118.8 °C',
    shortWidest: '118.8 °C',
  },
  bypass: { caption: 'bypass', widest: 'no flow' },
  bypassBehind: { caption: 'bypass, behind core', widest: 'no flow' },
  pastCore: { caption: 'past the core', short: 'past', widest: '88 %' },
};

/** Widths of letters in sizes of type: plain and bold figures of the widest usual faces. */
const PLAIN = 0.55;
const BOLD = 0.6;
const CAPTION_SIZE = 12;
const CAPTION_LINE = 15;
const GAP = 2;
/** Farther from what it names, a label would be taken for another's [pixels]. */
const REACH: Readonly<Record<LabelName, number>> = {
  charge: 110,
  airIn: 96,
  coolantIn: 96,
  coolantOut: 64,
  coolantBoth: 140,
  bypass: 40,
  bypassBehind: 160,
  pastCore: 64,
};

/** Size of type of a label's number, and the height of its line [pixels]. */
export function valueSize(name: LabelName, room: Room): { size: number; line: number } {
  if (room === 'tight') return name === 'charge' ? { size: 13, line: 16 } : { size: 12, line: 15 };
  const isRoomy = room === 'roomy';
  if (name === 'charge') return isRoomy ? { size: 19, line: 22 } : { size: 15, line: 18 };
  if (name === 'airIn') return isRoomy ? { size: 16, line: 19 } : { size: 12, line: 15 };
  return isRoomy ? { size: 14, line: 17 } : { size: 12, line: 15 };
}

/** Finds each label a place near what it names where it covers nothing. */
export function placeLabels(
  blocks: readonly PlacedBlock[],
  pipes: Pipes,
  obstacles: readonly Outline[],
  bounds: Rectangle,
  room: Room,
  isTakenBefore: boolean,
): PlacedLabel[] {
  const [[bypassX, bend]] = pipes.bypass;
  const [[outX, outTop]] = pipes.outOfCore;
  const lowest = bend - PIPE_WIDTH / 2 - GAP;
  const aboveLane = { ...bounds, height: lowest - bounds.y };
  const [inX] = pipes.intoCore[pipes.intoCore.length - 1];
  const betweenPipes = { ...bounds, x: inX, width: outX - PIPE_WIDTH / 2 - inX };
  const taken = [...obstacles];
  const placed: PlacedLabel[] = [];
  const place = (role: PlacedLabel['role'], name: LabelName, at: (size: Size) => Point, within = bounds) => {
    const size = sizeOf(name, room);
    const [x, y] = at(size);
    const found = freePlace({ x, y, ...size }, taken, within, GAP, REACH[name]);
    if (found.isFree) taken.push(cornersOf(found));
    placed.push({ ...found, role, name });
  };
  const inHand = blocks[blocks.length - 1];
  const [riserX] = pipes.air[pipes.air.length - 1];

  // The more telling numbers choose first.
  for (const { role, charge } of blocks) {
    const [x, y] = charge[charge.length - 1].tip;
    place(role, 'charge', ({ height }) => [x + 6, y - height / 2]);
  }
  place(inHand.role, 'coolantOut', ({ height }) => [outX + 10, (outTop + bend) / 2 - height / 2]);
  for (const { role, airIn } of blocks) {
    const [first, last] = [airIn[0], airIn[airIn.length - 1]];
    if (role === inHand.role) {
      place(role, 'airIn', () => [riserX + 12, last.tail[1] + 6], betweenPipes);
    } else place(role, 'airIn', ({ width }) => [first.tail[0] - width - 6, first.tail[1] - 14]);
  }
  place(inHand.role, 'coolantIn', ({ width, height }) => [inX - 10 - width, bend - height - 8]);
  for (const { role, bounds: around } of blocks) {
    if (role !== inHand.role) place(role, 'coolantBoth', ({ height }) => [around.x, lowest - height], aboveLane);
  }
  if (room === 'roomy' && isTakenBefore) place(inHand.role, 'bypass', () => [bypassX + 8, bend + 9]);
  const behind = pipes.bypassBehind[3];
  if (room === 'roomy' && behind !== undefined)
    place(inHand.role, 'bypassBehind', ({ width }) => [behind[0] - width - 12, bend + 7]);
  for (const { role, past } of blocks) {
    const [, low, high] = past;
    if (low === undefined) continue;
    place(role, 'pastCore', ({ width, height }) => [low[0] - width - 8, (low[1] + high[1]) / 2 - height / 2]);
  }
  return placed;
}

interface Size {
  readonly width: number;
  readonly height: number;
}

function sizeOf(name: LabelName, room: Room): Size {
  const words = WORDS[name];
  const caption = room === 'roomy' ? words.caption : (words.short ?? words.caption);
  const value = room === 'roomy' ? words.widest : (words.shortWidest ?? words.widest);
  const { size, line } = valueSize(name, room);
  return {
    width: Math.max(PLAIN * CAPTION_SIZE * caption.length, BOLD * size * value.length),
    height: CAPTION_LINE + line,
  };
}

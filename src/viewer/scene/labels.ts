import { cornersOf, freePlace, type Outline, type Rectangle } from './free-place.ts';
import type { Layout, PlacedBlock, PlacedLabel, Room } from './layout.ts';
import type { Point } from './projection.ts';

/** Numbers beside the blocks; 'coolantBoth' is the car without a loop: coolant in and out in one. */
export type LabelName = 'charge' | 'airIn' | 'coolantIn' | 'coolantOut' | 'coolantBoth' | 'bypass';

/** What a label says at its widest, to keep room for it whatever the number. */
const WIDEST: Record<LabelName, readonly [caption: string, value: string]> = {
  charge: ['charge', '118.8 °C'],
  airIn: ['air in', '118.8 °C'],
  coolantIn: ['coolant in', '118.8 °C'],
  coolantOut: ['coolant out', '118.8 °C'],
  coolantBoth: ['coolant in, out', '118.8 → 118.8 °C'],
  bypass: ['bypass', 'engine off'],
};

/** Widths of letters in sizes of type: plain and bold figures of the widest usual faces. */
const PLAIN = 0.55;
const BOLD = 0.6;
const CAPTION_SIZE = 12;
const CAPTION_LINE = 15;
const GAP = 3;

/** Size of type of a label's number, and the height of its line [pixels]. */
export function valueSize(name: LabelName, room: Room): { size: number; line: number } {
  if (room === 'tight') return name === 'charge' ? { size: 14, line: 17 } : { size: 12, line: 15 };
  const isRoomy = room === 'roomy';
  if (name === 'charge') return isRoomy ? { size: 19, line: 22 } : { size: 16, line: 19 };
  if (name === 'airIn' || name === 'coolantBoth') return isRoomy ? { size: 16, line: 19 } : { size: 13, line: 16 };
  return isRoomy ? { size: 14, line: 17 } : { size: 13, line: 16 };
}

/** Little room: the bypass stands in one line over the lane of the air pipe instead of beside the bypass. */
export const isOneLine = (name: LabelName, room: Room): boolean => name === 'bypass' && room !== 'roomy';

/** Finds each label a place near what it names where it covers nothing. */
export function placeLabels(
  blocks: readonly PlacedBlock[],
  pipes: Layout['pipes'],
  obstacles: readonly Outline[],
  bounds: Rectangle,
  room: Room,
): PlacedLabel[] {
  const taken = [...obstacles];
  const placed: PlacedLabel[] = [];
  const place = (role: PlacedLabel['role'], name: LabelName, at: (size: Size) => Point) => {
    const size = sizeOf(name, room);
    const [x, y] = at(size);
    const found = freePlace({ x, y, ...size }, taken, bounds, GAP);
    taken.push(cornersOf(found));
    placed.push({ ...found, role, name });
    return found;
  };
  const inHand = blocks[blocks.length - 1];
  const [[bypassX, bypassTop]] = pipes.bypass;
  const [[inX], [, bend]] = [pipes.intoCore[0], pipes.air[1]];
  const [[outX, outTop]] = pipes.outOfCore;

  place(inHand.role, 'bypass', ({ height }) =>
    room === 'roomy' ? [bypassX + 6, bypassTop + 8] : [bounds.x, bend - height - 8],
  );
  for (const { role, charge } of blocks) {
    const [x, y] = charge[charge.length - 1].tip;
    place(role, 'charge', ({ height }) => [x + 8, y - height / 3]);
  }
  place(inHand.role, 'coolantOut', ({ height }) => [outX + 10, (outTop + bend) / 2 - height / 2]);
  place(inHand.role, 'coolantIn', ({ width, height }) => [inX - 10 - width, bend - height - 8]);
  for (const { role, airIn, bounds: around } of blocks) {
    const [first, last] = [airIn[0], airIn[airIn.length - 1]];
    if (role === inHand.role) {
      place(role, 'airIn', ({ height }) => [last.tail[0] + 8, last.tail[1] - height / 4]);
    } else {
      const { x, y } = place(role, 'airIn', ({ width }) => [first.tail[0] - width - 6, first.tail[1] - 8]);
      const low = around.y + around.height;
      place(role, 'coolantBoth', ({ height }) => [x, Math.max(y + height + 4, low - height / 2)]);
    }
  }
  return placed;
}

interface Size {
  readonly width: number;
  readonly height: number;
}

function sizeOf(name: LabelName, room: Room): Size {
  const [caption, value] = WIDEST[name];
  const { size, line } = valueSize(name, room);
  if (isOneLine(name, room)) {
    return { width: PLAIN * CAPTION_SIZE * (caption.length + value.length + 1), height: line };
  }
  return {
    width: Math.max(PLAIN * CAPTION_SIZE * caption.length, BOLD * size * value.length),
    height: CAPTION_LINE + line,
  };
}

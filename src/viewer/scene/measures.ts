import type { NodeName } from './loop-layout.ts';

/** How much room there is, by the width of the picture [pixels]. */
export type Room = 'roomy' | 'compact' | 'tight';
const ROOMY_FROM = 620;
const COMPACT_FROM = 400;
export const TWO_ROWS_BELOW = 480;

export const roomOf = (width: number): Room =>
  width >= ROOMY_FROM ? 'roomy' : width >= COMPACT_FROM ? 'compact' : 'tight';

/** Pixels, but for the places of arrows, which are lengths of a core. */
export interface Measures {
  readonly left: number;
  /** left of a car that stands alone, so that its pump has room beside the compressor */
  readonly leftOfOne: number;
  readonly right: number;
  readonly between: number;
  /** over the blocks and their arrows */
  readonly title: number;
  /** under the blocks and their arrows; then the lane of the air pipe; then the parts */
  readonly labels: number;
  readonly lane: number;
  readonly nodeHeight: number;
  /** by which the compressor stands higher: it says the state of the bypass where that has no room of its own */
  readonly bypassLine: number;
  readonly nodeWidths: Readonly<Record<NodeName, number>>;
  readonly nodeGap: number;
  readonly foot: number;
  readonly edge: number;
  readonly bypassAt: number;
  /** least room between compressor and pump */
  readonly bypassRoom: number;
  readonly arrow: number;
  readonly inletsAt: readonly number[];
  readonly outletsAt: readonly number[];
}

const MEASURES: Readonly<Record<Room, Measures>> = {
  roomy: {
    left: 20,
    leftOfOne: 168,
    right: 84,
    between: 48,
    title: 24,
    labels: 47,
    lane: 16,
    nodeHeight: 42,
    bypassLine: 0,
    nodeWidths: { compressor: 104, pump: 104, tank: 92, exchanger: 122 },
    nodeGap: 12,
    foot: 6,
    edge: 6,
    bypassAt: 18,
    bypassRoom: 92,
    arrow: 42,
    inletsAt: [-0.12, 0.14, 0.4],
    outletsAt: [-0.32, -0.06],
  },
  compact: {
    left: 12,
    leftOfOne: 118,
    right: 70,
    between: 34,
    title: 22,
    labels: 34,
    lane: 12,
    nodeHeight: 38,
    bypassLine: 16,
    nodeWidths: { compressor: 98, pump: 90, tank: 72, exchanger: 84 },
    nodeGap: 8,
    foot: 4,
    edge: 6,
    bypassAt: 6,
    bypassRoom: 12,
    arrow: 30,
    inletsAt: [-0.08, 0.28],
    outletsAt: [-0.4, -0.14],
  },
  tight: {
    left: 8,
    leftOfOne: 8,
    right: 64,
    between: 32,
    title: 20,
    labels: 32,
    lane: 12,
    nodeHeight: 36,
    bypassLine: 16,
    nodeWidths: { compressor: 88, pump: 76, tank: 60, exchanger: 66 },
    nodeGap: 6,
    foot: 4,
    edge: 4,
    bypassAt: 4,
    bypassRoom: 6,
    arrow: 26,
    inletsAt: [-0.05, 0.32],
    outletsAt: [-0.32],
  },
};

/** A tight picture of at least this width has room for boxes that hold their numbers in a wide face too. */
const WIDER_BOXES_FROM = 360;
const WIDER_BOXES: Measures['nodeWidths'] = { compressor: 88, pump: 88, tank: 70, exchanger: 76 };

/** The measures of a picture of a width [pixels]. */
export function measuresFor(width: number): Measures {
  const room = roomOf(width);
  const measures = MEASURES[room];
  return room === 'tight' && width >= WIDER_BOXES_FROM ? { ...measures, nodeWidths: WIDER_BOXES } : measures;
}

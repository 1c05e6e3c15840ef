import type { FootOrder, FootPart } from './foot.ts';
import type { Rectangle } from './free-place.ts';
import type { PlacedBlock } from './layout.ts';
import type { Measures } from './measures.ts';
import { type Point, project } from './projection.ts';

export const NODE_NAMES = ['compressor', 'pump', 'tank', 'exchanger'] as const satisfies readonly (
  | FootPart
  | 'compressor'
)[];
export type NodeName = (typeof NODE_NAMES)[number];
type PipeName = 'intoCore' | 'outOfCore' | 'firstOn' | 'ontoLast' | 'air' | 'bypass' | 'bypassBehind';
/**
 * Corners of the pipes in the direction of flow; the bypass closed or open, from before the core and from behind it.
 * Without points where no air is taken behind the core, or where only two boxes stand at the foot.
 */
export type Pipes = Readonly<Record<PipeName, readonly Point[]>>;
/** No exchanger in a loop without one. */
export type Nodes = Readonly<Record<Exclude<NodeName, 'exchanger'>, Rectangle>> & { readonly exchanger?: Rectangle };

export const PIPE_WIDTH = 11;
/** How far left of its block air from behind the core comes down, and how far above the lane it goes over [pixels]. */
const BEHIND_BESIDE = 13;
const BEHIND_ABOVE = 12;
/** Where it meets the compressor: left of where the air leaves, as a share of the box. */
const BEHIND_AT = 0.12;
/** Between compressor and the first box, the least in which it goes down beside the other way and its number [pixels]. */
const BEHIND_ROOM = 92;
/** A pipe meets the top of a box at least this far from its sides. */
const INSIDE_BOX = PIPE_WIDTH / 2 + 4;

/** Where the coolant pipes stand: they come up behind the block, just inside its left and right corner. */
function pipeEnds({ block: { boxes }, bounds, projection }: PlacedBlock): { intoCore: Point; outOfCore: Point } {
  const inside = PIPE_WIDTH / 2 + 3;
  const [lower, upper] = [boxes[0], boxes[boxes.length - 1]];
  const left = project(projection, [lower.low[0], lower.low[1], (lower.low[2] + upper.high[2]) / 2]);
  const right = project(projection, [lower.high[0], lower.high[1], (lower.low[2] + lower.high[2]) / 2]);
  return { intoCore: [bounds.x + inside, left[1]], outOfCore: [bounds.x + bounds.width - inside, right[1]] };
}

/**
 * Boxes at the foot: compressor at the left; the last part before the core and the first behind it under their pipes,
 * a third between them.
 */
export function placeNodes(
  width: number,
  height: number,
  inHand: PlacedBlock,
  measures: Measures,
  order: FootOrder,
): Nodes {
  const { nodeWidths, nodeHeight, nodeGap, foot, edge, bypassLine, bypassRoom } = measures;
  const y = height - foot - nodeHeight;
  const { intoCore, outOfCore } = pipeEnds(inHand);
  const [first, last] = [order[0], order[order.length - 1]];
  const middle = order.length > 2 ? order[1] : undefined;
  const box = (name: NodeName, x: number): Rectangle => ({ x, y, width: nodeWidths[name], height: nodeHeight });
  const leastLeft = edge + nodeWidths.compressor + Math.min(bypassRoom, nodeGap);
  const between = middle === undefined ? nodeGap : nodeWidths[middle] + 2 * nodeGap;
  const leastRight = leastLeft + nodeWidths[last] + between;
  const right = Math.min(width - edge - nodeWidths[first], Math.max(leastRight, outOfCore[0] - INSIDE_BOX));
  const wishedLeft = Math.max(intoCore[0] - nodeWidths[last] / 2, edge + nodeWidths.compressor + bypassRoom);
  const mostLeft = right - between - nodeWidths[last];
  const left = Math.max(leastLeft, Math.min(wishedLeft, intoCore[0] - INSIDE_BOX, mostLeft));
  const placed = { [first]: box(first, right), [last]: box(last, left) } as Record<FootPart, Rectangle>;
  if (middle !== undefined) placed[middle] = box(middle, (left + nodeWidths[last] + right - nodeWidths[middle]) / 2);
  return {
    ...placed,
    compressor: { ...box('compressor', edge), y: y - bypassLine, height: nodeHeight + bypassLine },
  };
}

export function layPipes(
  inHand: PlacedBlock,
  nodes: Nodes,
  measures: Measures,
  isTakenBehind: boolean,
  order: FootOrder,
): Pipes {
  const { compressor } = nodes;
  const boxes = order.map((name) => nodes[name] as Rectangle);
  const [first, last] = [boxes[0], boxes[boxes.length - 1]];
  const { intoCore, outOfCore } = pipeEnds(inHand);
  const row = last.y + last.height / 2;
  const laneY = last.y - measures.lane;
  const arrows = inHand.airIn.map(({ tail }) => tail);
  const tail = arrows.find(([x]) => x > intoCore[0] + PIPE_WIDTH + 3) ?? arrows[arrows.length - 1];
  const [stub, side] = [compressor.x + compressor.width * 0.3, compressor.x + compressor.width];
  const outlet: Point[] =
    compressor.y > laneY
      ? [
          [stub, compressor.y],
          [stub, laneY],
        ]
      : [[side, laneY]];
  const bypassX = side + measures.bypassAt;
  const crossing = laneY - 2 * PIPE_WIDTH;
  return {
    intoCore: upFrom(last, intoCore, crossing),
    outOfCore: upFrom(first, outOfCore, crossing).toReversed(),
    firstOn: boxes.length > 2 ? along(first, boxes[1], row) : [],
    ontoLast: along(boxes[boxes.length - 2], last, row),
    air: [...outlet, [tail[0], laneY], tail],
    bypass: [
      [bypassX, laneY],
      [bypassX, row],
      [side, row],
    ],
    bypassBehind: isTakenBehind ? fromBehind(inHand, compressor, last, laneY) : [],
  };
}

/**
 * From the charge round the left of the block and down. Where there is room beside the box there it goes below the lane of
 * the air pipe into the compressor's side; else above the lane into its top.
 */
function fromBehind({ charge, bounds }: PlacedBlock, compressor: Rectangle, last: Rectangle, laneY: number): Point[] {
  const from = charge[0].tip;
  const beside = Math.max(8, bounds.x - BEHIND_BESIDE);
  const over = laneY - BEHIND_ABOVE;
  const down: Point[] = [from, [beside, from[1]], [beside, over]];
  const side = compressor.x + compressor.width;
  if (last.x - side < BEHIND_ROOM) {
    const top = compressor.x + BEHIND_AT * compressor.width;
    return [...down, [top, over], [top, compressor.y]];
  }
  const besideBox = last.x - PIPE_WIDTH;
  const low = last.y + last.height - PIPE_WIDTH;
  return [...down, [besideBox, over], [besideBox, low], [side, low]];
}

/** From one box at the foot to the next one at its left. */
const along = (from: Rectangle, to: Rectangle, row: number): Point[] => [
  [from.x, row],
  [to.x + to.width, row],
];

/** Straight up from a box to an end above; a box that had to give way stands beside, and the pipe goes over to it. */
function upFrom(box: Rectangle, end: Point, crossing: number): Point[] {
  const x = Math.min(box.x + box.width - INSIDE_BOX, Math.max(box.x + INSIDE_BOX, end[0]));
  return x === end[0] ? [[x, box.y], end] : [[x, box.y], [x, crossing], [end[0], crossing], end];
}

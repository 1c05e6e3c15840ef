import type { Camera } from '../state/display.ts';
import type { Block } from './block.ts';
import { bandOf, cornersOf, hullOf, type Outline, type Rectangle } from './free-place.ts';
import { type LabelName, placeLabels } from './labels.ts';
import { onScreen, type Point, type Projection, project, type Vector, type View, viewOf } from './projection.ts';

/** Before and After as they stand side by side; one car alone is 'before'. */
export type CarRole = 'before' | 'after';

/** A stream of air into or out of a core: an arrow from tail to tip. */
export interface Arrow {
  readonly tail: Point;
  readonly tip: Point;
}

export interface PlacedBlock {
  readonly role: CarRole;
  readonly block: Block;
  readonly projection: Projection;
  /** convex pieces that together are what the block covers */
  readonly outlines: readonly Outline[];
  /** around all of it */
  readonly bounds: Rectangle;
  readonly airIn: readonly Arrow[];
  readonly charge: readonly Arrow[];
  readonly title: Rectangle;
}

export const NODE_NAMES = ['compressor', 'pump', 'tank', 'exchanger'] as const;
export type NodeName = (typeof NODE_NAMES)[number];
export type PipeName = 'intoCore' | 'outOfCore' | 'exchangerToTank' | 'tankToPump' | 'air' | 'bypass';

/** Where everything of the picture stands, in pixels of the page. The loop belongs to the last block. */
export interface Layout {
  readonly width: number;
  readonly height: number;
  readonly room: Room;
  readonly blocks: readonly PlacedBlock[];
  readonly nodes: Readonly<Record<NodeName, Rectangle>>;
  /** corners of the pipes in the direction of flow; the bypass closed or open */
  readonly pipes: Readonly<Record<PipeName, readonly Point[]>>;
  readonly labels: readonly PlacedLabel[];
}

export interface PlacedLabel extends Rectangle {
  readonly role: CarRole;
  readonly name: LabelName;
  /** false where there was no room: it covers something else */
  readonly isFree: boolean;
}

export interface LayoutInput {
  readonly width: number;
  readonly height: number;
  readonly camera: Camera;
  readonly blocks: readonly { readonly role: CarRole; readonly block: Block }[];
}

/** How much room there is, by the width of the picture [pixels]. */
export type Room = 'roomy' | 'compact' | 'tight';
const ROOMY_FROM = 620;
const COMPACT_FROM = 400;
const TWO_ROWS_BELOW = 480;

/** Pixels, but for the places of arrows, which are lengths of a core. */
interface Measures {
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

/** an arrow stops this far from the block, in lengths of a core */
const ARROW_GAP = 0.04;
/** half the width of an arrow's head [pixels] */
const ARROW_WING = 10;
export const PIPE_WIDTH = 11;

/** Lays the picture out: both blocks at one scale on one floor, the loop round the last one, and every label free. */
export function layOut({ width, height, camera, blocks }: LayoutInput): Layout {
  const room = width >= ROOMY_FROM ? 'roomy' : width >= COMPACT_FROM ? 'compact' : 'tight';
  const measures = MEASURES[room];
  const placed = placeBlocks(width, height, viewOf(camera), blocks, measures);
  const nodes = placeNodes(width, height, placed[placed.length - 1], measures);
  const pipes = layPipes(placed[placed.length - 1], nodes, measures);
  const obstacles: Outline[] = [
    ...placed.flatMap(({ outlines }) => outlines),
    ...placed.flatMap(({ airIn, charge }) => [...airIn, ...charge].map(({ tail, tip }) => bandOf(tail, tip, 20))),
    ...(blocks.length > 1 ? placed.map(({ title }) => cornersOf(title)) : []),
    ...Object.values(nodes).map((node) => cornersOf(node)),
    ...Object.values(pipes).flatMap((points) => segments(points).map(([a, b]) => bandOf(a, b, PIPE_WIDTH))),
  ];
  const labels = placeLabels(placed, pipes, obstacles, { x: 6, y: 2, width: width - 12, height: height - 4 }, room);
  return { width, height, room, blocks: placed, nodes, pipes, labels };
}

/** Pairs of neighbouring points. */
export function segments(points: readonly Point[]): [Point, Point][] {
  return points.slice(1).map((point, k) => [points[k], point]);
}

function placeBlocks(
  width: number,
  height: number,
  view: View,
  blocks: LayoutInput['blocks'],
  measures: Measures,
): PlacedBlock[] {
  const { right, between, title, labels, lane, nodeHeight, foot } = measures;
  const left = blocks.length > 1 ? measures.left : measures.leftOfOne;
  const reaches = blocks.map(({ block }) => reachOf(block, view, measures));
  const wide = reaches.reduce((sum, reach) => sum + reach.width, 0);
  const room = width - left - right - between * (blocks.length - 1);
  const top = blocks.length > 1 ? title : 4;
  // Two cars have more to say than one: in a narrow picture their labels take a second row.
  const rows = blocks.length > 1 && width < TWO_ROWS_BELOW ? 2 : 1;
  const floor = height - foot - nodeHeight - lane - rows * labels;
  const scale = Math.max(1, Math.min(room / wide, ...reaches.map((reach) => scaleInto(floor - top, reach))));
  // What is left over goes in equal parts to the left, between and to the right.
  const spare = (room - scale * wide) / (blocks.length + 1);
  let x = left + spare;
  return blocks.map(({ role, block }, k) => {
    const reach = reaches[k];
    const highest = Math.min(...reach.tops.map(([unit, pixels]) => unit * scale + pixels));
    const lowest = Math.max(...reach.bottoms.map(([unit, pixels]) => unit * scale + pixels));
    const projection: Projection = {
      view,
      scale,
      // Room that is left over is left mostly below, where most labels stand.
      middle: [x - scale * reach.x, top - highest + (floor - top - lowest + highest) / 4],
    };
    const outlines = block.boxes.map((box) => hullOf(cornersOfBox(box, projection)));
    const next = k + 1 < blocks.length ? x + scale * reach.width + between + spare : width;
    const placed: PlacedBlock = {
      role,
      block,
      projection,
      outlines,
      bounds: boundsOf(outlines.flat()),
      airIn: arrowsIn(block, projection, measures),
      charge: arrowsOut(block, projection, measures),
      title: { x, y: 2, width: next - x - 8, height: 20 },
    };
    x = next;
    return placed;
  });
}

/** How far a block reaches round its middle at scale 1, and with its arrows: [lengths, pixels] up and down. */
interface Reach {
  readonly x: number;
  readonly width: number;
  readonly tops: readonly Point[];
  readonly bottoms: readonly Point[];
}

function reachOf(block: Block, view: View, measures: Measures): Reach {
  const unit: Projection = { view, scale: 1, middle: [0, 0] };
  const { x, y, width, height } = boundsOf(block.boxes.flatMap((box) => cornersOfBox(box, unit)));
  const rise = onScreen(view, [0, 1, 0])[1] * measures.arrow;
  return {
    x,
    width,
    tops: [[y, 0], ...arrowsOut(block, unit, measures).map(({ tail }): Point => [tail[1], rise - ARROW_WING])],
    bottoms: [
      [y + height, 0],
      ...arrowsIn(block, unit, measures).map(({ tip }): Point => [tip[1], -rise + ARROW_WING / 2]),
    ],
  };
}

/** The largest scale at which a block with its arrows fits into a height. */
function scaleInto(room: number, { tops, bottoms }: Reach): number {
  return Math.min(
    ...tops.flatMap(([top, over]) => bottoms.map(([bottom, under]) => (room - under + over) / (bottom - top))),
  );
}

function cornersOfBox({ low, high }: Block['boxes'][number], projection: Projection): Point[] {
  const places: Vector[] = [];
  for (const a of [low[0], high[0]])
    for (const b of [low[1], high[1]]) for (const c of [low[2], high[2]]) places.push([a, b, c]);
  return places.map((place) => project(projection, place));
}

function boundsOf(points: readonly Point[]): Rectangle {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}

function arrowsIn({ boxes }: Block, projection: Projection, { arrow, inletsAt }: Measures): Arrow[] {
  const [dx, dy] = onScreen(projection.view, [0, 1, 0]);
  const [, near, bottom] = boxes[0].low;
  return inletsAt.map((at) => {
    const tip = project(projection, [at, near - ARROW_GAP, bottom]);
    return { tip, tail: [tip[0] - arrow * dx, tip[1] - arrow * dy] };
  });
}

function arrowsOut({ boxes }: Block, projection: Projection, { arrow, outletsAt }: Measures): Arrow[] {
  const [dx, dy] = onScreen(projection.view, [0, 1, 0]);
  const [, far, top] = boxes[boxes.length - 1].high;
  return outletsAt.map((at) => {
    const tail = project(projection, [at, far + ARROW_GAP, top]);
    return { tail, tip: [tail[0] + arrow * dx, tail[1] + arrow * dy] };
  });
}

/** Where the coolant pipes stand: they come up behind the block, just inside its left and right corner. */
function pipeEnds({ block: { boxes }, bounds, projection }: PlacedBlock): { intoCore: Point; outOfCore: Point } {
  const inside = PIPE_WIDTH / 2 + 3;
  const [lower, upper] = [boxes[0], boxes[boxes.length - 1]];
  const left = project(projection, [lower.low[0], lower.low[1], (lower.low[2] + upper.high[2]) / 2]);
  const right = project(projection, [lower.high[0], lower.high[1], (lower.low[2] + lower.high[2]) / 2]);
  return { intoCore: [bounds.x + inside, left[1]], outOfCore: [bounds.x + bounds.width - inside, right[1]] };
}

/** Boxes at the foot: compressor at the left; pump and exchanger under their pipes, the tank between them. */
function placeNodes(width: number, height: number, inHand: PlacedBlock, measures: Measures): Layout['nodes'] {
  const { nodeWidths, nodeHeight, nodeGap, foot, edge, bypassLine, bypassRoom } = measures;
  const y = height - foot - nodeHeight;
  const { intoCore, outOfCore } = pipeEnds(inHand);
  const box = (name: NodeName, x: number): Rectangle => ({ x, y, width: nodeWidths[name], height: nodeHeight });
  const exchangerX = Math.min(outOfCore[0] - PIPE_WIDTH - 4, width - edge - nodeWidths.exchanger);
  const firstPumpX = edge + nodeWidths.compressor + Math.min(bypassRoom, nodeGap);
  const lastPumpX = exchangerX - 2 * nodeGap - nodeWidths.tank - nodeWidths.pump;
  const wishedPumpX = Math.max(intoCore[0] - nodeWidths.pump / 2, edge + nodeWidths.compressor + bypassRoom);
  const pumpX = Math.max(firstPumpX, Math.min(wishedPumpX, intoCore[0] - PIPE_WIDTH - 4, lastPumpX));
  const tankX = (pumpX + nodeWidths.pump + exchangerX - nodeWidths.tank) / 2;
  return {
    compressor: { ...box('compressor', edge), y: y - bypassLine, height: nodeHeight + bypassLine },
    pump: box('pump', pumpX),
    tank: box('tank', tankX),
    exchanger: box('exchanger', exchangerX),
  };
}

function layPipes(inHand: PlacedBlock, nodes: Layout['nodes'], measures: Measures): Layout['pipes'] {
  const { compressor, pump, tank, exchanger } = nodes;
  const { intoCore, outOfCore } = pipeEnds(inHand);
  const row = pump.y + pump.height / 2;
  const laneY = pump.y - measures.lane;
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
  // A pump that had to give way to the compressor stands beside its pipe: that goes over to it above the lane.
  const riserX = Math.max(intoCore[0], pump.x + PIPE_WIDTH + 4);
  const crossing = laneY - 2 * PIPE_WIDTH;
  const riser: Point[] =
    riserX === intoCore[0]
      ? [[riserX, pump.y]]
      : [
          [riserX, pump.y],
          [riserX, crossing],
          [intoCore[0], crossing],
        ];
  return {
    intoCore: [...riser, intoCore],
    outOfCore: [outOfCore, [outOfCore[0], exchanger.y]],
    exchangerToTank: [
      [exchanger.x, row],
      [tank.x + tank.width, row],
    ],
    tankToPump: [
      [tank.x, row],
      [pump.x + pump.width, row],
    ],
    air: [...outlet, [tail[0], laneY], tail],
    bypass: [
      [bypassX, laneY],
      [bypassX, row],
      [side, row],
    ],
  };
}

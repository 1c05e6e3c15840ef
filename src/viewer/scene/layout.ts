import type { CarRole } from '../state/cars.ts';
import type { Camera } from '../state/display.ts';
import type { Block } from './block.ts';
import type { FootOrder } from './foot.ts';
import { bandOf, boundsOf, cornersOf, hullOf, type Outline, type Rectangle } from './free-place.ts';
import { type LabelName, placeLabels } from './labels.ts';
import { layPipes, type Nodes, PIPE_WIDTH, type Pipes, placeNodes } from './loop-layout.ts';
import { type Measures, measuresFor, type Room, roomOf, TWO_ROWS_BELOW } from './measures.ts';
import { onScreen, type Point, type Projection, project, type Vector, type View, viewOf } from './projection.ts';

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
  /** the way of air that leaks past the core; without points where none does */
  readonly past: readonly Point[];
  readonly title: Rectangle;
}

/** Where everything of the picture stands, in pixels of the page. The loop belongs to the last block. */
export interface Layout {
  readonly width: number;
  readonly height: number;
  readonly room: Room;
  readonly blocks: readonly PlacedBlock[];
  readonly nodes: Nodes;
  readonly pipes: Pipes;
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
  readonly blocks: readonly { readonly role: CarRole; readonly block: Block; readonly leaksPast?: boolean }[];
  /** whether recirculated air of the car in hand is taken behind its core */
  readonly isTakenBehind?: boolean;
  /** whether any is taken before it; so unless it is told otherwise */
  readonly isTakenBefore?: boolean;
  /** the boxes of its loop at the foot; exchanger, tank and pump unless it is told otherwise */
  readonly foot?: FootOrder;
}

/** an arrow stops this far from the block, in lengths of a core */
const ARROW_GAP = 0.04;
/** least room left of a car that stands alone where air from behind its core comes down there [pixels] */
const LEFT_WITH_BYPASS = 24;
/** how far left of its block air leaks past it, and how wide that stream is drawn [pixels] */
const PAST_BESIDE = 4;
export const PAST_WIDTH = 3;
/** half the width of an arrow's head [pixels] */
const ARROW_WING = 10;

/** Lays the picture out: both blocks at one scale on one floor, the loop round the last one, and every label free. */
export function layOut({ width, height, camera, blocks, ...taken }: LayoutInput): Layout {
  const { isTakenBehind = false, isTakenBefore = true, foot = ['exchanger', 'tank', 'pump'] } = taken;
  const room = roomOf(width);
  const measures = measuresFor(width);
  const least = isTakenBehind ? LEFT_WITH_BYPASS : 0;
  const placed = placeBlocks(width, height, viewOf(camera), blocks, {
    ...measures,
    leftOfOne: Math.max(least, measures.leftOfOne),
  });
  const nodes = placeNodes(width, height, placed[placed.length - 1], measures, foot);
  const pipes = layPipes(placed[placed.length - 1], nodes, measures, isTakenBehind, foot);
  const obstacles: Outline[] = [
    ...placed.flatMap(({ outlines }) => outlines),
    ...placed.flatMap(({ airIn, charge }) => [...airIn, ...charge].map(({ tail, tip }) => bandOf(tail, tip, 20))),
    ...(blocks.length > 1 ? placed.map(({ title }) => cornersOf(title)) : []),
    ...Object.values(nodes).map((node) => cornersOf(node)),
    ...Object.values(pipes).flatMap((points) => segments(points).map(([a, b]) => bandOf(a, b, PIPE_WIDTH))),
    ...placed.flatMap(({ past }) => segments(past).map(([a, b]) => bandOf(a, b, PAST_WIDTH))),
  ];
  const within = { x: 6, y: 2, width: width - 12, height: height - 4 };
  const labels = placeLabels(placed, pipes, obstacles, within, room, isTakenBefore);
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
  return blocks.map(({ role, block, leaksPast = false }, k) => {
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
    const bounds = boundsOf(outlines.flat());
    const airIn = arrowsIn(block, projection, measures);
    const charge = arrowsOut(block, projection, measures);
    const placed: PlacedBlock = {
      role,
      block,
      projection,
      outlines,
      bounds,
      airIn,
      charge,
      past: leaksPast ? pathPast(bounds, airIn[0].tail, charge[0].tip) : [],
      title: { x, y: 2, width: next - x - 8, height: 20 },
    };
    x = next;
    return placed;
  });
}

/** From the foot of the air's arrows round the left of the block to the charge. */
function pathPast({ x }: Rectangle, from: Point, to: Point): Point[] {
  const beside = x - PAST_BESIDE;
  return [from, [beside, from[1]], [beside, to[1]], to];
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

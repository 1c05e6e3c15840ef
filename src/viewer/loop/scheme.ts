import type { Config, LinePlace, LoopPart } from '../../sim/index.ts';

type Point = readonly [x: number, y: number];

interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

interface SchemeBox extends Rectangle {
  readonly part: LoopPart;
  /** the way past it behind a valve; absent where no phase takes it */
  readonly pastIt?: readonly Point[];
}

/** A line from one part to the next, in the direction of flow. */
interface SchemeLine {
  readonly after: LinePlace;
  readonly points: readonly Point[];
  /** room for length and bore, one above the other */
  readonly label: Rectangle;
}

/** Where one of two ways begins. */
interface SchemeWay {
  /** counted from the tank on */
  readonly pair: number;
  readonly way: 0 | 1;
  readonly points: readonly Point[];
  /** room for its share of the flow */
  readonly label: Rectangle;
}

/** The loop as a ring from the tank on, in pixels: along a row where that has room, else down a column. */
export interface Scheme {
  readonly isUpright: boolean;
  readonly width: number;
  readonly height: number;
  readonly boxes: readonly SchemeBox[];
  readonly lines: readonly SchemeLine[];
  readonly ways: readonly SchemeWay[];
}

const BOX_WIDTH = 124;
const BOX_HEIGHT = 58;
const LABEL_WIDTH = 60;
const LABEL_HEIGHT = 26;
const SHARE_LABEL = { width: 34, height: 13 };
/** Of a label from the line it belongs to. */
const BESIDE = 7;
/** Between the ring's outermost stroke and the edge of the drawing. */
const EDGE = 10;
/** How far the way past a part keeps from it. */
const PAST = 6;

/** Measures along the flow and across it. */
interface Measures {
  readonly box: number;
  readonly boxAcross: number;
  /** between two boxes, and from where the ways part to the first box of each */
  readonly gap: number;
  readonly fork: number;
  /** from the outermost box to the line back, across */
  readonly back: number;
}

const ROW: Measures = { box: BOX_WIDTH, boxAcross: BOX_HEIGHT, gap: 78, fork: 48, back: 36 };
const ROW_LANES = 104;
const COLUMN: Measures = { box: BOX_HEIGHT, boxAcross: BOX_WIDTH, gap: 46, fork: 34, back: 14 };
/** A column needs no more than this. */
const COLUMN_WIDTH = 400;

/** Draws a loop into a width: `loop` as a Config has it, the tank last. */
export function layOutLoop(loop: Config['loop'], width: number, hasValve: boolean): Scheme {
  const along = new Walk(loop, ROW, ROW_LANES, hasValve);
  if (along.length <= width) return along.scheme(false, width);
  const hasWays = loop.some((item) => typeof item !== 'string');
  const narrow = Math.min(width, COLUMN_WIDTH);
  const lanes = hasWays ? (narrow - 2 * EDGE - COLUMN.back) / 2 : 0;
  return new Walk(loop, COLUMN, lanes, hasValve).scheme(true, narrow);
}

/** One walk round the ring: places along the flow (u) and across it (v, 0 in the middle). */
class Walk {
  /** where the ring ends along the flow */
  readonly length: number;
  private readonly boxes: { part: LoopPart; u: number; v: number }[] = [];
  private readonly lines: { after: LinePlace; points: readonly Point[]; labelAt: Point }[] = [];
  private readonly ways: { pair: number; way: 0 | 1; points: Point[]; labelAt: Point }[] = [];
  private readonly measures: Measures;
  /** from the middle to the outermost box's far side, and to the line back */
  private readonly half: number;
  private readonly backAt: number;
  private readonly hasValve: boolean;

  constructor(loop: Config['loop'], measures: Measures, lanes: number, hasValve: boolean) {
    this.measures = measures;
    this.hasValve = hasValve;
    const { box, gap, fork, boxAcross, back } = measures;
    const hasWays = loop.some((item) => typeof item !== 'string');
    this.half = boxAcross / 2 + (hasWays ? lanes / 2 : 0);
    this.backAt = this.half + back;
    let u = EDGE;
    let pairs = 0;
    const items = [...loop.slice(-1), ...loop.slice(0, -1)];
    for (const item of items) {
      let after: LinePlace;
      if (typeof item === 'string') {
        this.boxes.push({ part: item, u, v: 0 });
        u += box;
        after = item;
      } else {
        const pair = pairs++;
        const end = u + fork + Math.max(...item.map((way) => way.length)) * (box + gap);
        this.walkWay(item[0], pair, 0, u, end, -lanes / 2);
        this.walkWay(item[1], pair, 1, u, end, lanes / 2);
        u = end;
        after = pair === 0 ? 'ways' : 'secondWays';
      }
      this.addLine(after, u, 0);
      u += gap;
    }
    this.length = u + EDGE;
  }

  scheme(isUpright: boolean, width: number): Scheme {
    const { box, boxAcross } = this.measures;
    // A column has its line back at the left, a row below it.
    const middle = isUpright
      ? EDGE + this.measures.back + (width - 2 * EDGE - this.measures.back) / 2
      : EDGE + this.half;
    const xy = ([u, v]: Point): Point => (isUpright ? [middle + v, u] : [u, middle + v]);
    const rectangle = (u: number, v: number): Rectangle => {
      const [x, y] = xy([u, v - boxAcross / 2]);
      return isUpright ? { x, y, width: boxAcross, height: box } : { x, y, width: box, height: boxAcross };
    };
    // The last line goes on, back to the first box: below a row, left of a column.
    const first = EDGE + box / 2;
    const back: Point[] = isUpright
      ? [
          [EDGE, this.length - EDGE],
          [EDGE, first],
          [middle - boxAcross / 2, first],
        ]
      : [
          [this.length - EDGE, middle + this.backAt],
          [first, middle + this.backAt],
          [first, middle + boxAcross / 2],
        ];
    const label = (at: Point, size: Pick<Rectangle, 'width' | 'height'>): Rectangle => {
      const [x, y] = xy(at);
      return isUpright
        ? { x: x + BESIDE, y: y - size.height / 2, ...size }
        : { x: x - size.width / 2, y: y - size.height / 2, ...size };
    };
    const boxes = this.boxes.map(({ part, u, v }): SchemeBox => {
      const past: Point[] = [
        [u - PAST, v],
        [u - PAST, v + (isUpright ? 1 : -1) * (boxAcross / 2 + PAST)],
        [u + box + PAST, v + (isUpright ? 1 : -1) * (boxAcross / 2 + PAST)],
        [u + box + PAST, v],
      ];
      const isValved = this.hasValve && (part === 'exchanger' || part === 'secondExchanger');
      return { part, ...rectangle(u, v), ...(isValved && { pastIt: past.map(xy) }) };
    });
    return {
      isUpright,
      width,
      height: isUpright ? this.length : middle + this.backAt + EDGE,
      boxes,
      lines: this.lines.map(({ after, points, labelAt }, k) => ({
        after,
        points: [...points.map(xy), ...(k === this.lines.length - 1 ? back : [])],
        label: label(labelAt, { width: LABEL_WIDTH, height: LABEL_HEIGHT }),
      })),
      ways: this.ways.map(({ pair, way, points, labelAt }) => ({
        pair,
        way,
        points: points.map(xy),
        label: label(isUpright ? labelAt : [labelAt[0], labelAt[1] - BESIDE - 1], SHARE_LABEL),
      })),
    };
  }

  /** The parts of one of two ways in its lane, from where they part at `u` to where they come together at `end`. */
  private walkWay(way: readonly LoopPart[], pair: number, side: 0 | 1, u: number, end: number, v: number): void {
    const { box, gap, fork } = this.measures;
    const start: Point[] = [
      [u, 0],
      [u, v],
      [u + fork, v],
    ];
    this.ways.push({ pair, way: side, points: start, labelAt: [u + fork / 2, v] });
    let at = u + fork;
    way.forEach((part, k) => {
      this.boxes.push({ part, u: at, v });
      const from = at + box;
      this.addLine(
        part,
        from,
        v,
        k === way.length - 1
          ? [
              [end, v],
              [end, 0],
            ]
          : undefined,
      );
      at = from + gap;
    });
  }

  /** A line that leaves a place, straight over a gap unless it is told where to. */
  private addLine(after: LinePlace, u: number, v: number, to?: readonly Point[]): void {
    const { gap } = this.measures;
    this.lines.push({ after, points: [[u, v], ...(to ?? [[u + gap, v] as const])], labelAt: [u + gap / 2, v] });
  }
}

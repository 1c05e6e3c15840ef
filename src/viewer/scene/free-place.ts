import type { Point } from './projection.ts';

/** Corners of a convex shape, in order round it. */
export type Outline = readonly Point[];

export interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Step of the search for a free place, and how far it goes at most [pixels]. */
const STEP = 4;
const FARTHEST = 160;

const offsets: readonly Point[] = offsetsByDistance();

/**
 * The place nearest to the wished one where a label covers none of the obstacles; the wished one, moved into the
 * bounds, where there is none.
 *
 * @param wished - the label with its upper left corner where it would like to be [pixels]
 * @param gap - least distance to obstacles [pixels]
 * @param reach - how far from the wished place it may stand [pixels]
 */
export function freePlace(
  wished: Rectangle,
  obstacles: readonly Outline[],
  bounds: Rectangle,
  gap: number,
  reach = FARTHEST,
): Rectangle & { readonly isFree: boolean } {
  const start = moveInto(wished, bounds);
  const near = obstacles.map((outline) => ({ outline, around: boundsOf(outline) }));
  for (const [dx, dy] of offsets) {
    if (Math.hypot(dx, dy) > reach) break;
    const tried = { ...start, x: start.x + dx, y: start.y + dy };
    if (!isInside(tried, bounds)) continue;
    const wide = grown(tried, gap);
    const corners = cornersOf(wide);
    // Upright rectangles that meet are not separated by a side of the label; a side of the obstacle may still do it.
    const isCovered = near.some(({ outline, around }) => meet(wide, around) && !isSeparatedBySide(outline, corners));
    if (!isCovered) return { ...tried, isFree: true };
  }
  return { ...start, isFree: false };
}

export function cornersOf({ x, y, width, height }: Rectangle): Outline {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ];
}

/** The upright rectangle around points. */
export function boundsOf(points: readonly Point[]): Rectangle {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}

/** A straight band of a width between two points. */
export function bandOf([x1, y1]: Point, [x2, y2]: Point, width: number): Outline {
  const length = Math.hypot(x2 - x1, y2 - y1) || 1;
  const [nx, ny] = [((y1 - y2) / length) * (width / 2), ((x2 - x1) / length) * (width / 2)];
  return [
    [x1 + nx, y1 + ny],
    [x2 + nx, y2 + ny],
    [x2 - nx, y2 - ny],
    [x1 - nx, y1 - ny],
  ];
}

/** The convex outline of points. */
export function hullOf(points: readonly Point[]): Outline {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const chain = (ordered: readonly Point[]): Point[] => {
    const kept: Point[] = [];
    for (const point of ordered) {
      while (kept.length > 1 && cross(kept[kept.length - 2], kept[kept.length - 1], point) <= 0) kept.pop();
      kept.push(point);
    }
    return kept.slice(0, -1);
  };
  return [...chain(sorted), ...chain(sorted.reverse())];
}

/** Whether a side of `one` has all of `other` beyond it. */
function isSeparatedBySide(one: Outline, other: Outline): boolean {
  return one.some((from, k) => {
    const to = one[(k + 1) % one.length];
    const normal: Point = [from[1] - to[1], to[0] - from[0]];
    const [low, high] = spanAlong(normal, one);
    const [otherLow, otherHigh] = spanAlong(normal, other);
    return high <= otherLow || otherHigh <= low;
  });
}

function spanAlong([nx, ny]: Point, outline: Outline): Point {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const [x, y] of outline) {
    const place = nx * x + ny * y;
    if (place < low) low = place;
    if (place > high) high = place;
  }
  return [low, high];
}

function cross(origin: Point, a: Point, b: Point): number {
  return (a[0] - origin[0]) * (b[1] - origin[1]) - (a[1] - origin[1]) * (b[0] - origin[0]);
}

function grown({ x, y, width, height }: Rectangle, margin: number): Rectangle {
  return { x: x - margin, y: y - margin, width: width + 2 * margin, height: height + 2 * margin };
}

function meet(a: Rectangle, b: Rectangle): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

function moveInto(rectangle: Rectangle, bounds: Rectangle): Rectangle {
  const limit = (value: number, low: number, size: number, room: number) =>
    Math.max(low, Math.min(value, low + room - size));
  return {
    ...rectangle,
    x: limit(rectangle.x, bounds.x, rectangle.width, bounds.width),
    y: limit(rectangle.y, bounds.y, rectangle.height, bounds.height),
  };
}

function isInside(inner: Rectangle, outer: Rectangle): boolean {
  return (
    inner.x >= outer.x &&
    inner.y >= outer.y &&
    inner.x + inner.width <= outer.x + outer.width &&
    inner.y + inner.height <= outer.y + outer.height
  );
}

function offsetsByDistance(): Point[] {
  const found: Point[] = [];
  for (let dx = -FARTHEST; dx <= FARTHEST; dx += STEP) {
    for (let dy = -FARTHEST; dy <= FARTHEST; dy += STEP) found.push([dx, dy]);
  }
  return found.sort((a, b) => Math.hypot(...a) - Math.hypot(...b));
}

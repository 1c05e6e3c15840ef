import type { Spot } from '../../figures/scales.tsx';

/** A text around its middle. */
export interface PlacedLabel extends Spot {
  readonly text: string;
  /** from the mark to the text, where they stand apart */
  readonly leader?: { readonly from: Spot; readonly to: Spot };
}

interface Box extends Spot {
  readonly width: number;
  readonly height: number;
}

interface Label {
  readonly text: string;
  /** what it belongs to: the middles of one mark or several, or a figure round a mark */
  readonly of: Box;
}

/** On paper in which letters are 11 high. */
const LETTER = 6;
const LINE = 12;
/** Side of the square that is kept free for a mark. */
const MARK = 13;
/** From the middle of a mark to its text; beyond the first a line joins them. */
const REACHES = [9, 20, 32, 44];
/** Beside the mark first, then above and below, then across. */
const SIDES: readonly (readonly [number, number])[] = [
  [1, 0],
  [-1, 0],
  [0, -1],
  [0, 1],
  [0.75, -0.75],
  [0.75, 0.75],
  [-0.75, -0.75],
  [-0.75, 0.75],
];

/** Places of the list in groups that share a label: each with the first one that it is nearer to than `near`. */
export function sharing(spots: readonly Spot[], near: number): number[][] {
  const groups: number[][] = [];
  spots.forEach(({ x, y }, k) => {
    const group = groups.find(([first]) => Math.hypot(spots[first].x - x, spots[first].y - y) < near);
    if (group === undefined) groups.push([k]);
    else group.push(k);
  });
  return groups;
}

/** The smallest box that has all the spots in it. */
export function boxOf(spots: readonly Spot[]): Box {
  const [xs, ys] = [spots.map(({ x }) => x), spots.map(({ y }) => y)];
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  return { x: (left + right) / 2, y: (top + bottom) / 2, width: right - left, height: bottom - top };
}

/**
 * Puts each label beside what it belongs to, where it covers no mark, no label before it and nothing outside the
 * paper. What leaves no room around it, as a wide figure may, gets its label inside, beside its middle.
 */
export function placedLabels(labels: readonly Label[], marks: readonly Spot[], paper: Box): PlacedLabel[] {
  const taken: Box[] = marks.map(({ x, y }) => ({ x, y, width: MARK, height: MARK }));
  return labels.map(({ text, of }) => {
    const places = [...placesBeside(of, text), ...placesBeside({ ...of, width: 0, height: 0 }, text)];
    const isFree = (box: Box) => isInside(box, paper) && !taken.some((other) => isOver(box, other));
    const { isApart, ...box } = places.find(isFree) ?? places[0];
    taken.push(box);
    return {
      text,
      x: box.x,
      y: box.y,
      ...(isApart && { leader: { from: { x: of.x, y: of.y }, to: nearestOf(box, of) } }),
    };
  });
}

/** Where a text may stand, the best place first. */
const placesBeside = (of: Box, text: string) =>
  REACHES.flatMap((reach) =>
    SIDES.map(([right, down]) => {
      const [width, height] = [LETTER * text.length, LINE];
      return {
        x: of.x + right * reach + (Math.sign(right) * (of.width + width)) / 2,
        y: of.y + down * reach + (Math.sign(down) * (of.height + height)) / 2,
        width,
        height,
        isApart: reach > REACHES[0],
      };
    }),
  );

const isOver = (a: Box, b: Box): boolean =>
  Math.abs(a.x - b.x) < (a.width + b.width) / 2 && Math.abs(a.y - b.y) < (a.height + b.height) / 2;

const isInside = (box: Box, { x, y, width, height }: Box): boolean =>
  Math.abs(box.x - x) <= (width - box.width) / 2 && Math.abs(box.y - y) <= (height - box.height) / 2;

/** The place of a box that is nearest to a spot. */
const nearestOf = ({ x, y, width, height }: Box, spot: Spot): Spot => ({
  x: Math.min(x + width / 2, Math.max(x - width / 2, spot.x)),
  y: Math.min(y + height / 2, Math.max(y - height / 2, spot.y)),
});

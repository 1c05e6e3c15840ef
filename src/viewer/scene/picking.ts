import { type Block, type Face, placeOn } from './block.ts';
import { type Point, type Projection, project, type Vector } from './projection.ts';

/** A cell of a core, counted from 0 along the air and along the coolant. */
export interface Cell {
  readonly i: number;
  readonly j: number;
}

/** The cell of a block under a pixel, with the face it is seen on; undefined beside the block. */
export function pickCell(block: Block, projection: Projection, point: Point): { cell: Cell; face: Face } | undefined {
  for (let k = block.faces.length - 1; k >= 0; k--) {
    const face = block.faces[k];
    const shares = sharesAt(face, projection, point);
    if (shares === undefined) continue;
    const [a, b] = shares;
    return { face, cell: { i: cellAt(face.i, b), j: cellAt(face.j, a) } };
  }
  return undefined;
}

/**
 * The pixel in the middle of a cell as the uppermost level face shows it.
 *
 * @param cell - counted from 0 along the air (i) and along the coolant (j)
 * @returns pixels of the page from the left and upper edge of the picture
 */
export function cellToPixel(block: Block, projection: Projection, cell: Cell): Point {
  return project(projection, placeOf(levelFaceOf(block, cell), cell.i + 0.5, cell.j + 0.5));
}

/** The four corners of a cell on a face. */
export function cellOutline(face: Face, projection: Projection, { i, j }: Cell): Point[] {
  const corners = [
    [0, 0],
    [0, 1],
    [1, 1],
    [1, 0],
  ];
  return corners.map(([di, dj]) => project(projection, placeOf(face, i + di, j + dj)));
}

/** The uppermost level face that shows a cell. */
export function levelFaceOf(block: Block, { j }: Cell): Face {
  const face = block.faces.findLast(({ part, j: [from, to] }) => part === 'level' && j >= from && j < to);
  if (face === undefined) throw new RangeError(`cell ${j} along the coolant; the block has 0 to ${block.ny - 1}`);
  return face;
}

/**
 * The next cell for a step along the air and along the coolant, kept inside; without one to start from, the middle.
 *
 * @param step - cells along the air and along the coolant; infinite for all the way
 */
export function walked(from: Cell | undefined, step: readonly [i: number, j: number], nx: number, ny: number): Cell {
  if (from === undefined) return { i: Math.floor(nx / 2), j: Math.floor(ny / 2) };
  const within = (value: number, count: number) => Math.max(0, Math.min(count - 1, value));
  return { i: within(from.i + step[0], nx), j: within(from.j + step[1], ny) };
}

function placeOf(face: Face, atI: number, atJ: number): Vector {
  const { i, j } = face;
  return placeOn(face, [(atJ - j[0]) / (j[1] - j[0]), (atI - i[0]) / (i[1] - i[0])]);
}

/** Shares (a, b) of a face's edges under a pixel, both 0 to 1. */
function sharesAt(face: Face, projection: Projection, [x, y]: Point): Point | undefined {
  const [x0, y0] = project(projection, face.corner);
  const [xJ, yJ] = project(projection, placeOn(face, [1, 0]));
  const [xI, yI] = project(projection, placeOn(face, [0, 1]));
  const [ax, ay, bx, by] = [xJ - x0, yJ - y0, xI - x0, yI - y0];
  const determinant = ax * by - ay * bx;
  const a = ((x - x0) * by - (y - y0) * bx) / determinant;
  const b = (ax * (y - y0) - ay * (x - x0)) / determinant;
  return a >= 0 && a <= 1 && b >= 0 && b <= 1 ? [a, b] : undefined;
}

function cellAt([from, to]: readonly [number, number], share: number): number {
  return Math.min(to - 1, Math.floor(from + share * (to - from)));
}

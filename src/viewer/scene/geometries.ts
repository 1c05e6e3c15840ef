import { BufferAttribute, BufferGeometry } from 'three';
import { type Block, type Face, type LineWeight, placeOn } from './block.ts';
import { HALO, LINES, type LineStyle } from './painter.ts';
import type { Point, Vector } from './projection.ts';

/** Parts of a block as the shaders count them. */
export const PART_NUMBER = { level: 0, fin: 1, tube: 2 } as const;

const CORNERS: readonly Point[] = [
  [0, 0],
  [1, 0],
  [1, 1],
  [0, 1],
];

/** All faces: places, the cell under each corner as a place of the texture, and the part. */
export function faceGeometry({ nx, ny, faces }: Block): BufferGeometry {
  const positions: number[] = [];
  const cells: number[] = [];
  const parts: number[] = [];
  const index: number[] = [];
  for (const face of faces) {
    const first = parts.length;
    for (const share of CORNERS) {
      positions.push(...placeOn(face, share));
      cells.push(...textureOf(face, share, nx, ny));
      parts.push(PART_NUMBER[face.part]);
    }
    index.push(first, first + 1, first + 2, first, first + 2, first + 3);
  }
  return geometryOf({ position: [positions, 3], uv: [cells, 2], part: [parts, 1] }, index);
}

/** Each stretch of line as a ribbon that the shader turns to the camera; bands of paper first, so that ink is on top. */
export function lineGeometry({ faces }: Block): BufferGeometry {
  const positions: number[] = [];
  const others: number[] = [];
  const sizes: number[] = [];
  const tones: number[] = [];
  const index: number[] = [];
  const addStrokes = (styleOf: (weight: LineWeight) => LineStyle | undefined) => {
    for (const face of faces) {
      for (const { weight, points } of face.strokes) {
        const style = styleOf(weight);
        if (style !== undefined)
          addRibbons(
            style,
            points.map((point) => placeOn(face, point)),
          );
      }
    }
  };
  const addRibbons = (style: LineStyle, places: readonly Vector[]) => {
    for (let k = 1; k < places.length; k++) {
      const first = sizes.length / 3;
      const [start, end] = [places[k - 1], places[k]];
      // Seen from its other end a ribbon has its sides exchanged: the four corners go round it.
      for (const [from, to, turn] of [
        [start, end, 1],
        [end, start, -1],
      ] as const) {
        for (const side of [1, -1]) {
          positions.push(...from);
          others.push(...to);
          sizes.push(side, style.width, side * turn);
          tones.push(style.cover, style.fades ? 1 : 0, style.in === 'paper' ? 1 : 0);
        }
      }
      index.push(first, first + 1, first + 2, first, first + 2, first + 3);
    }
  };
  addStrokes((weight) => (weight === 'outline' ? HALO : undefined));
  addStrokes((weight) => LINES[weight]);
  return geometryOf({ position: [positions, 3], other: [others, 3], size: [sizes, 3], tone: [tones, 3] }, index);
}

/** Where the texture, one texel a cell, is read for a place of a face. */
function textureOf({ i, j }: Face, [a, b]: Point, nx: number, ny: number): Point {
  return [(j[0] + a * (j[1] - j[0])) / ny, (i[0] + b * (i[1] - i[0])) / nx];
}

type Attributes = Readonly<Record<string, readonly [values: readonly number[], size: number]>>;

function geometryOf(attributes: Attributes, index: number[]): BufferGeometry {
  const geometry = new BufferGeometry();
  for (const [name, [values, size]] of Object.entries(attributes)) {
    geometry.setAttribute(name, new BufferAttribute(new Float32Array(values), size));
  }
  geometry.setIndex(index);
  return geometry;
}

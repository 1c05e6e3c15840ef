import type { ShowCore } from '../state/display.ts';
import type { BlockShape } from './block-shape.ts';
import { add, type Vector } from './projection.ts';

/** How lines of a drawn block are weighted: its outlines, the joints of layers, the fins, the cells. */
export type LineWeight = 'outline' | 'layer' | 'fin' | 'cell';

export interface Stroke {
  readonly weight: LineWeight;
  readonly points: readonly Vector[];
}

/**
 * A flat piece of surface that shows a window of the core's field. Cells count along the air (i) and along the coolant
 * (j); the place at shares (a, b) is corner + a edgeJ + b edgeI and shows the cell at from + share (to - from).
 */
export interface Face {
  readonly corner: Vector;
  readonly edgeJ: Vector;
  readonly edgeI: Vector;
  readonly j: readonly [from: number, to: number];
  readonly i: readonly [from: number, to: number];
  /** level surfaces show the field always; strips of fins belong to the air, of tubes to the coolant */
  readonly part: 'level' | 'fin' | 'tube';
  readonly strokes: readonly Stroke[];
}

export interface Box {
  readonly low: Vector;
  readonly high: Vector;
}

/** A block as it is drawn: faces that a camera can see, those farther away first. */
export interface Block {
  readonly nx: number;
  readonly ny: number;
  readonly faces: readonly Face[];
  /** what it fills: one box, or two where a corner is cut away */
  readonly boxes: readonly Box[];
}

export interface BlockOptions {
  readonly show: ShowCore;
  readonly hasCellLines: boolean;
  /** gap between layers pulled apart, in layers */
  readonly apart: number;
}

/** Of a layer, the share that is fin; the rest is tube. */
const FIN_SHARE = 0.68;
/** Cut away: the upper half of the layers, from this share of the coolant's way on. */
const CUT_AT = 0.56;
const FINS_ALONG_COOLANT = 46;

/**
 * Builds the drawing of a core: fins and tubes in turn, fins outside, with the field of its cells on every surface.
 *
 * @param nx - cells along the air
 * @param ny - cells along the coolant
 */
export function buildBlock(shape: BlockShape, nx: number, ny: number, options: BlockOptions): Block {
  const { tubeCount, depth } = shape;
  const pitch = shape.height / (tubeCount + FIN_SHARE);
  const step = pitch * (1 + (options.show === 'apart' ? options.apart : 0));
  const bottom = -(tubeCount * step + FIN_SHARE * pitch) / 2;
  const cutLayer = options.show === 'cut' ? Math.floor(tubeCount / 2) : tubeCount + 1;
  const cutCell = Math.min(ny - 1, Math.max(1, Math.round(CUT_AT * ny)));
  const near = -depth / 2;
  const faces: Face[] = [];
  const boxes: Box[] = [];

  /** A strip of a layer with the two sides that can be seen. */
  const addStrip = (part: 'fin' | 'tube', z: number, height: number, toCell: number) => {
    const length = toCell / ny;
    const up: Vector = [0, 0, height];
    faces.push(
      outlined({
        corner: [length - 0.5, near, z],
        edgeJ: up,
        edgeI: [0, depth, 0],
        j: [toCell - 1, toCell],
        i: [0, nx],
        part,
      }),
      outlined({ corner: [-0.5, near, z], edgeJ: [length, 0, 0], edgeI: up, j: [0, toCell], i: [0, 1], part }),
    );
  };
  const addLevel = (z: number, fromCell: number, toCell: number) => {
    const face: Omit<Face, 'strokes'> = {
      corner: [fromCell / ny - 0.5, near, z],
      edgeJ: [(toCell - fromCell) / ny, 0, 0],
      edgeI: [0, depth, 0],
      j: [fromCell, toCell],
      i: [0, nx],
      part: 'level',
    };
    faces.push(outlined(face, options.hasCellLines));
  };

  for (let layer = 0; layer <= tubeCount; layer++) {
    const z = bottom + layer * step;
    const toCell = layer < cutLayer ? ny : cutCell;
    const hasTube = layer < tubeCount;
    addStrip('fin', z, FIN_SHARE * pitch, toCell);
    if (hasTube) addStrip('tube', z + FIN_SHARE * pitch, (1 - FIN_SHARE) * pitch, toCell);
    const top = z + (hasTube ? pitch : FIN_SHARE * pitch);
    if (options.show === 'cut' && layer === cutLayer - 1) addLevel(top, cutCell, ny);
    if (options.show === 'apart' || layer === tubeCount) addLevel(top, 0, toCell);
    if (layer === Math.min(cutLayer - 1, tubeCount)) {
      boxes.push({ low: [-0.5, near, bottom], high: [0.5, -near, top] });
    }
  }
  if (options.show === 'cut') boxes.push({ low: [-0.5, near, bottom], high: [cutCell / ny - 0.5, -near, -bottom] });
  return { nx, ny, faces, boxes };
}

/** A face with its lines: the rim, zigzag fins where the air enters, cells on level faces. */
function outlined(face: Omit<Face, 'strokes'>, hasCellLines = false): Face {
  const { corner, edgeJ, edgeI, part, i, j } = face;
  const at = (a: number, b: number): Vector => add(add(corner, edgeJ, a), edgeI, b);
  if (part === 'level') {
    const strokes: Stroke[] = [{ weight: 'outline', points: [at(0, 0), at(1, 0), at(1, 1), at(0, 1), at(0, 0)] }];
    if (hasCellLines) {
      const [iCount, jCount] = [i[1] - i[0], j[1] - j[0]];
      for (let k = 1; k < iCount; k++) strokes.push({ weight: 'cell', points: [at(0, k / iCount), at(1, k / iCount)] });
      for (let k = 1; k < jCount; k++) strokes.push({ weight: 'cell', points: [at(k / jCount, 0), at(k / jCount, 1)] });
    }
    return { ...face, strokes };
  }
  const facesAir = edgeI[2] > 0;
  const [lower, upper] = facesAir ? [at(0, 0), at(0, 1)] : [at(0, 0), at(1, 0)];
  const [lowerEnd, upperEnd] = facesAir ? [at(1, 0), at(1, 1)] : [at(0, 1), at(1, 1)];
  const strokes: Stroke[] = [
    { weight: 'layer', points: [lower, lowerEnd] },
    { weight: 'layer', points: [upper, upperEnd] },
    { weight: 'outline', points: [lower, upper] },
    { weight: 'outline', points: [lowerEnd, upperEnd] },
  ];
  if (facesAir && part === 'fin') {
    const count = Math.round(FINS_ALONG_COOLANT * edgeJ[0]);
    strokes.push({ weight: 'fin', points: Array.from({ length: count + 1 }, (_, k) => at(k / count, k % 2)) });
  }
  return { ...face, strokes };
}

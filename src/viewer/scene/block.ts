import type { ShowCore } from '../state/display.ts';
import type { BlockShape } from './block-shape.ts';
import { add, type Point, type Vector } from './projection.ts';

/** How lines of a drawn block are weighted: its outlines, the joints of layers, the fins, the cells. */
export type LineWeight = 'outline' | 'layer' | 'fin' | 'cell';

/** A line on a face, its points as shares (a, b) of the face's edges. */
interface Stroke {
  readonly weight: LineWeight;
  readonly points: readonly Point[];
}

/**
 * A flat piece of surface that shows a window of the core's field. Cells count along the air (i) and along the coolant
 * (j); the place at shares (a, b) is corner + a edgeJ + b edgeI and shows the cell at from + share (to - from).
 */
interface Surface {
  readonly corner: Vector;
  readonly edgeJ: Vector;
  readonly edgeI: Vector;
  readonly j: readonly [from: number, to: number];
  readonly i: readonly [from: number, to: number];
  /** level surfaces show the field always; strips of fins belong to the air, of tubes to the coolant */
  readonly part: 'level' | 'fin' | 'tube';
}

/** A surface with its lines. */
export interface Face extends Surface {
  readonly strokes: readonly Stroke[];
}

interface Box {
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
  const addStrip = (part: 'fin' | 'tube', z: number, height: number, toCell: number, foot: LineWeight) => {
    const length = toCell / ny;
    const up: Vector = [0, 0, height];
    const end: Surface = {
      corner: [length - 0.5, near, z],
      edgeJ: up,
      edgeI: [0, depth, 0],
      j: [toCell - 1, toCell],
      i: [0, nx],
      part,
    };
    const inlet: Surface = {
      corner: [-0.5, near, z],
      edgeJ: [length, 0, 0],
      edgeI: up,
      j: [0, toCell],
      i: [0, 1],
      part,
    };
    faces.push({ ...end, strokes: stripLines(end, foot) }, { ...inlet, strokes: stripLines(inlet, foot) });
  };
  const addLevel = (z: number, fromCell: number, toCell: number) => {
    const level: Surface = {
      corner: [fromCell / ny - 0.5, near, z],
      edgeJ: [(toCell - fromCell) / ny, 0, 0],
      edgeI: [0, depth, 0],
      j: [fromCell, toCell],
      i: [0, nx],
      part: 'level',
    };
    faces.push({ ...level, strokes: levelLines(level, options.hasCellLines) });
  };

  for (let layer = 0; layer <= tubeCount; layer++) {
    const z = bottom + layer * step;
    const toCell = layer < cutLayer ? ny : cutCell;
    const hasTube = layer < tubeCount;
    const foot = layer === 0 || options.show === 'apart' ? 'outline' : 'layer';
    addStrip('fin', z, FIN_SHARE * pitch, toCell, foot);
    if (hasTube) addStrip('tube', z + FIN_SHARE * pitch, (1 - FIN_SHARE) * pitch, toCell, 'layer');
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

/** The place of a face at shares of its edges. */
export function placeOn({ corner, edgeJ, edgeI }: Surface, [a, b]: Point): Vector {
  return add(add(corner, edgeJ, a), edgeI, b);
}

/** Lines of a strip: its joints above and below, its ends, and zigzag fins where it looks at the air. */
function stripLines({ edgeJ, edgeI, part }: Surface, foot: LineWeight): Stroke[] {
  const facesAir = edgeI[2] > 0;
  // Up is along b where the face looks at the air, along a at the end where the coolant leaves.
  const at = (along: number, up: number): Point => (facesAir ? [along, up] : [up, along]);
  const strokes: Stroke[] = [
    { weight: foot, points: [at(0, 0), at(1, 0)] },
    { weight: 'layer', points: [at(0, 1), at(1, 1)] },
    { weight: 'outline', points: [at(0, 0), at(0, 1)] },
    { weight: 'outline', points: [at(1, 0), at(1, 1)] },
  ];
  if (facesAir && part === 'fin') {
    const count = Math.round(FINS_ALONG_COOLANT * edgeJ[0]);
    strokes.push({ weight: 'fin', points: Array.from({ length: count + 1 }, (_, k) => at(k / count, k % 2)) });
  }
  return strokes;
}

const RIM: readonly Point[] = [
  [0, 0],
  [1, 0],
  [1, 1],
  [0, 1],
  [0, 0],
];

/** Lines of a level face: its rim, and between cells where they are wanted. */
function levelLines({ i, j }: Surface, hasCellLines: boolean): Stroke[] {
  const rim: Stroke = { weight: 'outline', points: RIM };
  if (!hasCellLines) return [rim];
  const [iCount, jCount] = [i[1] - i[0], j[1] - j[0]];
  const between = (count: number) => Array.from({ length: count - 1 }, (_, k) => (k + 1) / count);
  const line = (from: Point, to: Point): Stroke => ({ weight: 'cell', points: [from, to] });
  return [
    rim,
    ...between(iCount).map((b) => line([0, b], [1, b])),
    ...between(jCount).map((a) => line([a, 0], [a, 1])),
  ];
}

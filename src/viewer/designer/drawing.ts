import type { Config } from '../../sim/index.ts';

type CoreShape = NonNullable<Config['core']['geometry']>['shape'];

/** A rectangle on the paper, in its units; the paper is as wide as the drawing. */
interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A measure with its two ends: across the paper below what it measures, or up the paper to the left of it. */
export interface Dimension {
  readonly direction: 'across' | 'up';
  readonly from: number;
  readonly to: number;
  /** where the line stands on the other axis */
  readonly at: number;
  /** m */
  readonly measure: number;
}

/** One view of the core, to scale in both directions. */
export interface View {
  /** of the paper */
  readonly height: number;
  /** units of the paper for a metre of core */
  readonly scale: number;
  readonly metal: readonly Box[];
  readonly coolant: readonly Box[];
  /** fins seen on edge, louvres, strips: one path */
  readonly lines: string;
  /** of those lines */
  readonly lineWidth: number;
  readonly dimensions: readonly Dimension[];
}

export const PAPER_WIDTH = 264;
/** Room for measures to the left of a view, below it, and to its right. */
const LEFT = 60;
const BELOW = 24;
const EDGE = 4;
/** Lines nearer than this run into each other. */
const NEAREST = 1.8;
const THINNEST = 0.6;

const ROOM = PAPER_WIDTH - LEFT - EDGE;

/** A tube, fins and the next tube, cut across the air: what one fin pitch is. */
export function pitchView(shape: CoreShape): View {
  const { tubeHeight, tubeWall, finHeight, finPitch, finThickness } = shape;
  const stack = 2 * tubeHeight + finHeight;
  const scale = Math.min(128 / stack, ROOM / (3 * finPitch));
  const top = EDGE;
  const fins = top + scale * tubeHeight;
  const bottom = fins + scale * finHeight;
  const tube = (y: number): Box => ({ x: LEFT, y, width: ROOM, height: scale * tubeHeight });
  const coolant = (y: number): Box => ({
    x: LEFT,
    y: y + scale * tubeWall,
    width: ROOM,
    height: scale * (tubeHeight - 2 * tubeWall),
  });
  const count = Math.floor(ROOM / (scale * finPitch));
  const xs = Array.from({ length: count }, (_, k) => LEFT + scale * finPitch * (k + 0.5));
  const half = (scale * finThickness) / 2;
  // One band of sheet, folded: up one fin, along the plate, down the next.
  const folded = xs.map((x, k) => {
    const [near, far] = k % 2 === 0 ? [bottom - half, fins + half] : [fins + half, bottom - half];
    return `${k === 0 ? 'M' : 'L'}${x} ${near}L${x} ${far}`;
  });
  const end = bottom + scale * tubeHeight;
  const middle = Math.max(0, Math.floor(count / 2) - 1);
  return {
    height: end + BELOW,
    scale,
    metal: [tube(top), tube(bottom)],
    coolant: [coolant(top), coolant(bottom)],
    lines: folded.join(''),
    lineWidth: Math.max(THINNEST, scale * finThickness),
    dimensions: [
      { direction: 'up', from: top, to: fins, at: LEFT - 8, measure: tubeHeight },
      { direction: 'up', from: fins, to: bottom, at: LEFT - 8, measure: finHeight },
      ...(count > 1
        ? [{ direction: 'across', from: xs[middle], to: xs[middle + 1], at: end + 8, measure: finPitch } as const]
        : []),
    ],
  };
}

/** A tube, the face of one fin and the next tube, cut along the air: louvres or strips, tubes, ports. */
export function depthView(shape: CoreShape): View {
  const { tubeHeight, tubeWall, finHeight, depth, rows, tubes, fins: kind } = shape;
  const scale = Math.min(ROOM / depth, 128 / (2 * tubeHeight + finHeight));
  const top = EDGE;
  const fins = top + scale * tubeHeight;
  const bottom = fins + scale * finHeight;
  const across = depth / rows;
  const ports = tubes.kind === 'multi-port' ? tubes.ports : 1;
  const web = tubes.kind === 'multi-port' ? tubes.webThickness : 0;
  const port = (across - 2 * tubeWall - (ports - 1) * web) / ports;
  const places = Array.from({ length: rows }, (_, row) => row * across);
  const inside = places.flatMap((place) =>
    Array.from({ length: ports }, (_, k) => place + tubeWall + k * (port + web)),
  );
  const metal = [top, bottom].map((y) => ({ x: LEFT, y, width: scale * depth, height: scale * tubeHeight }));
  const coolant = [top, bottom].flatMap((y) =>
    inside.map((place) => ({
      x: LEFT + scale * place,
      y: y + scale * tubeWall,
      width: scale * port,
      height: scale * (tubeHeight - 2 * tubeWall),
    })),
  );
  const [pitch, high] =
    kind.kind === 'louvred'
      ? [kind.louvrePitch, kind.louvreLength]
      : kind.kind === 'offset strip'
        ? [kind.stripLength, finHeight]
        : [depth, 0];
  const count = Math.floor(depth / pitch + 1e-9);
  const margin = (depth - count * pitch) / 2;
  const cuts = Array.from({ length: kind.kind === 'louvred' ? count : count - 1 }, (_, k) =>
    kind.kind === 'louvred' ? margin + (k + 0.5) * pitch : (k + 1) * pitch,
  );
  const middle = (fins + bottom) / 2;
  const end = bottom + scale * tubeHeight;
  const lines = cuts.map(
    (place) =>
      `M${LEFT + scale * place} ${middle - (scale * high) / 2}L${LEFT + scale * place} ${middle + (scale * high) / 2}`,
  );
  return {
    height: end + BELOW,
    scale,
    metal,
    coolant,
    lines: scale * pitch < NEAREST ? '' : lines.join(''),
    lineWidth: THINNEST,
    dimensions: [
      { direction: 'across', from: LEFT, to: LEFT + scale * depth, at: end + 8, measure: depth },
      { direction: 'up', from: top, to: end, at: LEFT - 8, measure: 2 * tubeHeight + finHeight },
    ],
  };
}

/** The face that the air meets: layers of tubes and fins over the whole stack. */
export function faceView(shape: CoreShape): View {
  const { tubeHeight, finHeight, finPitch, finThickness, length, coolantLayers, finLayers } = shape;
  const stack = coolantLayers * tubeHeight + finLayers * finHeight;
  const scale = Math.min(ROOM / length, 128 / stack);
  const width = scale * length;
  const areFinsOutside = finLayers > coolantLayers;
  const layers = Array.from({ length: coolantLayers + finLayers }, (_, k) =>
    (k % 2 === 0) === areFinsOutside ? 'fins' : 'tube',
  );
  const metal: Box[] = [];
  let lines = '';
  let y = EDGE;
  const count = Math.floor(length / finPitch);
  for (const layer of layers) {
    const height = scale * (layer === 'fins' ? finHeight : tubeHeight);
    if (layer === 'tube') metal.push({ x: LEFT, y, width, height });
    else if (scale * finPitch >= NEAREST) {
      for (let k = 0; k < count; k++)
        lines += `M${(LEFT + scale * finPitch * (k + 0.5)).toFixed(2)} ${y.toFixed(2)}v${height.toFixed(2)}`;
    }
    y += height;
  }
  return {
    height: y + BELOW,
    scale,
    metal,
    coolant: [],
    lines,
    lineWidth: Math.min(THINNEST, Math.max(0.4, scale * finThickness)),
    dimensions: [
      { direction: 'across', from: LEFT, to: LEFT + width, at: y + 8, measure: length },
      { direction: 'up', from: EDGE, to: y, at: LEFT - 8, measure: stack },
    ],
  };
}

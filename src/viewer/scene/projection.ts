import type { Camera } from '../state/display.ts';

/** A place or direction in a block: along the coolant, along the air, up across the stack; right-handed. */
export type Vector = readonly [number, number, number];
/** Pixels of the page in the picture: to the right, down. */
export type Point = readonly [number, number];

/** Unit vectors of a camera without perspective: to the right, up, and from the block towards the eye. */
export interface View {
  readonly right: Vector;
  readonly up: Vector;
  readonly toward: Vector;
}

/** How a block stands in the picture: seen so, at this scale, its middle on this pixel. */
export interface Projection {
  readonly view: View;
  /** pixels per unit of length */
  readonly scale: number;
  readonly middle: Point;
}

/** Turn about the stack, and tilt from the side (0) to above (a quarter turn), radians. */
const ANGLES: Record<Camera, readonly [turn: number, tilt: number]> = {
  corner: [0.62, 0.56],
  above: [0.3, 1.12],
  'air side': [0.22, 0.36],
};

/** Every camera sees the top, the side where the air enters, and the end where the coolant leaves. */
export function viewOf(camera: Camera): View {
  const [turn, tilt] = ANGLES[camera];
  const [sin, cos, rise, fall] = [Math.sin(turn), Math.cos(turn), Math.cos(tilt), Math.sin(tilt)];
  return {
    right: [cos, sin, 0],
    up: [-sin * fall, cos * fall, rise],
    toward: [sin * rise, -cos * rise, fall],
  };
}

/** Where a place of a block appears. */
export function project({ view, scale, middle }: Projection, place: Vector): Point {
  return [middle[0] + scale * dot(view.right, place), middle[1] - scale * dot(view.up, place)];
}

/** A direction of a block as it runs over the screen, one pixel long. */
export function onScreen({ right, up }: View, direction: Vector): Point {
  const [x, y] = [dot(right, direction), -dot(up, direction)];
  const length = Math.hypot(x, y);
  return [x / length, y / length];
}

export function add(a: Vector, b: Vector, times = 1): Vector {
  return [a[0] + times * b[0], a[1] + times * b[1], a[2] + times * b[2]];
}

function dot(a: Vector, b: Vector): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

import { interpolateInferno } from 'd3-scale-chromatic';

/** Colour of a share of the scale, 0 to 1, from the published map: red, green and blue, 0 to 255. */
export function inferno(share: number): number[] {
  const written = Number.parseInt(interpolateInferno(share).slice(1), 16);
  return [written >> 16, (written >> 8) & 255, written & 255];
}

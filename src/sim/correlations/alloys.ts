/** A metal of the core near room temperature. */
export interface Alloy {
  /** kg/m3 */
  readonly density: number;
  /** J/(kg K) */
  readonly heatCapacity: number;
  /** W/(m K) */
  readonly conductivity: number;
}

export type AlloyName = '3003 brazed' | '3003 hard' | '6061 annealed' | '6061-T6' | '1100' | 'copper' | 'brass';

/**
 * Typical values from 20 to 100 degC; composition and temper move the conductivity by 5 to 8 %. A brazed core is
 * annealed by the oven, so 3003 is not hard any more.
 *
 * [1] Aluminum Association, Aluminum Standards and Data, 1990, typical physical properties (3003, 6061, 1100).
 * [2] Copper Development Association, V. Calcutt, 2001, table 5 (C11000); brass C26000 from a mill's data sheet.
 */
export const ALLOYS: Readonly<Record<AlloyName, Alloy>> = {
  '3003 brazed': { density: 2730, heatCapacity: 893, conductivity: 193 },
  '3003 hard': { density: 2730, heatCapacity: 893, conductivity: 154 },
  '6061 annealed': { density: 2700, heatCapacity: 896, conductivity: 180 },
  '6061-T6': { density: 2700, heatCapacity: 896, conductivity: 167 },
  '1100': { density: 2710, heatCapacity: 904, conductivity: 222 },
  copper: { density: 8920, heatCapacity: 386, conductivity: 394 },
  brass: { density: 8530, heatCapacity: 377, conductivity: 121 },
};

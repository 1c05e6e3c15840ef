import { describe, expect, it } from 'vitest';
import { conductanceAt } from '../../src/sim/model/conductance.ts';
import { exactEffectiveness } from '../support/mason.ts';

/**
 * Published cooling ratings of a water coil of a fan-coil unit at five air flows, dry: air 27 degC, water 16 degC
 * rising 2 K. As entered in the open library Buildings of LBNL, commit ad78fdae2153, validation model
 * WetCoilEffectivenessNTU_FCU, table cooData; catalogue figures, fan heat possibly in them.
 */
const AIR_FLOWS = [485, 420, 330, 236, 123]; // m3/h
const RATED = [1176, 1053, 865, 626, 389]; // W
const AIR_DENSITY = 1.2;
const AIR_CP = 1006;
const WATER_CP = 4186;
const [AIR_IN, WATER_IN, WATER_RISE] = [27, 16, 2];

const airFlow = (k: number): number => (AIR_FLOWS[k] / 3600) * AIR_DENSITY;

/** Heat of the coil with both sides given, W. Water flow is what takes up the rated heat in 2 K. */
function heatOf(k: number, conductance: number): number {
  const rates = [airFlow(k) * AIR_CP, RATED[k] / WATER_RISE];
  const [smaller, larger] = [Math.min(...rates), Math.max(...rates)];
  return smaller * (AIR_IN - WATER_IN) * exactEffectiveness(conductance / smaller, smaller / larger);
}

/** UA of the first rating, by bisection. */
function ratedConductance(): number {
  let [low, high] = [1, 2000];
  for (let n = 0; n < 60; n++) {
    const middle = (low + high) / 2;
    if (heatOf(0, middle) < RATED[0]) low = middle;
    else high = middle;
  }
  return low;
}

describe.each([0.6, 0.7, 0.8])(
  'a coil calibrated on its first rating, %d of the resistance on the air side',
  (share) => {
    const whole = ratedConductance();
    const air = { kind: 'power', reference: whole / share, atFlow: airFlow(0), exponent: 0.62, floor: 0 } as const;
    const waterFlow = (k: number): number => RATED[k] / WATER_RISE / WATER_CP;
    const water = {
      kind: 'power',
      reference: whole / (1 - share),
      atFlow: waterFlow(0),
      exponent: 0.7,
      floor: 0.15,
    } as const;

    it.each([1, 2, 3, 4])('predicts rating %d within 5 %', (k) => {
      const onAir = conductanceAt(air, airFlow(k));
      const onWater = conductanceAt(water, waterFlow(k));
      const heat = heatOf(k, 1 / (1 / onAir + 1 / onWater));
      expect(Math.abs(heat / RATED[k] - 1)).toBeLessThan(0.05);
    });
  },
);

import { describe, expect, test } from 'vitest';
import { frictionChurchill } from '../../../src/sim/correlations/friction.ts';
import { findRoot } from '../../../src/sim/kernels/root-finding.ts';

/** Pump curves against system curves, as numbers: no pump and no line of the model takes part. */

function relativeError(value: number, expected: number): number {
  return Math.abs(value / expected - 1);
}

/** Flow at which `pumps` make what the system takes. */
function operatingFlow(pumpHead: (flow: number) => number, systemHead: (flow: number) => number, most: number): number {
  return findRoot((flow) => pumpHead(flow) - systemHead(flow), 0, most, 1e-13);
}

describe('large pump 490 - 0.26 Q^2 ft against 120 + 0.335 Q^2 ft, Q in 1000 gal/min', () => {
  // F. M. White, Fluid Mechanics, 2003, chapter 11, matching example and its sequels. Exact roots of the printed
  // curves; printed answers 24900 gal/min and 330 ft, 30400 and 430, 31700 and 457
  const pump = (flow: number) => 490 - 0.26 * flow ** 2;
  const system = (flow: number) => 120 + 0.335 * flow ** 2;
  test.each([
    ['one pump', pump, 24.93689515, 24.9, 330],
    ['two in parallel', (flow: number) => pump(flow / 2), 30.41381265, 30.4, 430],
    ['two in series', (flow: number) => 2 * pump(flow), 31.71510607, 31.7, 457],
  ])('%s', (_, pumps, exact, printedFlow, printedHead) => {
    const flow = operatingFlow(pumps, system, 50);
    expect(relativeError(flow, exact)).toBeLessThan(1e-9);
    expect(relativeError(flow, printedFlow)).toBeLessThan(2e-3);
    expect(relativeError(system(flow), printedHead)).toBeLessThan(6e-3);
  });
});

describe('straight lines', () => {
  // Churchill friction: dp = f L/D rho V^2/2, computed in 30-digit arithmetic; equal to the open library fluids 1.0.22
  // [mm, m, L/min, kg/m3, Pa s, mm, Pa], invented inputs
  test.each([
    [8, 1, 6, 1060, 0.0022, 0.0015, 8833.43786],
    [12, 1, 10, 1060, 0.0022, 0.01, 3235.662863],
    [16, 2, 5, 1060, 0.0022, 0.01, 497.1514329],
    [16, 2, 20, 988, 0.000547, 0.01, 3937.664024],
    [19, 3, 15, 1060, 0.0022, 0.01, 2195.024021],
    [25, 1.5, 30, 1030, 0.001, 0.01, 810.0116423],
    [32, 1, 60, 988, 0.000547, 0.01, 492.0532395],
  ])('bore %f mm, %f m at %f L/min', (bore, length, flow, density, viscosity, roughness, expected) => {
    const velocity = flow / 60000 / ((Math.PI / 4) * (bore / 1000) ** 2);
    const friction = frictionChurchill((density * velocity * (bore / 1000)) / viscosity, roughness / bore);
    const drop = (friction * length * density * velocity ** 2) / (2 * (bore / 1000));
    expect(relativeError(drop, expected)).toBeLessThan(1e-9);
  });
});

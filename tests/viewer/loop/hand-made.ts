import type { OperatingPoint } from '../../../src/sim/index.ts';

export const perMinute = (litres: number): number => litres / 6e4;

const FLOWS = Array.from({ length: 41 }, (_, k) => k);

/**
 * A pump of 40 kPa and 40 L/min, parabola 40 (1 - (Q/40)^2) kPa, on a loop that takes 0.075 Q^2: they meet at 20 L/min
 * and 30 kPa. The straight line 40 - Q meets it at (sqrt(13) - 1)/0.15 = 17.37 L/min and 22.63 kPa.
 */
export const HAND_MADE: OperatingPoint = {
  phase: 'pull',
  temperature: 313.15,
  flow: perMinute(20),
  rating: perMinute(40),
  voltageRatio: 1,
  pressure: 30e3,
  losses: [
    { name: 'line after the tank', place: 'reservoir', isLine: true, pressure: 18e3, flow: perMinute(20) },
    { name: 'core', place: 'core', isLine: false, pressure: 12e3, flow: perMinute(20) },
    { name: 'front exchanger', place: 'exchanger', isLine: false, pressure: 12e3, flow: perMinute(15) },
  ],
  curves: {
    flow: FLOWS.map(perMinute),
    pump: FLOWS.map((flow) => 40e3 * (1 - (flow / 40) ** 2)),
    loop: FLOWS.map((flow) => 75 * flow ** 2),
  },
  straightLineFlow: perMinute((Math.sqrt(13) - 1) / 0.15),
  suction: { margin: 80e3, needed: 10e3 },
  shares: [0.75],
  heldShut: [],
  steps: [
    { name: 'all lines 19 mm', flow: perMinute(24) },
    { name: 'a second pump like it, beside the first', flow: perMinute(19.9) },
  ],
};

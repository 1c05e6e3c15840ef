import { describe, expect, it } from 'vitest';
import type { DisplacementConfig } from '../../src/sim/scenario/config/compressor.ts';
import { DISPLACED, settledAir } from '../support/settled-air.ts';

// A displacement compressor and an engine that share one air flow, solved as a circle.

const OPEN = { mode: 'wide open' } as const;

/** No churning, no leak: the efficiency is that of the compression at every pressure ratio. */
function carWith(
  blower: { sweptVolume: number; driveRatio: number; efficiency: number; inletTemperature: number },
  engine: { displacement: number; volumetricEfficiency: number },
) {
  const { sweptVolume, driveRatio, efficiency, inletTemperature } = blower;
  const compressor: DisplacementConfig = {
    ...DISPLACED.compressor,
    sweptVolume,
    driveRatio,
    leak: 0,
    quoted: { efficiency, speed: 9600, pressureRatio: 2, inletTemperature, inletPressure: 1e5 },
    idlePower: { power: 0, speed: 10000, exponent: 1 },
  };
  return { ...DISPLACED, compressor, engine: { ...engine, referenceTemperature: 330, temperatureExponent: 0 } };
}

/**
 * Fixed pulley in balance with its engine, no pressure losses, a core of effectiveness eps against coolant at 40 degC:
 *
 *     m = eta_B V_B i N/60 p1/(R T1),  p = m R T_m 120/(eta_V V N),  T2 = T1 [1 + ((p/p1)^(2/7) - 1)/eta],
 *     T_m = T2 - eps (T2 - Tc)
 *
 * p1 100 kPa, T1 30 degC, 1.3 L/rev at eta_B 0.92, i 1.6, 6000 rpm, 2 L at eta_V 0.95, eta 0.65, R 287.05. Own
 * derivation in high precision, eight digits; damped fixed-point iteration agrees to the last bit.
 */
describe('fixed pulley and engine in balance', () => {
  const car = carWith(
    { sweptVolume: 0.92 * 1.3e-3, driveRatio: 1.6, efficiency: 0.65, inletTemperature: 303.15 },
    { displacement: 2e-3, volumetricEfficiency: 0.95 },
  );
  it.each([
    [0, 325830.14, 490.36705, 490.36705],
    [0.6, 240797.89, 436.26352, 362.39541],
    [0.8, 222675.84, 423.01071, 335.12214],
    [0.9, 214986.88, 417.15424, 323.55042],
  ])('core of effectiveness %d: a cooler charge lowers the gauge, not the mass', (effectiveness, p, t2, tm) => {
    const inputs = { ...OPEN, engineSpeed: 6000, freshAir: 303.15, outsidePressure: 1e5 };
    const { gas, pressures } = settledAir(car, { effectiveness, coolant: 313.15 }, inputs);
    expect(Math.abs(gas.airFlow / 0.21990547 - 1)).toBeLessThan(1e-7);
    expect(Math.abs(pressures.manifold / p - 1)).toBeLessThan(1e-7);
    expect(Math.abs(gas.dischargeTemperature / t2 - 1)).toBeLessThan(1e-7);
    expect(Math.abs(gas.chargeTemperature / tm - 1)).toBeLessThan(1e-7);
  });
});

/**
 * Blower on a 2.8 L four-stroke at 3000 rpm: inlet 288 K and 101.3 kPa, pressure ratio 1.6, efficiency 0.74, engine
 * filled with air as it leaves the blower; R 287, cp 1005. Solved example 15.1 of a textbook on engines (chapter 15,
 * air capacity and supercharging); results to eight digits from its formulas.
 */
describe('textbook blower', () => {
  const [T2S, T2, AIR, POWER] = [329.39157, 343.93456, 0.11493962, 6461.2422];
  it('discharge, air mass and power', () => {
    // The book gives the pressure ratio, the circle finds it: a blower that sweeps what the engine takes in.
    const sweptVolume = (1.6 * (288 / T2) * 2.8e-3) / 2;
    const car = carWith(
      { sweptVolume, driveRatio: 1, efficiency: 0.74, inletTemperature: 288 },
      { displacement: 2.8e-3, volumetricEfficiency: 1 },
    );
    const inputs = { ...OPEN, engineSpeed: 3000, freshAir: 288, outsidePressure: 101300 };
    const { gas, pressures } = settledAir(car, { effectiveness: 0, coolant: 300 }, inputs);
    expect(Math.abs(pressures.ratio / 1.6 - 1)).toBeLessThan(1e-7);
    expect(Math.abs(gas.dischargeTemperature / T2 - 1)).toBeLessThan(1e-7);
    expect(Math.abs((288 + 0.74 * (gas.dischargeTemperature - 288)) / T2S - 1)).toBeLessThan(1e-7);
    expect(Math.abs((gas.airFlow * (287.05 / 287)) / AIR - 1)).toBeLessThan(1e-7);
    expect(Math.abs((gas.gasPower * (287.05 / 287) * (1005 / 1006)) / POWER - 1)).toBeLessThan(1e-7);
  });
});

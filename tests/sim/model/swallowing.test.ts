import { describe, expect, it } from 'vitest';
import { Swallowing } from '../../../src/sim/model/swallowing.ts';

const ENGINE = { displacement: 2e-3, volumetricEfficiency: 0.95, referenceTemperature: 330, temperatureExponent: 0 };

describe('air that an engine takes in', () => {
  // Volumetric efficiency as in J. B. Heywood, Internal Combustion Engine Fundamentals, ch. 2, on a 2 L engine at
  // 6000 rpm, 200 kPa and 330 K; ten digits from high precision.
  it('is the worked example of a four-stroke engine', () => {
    expect(Math.abs(new Swallowing(ENGINE).flowAt(6000, 200e3, 330) / 0.2005774519 - 1)).toBeLessThan(1e-9);
  });

  it('is that of its cycles counted one by one: 50 a second, 1.9 L each', () => {
    const density = 200e3 / (287.05 * 330);
    expect(density).toBeCloseTo(2.111342, 6);
    expect(new Swallowing(ENGINE).flowAt(6000, 200e3, 330)).toBeCloseTo(50 * 1.9e-3 * density, 12);
  });

  // m goes with p/T and eta_v with T^b: b = 0 the plain density rule, 0.25 of a 1963 paper on compression-ignition
  // engines (air taken in with T^-0.75), 0.4 the default.
  it.each([0, 0.25, 0.4, 0.6])('goes with charge temperature to the power b - 1, b = %d', (temperatureExponent) => {
    const engine = new Swallowing({ ...ENGINE, temperatureExponent });
    const atReference = engine.flowAt(6000, 200e3, 330);
    expect(atReference).toBeCloseTo(0.2005774519, 9);
    for (const temperature of [280, 310, 360, 400]) {
      const expected = (temperature / 330) ** (temperatureExponent - 1);
      expect(engine.flowAt(6000, 200e3, temperature) / atReference).toBeCloseTo(expected, 12);
    }
  });

  it('goes with engine speed and with manifold pressure', () => {
    const engine = new Swallowing(ENGINE);
    expect(engine.flowAt(3000, 200e3, 330)).toBeCloseTo(0.2005774519 / 2, 9);
    expect(engine.flowAt(6000, 50e3, 330)).toBeCloseTo(0.2005774519 / 4, 9);
  });
});

import { describe, expect, it } from 'vitest';
import type { AirPath } from '../../src/sim/model/air-path.ts';
import type { Config } from '../../src/sim/scenario/config.ts';
import { crossing, DISPLACED, DRIVEN, settledAir } from '../support/settled-air.ts';

// Recirculated air taken before the core, behind it, or part of each, with adiabatic ducts. Heat balances of one mixing
// point, one heater and one cooler in a loop, as in O. Levenspiel, Chemical Reaction Engineering, 3rd ed. 1999, recycle
// streams. Here r is recirculated over engine flow; s = r/(1 + r) is its share of the compressor's flow.

const CP = 1006;
const FRESH = 303.15;
const COOLANT = 308.15;

/**
 * 5 kW into 0.06 kg/s of engine air; T0 30 degC, coolant 35 degC. From
 *
 *     w = W (1 - s)/(m cp), e = eps (1 - leak), T2 = Tc + [(1 - s)(T0 - Tc) + w]/(1 - s (1 - e)), T1 = T2 - w,
 *     T_man = T2 - eps (T2 - Tc)
 *
 * worked out in high precision and checked by a linear solve of the three balances: nine digits. `leak` is the share of
 * the recirculated air that does not pass the core.
 */
const SHARES = [0, 0.25, 0.5, 0.75];
const WORKED_OUT = [
  {
    route: 'before the core',
    leak: 1,
    effectiveness: 0.5,
    inlet: [303.15, 323.859079, 344.568158, 365.277237],
    discharge: [385.986315, 385.986315, 385.986315, 385.986315],
    manifold: [347.068158, 347.068158, 347.068158, 347.068158],
  },
  {
    route: 'before the core',
    leak: 1,
    effectiveness: 0.8,
    inlet: [303.15, 323.859079, 344.568158, 365.277237],
    discharge: [385.986315, 385.986315, 385.986315, 385.986315],
    manifold: [323.717263, 323.717263, 323.717263, 323.717263],
  },
  {
    route: 'before the core',
    leak: 1,
    effectiveness: 0.95,
    inlet: [303.15, 323.859079, 344.568158, 365.277237],
    discharge: [385.986315, 385.986315, 385.986315, 385.986315],
    manifold: [312.041816, 312.041816, 312.041816, 312.041816],
  },
  {
    route: 'after the core',
    leak: 0,
    effectiveness: 0.5,
    inlet: [303.15, 312.739605, 318.622719, 318.575447],
    discharge: [385.986315, 374.866842, 360.040877, 339.284526],
    manifold: [347.068158, 341.508421, 334.095438, 323.717263],
  },
  {
    route: 'after the core',
    leak: 0,
    effectiveness: 0.8,
    inlet: [303.15, 307.472486, 309.97424, 310.333955],
    discharge: [385.986315, 369.599723, 351.392397, 331.043034],
    manifold: [323.717263, 320.439945, 316.798479, 312.728607],
  },
  {
    route: 'after the core',
    leak: 0,
    effectiveness: 0.95,
    inlet: [303.15, 305.138952, 306.647901, 307.658146],
    discharge: [385.986315, 367.266189, 348.066059, 328.367225],
    manifold: [312.041816, 311.105809, 310.145803, 309.160861],
  },
  {
    route: 'part of each',
    leak: 0.3,
    effectiveness: 0.5,
    inlet: [303.15, 315.726927, 324.388372, 325.409856],
    discharge: [385.986315, 377.854163, 365.80653, 346.118934],
    manifold: [347.068158, 343.002082, 336.978265, 327.134467],
  },
  {
    route: 'part of each',
    leak: 0.3,
    effectiveness: 0.8,
    inlet: [303.15, 311.615164, 316.626916, 316.484322],
    discharge: [385.986315, 373.742401, 358.045074, 337.193401],
    manifold: [323.717263, 321.26848, 318.129015, 313.95868],
  },
  {
    route: 'part of each',
    leak: 0.3,
    effectiveness: 0.95,
    inlet: [303.15, 309.735982, 313.48038, 313.429674],
    discharge: [385.986315, 371.863219, 354.898538, 334.138753],
    manifold: [312.041816, 311.335661, 310.487427, 309.449438],
  },
] as const;

const THROTTLES = ['upstream', 'downstream'] as const;
type Throttle = (typeof THROTTLES)[number];

function bypassed<C extends Config>(
  car: C,
  throttle: Throttle,
  shareAfterCore: number,
  changes: Partial<Config['bypass']>,
): C {
  return { ...car, bypass: { ...car.bypass, throttle, shareAfterCore, ...changes } };
}

/** Engine air [kg/s] that does not depend on its temperature: volumetric efficiency goes with it. */
const ENGINE_AIR = 0.06;
const SPEED = 3000;
const MANIFOLD = 60000;
const LOAD = {
  mode: 'part load',
  engineSpeed: SPEED,
  manifoldPressure: MANIFOLD,
  freshAir: FRESH,
  outsidePressure: 1e5,
} as const;

/**
 * A centrifugal compressor that churns `power` [W] into 0.06 kg/s at pressure ratio 1 and sends a stated share round.
 */
function churning(power: number, r: number, throttle: Throttle, shareAfterCore: number): Config {
  const inletPressure = throttle === 'upstream' ? MANIFOLD : 1e5;
  const { displacement, referenceTemperature } = DRIVEN.engine;
  const volumetricEfficiency = (ENGINE_AIR * 120 * 287.05 * referenceTemperature) / (displacement * SPEED * MANIFOLD);
  const idlePower = { ...DRIVEN.compressor.idlePower, power: power / (inletPressure / 1e5), exponent: 0 };
  return bypassed(
    {
      ...DRIVEN,
      engine: { ...DRIVEN.engine, volumetricEfficiency, temperatureExponent: 1 },
      compressor: { ...DRIVEN.compressor, idlePower },
    },
    throttle,
    shareAfterCore,
    { recirculation: r },
  );
}

/** The closed forms with the W and r that the model found. */
function closedForm(air: AirPath, shareAfterCore: number, eps: number) {
  const r = air.gas.recirculatedFlow / air.gas.airFlow;
  const w = air.gas.gasPower / (air.gas.airFlow * CP);
  if (shareAfterCore === 0) {
    const discharge = FRESH + w;
    return {
      inlet: (FRESH + r * discharge) / (1 + r),
      discharge,
      manifold: discharge - eps * (discharge - COOLANT),
    };
  }
  if (shareAfterCore === 1) {
    const manifold = (eps * COOLANT + (1 - eps) * (FRESH / (1 + r) + w / (1 + r))) / (1 - ((1 - eps) * r) / (1 + r));
    const inlet = (FRESH + r * manifold) / (1 + r);
    return { inlet, discharge: inlet + w / (1 + r), manifold };
  }
  const s = r / (1 + r);
  const rise = w * (1 - s);
  const discharge = COOLANT + ((1 - s) * (FRESH - COOLANT) + rise) / (1 - s * (1 - eps * shareAfterCore));
  return { inlet: discharge - rise, discharge, manifold: discharge - eps * (discharge - COOLANT) };
}

function expectClosedForm(air: AirPath, shareAfterCore: number, eps: number): void {
  const { inlet, discharge, manifold } = closedForm(air, shareAfterCore, eps);
  expect(Math.abs(air.gas.inletTemperature - inlet)).toBeLessThan(1e-6);
  expect(Math.abs(air.gas.dischargeTemperature - discharge)).toBeLessThan(1e-6);
  expect(Math.abs(air.gas.chargeTemperature - manifold)).toBeLessThan(1e-6);
}

describe.each(THROTTLES)('throttle %s', (throttle) => {
  it.each(WORKED_OUT)('$route, effectiveness $effectiveness: the worked-out temperatures', (expected) => {
    SHARES.forEach((s, k) => {
      const config = churning(5000, s / (1 - s), throttle, 1 - expected.leak);
      const { gas, pressures } = settledAir(config, { effectiveness: expected.effectiveness, coolant: COOLANT }, LOAD);
      expect(gas.airFlow).toBeCloseTo(ENGINE_AIR, 12);
      expect(gas.gasPower).toBeCloseTo(5000, 8);
      expect(pressures.ratio).toBe(1);
      // The figures have six decimals.
      expect(Math.abs(gas.inletTemperature - expected.inlet[k])).toBeLessThan(1e-6);
      expect(Math.abs(gas.dischargeTemperature - expected.discharge[k])).toBeLessThan(1e-6);
      expect(Math.abs(gas.chargeTemperature - expected.manifold[k])).toBeLessThan(1e-6);
    });
  });

  it('after the core, half of it returned at effectiveness 0.8: the heat into the coolant by two ways', () => {
    // Q = m/(1 - s) cp (T2 - T_man) = W + m cp (T0 - T_man), worked out likewise.
    const air = settledAir(churning(5000, 1, throttle, 1), { effectiveness: 0.8, coolant: COOLANT }, LOAD);
    const { coreFlow, coreInlet, airFlow, chargeTemperature } = air.gas;
    expect(coreFlow * CP * (coreInlet - chargeTemperature)).toBeCloseTo(4176.17778, 4);
    expect(5000 + airFlow * CP * (FRESH - chargeTemperature)).toBeCloseTo(4176.17778, 4);
  });

  describe.each([
    ['before the core', 0],
    ['part of each', 0.7],
    ['after the core', 1],
  ] as const)('%s', (_, shareAfterCore) => {
    it.each([0, 0.5, 2, 6])('%d times the engine air recirculated, as stated: the closed form', (r) => {
      for (const effectiveness of [0.5, 0.95]) {
        const air = settledAir(churning(900, r, throttle, shareAfterCore), { effectiveness, coolant: COOLANT }, LOAD);
        expect(air.gas.recirculatedFlow / air.gas.airFlow).toBeCloseTo(r, 12);
        expectClosedForm(air, shareAfterCore, effectiveness);
      }
    });

    /** Displacement compressors big enough to return that much; at r = 0 just as big as the engine needs. */
    const MACHINES: [number, number | undefined][] =
      throttle === 'upstream'
        ? [
            [0, undefined],
            [0.5, 1.4],
            [2, 3],
            [6, 8],
          ]
        : [
            [0, undefined],
            [0.5, 0.52],
            [2, 1.2],
            [6, 2.5],
          ];
    it.each(MACHINES)('%d times, by a bypass drop that makes it so: the closed form', (r, driveRatio) => {
      for (const effectiveness of [0.5, 0.95]) {
        const carWith = (ratio: number, drop: number) =>
          bypassed(
            { ...DISPLACED, compressor: { ...DISPLACED.compressor, driveRatio: ratio } },
            throttle,
            shareAfterCore,
            { drop, dropAtFlow: 0.02 },
          );
        const solve = (config: Config) =>
          settledAir(config, { effectiveness, coolant: COOLANT }, { freshAir: FRESH, outsidePressure: 1e5 });
        const returned = (air: AirPath) => air.gas.recirculatedFlow / air.gas.airFlow;
        const config =
          driveRatio === undefined
            ? carWith(
                crossing((ratio) => returned(solve(carWith(ratio, 2000))), 0.2, 2),
                2000,
              )
            : carWith(
                driveRatio,
                Math.exp(crossing((log) => returned(solve(carWith(driveRatio, Math.exp(log)))) - r, -3, 10.5)),
              );
        const air = solve(config);
        expect(Math.abs(returned(air) - r)).toBeLessThan(1e-6);
        expectClosedForm(air, shareAfterCore, effectiveness);
      }
    });
  });
});

import { describe, expect, it } from 'vitest';
import { FILE_WORDING, written } from '../../../src/sim/answers/wording.ts';
import { AirPath, type AirPathInputs } from '../../../src/sim/model/air-path.ts';
import type { DisplacementConfig } from '../../../src/sim/scenario/config/compressor.ts';
import type { Config } from '../../../src/sim/scenario/config.ts';
import { powerOf } from '../../support/power-law.ts';
import { shippedConfig } from '../../support/shipped.ts';

// Expected values: the laws of air path and compressor as the documentation states them, written out here with the
// constants of dry air (J/(kg K), J/(kg K), g = 1.4) and evaluated at the result that is being checked.
const CP = 1006;
const R = 287.05;
const K = 2 / 7;

/** A 3 L engine with a 1.55 L compressor at 99.5 kPa and 27 degC, all invented. */
const ESTATE = shippedConfig('rolling-road-estate') as Displaced;

type Displaced = Config & { readonly compressor: DisplacementConfig };

interface Car {
  readonly driveRatio?: number;
  readonly leak?: number;
  readonly efficiency?: number;
  readonly displacement?: number;
  readonly exponent?: number;
  readonly throttle?: 'upstream' | 'downstream';
  readonly bypassDrop?: number;
  readonly intakeDrop?: number;
  readonly casingToAir?: number;
  readonly plenumToAir?: number;
}

function carWith(car: Car): Displaced {
  const { engine, compressor, bypass, casing, core, plenum, intake } = ESTATE;
  return {
    ...ESTATE,
    intake: { ...intake, drop: car.intakeDrop ?? 0, dropAtFlow: 0.3 },
    engine: {
      ...engine,
      displacement: car.displacement ?? engine.displacement,
      temperatureExponent: car.exponent ?? engine.temperatureExponent,
    },
    compressor: {
      ...compressor,
      driveRatio: car.driveRatio ?? compressor.driveRatio,
      leak: car.leak ?? compressor.leak,
      quoted: { ...compressor.quoted, efficiency: car.efficiency ?? compressor.quoted.efficiency },
    },
    bypass: {
      ...bypass,
      throttle: car.throttle ?? bypass.throttle,
      drop: car.bypassDrop ?? bypass.drop,
      dropAtFlow: 0.02,
    },
    casing: { ...casing, toDischargeAir: car.casingToAir ?? casing.toDischargeAir },
    // As measured on a bench, away from every density that occurs.
    core: { ...core, airDrop: { ...powerOf(core.airDrop), atDensity: 1.2 } },
    plenum: { ...plenum, toChargeAir: car.plenumToAir ?? plenum.toChargeAir },
  };
}

/** Casing held near 350 K by 12 W/K of everything else, plenum near 335 K by 7 W/K. */
const INPUTS: AirPathInputs = {
  mode: 'wide open',
  engineSpeed: 5000,
  manifoldPressure: 38000,
  coreOutlet: 325,
  coreInletGuess: 340,
  casingHeat: 12 * 350,
  casingConductance: 12,
  plenumHeat: 7 * 335,
  plenumConductance: 7,
  freshAir: ESTATE.ambient.temperature + ESTATE.intake.pickUp,
  outsidePressure: ESTATE.ambient.pressure,
};

/** Solved as a stage does: the guess of the air entering the core is renewed until it is the answer. */
function solved(config: Config, inputs: Partial<AirPathInputs>): AirPath {
  const air = new AirPath(config);
  const asked = { ...INPUTS, ...inputs };
  for (let round = 0; round < 60; round++) {
    const failure = air.solve(asked);
    if (failure !== undefined) throw new Error(JSON.stringify(failure));
    asked.coreInletGuess = air.gas.coreInlet;
  }
  return air;
}

function expectSame(actual: number, expected: number, what: string): void {
  expect(Math.abs(actual / expected - 1), `${what}: ${actual} against ${expected}`).toBeLessThan(1e-9);
}

/** Laws that hold in every mode with the engine running: compressor, power, casing, core drop, plenum, swallowing. */
function expectLaws(air: AirPath, config: Displaced, inputs: Partial<AirPathInputs>): void {
  const { engineSpeed, coreOutlet, casingHeat, casingConductance, plenumHeat, plenumConductance } = {
    ...INPUTS,
    ...inputs,
  };
  const { compressor, engine, core, casing, plenum } = config;
  const flow = air.gas.airFlow;
  const through = air.gas.compressorFlow;
  const n = engineSpeed * compressor.driveRatio;
  const ratio = air.pressures.ratio;
  const [p1, t1] = [air.pressures.inlet, air.gas.inletTemperature];

  const efficiency = 1 - (compressor.leak * (ratio - 1)) / (n / 1000);
  expectSame(through, (efficiency * compressor.sweptVolume * (n / 60) * p1) / (R * t1), 'swept volume');

  const { quoted, idlePower } = compressor;
  const idleAt = (speed: number, pressure: number) =>
    idlePower.power * (speed / idlePower.speed) ** idlePower.exponent * (pressure / 1e5);
  const quotedFlow =
    ((1 - (compressor.leak * (quoted.pressureRatio - 1)) / (quoted.speed / 1000)) *
      compressor.sweptVolume *
      (quoted.speed / 60) *
      quoted.inletPressure) /
    (R * quoted.inletTemperature);
  const ideal = quotedFlow * CP * quoted.inletTemperature * (quoted.pressureRatio ** K - 1);
  const inner = ideal / (ideal / quoted.efficiency - idleAt(quoted.speed, quoted.inletPressure));
  const isentropic = ratio ** K - 1;
  const work = through * CP * t1 * (ratio >= 1 ? isentropic / inner : isentropic * inner) + idleAt(n, p1);
  expectSame(air.gas.gasPower, work, 'power into the gas');
  expectSame(air.gas.rotorOutlet, t1 + work / (through * CP), 'air behind the rotors');

  const passed = Math.exp(-casing.toDischargeAir / (through * CP));
  const metal = air.gas.casingTemperature;
  expectSame(air.gas.dischargeTemperature, metal + (air.gas.rotorOutlet - metal) * passed, 'air behind the casing');
  const given = through * CP * (air.gas.rotorOutlet - air.gas.dischargeTemperature);
  expectSame(casingConductance * metal, casingHeat + given, 'balance of the casing');

  const before = ratio * p1;
  const after = before - air.pressures.coreDrop;
  const density = (0.5 * (before + after)) / (R * 0.5 * (air.gas.coreInlet + coreOutlet));
  const airDrop = powerOf(core.airDrop);
  const drop = airDrop.drop * (flow / airDrop.atFlow) ** airDrop.exponent * (airDrop.atDensity / density);
  // The drop is a small difference of two pressures that agree to rounding.
  expect(Math.abs(air.pressures.coreDrop - drop) / before).toBeLessThan(1e-9);
  expectSame(air.pressures.coreOutlet, after, 'pressure behind the core');

  const reached = Math.exp(-plenum.toChargeAir / (flow * CP));
  const wall = air.gas.plenumTemperature;
  expectSame(air.gas.chargeTemperature, wall + (coreOutlet - wall) * reached, 'charge behind the plenum');
  const toPlenum = flow * CP * (coreOutlet - air.gas.chargeTemperature);
  expectSame(plenumConductance * wall, plenumHeat + toPlenum, 'balance of the plenum');

  const charge = air.gas.chargeTemperature;
  const filling = engine.volumetricEfficiency * (charge / 330) ** engine.temperatureExponent;
  const swallowed = (filling * engine.displacement * (engineSpeed / 120) * air.pressures.manifold) / (R * charge);
  expectSame(flow, swallowed, 'swallowing');
}

describe('wide open', () => {
  const CARS: [string, Car, number][] = [
    ['as it is', {}, 5000],
    ['low in the speed range', {}, 1500],
    ['with the plain density rule', { exponent: 0 }, 6600],
    ['with an intake that restricts', { intakeDrop: 6000 }, 6600],
    ['without a leak', { leak: 0 }, 4000],
    ['overdriven', { driveRatio: 2.6 }, 6600],
    ['underdriven, the engine sucking air through', { driveRatio: 0.5 }, 6600],
  ];
  it.each(CARS)('%s: all laws hold at once', (_, car, engineSpeed) => {
    const config = carWith(car);
    const air = solved(config, { engineSpeed });
    expectLaws(air, config, { engineSpeed });
    expect(air.gas.recirculatedFlow).toBe(0);
    expect(air.gas.compressorFlow).toBe(air.gas.airFlow);
    expect(air.gas.coreInlet).toBe(air.gas.dischargeTemperature);
    expectSame(air.pressures.manifold, air.pressures.coreOutlet, 'manifold pressure');
    expectSame(air.gas.inletTemperature, 273.15 + 27 + 6, 'ambient and pick-up');
    expectSame(
      air.pressures.inlet,
      99500 - (car.intakeDrop ?? 0) * (air.gas.airFlow / 0.3) ** 2,
      'ambient less the intake',
    );
  });

  it('a cooler charge lowers the gauge and leaves the mass flow, where the volumetric efficiency is constant', () => {
    for (const exponent of [0, 0.4]) {
      const config = carWith({ leak: 0, exponent, plenumToAir: 0 });
      const warm = solved(config, { coreOutlet: 340 });
      const cool = solved(config, { coreOutlet: 310 });
      expectSame(cool.gas.airFlow, warm.gas.airFlow, 'mass flow');
      // m = const p/T T^b
      expectSame(cool.pressures.manifold / warm.pressures.manifold, (310 / 340) ** (1 - exponent), 'manifold pressure');
    }
  });

  it('with a leak, mass rises as the pressure ratio falls, by the swept-volume law', () => {
    for (const leak of [0.5, 1.5, 3]) {
      const config = carWith({ leak, plenumToAir: 0, casingToAir: 0 });
      const [warm, cool] = [340, 310].map((coreOutlet) => solved(config, { coreOutlet }));
      expect(cool.pressures.ratio).toBeLessThan(warm.pressures.ratio);
      expect(cool.gas.airFlow).toBeGreaterThan(warm.gas.airFlow);
      const efficiency = (air: AirPath) => 1 - (leak * (air.pressures.ratio - 1)) / ((5000 * 1.62) / 1000);
      expectSame(cool.gas.airFlow / warm.gas.airFlow, efficiency(cool) / efficiency(warm), 'mass flow');
      expect(cool.gas.gasPower).toBeLessThan(warm.gas.gasPower);
    }
  });
});

describe('part load', () => {
  const ADIABATIC = { casingToAir: 0, plenumToAir: 0 };
  const CASES: [string, number, Car][] = [
    ['upstream', 0.5, { throttle: 'upstream', driveRatio: 1.4, bypassDrop: 8000 }],
    ['upstream', 2, { throttle: 'upstream', driveRatio: 2.8, bypassDrop: 500 }],
    ['upstream', 6, { throttle: 'upstream', driveRatio: 6.5, bypassDrop: 60 }],
    ['downstream', 0.5, { throttle: 'downstream', driveRatio: 0.5, bypassDrop: 2000 }],
    ['downstream', 2, { throttle: 'downstream', driveRatio: 1, bypassDrop: 500 }],
    ['downstream', 6, { throttle: 'downstream', driveRatio: 3, bypassDrop: 500 }],
  ];
  const load = { mode: 'part load', engineSpeed: 1200, manifoldPressure: 38000 } as const;

  it.each(CASES)('throttle %s, about %d times the engine air recirculated: all laws hold at once', (_, about, car) => {
    for (const ducts of [{}, ADIABATIC]) {
      const config = carWith({ ...car, ...ducts });
      const air = solved(config, load);
      const r = air.gas.recirculatedFlow / air.gas.airFlow;
      expect(Math.abs(r / about - 1)).toBeLessThan(0.2);
      expectLaws(air, config, load);
      expect(air.pressures.manifold).toBe(38000);
      expectSame(air.gas.compressorFlow, (1 + r) * air.gas.airFlow, '(1 + r) m');
      expectSame(air.gas.inletTemperature, (306.15 + r * air.gas.dischargeTemperature) / (1 + r), 'mixing');
      const taken = air.pressures.ratio * air.pressures.inlet;
      const drop = config.bypass.drop * (air.gas.recirculatedFlow / 0.02) ** 2;
      expectSame(air.pressures.inlet, taken - drop, 'pressure left behind the bypass');
      if (car.throttle === 'downstream') expectSame(air.pressures.inlet, 99500, 'nothing before the compressor');
      else expectSame(taken - air.pressures.coreDrop, 38000, 'nothing between core and manifold');
    }
  });

  it.each(CASES)('throttle %s, about %d times: discharge is T0 + W/(m cp) whatever is recirculated', (_, __, car) => {
    const air = solved(carWith({ ...car, ...ADIABATIC }), load);
    expectSame(air.gas.dischargeTemperature, 306.15 + air.gas.gasPower / (air.gas.airFlow * CP), 'closed form');
  });

  it('an open bypass without drop still heats the air: by the churning alone', () => {
    const air = solved(carWith({ bypassDrop: 0, ...ADIABATIC }), load);
    expectSame(air.pressures.ratio, 1, 'pressure ratio');
    const churning = 900 * ((1200 * 1.62) / 10000) ** 1.6 * (air.pressures.inlet / 1e5);
    expectSame(
      air.gas.dischargeTemperature - air.gas.inletTemperature,
      churning / (air.gas.compressorFlow * CP),
      'rise',
    );
    expect(air.gas.recirculatedFlow).toBeGreaterThan(0);
  });

  it.each(['upstream', 'downstream'] as const)('throttle %s, compressor too small: air passes forward', (throttle) => {
    const config = carWith({ throttle, driveRatio: throttle === 'upstream' ? 0.55 : 0.3, bypassDrop: 2000 });
    const air = solved(config, load);
    const r = air.gas.recirculatedFlow / air.gas.airFlow;
    expect(r).toBeLessThan(-0.05);
    expectLaws(air, config, load);
    expectSame(air.gas.compressorFlow, (1 + r) * air.gas.airFlow, '(1 + r) m');
    expectSame(air.gas.inletTemperature, 306.15, 'nothing comes back to the inlet');
    expect(air.pressures.ratio).toBeLessThan(1);
    const gain = 2000 * (air.gas.recirculatedFlow / 0.02) ** 2;
    expectSame(air.pressures.ratio * air.pressures.inlet, air.pressures.inlet - gain, 'pressure behind the bypass');
    expectSame(air.gas.coreInlet, (1 + r) * air.gas.dischargeTemperature - r * 306.15, 'mixing before the core');
  });
});

describe('a cold casing in hot air', () => {
  it('draws more into the compressor than it sweeps of outside air', () => {
    const car = carWith({ throttle: 'downstream', casingToAir: 200, bypassDrop: 100 });
    const config = { ...car, ambient: { ...car.ambient, temperature: 420 } };
    const inputs = {
      mode: 'part load',
      engineSpeed: 400,
      manifoldPressure: 38000,
      casingHeat: 1e6 * 225,
      casingConductance: 1e6,
    } as const;
    const air = solved(config, inputs);
    expectLaws(air, config, inputs);
    expect(air.gas.inletTemperature).toBeLessThan(426 / 1.5);
  });
});

describe('engine off', () => {
  it('has no flow, and a charge at the temperature of the plenum metal', () => {
    const air = solved(ESTATE, { mode: 'engine off', engineSpeed: 0 });
    expect([
      air.gas.airFlow,
      air.gas.compressorFlow,
      air.gas.recirculatedFlow,
      air.gas.gasPower,
      air.pressures.coreDrop,
    ]).toEqual([0, 0, 0, 0, 0]);
    expect(air.gas.chargeTemperature).toBe(335);
    expect(air.gas.dischargeTemperature).toBe(350);
    expect(air.pressures.manifold).toBe(99500);
  });
});

describe('a machine that cannot do what it is asked', () => {
  const load = { ...INPUTS, mode: 'part load', engineSpeed: 1200 } as const;
  it.each([
    ['no common air flow at 5000 rpm wide open', { displacement: 30e-3, driveRatio: 0.2 }, INPUTS],
    [
      'air leaves the compressor rotors at [\\d.]+ degC, at 5000 rpm wide open',
      { driveRatio: 15, efficiency: 0.45 },
      INPUTS,
    ],
    ['intake drop is more than the 99.5 kPa outside', { intakeDrop: 1e9 }, load],
    ['no recirculated flow satisfies', { driveRatio: 1e-3, leak: 0 }, load],
    [
      'manifold pressure of 99.4 kPa cannot be reached .* at the compressor inlet',
      { bypassDrop: 0 },
      { ...load, engineSpeed: 6600, manifoldPressure: 99400 },
    ],
    [
      'manifold pressure of 99.4 kPa cannot be reached .* before the throttle',
      { throttle: 'downstream', bypassDrop: 0 },
      { ...load, engineSpeed: 6600, manifoldPressure: 99400 },
    ],
    ['rotors at [\\d.]+ degC, at 1200 rpm part load, [\\d.]+ times', { driveRatio: 20, bypassDrop: 50000 }, load],
  ] satisfies [string, Car, AirPathInputs][])('is told so: %s', (reason, car, inputs) => {
    const why = new AirPath(carWith(car)).solve(inputs);
    expect(why && written(why, FILE_WORDING)).toMatch(new RegExp(reason));
  });
});

import { describe, expect, it } from 'vitest';
import { CentrifugalCompressor } from '../../../src/sim/model/centrifugal-compressor.ts';
import { DRIVEN, onTurbine, settledAir } from '../../support/settled-air.ts';
import { shippedConfig } from '../../support/shipped.ts';

// Laws: PR^k = 1 + head (n/n_ref)^2/T1, as the documentation states them, with the constants of dry air.
const CP = 1006;
const K = 2 / 7;

/** Invented: 173.5 kPa from 100.5 kPa and 37 degC at 46800 rpm; 0.72 there with 0.35 kg/s and 1.5 kW of idle power. */
const MACHINE = DRIVEN.compressor;
const TURBINE = onTurbine(DRIVEN, 160e3, 44600).compressor;

describe('head', () => {
  const machine = new CentrifugalCompressor(MACHINE);

  it('makes the typed boost where it was typed', () => {
    machine.setSpeed(46800);
    expect(machine.pressureRatioAt(310.15)).toBeCloseTo(173.5 / 100.5, 12);
  });

  it('goes with speed squared and with nothing else: hot inlet air is compressed less', () => {
    const head = 310.15 * ((173.5 / 100.5) ** K - 1);
    for (const speed of [10000, 30000, 46800, 60000]) {
      machine.setSpeed(speed);
      for (const temperature of [260, 310.15, 350]) {
        const expected = (1 + (head * (speed / 46800) ** 2) / temperature) ** 3.5;
        expect(Math.abs(machine.pressureRatioAt(temperature) / expected - 1)).toBeLessThan(1e-12);
      }
      expect(machine.pressureRatioAt(350)).toBeLessThan(machine.pressureRatioAt(310.15));
    }
  });

  it('says the speed that a pressure ratio takes, none where the air needs no help', () => {
    for (const speed of [20000, 46800]) {
      machine.setSpeed(speed);
      expect(machine.speedFor(machine.pressureRatioAt(300), 300) / speed).toBeCloseTo(1, 12);
    }
    // Isentropic rise of 2.5 from 300 K against the head: by hand.
    const expected = 46800 * Math.sqrt((300 * (2.5 ** K - 1)) / (310.15 * ((173.5 / 100.5) ** K - 1)));
    expect(machine.speedFor(2.5, 300) / expected).toBeCloseTo(1, 12);
    expect(machine.speedFor(1, 300)).toBe(0);
    expect(machine.speedFor(0.8, 300)).toBe(0);
  });
});

describe.each([MACHINE, TURBINE])('the quoted efficiency of a $kind machine', (config) => {
  it.each([
    [0.72, 1500],
    [0.6, 3000],
    [0.8, 0],
  ])('of %d with %d W of idle power is that of everything that ends in the air', (efficiency, power) => {
    const machine = new CentrifugalCompressor({
      ...config,
      quoted: { ...config.quoted, efficiency },
      idlePower: { ...config.idlePower, power },
    });
    const { flow, speed, pressureRatio, inletTemperature, inletPressure } = config.quoted;
    machine.setSpeed(speed);
    const unit = flow * CP * inletTemperature;
    const total = unit * (machine.temperatureRatio(pressureRatio) - 1) + machine.idlePower(inletPressure);
    expect(Math.abs((unit * (pressureRatio ** K - 1)) / total / efficiency - 1)).toBeLessThan(1e-9);
    // 46800 rpm is the speed of the idle power, 100.5 kPa its pressure.
    expect(machine.idlePower(inletPressure)).toBeCloseTo(power * 1.005, 9);
  });

  it('leaves 0.76504 inside, as another program in another language found for this machine', () => {
    const { speed, pressureRatio } = config.quoted;
    const machine = new CentrifugalCompressor(config);
    machine.setSpeed(speed);
    const rise = machine.temperatureRatio(pressureRatio) - 1;
    expect((pressureRatio ** K - 1) / rise).toBeCloseTo(0.76504, 5);
  });
});

// 4 kg/s from 1 bar and 25 degC to 4 bar and 200 degC take 703.5 kW at an efficiency of 0.83 (a textbook problem of
// 2010 with its answers; 0.827579 to more digits), with cp 1005 J/(kg K).
it('textbook problem: 0.827579 from 1 to 4 bar heats air of 25 degC to 200 degC', () => {
  const machine = new CentrifugalCompressor({
    ...MACHINE,
    quoted: {
      efficiency: 0.827579,
      speed: 46800,
      pressureRatio: 4,
      inletTemperature: 298,
      inletPressure: 1e5,
      flow: 4,
    },
    idlePower: { ...MACHINE.idlePower, power: 0 },
  });
  const outlet = 298 * machine.temperatureRatio(4);
  expect(Math.abs(outlet / 473 - 1)).toBeLessThan(1e-6);
  expect(Math.abs((4 * 1005 * (outlet - 298)) / 703500 - 1)).toBeLessThan(1e-5);
});

describe('with the valve open', () => {
  it('a machine on a pulley churns: discharge less inlet is W_idle/(m cp)', () => {
    for (const engineSpeed of [1000, 4500]) {
      const { gas, pressures } = settledAir(DRIVEN, { effectiveness: 0.6, coolant: 310 }, { engineSpeed });
      expect(pressures.ratio).toBe(1);
      // Throttle downstream: the inlet is at the 100 kPa outside.
      const idle = 1500 * ((6.5 * engineSpeed) / 46800) ** 2;
      expect(gas.gasPower).toBeCloseTo(idle, 9);
      expect(gas.dischargeTemperature - gas.inletTemperature).toBeCloseTo(idle / (gas.compressorFlow * CP), 9);
      expect(gas.compressorFlow / gas.airFlow).toBeCloseTo(1 + DRIVEN.bypass.recirculation, 12);
    }
  });

  it('a turbine that is asked for no pressure adds nothing', () => {
    const car = onTurbine(DRIVEN, 160e3, 44600);
    const { gas, compressor } = settledAir(car, { effectiveness: 0.6, coolant: 310 }, { engineSpeed: 4500 });
    expect(compressor.rotation).toBe(0);
    expect(gas.gasPower).toBe(0);
    expect(gas.dischargeTemperature).toBe(gas.inletTemperature);
  });
});

describe('wide open on a pulley', () => {
  const open = { mode: 'wide open', engineSpeed: 6000 } as const;
  const speed = 6000 * 6.5;

  it('a colder core means more mass at the same pressure ratio, by the engine alone', () => {
    for (const temperatureExponent of [0, 0.4]) {
      const car = { ...DRIVEN, engine: { ...DRIVEN.engine, temperatureExponent } };
      const warm = settledAir(car, { effectiveness: 0.3, coolant: 310 }, open);
      const cold = settledAir(car, { effectiveness: 0.9, coolant: 310 }, open);
      expect(cold.pressures.ratio).toBe(warm.pressures.ratio);
      expect(cold.pressures.manifold / warm.pressures.manifold).toBeCloseTo(1, 9);
      const cooled = cold.gas.chargeTemperature / warm.gas.chargeTemperature;
      expect(cooled).toBeLessThan(0.95);
      expect(cold.gas.airFlow / warm.gas.airFlow / cooled ** (temperatureExponent - 1)).toBeCloseTo(1, 9);
    }
  });

  it('pressure ratio and mass fall as the inlet air warms, as head says', () => {
    const head = 310.15 * ((173.5 / 100.5) ** K - 1) * (speed / 46800) ** 2;
    let before = Number.POSITIVE_INFINITY;
    for (const freshAir of [270, 300, 330]) {
      const { gas, pressures } = settledAir(DRIVEN, { effectiveness: 0.6, coolant: 310 }, { ...open, freshAir });
      expect(pressures.ratio / (1 + head / freshAir) ** 3.5).toBeCloseTo(1, 10);
      expect(gas.airFlow).toBeLessThan(before);
      before = gas.airFlow;
    }
  });

  it('what core and intake take comes straight off the manifold', () => {
    const { airDrop } = shippedConfig('session-coupe').core;
    const car = {
      ...DRIVEN,
      intake: { ...DRIVEN.intake, drop: 3000, dropAtFlow: 0.3 },
      core: { ...DRIVEN.core, airDrop },
    };
    const { gas, pressures } = settledAir(car, { effectiveness: 0.6, coolant: 310 }, open);
    const inlet = 1e5 - 3000 * (gas.airFlow / 0.3) ** 2;
    expect(pressures.inlet).toBeCloseTo(inlet, 6);
    const head = 310.15 * ((173.5 / 100.5) ** K - 1) * (speed / 46800) ** 2;
    const outlet = inlet * (1 + head / 303.15) ** 3.5;
    const coreOutlet = gas.coreInlet - 0.6 * (gas.coreInlet - 310);
    // 8 kPa at 0.36 kg/s and 1.6 kg/m3, with the 1.8th power of flow and the density half-way.
    const density = (0.5 * (outlet + pressures.manifold)) / (287.05 * 0.5 * (gas.coreInlet + coreOutlet));
    const drop = 8000 * (gas.airFlow / 0.36) ** 1.8 * (1.6 / density);
    expect(drop).toBeGreaterThan(3000);
    expect(pressures.manifold / (outlet - drop)).toBeCloseTo(1, 9);
  });
});

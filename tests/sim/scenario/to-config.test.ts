import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../../src/sim/scenario/parse.ts';
import { toConfig } from '../../../src/sim/scenario/to-config.ts';
import { powerOf } from '../../support/power-law.ts';
import { type Edits, ESTATE, estateWith } from './estate.ts';

function configWith(edits: Edits) {
  const { scenario, issues } = parseScenario(estateWith(edits));
  if (scenario === undefined) throw new Error(JSON.stringify(issues));
  return toConfig(scenario);
}
const config = configWith({});

describe('the estate in SI, by hand from the figures in its file', () => {
  it('air path', () => {
    expect(config.ambient).toEqual({ temperature: 300.15, pressure: 99500, relativeHumidity: 0.5 });
    expect(config.intake).toEqual({ pickUp: 6, drop: 0, dropAtFlow: 1 });
    expect(config.engine.displacement).toBeCloseTo(0.003, 15);
    expect(config.engine.referenceTemperature).toBeCloseTo(330, 10);
    expect(config.compressor).toMatchObject({ kind: 'displacement', sweptVolume: expect.closeTo(0.00155, 15) });
    expect(config.compressor.quoted).toEqual({
      efficiency: 0.66,
      speed: 10692,
      pressureRatio: 1.86,
      inletTemperature: 306.15,
      inletPressure: 99500,
    });
    expect(config.compressor.idlePower).toEqual({ power: 900, speed: 10000, exponent: 1.6 });
    expect(config.compressor.mechanicalLoss).toEqual({ power: 700, exponent: 1.5, toCasing: 0.3 });
    expect(config.bypass).toEqual({
      throttle: 'upstream',
      shareAfterCore: 0,
      drop: 2000,
      dropAtFlow: 0.02,
      recirculation: 0,
    });
    expect(config.casing.heatCapacity).toBe(9000);
    expect(config.plenum).toEqual({ heatCapacity: 4000, toChargeAir: 5, toEngine: 3, toBay: 2 });
  });

  it('core and exchanger', () => {
    expect(config.core.airConductance).toEqual({
      kind: 'power',
      reference: 390,
      atFlow: 0.3,
      exponent: 0.62,
      floor: 0,
    });
    expect(config.core.coolantConductance).toEqual({
      kind: 'power',
      reference: 1900,
      atFlow: 0.3,
      exponent: 0.6,
      floor: 0.15,
    });
    expect(config.core.airDrop).toEqual({ kind: 'power', drop: 9000, atFlow: 0.3, atDensity: 1.6, exponent: 1.8 });
    expect(config.core.metalHeatCapacity).toBe(2600);
    // 30 Pa/(L/min)^1.8 at 13 L/min is 30 * 13^1.8 = 3036 Pa
    expect(powerOf(config.core.coolantDrop).factor * (13e-3 / 60) ** 1.8).toBeCloseTo(30 * 13 ** 1.8, 8);
    expect([config.core.cellsAlongAir, config.core.cellsAlongCoolant]).toEqual([48, 24]);
    expect(config.exchanger?.faceArea).toBe(0.11);
    expect(config.cycle.before[0].exchangerAir.pickUp).toEqual({ from: 3, to: 3 });
    expect([config.exchanger?.cellsAlongAir, config.exchanger?.cellsAlongCoolant]).toEqual([12, 12]);
  });

  it('coolant loop', () => {
    expect(config.coolant.glycolByVolume).toBeCloseTo(0.4, 15);
    expect(config.coolant.propertiesAt).toBeCloseTo(313.15, 10);
    expect(config.loop).toEqual(['pump', 'core', 'exchanger', 'reservoir']);
    expect(config.lines.map(({ after }) => after)).toEqual(['reservoir', 'pump', 'core', 'exchanger']);
    expect(config.lines[1].segments).toEqual([{ length: 1.4, bore: 0.0165, lossCoefficient: 4.5 }]);
    expect(config.lines[0].roughness).toBeCloseTo(1.5e-6, 18);
    expect(config.pump.curve).toMatchObject({ kind: 'parabola', shutOffPressure: 28000 });
    expect(config.pump.curve.kind === 'parabola' && config.pump.curve.freeFlow).toBeCloseTo(26 / 60000, 15);
    expect(config.reservoir.coolantVolume).toBeCloseTo(0.0023, 15);
  });

  it('session', () => {
    expect(config.start).toEqual({
      coolant: 303.15,
      reservoir: 303.15,
      metal: 303.15,
      casing: 318.15,
      plenum: 328.15,
      sensor: 313.15,
    });
    expect(config.limit.chargeTemperature).toBeCloseTo(331.15, 10);
    const { before, block, repeats, after } = config.cycle;
    expect([before.length, block.length, repeats, after.length]).toEqual([1, 2, 8, 0]);
    expect(before[0]).toEqual({
      name: 'warm-up idle',
      kind: 'idle',
      duration: 300,
      engineSpeed: { from: 1200, to: 1200 },
      manifoldPressure: { from: 38000, to: 38000 },
      exchangerAir: { speed: { from: 2.5, to: 2.5 }, pickUp: { from: 3, to: 3 } },
      secondExchangerAir: { speed: { from: 2.5, to: 2.5 }, pickUp: { from: 0, to: 0 } },
      isExchangerBypassed: false,
      isHeatSinkOn: true,
      bayAboveOutside: 25,
      outsideTemperature: { from: 300.15, to: 300.15 },
      outsidePressure: { from: 99500, to: 99500 },
      relativeHumidity: 0.5,
      engineMetalTemperature: 363.15,
      oilTemperature: 363.15,
      pumpVoltageRatio: 1,
      secondPumpVoltageRatio: 0,
    });
    expect(block[0].engineSpeed).toEqual({ from: 2500, to: 6600 });
  });

  it('is frozen through and through', () => {
    const isFrozen = (value: unknown): boolean =>
      typeof value !== 'object' || value === null || (Object.isFrozen(value) && Object.values(value).every(isFrozen));
    expect(isFrozen(config)).toBe(true);
  });
});

describe('what follows from other keys', () => {
  const segments = (list: unknown) => configWith({ 'lines.afterPump': list }).lines[1].segments;

  it('a change of bore adds its loss on the bore that is entered', () => {
    const [first, wider, same] = segments([
      { length: 1, lossCoefficient: 1 },
      { length: 1, bore: 33, lossCoefficient: 2 },
      { length: 1, bore: 33 },
    ]);
    expect(first.lossCoefficient).toBe(1);
    // Borda and Carnot: (1 - (1/2)^2)^2 = 0.5625 velocity heads of the smaller bore, 16 times that on the larger.
    expect(wider.lossCoefficient).toBeCloseTo(2 + 9, 10);
    expect(same.lossCoefficient).toBe(0);
    const [, narrower] = segments([
      { length: 1, bore: 19 },
      { length: 1, bore: 12 },
    ]);
    // Rennels and Hudson, Pipe Flow (2012), chapter 10, evaluated in 30 digits elsewhere; on the smaller bore.
    expect(narrower.lossCoefficient).toBeCloseTo(0.4145376083, 9);
  });

  it('bends add about what handbooks give', () => {
    const [straight, bent] = segments([{ length: 1 }, { length: 1, bends: 3 }]);
    expect(straight.lossCoefficient).toBe(0);
    // Crane, Technical Paper 410 (2009): r/d = 1.5 has 14 fT, with fT 0.024 to 0.026 in steel of this size; a hose is
    // smoother.
    expect(bent.lossCoefficient / 3).toBeGreaterThan(0.2);
    expect(bent.lossCoefficient / 3).toBeLessThan(14 * 0.026);
  });

  it('a pump by points', () => {
    const curve = [
      { flow: 0, pressure: '9 psi' },
      { flow: '9 gpm', pressure: 20 },
    ];
    const edits = { 'pump.shutOffPressure': undefined, 'pump.freeFlow': undefined, 'pump.curve': curve };
    const { curve: points } = configWith(edits).pump;
    if (points.kind !== 'points') throw new Error(points.kind);
    const { flow, pressure } = points;
    // NIST SP 811: 1 psi = 6894.757 Pa, 1 US gallon a minute = 6.309020e-5 m3/s
    expect(pressure[0]).toBeCloseTo(9 * 6894.757, 1);
    expect(flow[1]).toBeCloseTo(9 * 6.30902e-5, 10);
    expect([flow[0], pressure[1]]).toEqual([0, 20000]);
  });

  it('start temperatures without a figure are those outside', () => {
    expect(configWith({ start: undefined }).start).toEqual({
      coolant: 300.15,
      reservoir: 300.15,
      metal: 300.15,
      casing: 300.15,
      plenum: 300.15,
      sensor: 300.15,
    });
    const { start } = configWith({ start: { coolant: 40, plenum: 60 } });
    expect(start).toMatchObject({ coolant: 313.15, metal: 313.15, casing: 300.15, plenum: 333.15, sensor: 333.15 });
  });

  it('a hot soak stands still; a pump is off, on or at part voltage', () => {
    const cycle = [
      { kind: 'hot soak', duration: 60, pump: 'off' },
      { kind: 'hot soak', name: 'after-run', duration: 60, pumpVoltageRatio: 0.5 },
      { kind: 'hot soak', duration: 60, pump: 'on' },
    ];
    const { before, block, repeats } = configWith({ cycle }).cycle;
    expect([block, repeats]).toEqual([[], 0]);
    expect(before.map(({ pumpVoltageRatio }) => pumpVoltageRatio)).toEqual([0, 0.5, 1]);
    expect(before.map(({ name }) => name)).toEqual(['hot soak', 'after-run', 'hot soak']);
    expect(before[0].engineSpeed).toEqual({ from: 0, to: 0 });
    expect(before[0].exchangerAir.speed).toEqual({ from: 0, to: 0 });
  });

  it('phases before, in and after the repetition keep their order', () => {
    const file = JSON.parse(ESTATE);
    const [idle, repetition] = file.cycle;
    const after = { ...idle, name: 'cool down', kind: 'cooldown' };
    const { before, block, repeats, after: last } = configWith({ cycle: [idle, idle, repetition, after] }).cycle;
    expect([before.length, block.length, repeats]).toEqual([2, 2, 8]);
    expect(last.map(({ name, kind }) => [name, kind])).toEqual([['cool down', 'cooldown']]);
  });
});

import { describe, expect, it } from 'vitest';
import { type OperatingPoint, operatingPoint } from '../../../src/sim/answers/operating-point.ts';
import { createCoolant } from '../../../src/sim/fluids/coolant.ts';
import { CoolantRing } from '../../../src/sim/model/coolant-ring.ts';
import type { Config } from '../../../src/sim/scenario/config.ts';
import { simulate } from '../../../src/sim/simulate.ts';
import { freeExchanger, KPA, LITRES, lineAfter, lossFor, parabola, ringConfig } from '../../support/ring-config.ts';
import { shippedConfig } from '../../support/shipped.ts';
import { shortConfig } from '../../support/short-session.ts';

const GRAVITY = 9.80665;
const PSI = 6894.757293168;
const FOOT = 0.3048;

const relative = (value: number, expected: number): number => Math.abs(value / expected - 1);

function pointOf(config: Config, temperature?: number): OperatingPoint {
  const point = operatingPoint(config, temperature);
  if (point === undefined) throw new Error('no pump is on');
  return point;
}

/** L/min at the end of the first pull, of an independently written model of the same loops. */
const SHIPPED = [
  ['rolling-road-estate', 13.19],
  ['quarter-mile-saloon', 53.7],
  ['session-coupe', 27.39],
  ['ridge-roadster', 12.61],
  ['motorway-wagon', 10.64],
] as const;

describe.each(SHIPPED)('%s', (file, reference) => {
  const config = shippedConfig(file);
  const point = pointOf(config);

  it('loses in its parts what the pump makes, the largest loss first', () => {
    const lost = point.losses.reduce((sum, { pressure }) => sum + pressure, 0);
    expect(relative(lost, point.pressure)).toBeLessThan(1e-7);
    const pressures = point.losses.map(({ pressure }) => pressure);
    expect(pressures).toEqual([...pressures].sort((a, b) => b - a));
    expect(pressures.every((pressure) => pressure > 0)).toBe(true);
  });

  it('has curves that cross at its flow', () => {
    const { flow, pump, loop } = point.curves;
    const behind = flow.findIndex((each, k) => each > 0 && pump[k] < loop[k]);
    const gap = (k: number) => pump[k] - loop[k];
    const crossing =
      flow[behind - 1] + (gap(behind - 1) / (gap(behind - 1) - gap(behind))) * (flow[behind] - flow[behind - 1]);
    // Straight between 61 points.
    expect(relative(crossing, point.flow)).toBeLessThan(2e-3);
    expect(flow[flow.length - 1]).toBeCloseTo(point.rating, 12);
    expect(pump[pump.length - 1]).toBeCloseTo(0, 6);
    expect(loop[0]).toBeCloseTo(0, 12);
  });

  it('has no step that takes flow away', () => {
    expect(point.steps.length).toBeGreaterThan(2);
    for (const { name, flow } of point.steps) expect(flow, name).toBeGreaterThanOrEqual(point.flow);
    const flows = point.steps.map(({ flow }) => flow);
    expect(flows).toEqual([...flows].sort((a, b) => b - a));
  });

  it('is the flow of the run, and that of the reference', () => {
    const { columns, phases } = simulate(config, { continueAfter: ({ kind }) => kind !== 'pull' });
    const { lastRow } = phases[phases.length - 1];
    const flow = columns.coolantFlow[lastRow];
    expect(Math.abs(flow / LITRES - reference)).toBeLessThan(0.02);
    // Only the lines follow the temperature.
    expect(relative(pointOf(config, columns.lineCoolantMean[lastRow]).flow, flow)).toBeLessThan(0.01);
  });
});

// What a pump's two figures joined by a straight line make of a loop that takes a quadratic pressure:
// H0 (1 - q) = a q^2 against H0 (1 - q^2) = a q^2, q = Q/Q0, by hand for a = H0: 0.618 and 0.7071, 12.6 % less.
describe('a straight line between the figures of a pump', () => {
  it('gives 0.618 of the free flow where the parabola gives 0.7071', () => {
    const density = createCoolant(0).density(ringConfig({}).coolant.propertiesAt);
    const lines = [lineAfter('core', { lossCoefficient: lossFor((40 * KPA) / (50 * LITRES) ** 2, 0.02, density) })];
    const point = pointOf(ringConfig({ lines, pump: parabola(40 * KPA, 50 * LITRES) }));
    expect(relative(point.flow, 50 * LITRES * Math.SQRT1_2)).toBeLessThan(1e-8);
    expect(relative(point.straightLineFlow ?? 0, 50 * LITRES * ((Math.sqrt(5) - 1) / 2))).toBeLessThan(1e-8);
  });

  it.each(SHIPPED)('gives 8 to 16 %% less in the %s', (file) => {
    const { flow, straightLineFlow = Number.NaN } = pointOf(shippedConfig(file));
    const less = 1 - straightLineFlow / flow;
    expect(less).toBeGreaterThan(0.08);
    expect(less).toBeLessThan(0.16);
  });
});

describe('a flow that was measured', () => {
  const density = createCoolant(0).density(ringConfig({}).coolant.propertiesAt);
  const perFlow2 = (40 * KPA) / (50 * LITRES) ** 2;
  const lines = [lineAfter('core', { lossCoefficient: lossFor(perFlow2, 0.02, density) })];
  const pump = parabola(40 * KPA, 50 * LITRES);

  it('is met, by one factor on all resistances: what the pump makes there over what the loop would take', () => {
    const measuredFlow = { flow: 25 * LITRES, temperature: ringConfig({}).coolant.propertiesAt, voltageRatio: 1 };
    const { flow, measured } = pointOf(ringConfig({ lines, pump, measuredFlow }));
    expect(relative(flow, 25 * LITRES)).toBeLessThan(1e-9);
    // 40 (1 - 1/4) = 30 kPa over 40/4 = 10 kPa.
    expect(relative(measured?.resistanceFactor ?? 0, 3)).toBeLessThan(1e-9);
    expect(relative(measured?.byCurves ?? 0, 50 * LITRES * Math.SQRT1_2)).toBeLessThan(1e-8);
  });

  // Three times the resistances: 0.048 kPa/(L/min)^2 after it, against 40 (1 - q^2/2500) kPa of the pump before it.
  describe('on a loop that is changed since', () => {
    const base = ringConfig({ lines, pump });
    const temperature = base.coolant.propertiesAt;
    const metered: Config = {
      ...base,
      measuredFlow: { flow: 25 * LITRES, temperature, voltageRatio: 1, on: base },
    };

    it('keeps the resistances with another pump: 90 (1 - q^2/3600) = 0.048 q^2', () => {
      const { flow, measured } = pointOf({ ...metered, pump: parabola(90 * KPA, 60 * LITRES) });
      const byHand = Math.sqrt(90 / 0.073) * LITRES;
      expect(relative(flow, byHand)).toBeLessThan(1e-8);
      expect(relative(measured?.resistanceFactor ?? 0, 3)).toBeLessThan(1e-9);
      // What was measured, and what curves alone made of it, is of the loop before.
      expect(measured?.flow).toBe(25 * LITRES);
      expect(relative(measured?.byCurves ?? 0, 50 * LITRES * Math.SQRT1_2)).toBeLessThan(1e-8);
      expect(relative(measured?.now ?? 0, byHand)).toBeLessThan(1e-8);
    });

    it('flows more through a wider bore: 40 (1 - q^2/2500) = 0.048 (20/25)^4 q^2', () => {
      const wide = lines.map((line) => ({
        ...line,
        segments: line.segments.map((segment) => ({ ...segment, bore: 0.025 })),
      }));
      const { flow } = pointOf({ ...metered, lines: wide });
      expect(relative(flow, Math.sqrt(40 / (0.016 + 0.048 * 0.8 ** 4)) * LITRES)).toBeLessThan(1e-8);
      expect(flow).toBeGreaterThan(25 * LITRES);
    });

    it('says what one change makes, and what a straight line would', () => {
      const { steps, straightLineFlow, measured } = pointOf(metered);
      // 80 (1 - q^2/2500) = 0.048 q^2; 40 (1 - q/50) = 0.048 q^2
      const second = steps.find(({ name }) => name === 'a second pump like it, behind the first');
      expect(relative(second?.flow ?? 0, Math.sqrt(1000) * LITRES)).toBeLessThan(1e-8);
      expect(relative(straightLineFlow ?? 0, ((Math.sqrt(0.64 + 7.68) - 0.8) / 0.096) * LITRES)).toBeLessThan(1e-8);
      expect(measured).not.toHaveProperty('now');
    });

    it('takes the curves where no resistance met it', () => {
      const shut = { ...metered, measuredFlow: { flow: 60 * LITRES, temperature, voltageRatio: 1, on: base } };
      const { flow, measured } = pointOf({ ...shut, pump: parabola(160 * KPA, 100 * LITRES) });
      // 160 (1 - q^2/10000) = 0.016 q^2
      expect(relative(flow, Math.sqrt(5000) * LITRES)).toBeLessThan(1e-8);
      expect(Object.keys(measured ?? {})).toEqual(['flow', 'byCurves']);
    });
  });

  it.each(SHIPPED)(
    'is met by the %s, with the exponents of all its parts, at its own temperature and voltage',
    (file) => {
      const config = shippedConfig(file);
      const measuredFlow = { flow: 0.8 * pointOf(config).flow, temperature: 303.15, voltageRatio: 0.9 };
      const measured = { ...config, measuredFlow };
      const ring = new CoolantRing(measured);
      const setting = {
        pumpVoltageRatio: 0.9,
        secondPumpVoltageRatio: 0.9,
        isExchangerBypassed: false,
        isHeatSinkOn: true,
      };
      expect(relative(ring.flowAt(setting, 303.15), measuredFlow.flow)).toBeLessThan(1e-9);
      // At the same flow the loop of the curves takes so much less.
      const byCurves = new CoolantRing(config);
      byCurves.flowAt(setting, 303.15);
      const taken = byCurves.round
        .filter(({ place, isLine }) => isLine || place !== 'pump')
        .reduce((sum, element) => sum - element.rise(measuredFlow.flow), 0);
      const made = byCurves.pumps.pump?.rise(measuredFlow.flow) ?? 0;
      expect(relative(ring.resistanceFactor, made / taken)).toBeLessThan(1e-9);
    },
  );
});

describe('a flow that was measured and no resistance gives', () => {
  it('is said, with the curves as they stand', () => {
    // Two pumps of 50 L/min behind each other move 50 L/min where nothing resists.
    const pump = parabola(40 * KPA, 50 * LITRES);
    const density = createCoolant(0).density(ringConfig({}).coolant.propertiesAt);
    const config = ringConfig({
      loop: ['pump', 'secondPump', 'core', 'reservoir'],
      lines: [lineAfter('core', { lossCoefficient: lossFor((80 * KPA) / (50 * LITRES) ** 2, 0.02, density) })],
      pump,
      secondPump: pump,
      measuredFlow: { flow: 60 * LITRES, temperature: 300, voltageRatio: 1 },
    });
    const { block } = config.cycle;
    const point = pointOf({
      ...config,
      cycle: { ...config.cycle, block: block.map((phase) => ({ ...phase, secondPumpVoltageRatio: 1 })) },
    });
    expect(point.measured).toEqual({ flow: 60 * LITRES, byCurves: expect.any(Number) });
    expect(relative(point.measured?.byCurves ?? 0, 50 * LITRES * Math.SQRT1_2)).toBeLessThan(1e-8);
    expect(relative(point.flow, 50 * LITRES * Math.SQRT1_2)).toBeLessThan(1e-8);
    expect(point.steps.map(({ name }) => name)).toContain('another pump like the first, behind it');
  });
});

describe('suction of the pump', () => {
  /** m of coolant above the vapour pressure, where the line from the reservoir takes `loss` [Pa] */
  function headOf(temperature: number, pressure: number, loss: number, level: number): number {
    const flow = 20 * LITRES;
    const density = createCoolant(0).density(temperature);
    const base = ringConfig({});
    const at = { from: pressure, to: pressure };
    const inPhases = <Phase extends Config['cycle']['block'][number]>(phase: Phase) => ({
      ...phase,
      outsidePressure: at,
    });
    const { before, block, repeats, after } = base.cycle;
    const { suction } = pointOf(
      ringConfig({
        ambient: { ...base.ambient, pressure },
        cycle: { before: before.map(inPhases), block: block.map(inPhases), repeats, after: after.map(inPhases) },
        coolant: { ...base.coolant, propertiesAt: temperature },
        // The loop takes nothing else, so the pump makes the loss at 20 L/min: half of its 2 x loss.
        lines: [lineAfter('reservoir', { lossCoefficient: lossFor(loss / flow ** 2, 0.02, density) })],
        pump: parabola(2 * loss, Math.SQRT2 * flow),
        reservoir: { ...base.reservoir, heightAbovePump: level },
      }),
    );
    return suction.margin / (density * GRAVITY);
  }

  // (p - pv - loss)/(rho g) + z: water of 90 degC, pv 70.182 kPa and 965.3 kg/m3 (IAPWS-IF97), level 0.15 m, loss
  // 4 kPa.
  it.each([
    [101_325, 3.017311423],
    [140_000, 7.102831421],
  ])('of water at 90 degC under %i Pa: %f m', (pressure, head) => {
    expect(Math.abs(headOf(363.15, pressure, 4000, 0.15) - head)).toBeLessThan(2e-3);
  });

  // Crane, Flow of Fluids, Technical Paper 410, 2009, example 7-32: water of 60 F under 5 psi gauge, level 25 ft below
  // the suction, 6 ft of losses: 13.887 ft, with pv 0.256 psi and 62.364 lb/ft3.
  it('of a tank below the pump: 13.887 ft', () => {
    const loss = 6 * FOOT * 62.364 * 16.018463 * GRAVITY;
    const head = headOf(288.706, (5 + 14.6959) * PSI, loss, -25 * FOOT);
    expect(relative(head / FOOT, 13.88731678)).toBeLessThan(1e-3);
  });

  it('is that of the pump with the least to spare, where two follow each other', () => {
    const second = { shutOffPressure: 28, freeFlow: 26, electricalPower: 50, suctionNeeded: 17 };
    const { suction } = pointOf(
      shortConfig({
        secondPump: second,
        'lines.afterSecondPump': [],
        loop: ['secondPump', 'pump', 'core', 'exchanger', 'reservoir'],
      }),
    );
    // The second stands at the tank; the first has its pressure before it.
    expect(suction.needed).toBe(17_000);
  });

  it('is what the pump needs by the file', () => {
    const { suction } = pointOf(shortConfig({ 'pump.suctionNeeded': 17 }));
    expect(suction.needed).toBe(17_000);
  });
});

describe('a loop with two ways', () => {
  const density = createCoolant(0).density(ringConfig({}).coolant.propertiesAt);
  const loss = (perFlow2: number) => ({ lossCoefficient: lossFor(perFlow2, 0.02, density) });
  const whole = (40 * KPA) / (50 * LITRES) ** 2;

  it('names what each way takes at its own flow', () => {
    // 4 k beside k: a third and two thirds, together 4/9 k; loop of 5/9 k: as one line of k.
    const point = pointOf(
      ringConfig({
        exchanger: freeExchanger,
        secondExchanger: freeExchanger,
        loop: ['pump', 'core', [['exchanger'], ['secondExchanger']], 'reservoir'],
        lines: [
          lineAfter('core', loss((5 / 9) * whole)),
          lineAfter('exchanger', loss(4 * whole)),
          lineAfter('secondExchanger', loss(whole)),
        ],
        pump: parabola(40 * KPA, 50 * LITRES),
      }),
    );
    const flow = 50 * LITRES * Math.SQRT1_2;
    expect(relative(point.flow, flow)).toBeLessThan(1e-8);
    const [core, first, second] = [
      ['line after the core', flow, (5 / 9) * 20],
      ['line after the front exchanger', flow / 3, (4 / 9) * 20],
      ['line after the second exchanger', (2 / 3) * flow, (4 / 9) * 20],
    ];
    for (const [name, through, pressure] of [core, first, second]) {
      const found = point.losses.find((each) => each.name === name);
      expect(relative(found?.flow ?? 0, Number(through)), String(name)).toBeLessThan(1e-8);
      expect(relative(found?.pressure ?? 0, Number(pressure) * KPA), String(name)).toBeLessThan(1e-7);
    }
    expect(point.losses).toHaveLength(3);
  });
});

it('is of no pump where none is on', () => {
  const { cycle, ...config } = shortConfig();
  const off = <Phase extends (typeof cycle.block)[number]>(phase: Phase) => ({ ...phase, pumpVoltageRatio: 0 });
  const { before, block, repeats, after } = cycle;
  const still = { before: before.map(off), block: block.map(off), repeats, after: after.map(off) };
  expect(operatingPoint({ ...config, cycle: still })).toBeUndefined();
});

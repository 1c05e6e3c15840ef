import { describe, expect, it } from 'vitest';
import { operatingPoint } from '../../../src/sim/answers/operating-point.ts';
import { createCoolant } from '../../../src/sim/fluids/coolant.ts';
import { CoolantRing, type LoopSetting } from '../../../src/sim/model/coolant-ring.ts';
import { ExchangerRun } from '../../../src/sim/model/exchanger-run.ts';
import { LineRun } from '../../../src/sim/model/line-run.ts';
import { HeatSink } from '../../../src/sim/model/loop-devices.ts';
import { ParallelWays } from '../../../src/sim/model/parallel-ways.ts';
import type { LoopItem } from '../../../src/sim/scenario/config/loop.ts';
import type { Config } from '../../../src/sim/scenario/config.ts';
import { simulate } from '../../../src/sim/simulate.ts';
import { freeExchanger, KPA, LITRES, lineAfter, lossFor, parabola, ringConfig } from '../../support/ring-config.ts';
import { shortConfig } from '../../support/short-session.ts';

const ON: LoopSetting = {
  pumpVoltageRatio: 1,
  secondPumpVoltageRatio: 1,
  isExchangerBypassed: false,
  isHeatSinkOn: true,
};

const relative = (value: number, expected: number): number => Math.abs(value / expected - 1);

/** m3/s with all coolant at the temperature of its properties. */
function flowOf(config: Config, setting: LoopSetting = ON): number {
  return new CoolantRing(config).flowAt(setting, config.coolant.propertiesAt);
}

const ONE: readonly LoopItem[] = ['pump', 'core', 'reservoir'];
const BESIDE: readonly LoopItem[] = [[['pump'], ['secondPump']], 'core', 'reservoir'];
const BEHIND: readonly LoopItem[] = ['pump', 'secondPump', 'core', 'reservoir'];

// F. M. White, Fluid Mechanics, 8th ed., chapter 11, matching example of the 32-inch pump and its sequels:
// 490 - 0.26 Q^2 ft against 120 + 0.335 Q^2 ft, Q in 1000 gal/min; printed 24900 gal/min and 330 ft, 30400 and 430,
// 31700 and 457. A ring lifts nothing: the 120 ft are taken off what the pumps make. Here a foot is a kPa and 1000
// gal/min a L/min.
describe('pumps of a textbook', () => {
  const density = createCoolant(0).density(ringConfig({}).coolant.propertiesAt);
  const system = lineAfter('core', { lossCoefficient: lossFor((0.335 * KPA) / LITRES ** 2, 0.02, density) });
  const pump = (height: number) => parabola(height * KPA, Math.sqrt(height / 0.26) * LITRES);

  it.each([
    ['one', ONE, 490 - 120, 24.93689515, 328.3193277 - 120],
    ['two beside each other', BESIDE, 490 - 120, 30.41381265, 429.875 - 120],
    ['two behind each other', BEHIND, (2 * 490 - 120) / 2, 31.71510607, 456.9590643 - 120],
  ])('%s', (_, loop, height, flow, pressure) => {
    const config = ringConfig({ loop, lines: [system], pump: pump(height), secondPump: pump(height) });
    expect(relative(flowOf(config), flow * LITRES)).toBeLessThan(2e-9);
    const cycle = { ...config.cycle, block: config.cycle.block.map((phase) => ({ ...phase, ...ON })) };
    expect(relative(operatingPoint({ ...config, cycle })?.pressure ?? 0, pressure * KPA)).toBeLessThan(1e-8);
  });
});

// 40 - 0.04 Q^2 kPa against 0.25 Q + 0.05 Q^2 kPa, Q in L/min (invented): closed form, equal to a bracketed root.
describe('pumps against a line that is laminar in part', () => {
  const cold = { ...ringConfig({}).coolant, glycolByVolume: 0.5, propertiesAt: 253.15 };
  const mix = createCoolant(0.5);
  const bore = 0.05;
  const length = (0.25 * KPA * Math.PI * bore ** 4) / (LITRES * 128 * mix.viscosity(253.15));
  const lossCoefficient = lossFor((0.05 * KPA) / LITRES ** 2, bore, mix.density(253.15));
  const pump = parabola(40 * KPA, Math.sqrt(40 / 0.04) * LITRES);

  it.each([
    ['one', ONE, 19.73866319],
    ['two beside each other', BESIDE, 23.8204684],
    ['two behind each other', BEHIND, 23.86403649],
  ])('%s', (_, loop, flow) => {
    const lines = [lineAfter('core', { bore, length, lossCoefficient })];
    const config = ringConfig({ coolant: cold, loop, lines, pump, secondPump: pump });
    expect(relative(flowOf(config), flow * LITRES)).toBeLessThan(1e-8);
  });
});

// dp = k1 m1^2 = k2 m2^2 (any text on pipe networks).
describe('two ways beside each other', () => {
  const DENSITY = 1000;
  const VISCOSITY = 1e-3;
  const BORE = 0.02;
  /** a m + b m^2 [Pa], m in kg/s: a by Hagen-Poiseuille. */
  const way = (a: number, b: number, bore = BORE, offset = 0): LineRun => {
    const length = (a * DENSITY * Math.PI * bore ** 4) / (128 * VISCOSITY);
    const lossCoefficient = lossFor(b * DENSITY ** 2, bore, DENSITY);
    const run = new LineRun(lineAfter('core', { length, lossCoefficient, bore }), offset, DENSITY, 4.2e6);
    for (const stretch of run.stretches) stretch.viscosity = VISCOSITY;
    return run;
  };

  it('share the flow as the roots of their K', () => {
    const ways = new ParallelWays([way(0, 2000)], [way(0, 500)], 'ways');
    expect(relative(-ways.rise(0.4 / DENSITY), 35.55555556)).toBeLessThan(2e-9);
    expect(relative(ways.share, 1 / (1 + Math.sqrt(2000 / 500)))).toBeLessThan(1e-9);
  });

  it('share it where wall friction has its part', () => {
    // Bores so wide that the flow is laminar.
    const ways = new ParallelWays([way(800, 1500, 0.6)], [way(100, 700, 0.6)], 'ways');
    expect(relative(-ways.rise(0.4 / DENSITY), 93.64343539)).toBeLessThan(1e-8);
    expect(relative(0.4 * ways.share, 0.09876467851)).toBeLessThan(1e-8);
  });

  it('share it as 1/1.8th powers where both are exchangers by a factor', () => {
    const exchanger = (factor: number, place: 'exchanger' | 'secondExchanger') =>
      new ExchangerRun({ ...freeExchanger, coolantDrop: { kind: 'power', factor } }, place, 0, DENSITY, 4.2e6);
    const ways = new ParallelWays([exchanger(3e9, 'exchanger')], [exchanger(1e9, 'secondExchanger')], 'ways');
    const drop = -ways.rise(3e-4);
    const share = 1 / (1 + 3 ** (1 / 1.8));
    expect(relative(ways.share, share)).toBeLessThan(1e-9);
    expect(relative(drop, 3e9 * (share * 3e-4) ** 1.8)).toBeLessThan(1e-8);
  });

  it('mix what leaves them by their shares', () => {
    const ways = new ParallelWays([way(0, 2000)], [way(0, 500, BORE, 8)], 'ways');
    ways.setFlow(4e-4, 1600);
    // Lines of 320 and 302 K, a third of the flow and two thirds of it.
    const state = new Float64Array(16).fill(320, 0, 8).fill(302, 8);
    const air = { speed: 0, temperature: 300, pressure: 1e5 };
    const near = { bay: 300, exchangerAir: air, secondExchangerAir: air };
    expect(ways.march(state, 350, near)).toBeCloseTo(308, 9);
  });
});

describe('a pump that is weaker than the one beside it', () => {
  const density = createCoolant(0).density(ringConfig({}).coolant.propertiesAt);
  const perFlow2 = (20 * KPA) / (30 * LITRES) ** 2;
  const lines = [lineAfter('core', { lossCoefficient: lossFor(perFlow2, 0.02, density) })];
  const strong = parabola(60 * KPA, 60 * LITRES);
  const weak = parabola(10 * KPA, 60 * LITRES);
  const config = ringConfig({ loop: BESIDE, lines, pump: strong, secondPump: weak });
  const inPulls = (secondPumpVoltageRatio: number): Config => ({
    ...config,
    cycle: {
      ...config.cycle,
      block: config.cycle.block.map((phase) => ({ ...phase, pumpVoltageRatio: 1, secondPumpVoltageRatio })),
    },
  });
  // H0 (1 - (Q/Q0)^2) = a Q^2
  const alone = Math.sqrt((60 * KPA) / ((60 * KPA) / (60 * LITRES) ** 2 + perFlow2));

  it('is held shut: the strong one delivers what it would by itself', () => {
    expect(perFlow2 * alone ** 2).toBeGreaterThan(10 * KPA);
    expect(relative(flowOf(config), alone)).toBeLessThan(1e-8);
  });

  it('is said to be held shut, in either way; one that is switched off is not', () => {
    expect(operatingPoint(inPulls(1))?.heldShut).toEqual(['second pump']);
    const turned = { ...inPulls(1), pump: weak, secondPump: strong };
    expect(operatingPoint(turned)?.heldShut).toEqual(['pump']);
    expect(operatingPoint(inPulls(0))?.heldShut).toEqual([]);
  });

  it('delivers where the loop takes less than it makes', () => {
    const open = { ...config, lines: [lineAfter('core', { lossCoefficient: lossFor(perFlow2 / 100, 0.02, density) })] };
    expect(flowOf(open)).toBeGreaterThan(1.2 * flowOf(open, { ...ON, secondPumpVoltageRatio: 0 }));
    expect(operatingPoint({ ...inPulls(1), lines: open.lines })?.heldShut).toEqual([]);
  });
});

describe('a pump that stands', () => {
  it('in the row takes H0 (Q/Q0)^2', () => {
    const perFlow2 = (20 * KPA) / (30 * LITRES) ** 2;
    const density = createCoolant(0).density(ringConfig({}).coolant.propertiesAt);
    const lines = [lineAfter('core', { lossCoefficient: lossFor(perFlow2, 0.02, density) })];
    const pump = parabola(50 * KPA, 60 * LITRES);
    const config = ringConfig({ loop: BEHIND, lines, pump, secondPump: parabola(30 * KPA, 45 * LITRES) });
    const standing = (30 * KPA) / (45 * LITRES) ** 2;
    const expected = Math.sqrt((50 * KPA) / ((50 * KPA) / (60 * LITRES) ** 2 + standing + perFlow2));
    expect(relative(flowOf(config, { ...ON, secondPumpVoltageRatio: 0 }), expected)).toBeLessThan(1e-8);
  });

  it('alone moves nothing: no flow, no pump heat, and coolant that is hot stays where it is', () => {
    const { columns, rowCount, energy } = simulate(
      shortConfig({
        'start.reservoir': 60,
        'reservoir.gain': 0,
        cycle: [
          { kind: 'hot soak', duration: 30, pump: 'off' },
          { kind: 'pull', duration: 1, engineSpeed: 2500, exchangerAirSpeed: 0, pump: 'off' },
        ],
      }),
    );
    for (let row = 0; row < rowCount; row++) {
      expect(columns.coolantFlow[row]).toBe(0);
      expect(Math.abs(columns.reservoirTemperature[row] - 333.15)).toBeLessThan(1e-9);
    }
    expect(energy.terms.pump).toBe(0);
  });
});

describe('an exchanger that is by-passed', () => {
  const edits = {
    'exchanger.coolantDropFactor': 200,
    'start.coolant': 60,
    'start.metal': 60,
    'ambient.temperature': 20,
    cycle: [
      {
        kind: 'cruise',
        duration: 40,
        engineSpeed: 2600,
        manifoldPressure: 55,
        exchangerAirSpeed: 0,
        exchangerValve: 'by-passed',
      },
      { kind: 'pull', duration: 5, engineSpeed: [2500, 6600], exchangerAirSpeed: 8 },
    ],
  };

  it('takes no pressure', () => {
    const config = shortConfig(edits);
    const { exchanger: _, ...others } = config;
    // The same lines: both stretches round the exchanger follow the core.
    const [afterReservoir, afterPump, afterCore, afterExchanger] = config.lines;
    const joined = { ...afterCore, segments: [...afterCore.segments, ...afterExchanger.segments] };
    const loop = config.loop.filter((item) => item !== 'exchanger');
    const without = { ...others, loop, lines: [afterReservoir, afterPump, joined] };
    const setting = { ...ON, secondPumpVoltageRatio: 0 };
    const [through, past] = [false, true].map((isExchangerBypassed) =>
      flowOf(config, { ...setting, isExchangerBypassed }),
    );
    expect(past).toBeGreaterThan(1.2 * through);
    expect(relative(past, flowOf(without, setting))).toBeLessThan(1e-9);
  });

  it('takes its fellow with it: the valve is round both', () => {
    const density = createCoolant(0).density(ringConfig({}).coolant.propertiesAt);
    const perFlow2 = (40 * KPA) / (50 * LITRES) ** 2;
    const exchanger = { ...freeExchanger, coolantDrop: { kind: 'power', factor: 1e10 } } as const;
    const config = ringConfig({
      exchanger,
      secondExchanger: exchanger,
      loop: ['pump', 'core', 'exchanger', 'secondExchanger', 'reservoir'],
      lines: [lineAfter('core', { lossCoefficient: lossFor(perFlow2, 0.02, density) })],
      pump: parabola(40 * KPA, 50 * LITRES),
    });
    // Of the line alone: H0 (1 - q^2) = H0 q^2.
    const alone = 50 * LITRES * Math.SQRT1_2;
    expect(relative(flowOf(config, { ...ON, isExchangerBypassed: true }), alone)).toBeLessThan(1e-8);
    expect(flowOf(config)).toBeLessThan(0.9 * alone);
  });

  it('stands: without air its coolant and metal stay as they were, and the rest of the loop goes on', () => {
    const { columns, phases } = simulate(shortConfig(edits));
    const [{ lastRow }] = phases;
    for (let row = 0; row <= lastRow; row++) {
      expect(Math.abs(columns.exchangerMetalMean[row] - 333.15)).toBeLessThan(1e-9);
      expect(Math.abs(columns.exchangerCoolantMean[row] - 333.15)).toBeLessThan(1e-9);
    }
    expect(Math.abs(columns.reservoirTemperature[lastRow] - 333.15)).toBeGreaterThan(0.5);
    const last = phases[1].lastRow;
    expect(columns.exchangerMetalMean[last]).toBeLessThan(332);
  });
});

// m c (Tin - Tout) = UA (Tout - T0), by hand.
describe('a heat sink', () => {
  const RATE = 1500;
  const out = (sink: HeatSink, inlet: number, rate = RATE): number => {
    sink.setFlow(0, rate);
    return sink.march(undefined, inlet);
  };

  it('by one straight line is a plate stirred by its coolant', () => {
    const sink = new HeatSink({ temperature: [280, 330], heat: [0, 50 * 400] });
    for (const inlet of [270, 280, 300, 330, 360]) {
      const expected = (RATE * inlet + 400 * 280) / (RATE + 400);
      expect(out(sink, inlet)).toBeCloseTo(expected, 9);
      expect(sink.heat).toBeCloseTo(-400 * (expected - 280), 6);
    }
  });

  it('by several lines draws on each what it says there', () => {
    const temperature = [280, 290, 310, 320];
    const heat = [-1000, 0, 6000, 7000];
    const sink = new HeatSink({ temperature, heat });
    // From the outlet back: inlet = outlet + Q/(m c).
    for (const [leaving, drawn] of [
      [275, -1500],
      [285, -500],
      [290, 0],
      [300, 3000],
      [310, 6000],
      [315, 6500],
      [330, 8000],
    ]) {
      expect(out(sink, leaving + drawn / RATE)).toBeCloseTo(leaving, 9);
      expect(sink.heat).toBeCloseTo(-drawn, 6);
    }
  });

  it('never passes the temperature at which it draws nothing, however slow the coolant', () => {
    const sink = new HeatSink({ temperature: [280, 290, 310], heat: [-1000, 0, 9000] });
    for (const rate of [1e-6, 1e-3, 1, 100, 1e5]) {
      for (const inlet of [250, 289.9, 290, 290.1, 400]) {
        const leaving = out(sink, inlet, rate);
        expect((leaving - 290) * (inlet - 290)).toBeGreaterThanOrEqual(0);
        expect(Math.abs(leaving - 290)).toBeLessThanOrEqual(Math.abs(inlet - 290));
      }
    }
  });

  it('without flow, or switched off, draws nothing', () => {
    const sink = new HeatSink({ temperature: [280, 330], heat: [0, 20000] });
    expect(out(sink, 320, 0)).toBe(320);
    expect(sink.heat).toBe(0);
    sink.isOn = false;
    expect(out(sink, 320)).toBe(320);
    expect(sink.heat).toBe(0);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FILE_WORDING, written } from '../src/sim/answers/wording.ts';
import { createCoolant } from '../src/sim/fluids/coolant.ts';
import type { TimeSeries } from '../src/sim/results/time-series.ts';
import type { Config } from '../src/sim/scenario/config.ts';
import type { JsonValue } from '../src/sim/scenario/issue.ts';
import { parseScenario } from '../src/sim/scenario/parse.ts';
import { toConfig } from '../src/sim/scenario/to-config.ts';
import { simulate, startRun } from '../src/sim/simulate.ts';
import { expectEnergyToClose } from './support/energy-account.ts';
import { type LooseDocument, shortDocument } from './support/short-session.ts';
import { balanceFromOutside } from './verification/outside-balance.ts';

/** More steps than this, in a session of a minute, count as a run that hangs. */
const MOST_STEPS = 20_000;

const share = fc.integer({ min: 0, max: 1000 }).map((thousandths) => thousandths / 1000);
const within = (low: number, high: number) => share.map((each) => low + each * (high - low));
const byDecades = (low: number, high: number) => share.map((each) => low * (high / low) ** each);
const sometimes = <Value>(value: fc.Arbitrary<Value>) => fc.option(value, { nil: undefined });
const mostly = (value: string, other: string) => fc.constantFrom(value, value, other);

const anExchanger = fc.record({
  faceArea: byDecades(0.03, 0.5),
  airConductance: byDecades(50, 2000),
  airConductanceAtFlow: within(0.2, 2),
  coolantConductance: byDecades(200, 8000),
  coolantConductanceAtFlow: within(0.1, 1),
  metalHeatCapacity: byDecades(0.5, 8),
  coolantVolume: byDecades(0.2, 4),
  coolantDropFactor: byDecades(1, 100),
  airPickUp: within(0, 15),
  blockedShare: fc.constantFrom(0, 0, 0.3),
  cellsAlongAir: fc.integer({ min: 2, max: 4 }),
  cellsAlongCoolant: fc.integer({ min: 2, max: 4 }),
});

const aParabola = fc.record({ shutOffPressure: byDecades(8, 100), freeFlow: byDecades(8, 100) });
const points = fc.record({ flow: within(10, 60), pressure: within(20, 80), knee: within(0.2, 0.8) });
const aCurve = points.map(({ flow, pressure, knee }) => ({
  curve: [
    { flow: 0, pressure },
    { flow: knee * flow, pressure: 0.8 * pressure },
    { flow, pressure: 0.1 * pressure },
  ],
}));
const aPump = fc
  .record({ curve: fc.oneof(aParabola, aCurve), electricalPower: within(10, 200) })
  .map(({ curve, electricalPower }) => ({ ...curve, electricalPower, ratedVoltage: 13, wireLength: 3 }));

const aSink = fc
  .record({ zero: within(2, 40), slope: byDecades(10, 500), bend: byDecades(0.3, 3) })
  .map(({ zero, slope, bend }) => ({
    curve: [
      { coolant: zero - 10, heat: -10 * slope },
      { coolant: zero, heat: 0 },
      { coolant: zero + 30, heat: 30 * slope * bend },
    ],
  }));

const aReservoir = fc.record({
  coolantVolume: byDecades(0.3, 20),
  gain: byDecades(0.2, 10),
  gainFrom: fc.constantFrom('bay', 'outside'),
  heightAbovePump: within(-0.5, 1),
  tank: fc.oneof(
    fc.record({ layers: fc.integer({ min: 1, max: 12 }), returnHeight: share, drawOffHeight: share }),
    fc.record({ iceMass: byDecades(0.3, 10), meltConductance: byDecades(40, 500) }),
    fc.constant({}),
  ),
});

const aLine = fc.option(
  fc.record({ length: byDecades(0.05, 1.5), bore: within(12, 32), lossCoefficient: within(0, 8), bends: fc.nat(3) }),
  { nil: undefined, freq: 3 },
);
const PLACES = [
  'Pump',
  'Core',
  'Exchanger',
  'Reservoir',
  'SecondPump',
  'SecondExchanger',
  'HeatSink',
  'Ways',
  'SecondWays',
];

/** What a phase says of the loop. */
const aSetting = fc.record({
  exchangerAirSpeed: within(0, 15),
  secondExchangerAirSpeed: within(0, 15),
  exchangerValve: mostly('through', 'by-passed'),
  heatSink: mostly('on', 'off'),
  secondPump: mostly('on', 'off'),
  voltage: fc.oneof(
    fc.constant({ pump: 'on' }),
    fc.constant({ pump: 'off' }),
    within(9, 15).map((supplyVoltage) => ({ supplyVoltage })),
    within(0.5, 1.2).map((pumpVoltageRatio) => ({ pumpVoltageRatio })),
  ),
  bayAboveAmbient: within(0, 50),
});

const aLoop = fc.record({
  /** places in the order, by rank; how many of the next parts go into the first and the second way */
  ranks: fc.array(share, { minLength: 7, maxLength: 7 }),
  pairs: fc.array(fc.tuple(fc.integer({ min: 1, max: 2 }), fc.integer({ min: 1, max: 2 }), fc.boolean()), {
    maxLength: 2,
  }),
  exchanger: sometimes(anExchanger),
  secondExchanger: sometimes(anExchanger),
  pump: aPump,
  secondPump: sometimes(aPump),
  heatSink: sometimes(aSink),
  isPumpHot: fc.boolean(),
  reservoir: aReservoir,
  lines: fc.array(aLine, { minLength: PLACES.length, maxLength: PLACES.length }),
  coolantToWall: fc.constantFrom(0, 10, 100),
  settings: fc.array(aSetting, { minLength: 4, maxLength: 4 }),
  start: fc.record({ coolant: within(1, 60), reservoir: sometimes(within(1, 60)) }),
  ambient: within(-10, 40),
  glycol: fc.constantFrom(0, 30, 50),
  measured: fc.option(within(0.2, 0.7), { nil: undefined, freq: 5 }),
});
type Loop = typeof aLoop extends fc.Arbitrary<infer Value> ? Value : never;

/** The parts in the order of their ranks, some neighbours as ways beside each other; core and reservoir never. */
function orderOf({ ranks, pairs, exchanger, secondExchanger, secondPump, heatSink }: Loop): JsonValue[] {
  const parts = [
    'pump',
    'core',
    'reservoir',
    ...(exchanger ? ['exchanger'] : []),
    ...(secondExchanger ? ['secondExchanger'] : []),
    ...(secondPump ? ['secondPump'] : []),
    ...(heatSink ? ['heatSink'] : []),
  ];
  const order: JsonValue[] = parts
    .map((part, k) => ({ part, rank: ranks[k] }))
    .sort((a, b) => a.rank - b.rank)
    .map(({ part }) => part);
  const mayDivide = (item: JsonValue) => typeof item === 'string' && item !== 'core' && item !== 'reservoir';
  for (const [first, second, isBare] of pairs) {
    const start = order.findIndex((_, k) => {
      const next = order.slice(k, k + first + second);
      return next.length === first + second && next.every(mayDivide);
    });
    if (start < 0) continue;
    const taken = order.splice(start, first + second);
    const way = (items: JsonValue[]) => (isBare && items.length === 1 ? items[0] : items);
    order.splice(start, 0, [way(taken.slice(0, first)), way(taken.slice(first))]);
  }
  return order;
}

function carOf(loop: Loop, isPumpHot = loop.isPumpHot): LooseDocument {
  const { exchanger, secondExchanger, secondPump, heatSink, lines, settings, reservoir, start } = loop;
  const car = shortDocument();
  const order = orderOf(loop);
  const pairs = order.filter((item) => typeof item !== 'string').length;
  const isThere: Record<string, boolean> = {
    Exchanger: exchanger !== undefined,
    SecondExchanger: secondExchanger !== undefined,
    SecondPump: secondPump !== undefined,
    HeatSink: heatSink !== undefined,
  };
  const { bore, roughness, wallToBay, wallHeatCapacity } = car.lines;
  car.loop = order;
  car.lines = { bore, roughness, wallToBay, wallHeatCapacity, coolantToWall: loop.coolantToWall };
  PLACES.forEach((place, k) => {
    const isWays = place === 'Ways' ? pairs > 0 : place === 'SecondWays' ? pairs > 1 : undefined;
    if (isWays === false || isThere[place] === false || (isWays && lines[k] === undefined)) return;
    car.lines[`after${place}`] = lines[k] ?? [];
  });
  delete car.exchanger;
  const shareIntoCoolant = isPumpHot ? 0.9 : 0;
  const { tank, ...vessel } = reservoir;
  Object.assign(car, { pump: { ...loop.pump, shareIntoCoolant }, reservoir: { ...vessel, ...tank } });
  if (exchanger) car.exchanger = exchanger;
  if (secondExchanger) car.secondExchanger = secondExchanger;
  if (secondPump) car.secondPump = { ...secondPump, shareIntoCoolant };
  if (heatSink) car.heatSink = heatSink;
  if (loop.measured !== undefined && 'freeFlow' in loop.pump) {
    Object.assign(car.pump, { measuredFlow: loop.measured * loop.pump.freeFlow, measuredFlowAt: 20 });
  }
  const { coolant, reservoir: tankStart } = start;
  car.start = { coolant, metal: coolant, casing: 60, ...(tankStart !== undefined && { reservoir: tankStart }) };
  car.ambient.temperature = loop.ambient;
  Object.assign(car.coolant, { glycolByVolume: loop.glycol, freezingAccepted: 'yes', propertiesAt: 25 });
  Object.assign(car.core, { cellsAlongAir: 2, cellsAlongCoolant: 3 });

  const [idle, { phases }, soak] = car.cycle;
  car.cycle = [idle, ...phases, soak];
  [6, 4, 6, 8].forEach((duration, k) => {
    car.cycle[k].duration = duration;
  });
  car.cycle.forEach((phase: LooseDocument, k: number) => {
    const { voltage, exchangerAirSpeed, secondExchangerAirSpeed, ...setting } = settings[k];
    delete phase.pump;
    delete phase.exchangerAirSpeed;
    Object.assign(phase, setting, voltage);
    if (exchanger) phase.exchangerAirSpeed = exchangerAirSpeed;
    if (secondExchanger) phase.secondExchangerAirSpeed = secondExchangerAirSpeed;
  });
  return car;
}

/** Everything that warms or cools coolant by being warmer or colder than it: no coolant passes the last of them [K]. */
function sourcesOf({ exchanger, secondExchanger, ...config }: Config, { columns, rowCount }: TimeSeries): number[] {
  const { start, cycle, heatSink, reservoir, coolant } = config;
  const phases = [...cycle.before, ...cycle.block, ...cycle.after];
  const airs = phases.flatMap(({ outsideTemperature, bayAboveOutside, exchangerAir, secondExchangerAir }) => {
    const { from } = outsideTemperature;
    return [
      from,
      from + bayAboveOutside,
      ...(exchanger ? [from + exchangerAir.pickUp.from] : []),
      ...(secondExchanger ? [from + secondExchangerAir.pickUp.from] : []),
    ];
  });
  const zero = heatSink ? [heatSink.temperature[heatSink.heat.indexOf(0)]] : [];
  const ice = reservoir.iceMass > 0 ? [createCoolant(coolant.glycolByVolume).freezingPoint] : [];
  const ofRun = [columns.dischargeTemperature, columns.casingTemperature].flatMap((column) => [
    ...column.subarray(0, rowCount),
  ]);
  return [start.coolant, start.reservoir, start.metal, start.casing, ...airs, ...zero, ...ice, ...ofRun];
}

function expectToBeBounded(config: Config, series: TimeSeries, isPumpHot: boolean): void {
  const { columns, rowCount } = series;
  const sources = sourcesOf(config, series);
  const [coldest, hottest] = [Math.min(...sources), Math.max(...sources)];
  const margin = 0.01 * (hottest - coldest);
  const least = (column: Float64Array) => column.subarray(0, rowCount).reduce((low, value) => Math.min(low, value));
  const most = (column: Float64Array) => column.subarray(0, rowCount).reduce((high, value) => Math.max(high, value));
  expect(least(columns.coldestCoolant)).toBeGreaterThan(coldest - margin);
  expect(least(columns.reservoirTemperature)).toBeGreaterThan(coldest - margin);
  // What a pump puts in warms coolant without being warm itself.
  if (!isPumpHot) expect(most(columns.hottestCoolant)).toBeLessThan(hottest + margin);
}

/** Columns that any loop has. */
const ALWAYS = [
  'chargeTemperature',
  'coolantFlow',
  'coolantIntoCore',
  'coolantOutOfCore',
  'reservoirTemperature',
  'reservoirMean',
  'iceMass',
  'coreMetalMean',
  'coreCoolantMean',
  'hottestCoolant',
  'coldestCoolant',
] as const;

function expectToBeFinite(config: Config, { columns, rowCount, energy }: TimeSeries): void {
  expect(rowCount).toBeGreaterThan(0);
  for (const name of ALWAYS) expect(columns[name].every(Number.isFinite), name).toBe(true);
  const ofPart = {
    exchangerMetalMean: config.exchanger,
    secondExchangerMetalMean: config.secondExchanger,
    heatSinkPower: config.heatSink,
    lineCoolantMean: config.lines[0],
  } as const;
  for (const [name, part] of Object.entries(ofPart)) {
    const column = columns[name as keyof typeof ofPart];
    expect(column.every(part === undefined ? Number.isNaN : Number.isFinite), name).toBe(true);
  }
  expect(Object.values(energy.terms).every(Number.isFinite)).toBe(true);
  expect(columns.coolantFlow.every((flow) => flow >= 0)).toBe(true);
}

function runOf(config: Config): TimeSeries {
  const run = startRun(config);
  let steps = 0;
  while (run.step()) if (++steps > MOST_STEPS) break;
  expect(steps).toBeLessThan(MOST_STEPS);
  return run.finish();
}

describe('any loop of any parts', () => {
  it('comes to a finite, bounded and balanced result, or says why not', () => {
    const ends = { finished: 0, stopped: 0, cancelled: 0, refused: 0 };
    const seen = { ways: 0, heldStill: 0, layered: 0, iced: 0 };
    fc.assert(
      fc.property(aLoop, (loop) => {
        const { scenario, issues } = parseScenario(JSON.stringify(carOf(loop)));
        if (scenario === undefined) {
          ends.refused++;
          expect(issues.some(({ severity, message }) => severity === 'error' && message !== '')).toBe(true);
          return;
        }
        const config = toConfig(scenario);
        const series = runOf(config);
        const { outcome } = series;
        ends[outcome.kind]++;
        if (config.loop.some((item) => typeof item !== 'string')) seen.ways++;
        if (config.reservoir.layers > 1) seen.layered++;
        if (config.reservoir.iceMass > 0) seen.iced++;
        if (series.columns.coolantFlow.some((flow) => flow === 0)) seen.heldStill++;
        if (outcome.kind === 'stopped') {
          expect(written(outcome.reason, FILE_WORDING)).toMatch(/^coolant (boils|freezes) /);
          if (series.rowCount === 0) return;
        }
        expectToBeFinite(config, series);
        expectToBeBounded(config, series, loop.isPumpHot);
        expectEnergyToClose(config, series);
      }),
      { numRuns: 5000 },
    );
    // The census shows that the property looked at something.
    expect(ends.finished).toBeGreaterThan(4000);
    expect(ends.stopped).toBeGreaterThan(20);
    expect(ends.refused + ends.cancelled).toBe(0);
    for (const count of Object.values(seen)) expect(count).toBeGreaterThan(1000);
  }, 600_000);

  it('balances from outside to 0.1 % of the heat moved', () => {
    fc.assert(
      fc.property(aLoop, (loop) => {
        // Columns do not tell which of two pumps beside each other is held shut, and keeps its heat.
        const isTold = loop.secondPump === undefined || loop.pairs.length === 0;
        const { scenario } = parseScenario(JSON.stringify(carOf(loop, loop.isPumpHot && isTold)));
        fc.pre(scenario !== undefined);
        const config = toConfig(scenario as NonNullable<typeof scenario>);
        const series = simulate(config, { interval: 0.1 });
        fc.pre(series.outcome.kind === 'finished');
        const balance = balanceFromOutside(config, series);
        expect(Math.abs(balance.gap)).toBeLessThan(1e-3);
      }),
      { numRuns: 100 },
    );
  }, 600_000);
});

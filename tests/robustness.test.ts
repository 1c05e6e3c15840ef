import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FILE_WORDING, written } from '../src/sim/answers/wording.ts';
import { COLUMNS, type ColumnName, type TimeSeries } from '../src/sim/results/time-series.ts';
import type { Config } from '../src/sim/scenario/config.ts';
import type { Issue, JsonValue } from '../src/sim/scenario/issue.ts';
import { parameterGroups } from '../src/sim/scenario/parameter-groups.ts';
import { parseScenario } from '../src/sim/scenario/parse.ts';
import { isNumberRow, isWordRow, type NumberRow, type Parameter } from '../src/sim/scenario/table.ts';
import { toConfig } from '../src/sim/scenario/to-config.ts';
import { simulate, startRun } from '../src/sim/simulate.ts';
import { expectEnergyToClose } from './support/energy-account.ts';
import { edit, type LooseDocument, shortDocument } from './support/short-session.ts';

/** More steps than this, in a session of at most three minutes, count as a run that hangs. */
const MOST_STEPS = 20_000;

/** One key of the file that is varied. */
interface Key {
  readonly path: string;
  readonly row: Parameter;
}

/** Ranges that are cut down so that a session stays short, on few cells, at a usable tolerance. */
const CUT: Readonly<Record<string, readonly [number, number]>> = {
  duration: [0.1, 30],
  tolerance: [1e-3, 5],
  longestStep: [0.5, 600],
  longestStepInPull: [0.2, 60],
  cellsAlongAir: [2, 8],
  cellsAlongCoolant: [2, 8],
};
const NOT_VARIED = new Set(['name', 'kind', 'route', 'repeat']);

/** Parts that the short session lacks, and lists: loops of every kind are tried by themselves. */
const NOT_VARIED_PLACES =
  /^(variants|upgrades|pump\.curve|chargeTable|coreGeometry|heatSink|second|core\.airVelocity|lines\.afterSecond|lines\.afterHeatSink)/;

/** Where the groups of the table stand in the short session. */
const PLACES: Readonly<Record<string, readonly string[]>> = {
  'cycle.*': ['cycle.0', 'cycle.2'],
  'cycle.*.phases.*': ['cycle.1.phases.0', 'cycle.1.phases.1'],
};
const KEYS: readonly Key[] = parameterGroups().flatMap(({ places, rows }) =>
  places
    .filter((place) => place !== '' && !NOT_VARIED_PLACES.test(place))
    .flatMap((place) => PLACES[place] ?? [place.replace('.*', '')])
    .flatMap((place) =>
      rows.filter(({ key }) => !NOT_VARIED.has(key)).map(({ key, row }) => ({ path: `${place}.${key}`, row })),
    ),
);

/** A value at this share of a row's range: by decades where the range spans them, from 0 on where it begins there. */
function valueAt({ path, row }: Key, share: number, isUsual: boolean): JsonValue {
  if (isWordRow(row)) return row.choices[Math.min(row.choices.length - 1, Math.floor(share * row.choices.length))];
  if (!isNumberRow(row)) return '';
  const [low, high] = CUT[path.slice(path.lastIndexOf('.') + 1)] ??
    (isUsual ? row.usual : undefined) ?? [row.min, row.max];
  const value = numberAt(row, low, high, share);
  return row.whole ? Math.round(value) : value;
}

function numberAt({ unit }: NumberRow, low: number, high: number, share: number): number {
  if (low > 0 && high / low > 50) return low * (high / low) ** share;
  const isByDecades = low === 0 && high > 1 && unit !== '%' && unit !== 'degC';
  if (!isByDecades) return low + (high - low) * share;
  return share < 0.05 ? 0 : high * 1e-4 ** ((1 - share) / 0.95);
}

/** What a compressor of another kind needs, invented. */
const BY_HEAD = { boostOutletPressure: 173.5, boostSpeed: 46800, quotedFlow: 0.35 };

/** Keys of a compressor of this kind: what it needs is put in, what says nothing about it is taken out. */
function repairCompressor({ compressor, bypass, ambient }: LooseDocument): void {
  const station = Math.max(ambient.pressure ?? 101.325, 101.325);
  const drop = (...keys: string[]) => {
    for (const each of keys) delete compressor[each];
  };
  if (compressor.targetManifoldPressure <= station) compressor.targetManifoldPressure = station + 40;
  if (compressor.kind === 'displacement') {
    drop('highestSpeed', 'boostOutletPressure', 'boostSpeed', 'quotedFlow');
    delete bypass.recirculation;
    if (compressor.builtInVolumeRatio !== undefined) compressor.quotedEfficiency = 0.45;
    return;
  }
  for (const [key, value] of Object.entries(BY_HEAD)) compressor[key] ??= value;
  compressor.boostOutletPressure = Math.max(compressor.boostOutletPressure, 130);
  drop('sweptVolume', 'builtInVolumeRatio');
  if (compressor.kind === 'centrifugal') {
    drop('highestSpeed', 'targetManifoldPressure');
    bypass.recirculation ??= 1;
  } else {
    drop('driveRatio');
    compressor.targetManifoldPressure ??= station + 60;
    compressor.highestSpeed ??= 90000;
  }
}

/** A part by a test point has both flows and an effectiveness, and no conductances; one of two passes has no test. */
function repairTest(part: LooseDocument): void {
  if (part?.test === undefined) return;
  if (part.passes === 2) {
    delete part.test;
    return;
  }
  const { airFlow = 0.3, coolantFlow = 12, effectiveness = 0.6, airShareOfResistance = 0.8 } = part.test;
  part.test = { airFlow, coolantFlow, effectiveness: Math.min(effectiveness, 0.85), airShareOfResistance };
  for (const side of ['airConductance', 'coolantConductance'])
    for (const key of [side, `${side}AtFlow`]) delete part[key];
}

/** A face of next to nothing stands for no exchanger at all. */
const isWithoutExchanger = ({ exchanger }: LooseDocument): boolean =>
  exchanger !== undefined && exchanger.faceArea < 0.03;

/** Of keys that say the same thing in other words the first is kept. */
function keepOneOf(phase: LooseDocument, keys: readonly string[]): void {
  const [, ...others] = keys.filter((key) => phase[key] !== undefined);
  for (const each of others) delete phase[each];
}

/** Takes out what the rules between keys forbid, so that most scenarios run. */
function repair(car: LooseDocument): void {
  const { intake, sensor, ambient, coolant, start, cycle, bypass, room, core, pump, reservoir } = car;
  repairCompressor(car);
  repairTest(core);
  repairTest(car.exchanger);
  if (reservoir.vesselVolume !== undefined) reservoir.vesselVolume = 500;
  if (bypass.shareAfterCore !== undefined) bypass.route = 'part of each';
  if (core.passes === 2 && core.cellsAlongAir % 2 === 1) core.cellsAlongAir++;
  if (room !== undefined) {
    room.volume ??= 400;
    room.extraction ??= 3;
  }
  for (const each of Object.keys(core)) if (each.startsWith('measured')) delete core[each];
  if (reservoir.iceMass > 0) delete reservoir.layers;
  if (reservoir.missingCoolant > 0) reservoir.missingCoolant = Math.min(1, 0.5 * reservoir.coolantVolume);
  if (pump.measuredFlow !== undefined) {
    pump.measuredFlow = Math.min(pump.measuredFlow, 0.5 * pump.freeFlow * (pump.measuredFlowVoltage ?? 1));
  }
  if (intake.drop > 0) intake.dropAtFlow ??= 0.3;
  const constants = [sensor.timeConstantMoving, sensor.timeConstantStill].sort((a, b) => a - b);
  [sensor.timeConstantMoving, sensor.timeConstantStill] = constants;
  const coldest = [cycle[0], ...cycle[1].phases, cycle[2]].flatMap(({ outsideTemperature = 20 }) => outsideTemperature);
  if (Math.min(ambient.temperature, start.coolant, ...coldest) < 0) coolant.glycolByVolume = 57;
  const each = (value: number | number[], change: (value: number) => number) =>
    Array.isArray(value) ? value.map(change) : change(value);
  for (const phase of [cycle[0], ...cycle[1].phases, cycle[2]]) {
    if (phase.manifoldPressure !== undefined) {
      const lowest = Math.min(...[phase.stationPressure ?? ambient.pressure ?? 101.325].flat());
      phase.manifoldPressure = each(phase.manifoldPressure, (value) => Math.min(value, lowest));
    }
    keepOneOf(phase, ['supplyVoltage', 'pumpVoltageRatio', 'pump']);
    if (phase.supplyVoltage !== undefined) pump.ratedVoltage ??= 12;
    keepOneOf(phase, ['exchangerAirSpeed', 'roadSpeed', 'fanFlow']);
    if (phase.kind === 'hot soak') delete phase.engineSpeed;
    else phase.engineSpeed = each(phase.engineSpeed, (value) => Math.max(value, 1));
    if (phase.kind === 'pull' && Array.isArray(phase.engineSpeed))
      phase.engineSpeed.sort((a: number, b: number) => a - b);
    if (isWithoutExchanger(car))
      for (const key of ['exchangerAirSpeed', 'roadSpeed', 'fanFlow', 'exchangerPickUp']) delete phase[key];
  }
  if (isWithoutExchanger(car)) {
    delete car.exchanger;
    delete car.lines.afterExchanger;
  }
}

const share = fc.integer({ min: 0, max: 1000 }).map((thousandths) => thousandths / 1000);
const key = fc.nat(KEYS.length - 1).map((index) => KEYS[index]);
const anEdit = fc
  .record({ key, share, secondShare: fc.option(share, { freq: 2 }), isUsual: fc.boolean() })
  .map(({ key, share, secondShare, isUsual }): [string, JsonValue] => {
    const value = valueAt(key, share, isUsual);
    const isPair = secondShare !== null && isNumberRow(key.row) && key.row.ramp;
    return [key.path, isPair ? [value, valueAt(key, secondShare, isUsual)] : value];
  });

/** What a hand or another program may leave in the place of a value. */
const FAULTS: readonly (JsonValue | undefined)[] = [
  undefined,
  null,
  true,
  '',
  'abc',
  '12 parsec',
  '1,234.5',
  [],
  [1, 2, 3],
  {},
  { value: 1 },
  -1,
  -1e300,
  1e300,
  5e-324,
  0,
];
const aFault = fc
  .record({ key, fault: fc.constantFrom(...FAULTS) })
  .map(({ key, fault }): [string, JsonValue | undefined] => [key.path, fault]);

const aScenario = fc
  .record({
    kind: fc.constantFrom('displacement', 'displacement', 'centrifugal', 'turbine-driven'),
    edits: fc.array(anEdit, { maxLength: 60, size: 'max' }),
    isRepaired: fc.integer({ min: 0, max: 9 }).map((tenth) => tenth > 0),
    faults: fc.oneof(
      { weight: 6, arbitrary: fc.constant([]) },
      { weight: 1, arbitrary: fc.array(aFault, { maxLength: 3 }) },
    ),
  })
  .map(({ kind, edits, isRepaired, faults }) => {
    const car = shortDocument();
    car.compressor.kind = kind;
    for (const [path, value] of edits) edit(car, path, value);
    if (isRepaired) repair(car);
    for (const [path, value] of faults) edit(car, path, value);
    return JSON.stringify(car);
  });

function expectToBeUseful(issues: readonly Issue[]): void {
  expect(issues.some(({ severity }) => severity === 'error')).toBe(true);
  for (const { path, message, found, expected } of issues) {
    for (const text of [path, message, found, expected]) expect(text).not.toBe('');
  }
}

function runWithin(config: Config, mostSteps: number): TimeSeries {
  const run = startRun(config);
  let steps = 0;
  while (run.step()) {
    steps++;
    if (steps >= mostSteps) break;
  }
  expect(steps).toBeLessThan(MOST_STEPS);
  return run.finish();
}

const POSITIVE = (Object.keys(COLUMNS) as ColumnName[]).filter(
  (name) => ['degC', 'kPa abs'].includes(COLUMNS[name][0]) || name === 'pressureRatio',
);

/** Columns of a part that may not be there: then no row has a value. */
const OF_PART: Readonly<Partial<Record<ColumnName, 'exchanger' | 'secondExchanger' | 'heatSink'>>> = {
  coolantOutOfExchanger: 'exchanger',
  exchangerMetalMean: 'exchanger',
  exchangerCoolantMean: 'exchanger',
  exchangerAirOutlet: 'exchanger',
  coolantOutOfSecondExchanger: 'secondExchanger',
  secondExchangerMetalMean: 'secondExchanger',
  secondExchangerCoolantMean: 'secondExchanger',
  secondExchangerAirOutlet: 'secondExchanger',
  heatSinkPower: 'heatSink',
};

function expectToBePhysical({ columns, rowCount }: TimeSeries, config: Config): void {
  const isThere = (name: string) => {
    const part = OF_PART[name as ColumnName];
    return part === undefined || config[part] !== undefined;
  };
  for (const [name, column] of Object.entries(columns)) {
    expect(column.length).toBe(rowCount);
    if (!isThere(name)) {
      expect(column.every(Number.isNaN), name).toBe(true);
      continue;
    }
    expect(column.every(Number.isFinite), name).toBe(true);
  }
  for (const name of POSITIVE.filter(isThere))
    expect(
      columns[name].every((value) => value > 0),
      name,
    ).toBe(true);
}

describe('whatever the values in a scenario', () => {
  it('a run comes to finite results, or stops with a reason, or the file is refused with the path of its fault', () => {
    const ends = { finished: 0, stopped: 0, cancelled: 0, refused: 0 };
    fc.assert(
      fc.property(aScenario, (text) => {
        const { scenario, issues } = parseScenario(text);
        if (scenario === undefined) {
          ends.refused++;
          expectToBeUseful(issues);
          return;
        }
        const config = toConfig(scenario);
        const series = runWithin(config, MOST_STEPS);
        const { outcome } = series;
        ends[outcome.kind]++;
        expectToBePhysical(series, config);
        expectEnergyToClose(config, series);
        if (outcome.kind === 'stopped') {
          const reason = written(outcome.reason, FILE_WORDING);
          expect(reason).not.toMatch(/NaN|Infinity|undefined|do not settle|no step is short enough/);
          expect(reason.length).toBeGreaterThan(20);
          if (series.rowCount > 0) expect(series.columns.time[series.rowCount - 1]).toBe(outcome.time);
        }
      }),
      { numRuns: 2000 },
    );
    // The census shows that the property looked at something.
    expect(ends.finished).toBeGreaterThan(800);
    expect(ends.stopped).toBeGreaterThan(100);
    expect(ends.refused).toBeGreaterThan(200);
    expect(ends.cancelled).toBe(0);
    // 14 s on a machine of one's own.
  }, 600_000);

  it('the same scenario gives the same bytes', () => {
    fc.assert(
      fc.property(aScenario, (text) => {
        const { scenario } = parseScenario(text);
        if (scenario === undefined) return;
        const config = toConfig(scenario);
        const [first, second] = [simulate(config), simulate(config)];
        for (const name of Object.keys(COLUMNS) as ColumnName[]) {
          const [a, b] = [first, second].map(({ columns }) => Buffer.from(columns[name].buffer));
          expect(a.equals(b), name).toBe(true);
        }
        expect(second.outcome).toEqual(first.outcome);
      }),
      { numRuns: 50 },
    );
  });

  it('a damaged file is refused with the place of the damage, or still says what it said', () => {
    const whole = JSON.stringify(shortDocument(), undefined, 2);
    const damage = fc.record({
      place: fc.nat(whole.length - 1),
      length: fc.nat(40),
      instead: fc.string({ maxLength: 3 }),
    });
    fc.assert(
      fc.property(damage, ({ place, length, instead }) => {
        const { scenario, issues } = parseScenario(whole.slice(0, place) + instead + whole.slice(place + length));
        if (scenario === undefined) expectToBeUseful(issues);
      }),
      { numRuns: 1000 },
    );
  });
});

import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../src/sim/answers/finding.ts';
import { findings } from '../../../src/sim/answers/findings.ts';
import { FILE_WORDING } from '../../../src/sim/answers/wording.ts';
import { createCoolant } from '../../../src/sim/fluids/coolant.ts';
import type { RunEvent, TimeSeries } from '../../../src/sim/results/time-series.ts';
import type { Config } from '../../../src/sim/scenario/config.ts';
import { simulate } from '../../../src/sim/simulate.ts';
import { type HandMadePhase, handMadeSeries } from '../../support/hand-made-series.ts';
import { type Edits, shortConfig } from '../../support/short-session.ts';

type Columns = NonNullable<HandMadePhase['columns']>;

const both = (value: number): number[] => [value, value];
const QUIET: Columns = { hottestCoolant: both(310), coldestCoolant: both(300), reservoirTemperature: both(305) };
const CLOSED = { ...simulate(shortConfig(), { continueAfter: () => false }).energy };

/** Idle for 15 s, a pull to 21 s, cruise to 33 s, a pull to 39 s: the phases of the short session, two rows each. */
function series(given: {
  readonly first?: Columns;
  readonly second?: Columns;
  readonly cruise?: Columns;
  readonly events?: readonly RunEvent[];
  readonly more?: Partial<TimeSeries>;
}): TimeSeries {
  const { first, second, cruise, events = [], more } = given;
  const phase = (kind: HandMadePhase['kind'], from: number, to: number, columns: Columns = {}): HandMadePhase => ({
    kind,
    rows: [
      [from, 330],
      [to, 330],
    ],
    columns: { ...QUIET, ...columns },
  });
  const made = handMadeSeries([
    phase('idle', 0, 15),
    phase('pull', 15, 21, first),
    phase('cruise', 21, 33, cruise),
    phase('pull', 33, 39, second),
  ]);
  return {
    ...made,
    rowCount: made.columns.time.length,
    events,
    outcome: { kind: 'finished' },
    energy: CLOSED,
    work: { steps: 1, rejected: 0, sweeps: 2 },
    ...more,
  };
}

const found = (kind: Finding['kind'], config: Config, of: TimeSeries): Finding | undefined =>
  findings(config, of).find((each) => each.kind === kind);

describe('a run that stopped', () => {
  const stopped = (cause: 'boiling' | 'freezing' | 'no answer', time: number) =>
    series({ more: { outcome: { kind: 'stopped', time, cause, reason: ['it got to ', { temperature: 400 }] } } });

  it('comes first, with time, reason and what to do', () => {
    const [first] = findings(shortConfig(), stopped('boiling', 18));
    expect(first).toMatchObject({ rank: 'stop', kind: 'run stopped', time: 18, place: 'coolant' });
    expect(first.text).toBe(
      'The run stopped at 18.0 s (pull 1): it got to 126.9 degC. More coolant flow or more air at the front exchanger keeps it liquid.',
    );
    const { exchanger: _, ...car } = shortConfig();
    const bare = { ...car, loop: car.loop.filter((part) => part !== 'exchanger') };
    expect(findings(bare, stopped('boiling', 18))[0].text).toMatch(/More coolant flow or a front exchanger keeps it/);
    expect(findings(shortConfig(), stopped('freezing', 18))[0].text).toContain('more glycol');
  });

  it('names no phase where the next one could not begin', () => {
    const [first] = findings(shortConfig(), stopped('no answer', 39));
    expect(first).toMatchObject({ place: 'air' });
    expect(first.text).toMatch(/^The run stopped at 39\.0 s: it got/);
  });

  it('is not warned of nearly boiling or freezing as well', () => {
    const config = shortConfig();
    const hot: Columns = { hottestCoolant: both(400), coldestCoolant: both(200) };
    const outcome = { kind: 'stopped', time: 18, reason: [] } as const;
    const kinds = (cause: 'boiling' | 'freezing') =>
      findings(config, series({ first: hot, more: { outcome: { ...outcome, cause } } })).map(({ kind }) => kind);
    expect(kinds('boiling')).not.toContain('coolant near boiling');
    expect(kinds('boiling')).toContain('coolant near freezing');
    expect(kinds('freezing')).not.toContain('coolant near freezing');
    expect(kinds('freezing')).toContain('coolant near boiling');
  });
});

describe('an energy balance', () => {
  // 1000 kJ in, 998 kJ stored: 0.2 % missing.
  const terms = Object.fromEntries(Object.keys(CLOSED.terms).map((term) => [term, 0])) as typeof CLOSED.terms;
  const energy = (stored: number, worstStepGap = 0) => ({
    more: { energy: { ...CLOSED, terms: { ...terms, shaft: 1e6 }, stored, worstStepGap } },
  });

  it('that does not close stops, of the whole run or of one step', () => {
    const whole = found('energy not closed', shortConfig(), series(energy(0.998e6)));
    expect(whole).toMatchObject({ rank: 'stop' });
    expect(whole?.text).toContain('0.20 % of the heat moved is missing');
    expect(found('energy not closed', shortConfig(), series(energy(1e6, 0.0131)))?.text).toContain('1.31 %');
  });

  it('may miss a thousandth', () => {
    expect(found('energy not closed', shortConfig(), series(energy(0.9991e6, 0.9e-3)))).toBeUndefined();
  });
});

describe('water in the core', () => {
  const events: RunEvent[] = [{ time: 16.5, kind: 'core below dew point' }];

  it('is told of the worst pull, in grams and heat', () => {
    // 10 g/s for 6 s and 14 g/s at 35 kW for 6 s.
    const wet = series({
      events,
      first: { condensateFlow: both(0.01), condensationPower: both(25e3) },
      second: { condensateFlow: both(0.014), condensationPower: both(35e3) },
    });
    const finding = found('condensation', shortConfig(), wet);
    expect(finding).toMatchObject({ rank: 'check', time: 16.5, place: 'core' });
    expect(finding?.text).toMatch(/84 g in pull 2, the worst; it begins at 16\.5 s \(pull 1\)\. It puts 210 kJ into/);
  });

  it('is a note where it is less than half a gram', () => {
    const damp = series({ events, first: { condensateFlow: both(0.00008) } });
    expect(found('condensation', shortConfig(), damp)).toMatchObject({ rank: 'note' });
    expect(found('condensation', shortConfig(), series({}))).toBeUndefined();
  });

  it('is a note where condensation is switched off, wet or dry', () => {
    const off = shortConfig({ 'core.condensation': 'off' });
    const wet = found('condensation left out', off, series({ events }));
    expect(wet).toMatchObject({ rank: 'note', time: 16.5 });
    expect(wet?.text).toContain('peaks from then on are too low');
    const dry = found('condensation left out', off, series({}));
    expect(dry).not.toHaveProperty('time');
    expect(dry?.text).toContain('no core metal falls below the dew point');
  });
});

describe('the narrowest air passage', () => {
  // By hand: 0.3 kg/s at 400 K and 1.8 times 100 kPa is 1.5677 kg/m3 and 400.9 m/s of sound; through 15 cm2 it goes at
  // 127.6 m/s, Mach 0.318. (1 + 0.2 M^2)^3.5 - 1 is 7.27 %, of 180 kPa 13.1 kPa.
  const first: Columns = {
    airFlow: both(0.3),
    dischargeTemperature: both(400),
    compressorInletPressure: both(1e5),
    pressureRatio: both(1.8),
  };

  it('above Mach 0.3: the number, and what a gauge there reads too little', () => {
    const finding = found('fast air port', shortConfig({ 'core.airPortArea': 15 }), series({ first }));
    expect(finding).toMatchObject({ rank: 'check', time: 15, place: 'air' });
    expect(finding?.text).toMatch(
      /^Mach 0\.32 in .* at 15\.0 s \(pull 1\), above 0\.3: .* reads 13\.1 kPa \(7\.3 %\) below/,
    );
  });

  it('is slow enough at 20 cm2, and not looked at where none is given', () => {
    expect(found('fast air port', shortConfig({ 'core.airPortArea': 20 }), series({ first }))).toBeUndefined();
    expect(found('fast air port', shortConfig(), series({ first }))).toBeUndefined();
  });

  it('carries the air that is returned from behind the core as well', () => {
    const edits: Edits = { 'core.airPortArea': 20, 'bypass.route': 'after core' };
    const returned = series({ first: { ...first, recirculation: both(0.5) } });
    // 1.5 times 0.2387
    expect(found('fast air port', shortConfig(edits), returned)?.text).toContain('Mach 0.36');
    expect(found('fast air port', shortConfig({ 'core.airPortArea': 20 }), returned)).toBeUndefined();
  });

  it('that would need Mach 1.2 cannot take the flow', () => {
    const text = found('fast air port', shortConfig({ 'core.airPortArea': 4 }), series({ first }))?.text;
    expect(text).toMatch(/^Mach 1\.19 .* it cannot take this flow/);
  });
});

describe('a target pressure', () => {
  const events: RunEvent[] = [{ time: 35.25, kind: 'target pressure lost' }];

  it('that is lost: when, and what it takes', () => {
    const finding = found('target pressure lost', shortConfig(), series({ events }));
    expect(finding).toMatchObject({ rank: 'check', time: 35.25 });
    expect(finding?.text).toMatch(/ at 35\.3 s \(pull 2\): .* smaller compressor pulley/);
    expect(found('target pressure lost', shortConfig(), series({}))).toBeUndefined();
  });
});

describe('coolant', () => {
  // Water at sea level under 90 kPa: 191.325 kPa. Steam tables have 116.91 degC at 180 and 120.21 degC at 200 kPa, so
  // 118.8 degC there, 391.97 K.
  const water = shortConfig({ 'coolant.glycolByVolume': 0, 'coolant.capPressure': 90, 'ambient.pressure': 101.325 });
  const cruise = (hottest: number, coldest: number) =>
    series({ cruise: { hottestCoolant: [310, hottest], coldestCoolant: [300, coldest] } });

  it('within 5 K of boiling is told with both temperatures', () => {
    const finding = found('coolant near boiling', water, cruise(387.5, 300));
    expect(finding).toMatchObject({ rank: 'check', time: 33, place: 'coolant' });
    expect(finding?.text).toContain('114.4 degC at 33.0 s (cruise), 4.5 K below where it boils');
    expect(found('coolant near boiling', water, cruise(386.5, 300))).toBeUndefined();
  });

  it('within 5 K of freezing too, but for a tank of ice', () => {
    const finding = found('coolant near freezing', water, cruise(310, 277.15));
    expect(finding).toMatchObject({ rank: 'check', time: 33 });
    expect(finding?.text).toContain('4.0 degC at 33.0 s (cruise), 4.0 K above its first ice');
    expect(found('coolant near freezing', water, cruise(310, 278.65))).toBeUndefined();
    const iced = { ...water, reservoir: { ...water.reservoir, iceMass: 5 } };
    expect(found('coolant near freezing', iced, cruise(310, 277.15))).toBeUndefined();
  });

  it('boils at the lowest pressure of the run', () => {
    const high = shortConfig({
      'coolant.glycolByVolume': 0,
      'ambient.pressure': 101.325,
      'cycle.1.phases.1.stationPressure': 80,
    });
    const boils = createCoolant(0).boilingPoint(80e3 + 90e3);
    expect(found('coolant near boiling', high, cruise(boils - 4.9, 300))).toBeDefined();
  });
});

describe('ice', () => {
  const config = shortConfig();
  const iced = { ...config, reservoir: { ...config.reservoir, iceMass: 10 } };

  it('gone before the last pull is over is to check', () => {
    const finding = found('ice gone', iced, series({ events: [{ time: 24, kind: 'ice gone' }] }));
    expect(finding).toMatchObject({ rank: 'check', time: 24, place: 'tank' });
    expect(finding?.text).toContain('gone at 24.0 s (cruise), before the end of pull 2, the last:');
  });

  it('left after the last pull is a note', () => {
    const finding = found('ice left', iced, series({ second: { iceMass: [5, 3.5] } }));
    expect(finding).toMatchObject({ rank: 'note', text: '35 % of the ice is left after pull 2.' });
    expect(found('ice left', config, series({ second: { iceMass: [5, 3.5] } }))).toBeUndefined();
  });

  it('that forms again is a note', () => {
    const finding = found('ice forms', iced, series({ events: [{ time: 30, kind: 'ice forms' }] }));
    expect(finding).toMatchObject({ rank: 'note', time: 30 });
  });
});

describe('notes', () => {
  it('name the phases that ran without the pump, with their length in all', () => {
    const config = shortConfig({ 'cycle.1.phases.1.pump': 'off' });
    const run = simulate(config);
    // The cruise of 12 s twice, and the soak of 20 s.
    expect(found('pump off', config, run)?.text).toContain('off in cruise (24 s), hot soak (20 s)');
    expect(found('pump off', config, series({}))?.text).toContain('off in cruise (12 s):');
  });

  it('say which pulls lie outside the charge table', () => {
    const config = shortConfig();
    const table = (highest: number) => ({
      ...config,
      chargeTable: [
        { chargeTemperature: 300, spark: 0, torque: 0 },
        { chargeTemperature: highest, spark: -2, torque: -0.02 },
      ],
    });
    expect(found('outside charge table', table(329), series({}))?.text).toContain('2 pulls peak outside');
    expect(found('outside charge table', table(331), series({}))).toBeUndefined();
  });

  it('carry what a core is beyond, one each', () => {
    const config = shortConfig();
    const marked = { ...config, core: { ...config.core, marks: ['Too deep.', 'Too thin.'] } };
    const marks = findings(marked, series({})).filter(({ kind }) => kind === 'core mark');
    expect(marks.map(({ text }) => text)).toEqual(['Too deep.', 'Too thin.']);
  });
});

describe('findings', () => {
  it('stand in the order stop, check, note, whatever the order in which they are looked for', () => {
    const config = shortConfig({ 'core.airPortArea': 1, 'core.condensation': 'off', 'cycle.1.phases.1.pump': 'off' });
    const events: RunEvent[] = [
      { time: 2, kind: 'core below dew point' },
      { time: 35, kind: 'target pressure lost' },
    ];
    const outcome = { kind: 'stopped', time: 38, cause: 'no answer', reason: ['so'] } as const;
    const first: Columns = { airFlow: both(0.3), pressureRatio: both(1.8), compressorInletPressure: both(1e5) };
    const many = series({ events, first: { ...first, dischargeTemperature: both(400) }, more: { outcome } });
    const told = findings(config, many).map(({ rank, kind }) => [rank, kind]);
    expect(told).toEqual([
      ['stop', 'run stopped'],
      ['check', 'target pressure lost'],
      ['check', 'fast air port'],
      ['note', 'condensation left out'],
      ['note', 'pump off'],
    ]);
  });

  it('write temperatures and times as they are asked to', () => {
    const wording = { ...FILE_WORDING, temperature: () => 'HOT', time: () => 'LATE' };
    const boiling = findings(shortConfig(), series({ first: { hottestCoolant: both(450) } }), wording);
    expect(boiling[0].text).toContain('reaches HOT at LATE (pull 1)');
  });
});

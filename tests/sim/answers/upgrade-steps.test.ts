import { describe, expect, it } from 'vitest';
import { conduct, type RunJob } from '../../../src/sim/answers/study.ts';
import { explainSteps, explainUpgrades } from '../../../src/sim/answers/upgrade-sentences.ts';
import { fittedUpgrades, studyUpgrades, type Upgrade } from '../../../src/sim/answers/upgrade-steps.ts';
import { FILE_WORDING } from '../../../src/sim/answers/wording.ts';
import type { TimeSeries } from '../../../src/sim/results/time-series.ts';
import { parseScenario } from '../../../src/sim/scenario/parse.ts';
import type { Scenario } from '../../../src/sim/scenario/scenario.ts';
import { toConfig } from '../../../src/sim/scenario/to-config.ts';
import { applyUpgrades } from '../../../src/sim/scenario/upgrade-list.ts';
import { applyVariant } from '../../../src/sim/scenario/variants.ts';
import { handMadeSeries } from '../../support/hand-made-series.ts';
import { shippedDocument } from '../../support/shipped.ts';
import { type Edits, shortConfig } from '../../support/short-session.ts';

const KELVIN = 273.15;
const LIMIT = 50;

function shippedStudy(file: string) {
  const { scenario } = parseScenario(JSON.stringify(shippedDocument(file)));
  if (scenario === undefined) throw new Error(file);
  const upgrades = scenario.values.upgrades ?? [];
  const configOf = (chosen: readonly number[]) => {
    const car = chosen.length === 0 ? scenario : applyUpgrades(scenario, upgrades, chosen).scenario;
    return car && toConfig(car);
  };
  const study = conduct(studyUpgrades(upgrades, configOf, { withOrders: false }));
  if (study === undefined) throw new Error(file);
  return study;
}

/**
 * Count, deciding peak in degC and coolant of the first pull in L/min; no number where the reference has no such row.
 */
type Row = readonly [count: number, peak: number, coolant: number] | undefined;

// Independently written model of the same physics on the same demo cars; peaks to 0.1 K, one digit of the table.
describe.each<{ file: string; base: Row; alone: readonly Row[]; inOrder: readonly Row[] }>([
  {
    file: 'rolling-road-estate',
    base: [0, 63.5, 13.2],
    alone: [
      [8, 54.7, 13.2],
      [0, 61.8, 18.0],
      [0, 61.3, 21.9],
      [0, 63.1, 13.2],
      [0, 63.2, 13.2],
    ],
    inOrder: [
      [8, 54.7, 13.2],
      [8, 53.8, 18.0],
      [8, 52.4, 32.5],
      [8, 49.8, 32.4],
      [8, 50.2, 32.4],
    ],
  },
  {
    file: 'ridge-roadster',
    base: [0, 53.3, 12.6],
    alone: [[1, 49.7, Number.NaN], [0, 50, Number.NaN], undefined, [0, 52.8, Number.NaN], [0, 50, Number.NaN]],
    inOrder: [
      [1, 49.7, Number.NaN],
      [4, 42.9, Number.NaN],
      [4, 42.7, Number.NaN],
      [4, 42, Number.NaN],
      [4, 41.1, Number.NaN],
    ],
  },
])('upgrades of the $file against the reference', ({ file, base, alone, inOrder }) => {
  const study = shippedStudy(file);

  it('as it is, each alone, and one on top of the other', () => {
    const rows = [
      [base, study.base] as const,
      ...alone.map((row, k) => [row, study.alone[k].car] as const),
      ...inOrder.map((row, k) => [row, study.inOrder[k].car] as const),
    ];
    for (const [row, car] of rows) {
      if (row === undefined) continue;
      const [count, peak, coolant] = row;
      expect(car?.count).toBe(count);
      expect(Math.abs((car?.deciding?.peak ?? 0) - KELVIN - peak)).toBeLessThan(0.1);
      if (!Number.isNaN(coolant)) expect(60e3 * (car?.firstPull?.coolantFlow ?? 0)).toBeCloseTo(coolant, 0);
    }
  });
});

it('the tank behind the exchanger makes the estate worse, by 0.4 K at the same count: 49.8, then 50.2 degC', () => {
  const { change } = shippedStudy('rolling-road-estate').inOrder[4];
  expect(change).toMatchObject({ effect: 'worse', count: 0 });
  expect(Math.abs((change?.peak ?? 0) - 0.4)).toBeLessThan(0.1);
});

describe('steps in a short session', () => {
  const STEPS: readonly (Upgrade & { readonly edits: Edits })[] = [
    { name: 'slow sensor', edits: { 'sensor.timeConstantMoving': 5 } },
    { name: 'better core', edits: { 'core.airConductance': 585, 'core.coolantConductance': 3582 } },
    { name: 'half a core', edits: { 'core.airConductance': 200 } },
  ];
  const base = shortConfig();
  const study = conduct(
    studyUpgrades(STEPS, (chosen) => shortConfig(Object.assign({}, ...chosen.map((upgrade) => STEPS[upgrade].edits))), {
      withOrders: false,
    }),
  );

  it('a step that cannot touch the charge has no effect, one that cools is better, one that warms is worse', () => {
    expect(study?.alone.map(({ change }) => change?.effect)).toEqual(['no effect', 'better', 'worse']);
    expect(study?.alone[0].change?.peak).toBe(0);
    expect(study?.limit).toBe(base.limit.chargeTemperature);
  });

  it('on top of the other, against the step before and against the car as it is', () => {
    const [first, second, third] = study?.inOrder ?? [];
    const [one, two] = [second.car?.deciding?.peak ?? 0, third.car?.deciding?.peak ?? 0];
    expect(third.change?.peak).toBeCloseTo(two - one, 12);
    expect(third.total?.peak).toBeCloseTo(two - (study?.base.deciding?.peak ?? 0), 12);
    expect(first.change).toEqual(first.total);
  });
});

/** Runs made by hand: peaks in degC by the upgrades that are fitted, "0,2"; undefined where the car cannot be. */
function byHand(
  upgrades: readonly Upgrade[],
  peaks: Readonly<Record<string, readonly number[]>>,
  withOrders = false,
  fitted: readonly number[] = [],
) {
  const short = shortConfig({ 'limit.chargeTemperature': LIMIT });
  const asked: string[] = [];
  const study = studyUpgrades(
    upgrades,
    (chosen) => {
      if (!(chosen.join() in peaks)) return undefined;
      const parts = chosen.filter((upgrade) => !fitted.includes(upgrade));
      const gain = parts.reduce((sum, upgrade) => sum + 2 ** upgrade, 0);
      // Each set is another car, a heavier plenum, but for what is fitted already.
      return { ...short, name: chosen.join(), plenum: { ...short.plenum, heatCapacity: 1e3 + gain } };
    },
    { withOrders },
  );
  const runOf = ({ config: { name } }: RunJob): TimeSeries => {
    asked.push(name);
    const pulls = peaks[name].map((peak, k) => {
      const rows = [0, 2, 10].map((time): [number, number] => [100 * k + time, peak + KELVIN]);
      return { kind: 'pull' as const, rows };
    });
    return { ...handMadeSeries(pulls), outcome: { kind: 'finished' } } as TimeSeries;
  };
  let step = study.next();
  while (!step.done) step = study.next(step.value.map(runOf));
  if (step.value === undefined) throw new Error('no car');
  return { study: step.value, asked, words: explainUpgrades(step.value, upgrades, [], FILE_WORDING) };
}

const two = (first: Partial<Upgrade> = {}, second: Partial<Upgrade> = {}): Upgrade[] => [
  { name: 'core', ...first },
  { name: 'pump', ...second },
];

describe('steps by hand', () => {
  it.each([
    [49.91, 'no effect', 'core: no effect; still 2 pulls, and the deciding peak moves by less than 0.1 K.'],
    [50.0, 'no effect', 'core: no effect; still 2 pulls, and the deciding peak moves by less than 0.1 K.'],
    [49.8, 'better', 'core: still 2 pulls, and the deciding peak falls by 0.2 K to 49.8 degC.'],
  ])('a deciding peak of 50.0 degC that goes to %d has the effect %s', (peak, effect, sentence) => {
    const { study, words } = byHand([{ name: 'core' }], { '': [45, 50], 0: [45, peak] });
    expect(study.alone[0].change?.effect).toBe(effect);
    expect(words.alone[0]).toBe(sentence);
    expect(words.alone.length === 2).toBe(effect === 'no effect');
  });

  it('one pull stays, two stay', () => {
    const { words } = byHand([{ name: 'core' }], { '': [45], 0: [44] });
    expect(words.base).toEqual(['As it is, 1 of 1 pull stays at or under 50.0 degC; pull 1 decides, at 45.0 degC.']);
  });

  it('a count decides, whatever the peak', () => {
    const { study, words } = byHand(two(), { '': [51, 52], 0: [49.9, 53], 1: [51.5, 52], '0,1': [55, 56] });
    expect(study.alone[0].change).toMatchObject({ effect: 'better', count: 1 });
    expect(words.base).toEqual(['As it is, 0 of 2 pulls stay at or under 50.0 degC; pull 1 decides, at 51.0 degC.']);
    expect(words.alone).toEqual([
      'core: 1 pull under the limit instead of 0.',
      'pump makes it worse: still 0 pulls, and the deciding peak rises by 0.5 K to 51.5 degC.',
    ]);
    expect(words.inOrder[1]).toBe('pump makes it worse: 0 pulls under the limit instead of 1.');
    expect([words.best, words.ways]).toEqual([[], []]);
  });

  it('a car that cannot be is said, and nothing is held against it', () => {
    const three = [...two(), { name: 'tank' }];
    const peaks = { '': [51], 0: [49], 1: [49], 2: [49], '0,1,2': [45], '0,2': [46], '1,2': [47] };
    const { study, words } = byHand(three, peaks, true);
    expect(study.inOrder[1]).toEqual({ upgrade: 1 });
    expect(study.inOrder[2]).not.toHaveProperty('change');
    expect(study.inOrder[2].total?.count).toBe(1);
    expect(words.inOrder.slice(1)).toEqual([
      'pump: not possible; the file refuses this car.',
      'tank: nothing to hold it against; the file refuses the car without it.',
    ]);
    expect(study.best?.order?.map(({ upgrade }) => upgrade)).toEqual([0, 2, 1]);
    expect(words.best[0]).toBe('Best order: core; tank; pump.');
    const none = byHand(two(), { '': [51], '0,1': [45] }, true);
    expect(none.study.best).not.toHaveProperty('order');
    expect(none.words.best).toEqual([
      'No order can be fitted step by step: each passes through a car that the file refuses.',
    ]);
  });

  it('a run that stops early is said, and is no way to any number of pulls', () => {
    const configOf = ({ length }: readonly number[]) => shortConfig({ 'start.coolant': 140 - length });
    const study = studyUpgrades(two({ price: 1 }), configOf, { withOrders: true });
    const stopped = conduct(study);
    expect(stopped?.base.stoppedBecause?.[0]).toContain('boil');
    expect(stopped?.best?.ways).toEqual([]);
    if (stopped === undefined) throw new Error('no study');
    expect(explainUpgrades(stopped, two(), [], FILE_WORDING).base.join(' ')).toMatch(/the run stops early.*\.$/);
  });

  it('asks for every car once: 2n without orders, 2^n with them, and no orders past eight', () => {
    const all = (count: number) => {
      const names = Array.from({ length: 2 ** count }, (_, mask) =>
        [...Array(count).keys()].filter((k) => mask & (1 << k)),
      );
      return Object.fromEntries(names.map((chosen) => [chosen.join(), [40]]));
    };
    const list = (count: number) => Array.from({ length: count }, (_, k) => ({ name: `step ${k}` }));
    for (const [count, withOrders, expected] of [
      [4, false, 8],
      [1, false, 2],
      [6, true, 64],
      [9, true, 18],
    ] as const) {
      const { asked, study, words } = byHand(list(count), all(count), withOrders);
      expect(asked).toHaveLength(expected);
      expect(new Set(asked).size).toBe(expected);
      expect(study.best !== undefined).toBe(withOrders && count <= 8);
      if (count === 9) {
        expect(words.best).toEqual([
          'Best order and cheapest way are worked out for up to 8 upgrades; there are 9 to weigh.',
        ]);
      }
    }
  });
});

describe('what is fitted already', () => {
  const three: Upgrade[] = [
    { name: 'core', price: 100 },
    { name: 'pump', price: 50 },
    { name: 'tank', price: 30 },
  ];
  // With the core on, "0" is the car as it is; were it run, it would be off by 9 K.
  const peaks = { '': [51, 52], 0: [60, 61], 1: [49, 51], 2: [50.5, 52], '1,2': [48, 49] };
  const { study, words, asked } = byHand(three, peaks, true, [0]);

  it('is not run, and is in no table, no order and no way', () => {
    expect(asked.toSorted()).toEqual(['', '1', '1,2', '2']);
    expect(study.fitted).toEqual([0]);
    expect(study.alone.map(({ upgrade }) => upgrade)).toEqual([1, 2]);
    expect(study.inOrder.map(({ upgrade, car }) => [upgrade, car?.count])).toEqual([
      [1, 1],
      [2, 2],
    ]);
    expect(study.best?.order?.map(({ upgrade }) => upgrade)).toEqual([1, 2]);
    expect(study.best?.ways?.map(({ money, upgrades }) => [money, upgrades])).toEqual([
      [0, []],
      [50, [1]],
      [80, [1, 2]],
    ]);
  });

  it('is said, in the answer and in the letter, where it has no price', () => {
    expect(words.base[1]).toBe(
      'Already fitted to this car, and so not weighed: core. What they buy shows on a car without them.',
    );
    const said = [words.lead, words.alone, words.inOrder, words.best, words.ways].flat().join(' ');
    expect(said).not.toContain('core');
    const letter = explainSteps(study, three, [{ earlier: 0, later: 1, path: 'lines.bore' }], FILE_WORDING);
    expect(letter[0]).toBe('Already fitted: core.');
    expect(letter.at(-1)).toBe("The shop's prices, and hours to fit: pump 50; tank 30.");
  });

  it('may leave one, of which there is no order to tell', () => {
    const one = byHand(two({ price: 5, hours: 2 }), { '': [51], 0: [49], 1: [51] }, true, [1]).words;
    expect([one.lead, one.best]).toEqual([['Cheapest way to the one pull, for 5 and 2 h: core.'], []]);
  });

  it('may be all there is', () => {
    const all = byHand(two(), { '': [51], 0: [51], 1: [51], '0,1': [51] }, true, [0, 1]);
    expect(all.study).toMatchObject({ fitted: [0, 1], alone: [], inOrder: [] });
    expect(all.study).not.toHaveProperty('best');
    expect(explainSteps(all.study, two(), [], FILE_WORDING)).toEqual(['Already fitted: core; pump.']);
  });

  it('is found in the demo car whose steps lead up to it, by its values', () => {
    const { scenario } = parseScenario(JSON.stringify(shippedDocument('session-coupe')));
    if (scenario === undefined) throw new Error('no coupe');
    const list = scenario.values.upgrades ?? [];
    const on = (car: Scenario) =>
      fittedUpgrades(
        toConfig(car),
        list.map((_, upgrade) => {
          const made = applyUpgrades(car, list, [upgrade]).scenario;
          return made && toConfig(made);
        }),
      );
    // As its file has it: exchanger, core ports and pump of the list stand in the car, the tank does not.
    expect(on(scenario)).toEqual([0, 1, 2]);
    const stock = applyVariant(scenario, 'stock loop').scenario;
    expect(stock && on(stock)).toEqual([]);
  });
});

describe('order and money in words', () => {
  // Core alone 1 pull, pump alone 2, both 3: the pump first is one pull more over the two steps.
  const PEAKS = { '': [51, 52, 53], 0: [49, 52, 53], 1: [49, 49, 53], '0,1': [48, 48, 49] };

  it('the best order against that of the file', () => {
    expect(byHand(two(), PEAKS, true).words.best).toEqual([
      'Best order: pump; core.',
      'Step by step it makes 2 and 3 pulls, the order of the file 1 and 3.',
      'Best is most pulls soonest, then coolest, then cheapest first.',
    ]);
    const byPeak = { ...PEAKS, 0: [49, 49, 53] };
    // 53 and 51.4 degC, then 49: half of 1.6 K lower on average.
    expect(byHand(two(), { ...byPeak, 1: [49, 49, 51.4] }, true).words.best[1]).toBe(
      "The order of the file makes as many pulls on the way; here the steps' deciding peaks are 0.8 K lower on average.",
    );
    expect(
      byHand(two({ price: 20 }, { price: 10 }), { ...byPeak, 1: [49, 49, 53] }, true).words.best.slice(0, 2),
    ).toEqual([
      'Best order: pump; core.',
      'The order of the file makes as many pulls on the way, and is as good within 0.1 K.',
    ]);
    expect(byHand(two(), { ...PEAKS, 1: [51, 52, 53] }, true).words.best[1]).toBe('It is the order of the file.');
  });

  it('the cheapest way to each number of pulls, by hand', () => {
    const { study, words } = byHand(two({ price: 100.1, hours: 2 }, { price: 50.2, hours: 0.5 }), PEAKS, true);
    expect(study.best?.ways?.map(({ pulls, money }) => [pulls, Number(money.toFixed(2))])).toEqual([
      [0, 0],
      [2, 50.2],
      [3, 150.3],
    ]);
    expect(words.ways).toEqual([
      '0 pulls: the car as it is.',
      '1 to 2 pulls: pump, for 50.2 and 0.5 h.',
      '3 pulls: core; pump, for 150.3 and 2.5 h.',
      'More than 3 pulls are not run in this cycle.',
    ]);
  });

  it('leads with the cheapest way to all pulls, or to the most there are, and the best order', () => {
    const priced = two({ price: 100.1, hours: 2 }, { price: 50.2 });
    expect(byHand(priced, PEAKS, true).words.lead).toEqual([
      'Cheapest way to all 3 pulls, for 150.3: core; pump.',
      'Best order: pump; core.',
    ]);
    const leadOf = (peaks: typeof PEAKS, list = priced) => byHand(list, peaks, true).words.lead[0];
    expect(leadOf({ ...PEAKS, '0,1': [48, 48, 53] })).toBe(
      'No set of the upgrades makes all 3 pulls; the most is 2, cheapest for 50.2: pump.',
    );
    const warm = { '': [49, 53, 53], 0: [49, 53, 53], 1: [49, 53, 53], '0,1': [49, 53, 53] };
    expect(leadOf(warm)).toBe('No set of the upgrades makes all 3 pulls; the most is 1, as the car makes as it is.');
    const hot = { '': [53], 0: [52], 1: [52], '0,1': [51] };
    expect(leadOf(hot)).toBe('None of the upgrades, nor all of them together, keeps a pull under the limit.');
    expect(leadOf({ '': [49], 0: [48], 1: [48], '0,1': [47] })).toBe('The car as it is makes the one pull.');
    expect(leadOf(PEAKS, two())).toBe('Best order: pump; core.');
    expect(byHand(priced, PEAKS).words.lead).toEqual([]);
  });

  it('what has no price is in no way; without any price there is no list', () => {
    const { study, words } = byHand(two({ price: 100 }), PEAKS, true);
    expect(study.best?.ways?.map(({ upgrades }) => upgrades)).toEqual([[], [0]]);
    expect(words.ways).toEqual([
      '0 pulls: the car as it is.',
      '1 pull: core, for 100.',
      'Without a price, and so in no way: "pump".',
    ]);
    const none = byHand(two(), PEAKS, true);
    expect(none.study.best).not.toHaveProperty('ways');
    expect(none.words.ways).toEqual(['The cheapest way to a number of pulls cannot be told: no upgrade has a price.']);
  });

  it('two upgrades of one key', () => {
    const { study } = byHand(two(), PEAKS);
    const clashes = [{ earlier: 0, later: 1, path: 'lines.bore' }];
    expect(explainUpgrades(study, two(), clashes, FILE_WORDING).base[1]).toBe(
      '"core" and "pump" both change lines.bore: where both are fitted, "pump" counts, being later in the file, and both are paid.',
    );
  });
});

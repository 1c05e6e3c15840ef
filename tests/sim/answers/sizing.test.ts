import { describe, expect, it } from 'vitest';
import { summarisePulls } from '../../../src/sim/answers/pull-summary.ts';
import { countPulls } from '../../../src/sim/answers/pulls-to-limit.ts';
import { explainRest } from '../../../src/sim/answers/rest-sentence.ts';
import { studyRest, withRest } from '../../../src/sim/answers/rest-time.ts';
import { explainStore } from '../../../src/sim/answers/store-sentence.ts';
import { conduct } from '../../../src/sim/answers/study.ts';
import { type StoreStudy, studyStore, withStore } from '../../../src/sim/answers/tank-size.ts';
import { FILE_WORDING } from '../../../src/sim/answers/wording.ts';
import type { Config } from '../../../src/sim/scenario/config.ts';
import { simulate } from '../../../src/sim/simulate.ts';
import { shippedConfig } from '../../support/shipped.ts';
import { type Edits, shortConfig } from '../../support/short-session.ts';

const bay = { bayAboveAmbient: 25 };
/** Six pulls of 8 s with 30 s between them: what a tank holds and what a rest sheds both count. */
const SESSION: Edits = {
  cycle: [
    {
      repeat: 6,
      phases: [
        { kind: 'pull', duration: 8, engineSpeed: [2500, 6600], exchangerAirSpeed: 2.5, ...bay },
        { kind: 'idle', duration: 30, engineSpeed: 1200, manifoldPressure: 38, exchangerAirSpeed: 2.5, ...bay },
      ],
    },
  ],
};
/** A limit that the last of six pulls just passes. */
function tight(edits: Edits = {}): Config {
  const config = shortConfig({ ...SESSION, ...edits });
  const peaks = summarisePulls(simulate(config), 0).map(({ peak }) => peak);
  return { ...config, limit: { chargeTemperature: 0.5 * (peaks[3] + peaks[4]) } };
}
const countOf = (config: Config): number =>
  countPulls(summarisePulls(simulate(config), config.limit.chargeTemperature));

describe('the smallest tank', () => {
  const config = tight();
  const study = conduct(studyStore(config, 'tank', 6));

  it('is what going through all tanks finds', () => {
    expect(countOf(config)).toBe(4);
    const litres = Array.from({ length: 60 }, (_, k) => 0.3 * (k + 1));
    const first = litres.find((size) => countOf(withStore(config, 'tank', size / 1000)) === 6) as number;
    expect(first).toBeGreaterThan(2.3);
    expect(1000 * (study.smallest as number)).toBeLessThanOrEqual(first + 1e-9);
    expect(1000 * (study.smallest as number)).toBeGreaterThan(first - 0.3 - 0.06);
  });

  it('comes with the bend of the curve where it is farthest from its chord', () => {
    const { points, knee } = study;
    const [from, to] = [points[0], points[points.length - 1]];
    const above = points.map(
      ({ size, lastPeak }) =>
        (from.lastPeak - lastPeak) / (from.lastPeak - to.lastPeak) - (size - from.size) / (to.size - from.size),
    );
    const farthest = points[above.indexOf(Math.max(...above))].size;
    expect(knee).toBe(Math.max(...above) < 0.1 ? undefined : farthest);
  });

  it('has the coolant back at the core when what lies between has passed, a mixed tank left out', () => {
    // 1.2 L of exchanger and 5.5 m of 16.5 mm line, 2.38 L, at the 13.2 L/min of a pull
    expect(study.soonestReturn).toBeCloseTo((60 * 2.38) / 13.2, 0);
  });

  it('has each size once, the car as it is among them, where the largest is met early', () => {
    const { points, now } = conduct(studyStore(shortConfig({ 'reservoir.coolantVolume': 60 }), 'tank', 1));
    const litres = points.map(({ size }) => Math.round(1000 * size));
    expect(litres).toEqual([15, 30, 45, 60, 90, 120, 180, 200]);
    expect(1000 * now).toBeCloseTo(60, 9);
  });

  it('is not asked of a session that has fewer pulls and repeats none', () => {
    const single = { ...config, cycle: { before: config.cycle.block, block: [], repeats: 0, after: [] } };
    expect(explainStore(conduct(studyStore(single, 'tank', 6)), 8, FILE_WORDING)[0]).toBe(
      'The session has 1 pull and repeats none, so 6 pulls cannot be asked for.',
    );
    expect(conduct(studyStore(single, 'tank', 1))).not.toHaveProperty('tooFew');
  });

  it('is none where no tank helps, and the words say the most that is made', () => {
    const hopeless = { ...config, limit: { chargeTemperature: 290 } };
    const none = conduct(studyStore(hopeless, 'tank', 6));
    expect(none).not.toHaveProperty('smallest');
    expect(explainStore(none, 8, FILE_WORDING)[0]).toMatch(
      /^No tank tried, up to 18\.4 L, makes 6 pulls: the most is 0\.$/,
    );
  });
});

describe('ice', () => {
  const config = shippedConfig('quarter-mile-saloon');
  const study = conduct(studyStore(config, 'ice', 6));

  it('counts as the independent model counts: 6.5, 10 and 20 kg make 3, 4 and 6 passes', () => {
    const countAt = (kilograms: number) => study.points.find(({ size }) => size === kilograms)?.count;
    expect([countAt(10), countAt(20)]).toEqual([4, 6]);
    expect(study.smallest).toBeGreaterThan(10);
    expect(study.smallest).toBeLessThanOrEqual(20);
    expect(countOf(withStore(config, 'ice', 6.5))).toBe(3);
    // Ice left at the end of each pass, kg, with 10 loaded: 8.52, 3.30, 0.02, then none.
    expect(study.points.find(({ size }) => size === 10)?.pullsOnIce).toBe(3);
  });

  it('never makes fewer passes by being more', () => {
    const counts = study.points.map(({ count }) => count);
    expect(counts).toEqual([...counts].sort((a, b) => a - b));
    expect(study.tooLarge).toEqual([]);
  });

  it('in a car without any comes with a chilled tank', () => {
    const warm = shortConfig({ ...SESSION, 'start.coolant': 30 });
    expect(withStore(warm, 'ice', 5).start.reservoir).toBe(275.15);
    expect(withStore(warm, 'ice', 0).start.reservoir).toBe(303.15);
  });

  it('stirs a layered tank, which without any stays as it is', () => {
    const layered = shortConfig({ ...SESSION, 'reservoir.layers': 5 });
    expect(withStore(layered, 'ice', 5).reservoir.layers).toBe(1);
    expect(withStore(layered, 'ice', 0)).toEqual(layered);
  });
});

describe('the rest between pulls', () => {
  it('is the shortest that going through all rests finds', () => {
    const config = tight();
    const study = conduct(studyRest(config, 6));
    expect(study).toMatchObject({ pulls: 6, now: 30, countNow: 4 });
    const rests = Array.from({ length: 120 }, (_, k) => 5 * (k + 1));
    const first = rests.find((seconds) => countOf(withRest(config, seconds / 30)) === 6) as number;
    expect(first).toBeGreaterThan(30);
    expect(study?.needed).toBeLessThanOrEqual(first + 1);
    expect(study?.needed).toBeGreaterThan(first - 5);
    expect(study?.curve.map(({ rest }) => rest)).toContain(30);
    for (const { rest, count } of study?.curve ?? []) expect(count).toBe(countOf(withRest(config, rest / 30)));
  });

  it('is not called the least where no shorter one was tried', () => {
    const easy = { ...tight(), limit: { chargeTemperature: 500 } };
    const rest = conduct(studyRest(easy, 6));
    expect(rest && explainRest(rest, FILE_WORDING)[0]).toContain(
      'of rest between them or less; no shorter one was tried',
    );
    expect(explainStore(conduct(studyStore(easy, 'tank', 6)), 8, FILE_WORDING)[0]).toContain(
      'or less; no smaller one was tried',
    );
  });

  it('is none where even twenty times as long is not enough', () => {
    const study = conduct(studyRest({ ...tight(), limit: { chargeTemperature: 290 } }, 6));
    expect(study).not.toHaveProperty('needed');
    expect(study && explainRest(study, FILE_WORDING)[0]).toBe(
      'No rest makes 6 pulls: with the 30.0 s of the cycle it is 0, and with 600 s no more.',
    );
  });

  it('is not asked for where nothing repeats', () => {
    expect(
      conduct(studyRest(shortConfig({ cycle: [{ kind: 'hot soak', duration: 9, pump: 'on' }] }), 2)),
    ).toBeUndefined();
  });

  it('knows no recovery where the hour after the first pull boils', () => {
    // A bay of 177 degC and no air at the front: 20 W/K of it take 5 L of coolant from 85 degC past 106 in minutes.
    const config = shortConfig({
      ...structuredClone(SESSION),
      'coolant.capPressure': 0,
      'start.coolant': 85,
      'reservoir.gain': 20,
      'cycle.0.phases.1.exchangerAirSpeed': 0,
      'cycle.0.phases.1.bayAboveAmbient': 150,
    });
    const study = conduct(studyRest(config, 1));
    expect(study).not.toHaveProperty('recovery');
    expect(study && explainRest(study, FILE_WORDING).at(-1)).toMatch(
      /^Over the first pull and an hour of rest after it the run stops: coolant boils .*\.$/,
    );
  });

  it('is not said to leave the coolant near where it began where a pull cools it', () => {
    // Coolant of 60 degC on a day of -30: colder after the pull than before it, by far more than 3 K in the end.
    const config = shortConfig({
      ...structuredClone(SESSION),
      'start.coolant': 60,
      'ambient.temperature': -30,
      'coolant.glycolByVolume': 50,
    });
    const study = conduct(studyRest(config, 1));
    expect(study?.recovery).toBe(0);
    expect(study && explainRest(study, FILE_WORDING).at(-1)).toBe(
      'The first pull leaves the coolant no more than 3.0 K warmer than where it began.',
    );
  });

  it('recovery is when the coolant is back within 3 K, as the recorded run shows', () => {
    const config = tight();
    const study = conduct(studyRest(config, 6));
    const [pull, rest] = config.cycle.block;
    const alone = { before: [pull, { ...rest, duration: 1800 }], block: [], repeats: 0, after: [] };
    const { columns } = simulate({ ...config, cycle: alone }, { interval: 0.5 });
    const begin = columns.coolantIntoCore[0];
    const last = columns.coolantIntoCore.findLastIndex((value) => value > begin + 3);
    expect(study?.recovery).toBeGreaterThan(0);
    expect(Math.abs((study?.recovery as number) - (columns.time[last] - 8))).toBeLessThan(1.1);
  });

  it('that is longer can be worse, and is said to be: iced water waits in warm air', () => {
    const study = conduct(studyRest(shippedConfig('quarter-mile-saloon'), 4));
    expect(study?.curve.at(-1)?.count).toBeLessThan(study?.countNow as number);
    expect(study && explainRest(study, FILE_WORDING).join(' ')).toContain('Longer is not better here');
  });
});

describe('a store in words', () => {
  const study: StoreStudy = {
    kind: 'tank',
    pulls: 6,
    now: 0.0023,
    points: [0.001, 0.002, 0.004, 0.008].map((size, k) => ({
      size,
      count: [2, 4, 6, 5][k],
      firstPeak: 330,
      lastPeak: [340, 336, 335, 334][k],
      pullsOnIce: 0,
    })),
    smallest: 0.0031,
    knee: 0.002,
    tooLarge: [0.008],
    coolant: 0.0023,
    soonestReturn: 25,
  };

  it('says size, gain, knee, what is too large, and why the first pull does not see it', () => {
    expect(explainStore(study, 12, FILE_WORDING)).toEqual([
      'For 6 pulls it takes a tank of 3.1 L; the car has 2.3 L.',
      'From 1.0 L to 8.0 L the peak of pull 6 comes out 6.0 K lower.',
      'Past 2.0 L each step more buys less.',
      'More is not always better: with 8.0 L it is fewer again, since a larger tank sheds its heat more slowly.',
      'Coolant that leaves the core is back at it after 25.0 s at the soonest, too late to change a pull of 12.0 s much: with all of it equally warm at the start, no tank helps the first pull.',
    ]);
    expect(explainStore({ ...study, tooLarge: [] }, 60, FILE_WORDING)).toHaveLength(3);
    // 9.17 kg of ice at 917 kg/m3 are 10 L.
    const iced: StoreStudy = { ...study, kind: 'ice', smallest: 9.17, now: 0, chilledTo: 275.15 };
    expect(explainStore(iced, 60, FILE_WORDING).slice(0, 3)).toEqual([
      'For 6 pulls it takes 9.2 kg of ice; the car has none.',
      'The tank must hold 12.3 L: that ice and 2.3 L of coolant.',
      "With ice the tank's coolant is taken to start at 2.0 degC.",
    ]);
    const unneeded: StoreStudy = { ...study, kind: 'ice', smallest: 0 };
    expect(explainStore({ ...unneeded, now: 0 }, 60, FILE_WORDING)[0]).toBe(
      'For 6 pulls it takes no ice; the car has none.',
    );
    expect(explainStore({ ...unneeded, now: 5 }, 60, FILE_WORDING)[0]).toBe(
      'For 6 pulls it takes no ice; the car has 5.0 kg.',
    );
    expect(explainStore({ ...study, now: 0.005 }, 60, FILE_WORDING)[0]).toContain('the car has that');
    expect(explainStore({ ...study, pulls: 1 }, 60, FILE_WORDING)[0]).toContain('For 1 pull it takes a tank of 3.1 L');
    expect(explainStore({ ...iced, tooLarge: [20] }, 60, FILE_WORDING)).toContain(
      'More is not always better: with 20.0 kg it is fewer again.',
    );
  });
});

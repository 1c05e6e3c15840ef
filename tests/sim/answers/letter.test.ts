import { describe, expect, it } from 'vitest';
import { writeLetter } from '../../../src/sim/answers/letter.ts';
import { askQuestion, explainUnlike, questionPieces } from '../../../src/sim/answers/letter-question.ts';
import {
  answerQuestion,
  explainDoubt,
  explainLog,
  explainReturn,
  explainWhy,
  type LetterCar,
} from '../../../src/sim/answers/letter-rules.ts';
import { type PullSummary, summarisePulls } from '../../../src/sim/answers/pull-summary.ts';
import type { PullsToLimit } from '../../../src/sim/answers/pulls-to-limit.ts';
import { conduct } from '../../../src/sim/answers/study.ts';
import { studyRun } from '../../../src/sim/answers/study-run.ts';
import { FILE_WORDING } from '../../../src/sim/answers/wording.ts';
import { parseScenario } from '../../../src/sim/scenario/parse.ts';
import { toConfig } from '../../../src/sim/scenario/to-config.ts';
import { simulate } from '../../../src/sim/simulate.ts';
import { boilingDocument } from '../../support/boiling.ts';
import { shippedConfig } from '../../support/shipped.ts';

const ESTATE = shippedConfig('rolling-road-estate');
const LIMIT = 58;
const END: PullSummary['atEnd'] = {
  chargeTemperature: 335,
  indicatedTemperature: 331,
  airFlow: 0.285,
  pressureRatio: 1.83,
  manifoldPressure: 174e3,
  dischargeTemperature: 388,
  coreOutletTemperature: 334,
  drivePower: 25.9e3,
  coreAirDrop: 7700,
  coolantFlow: 13.2e-3 / 60,
  coolantIntoCore: 305.15,
  coolantOutOfCore: 317.65,
  reservoirTemperature: 304,
  iceMass: 0,
  airToCorePower: 15e3,
};

/** A car whose pulls peak at these temperatures [degC]; its log lags by 4 K. */
function car(label: string, peaks: readonly number[], end: Partial<PullSummary['atEnd']> = {}): LetterCar {
  const pulls = peaks.map(
    (peak, k): PullSummary => ({
      pull: k + 1,
      name: 'pull',
      block: k + 1,
      start: 100 * k,
      duration: 12,
      peak: peak + 273.15,
      peakTime: 100 * k + 12,
      soakPeak: 320,
      indicatedPeak: peak + 269.15,
      indicatedPeakAfterLift: peak + 271.15,
      margin: LIMIT - peak,
      ...(peak > LIMIT && { crossedAtShare: 0.75 }),
      timeAboveLimit: peak > LIMIT ? 3 : 0,
      coolantIntoCoreAtStart: 304,
      atEnd: { ...END, ...end },
      heatIntoCore: 118e3,
      driveWork: 300e3,
      latentHeat: 0,
      condensate: 0,
    }),
  );
  const config = { ...ESTATE, cycle: { ...ESTATE.cycle, repeats: peaks.length } };
  return { label, config, pulls, series: { outcome: { kind: 'finished' }, phases: [] } };
}

/** The same run, broken off in the pull after its last. */
function stoppedCar(label: string, peaks: readonly number[]): LetterCar {
  const whole = car(label, peaks);
  const [start, pull] = [
    100 * peaks.length,
    { name: 'pull', kind: 'pull', firstRow: 0, lastRow: 0, block: 1 } as const,
  ];
  return {
    ...whole,
    config: { ...ESTATE, cycle: { ...ESTATE.cycle, repeats: peaks.length + 1 } },
    series: {
      outcome: { kind: 'stopped', time: start + 5, cause: 'boiling', reason: ['coolant boils in the core'] },
      phases: [
        ...whole.pulls.map((each) => ({ ...pull, start: each.start, end: each.start + 12, isWhole: true })),
        { ...pull, start, end: start + 5, isWhole: false },
      ],
    },
  };
}

/** The same with a cycle of this block, so often. */
const driving = (asked: LetterCar, kinds: readonly ('pull' | 'idle')[], repeats: number): LetterCar => {
  const phase = (kind: string) => ESTATE.cycle.block.find((each) => (each.kind === 'pull') === (kind === 'pull'));
  const block = kinds.flatMap((kind) => phase(kind) ?? []);
  return { ...asked, config: { ...ESTATE, cycle: { ...ESTATE.cycle, block, repeats } } };
};

const stock = car('as it stands', [63, 64, 65, 65]);
const answer = (before: readonly number[], after?: readonly number[]): string =>
  answerQuestion(car('as it stands', before), after && car('with a bigger core', after), FILE_WORDING);

describe('the question', () => {
  it('names pulls, rest, limit and day where one pull repeats, and the session where several do', () => {
    const eight = car('with a bigger core', [50, 51, 52, 53, 54, 54, 54, 54]);
    expect(askQuestion(eight, FILE_WORDING)).toBe(
      'Will the car with a bigger core keep the charge at or under 58.0 degC through 8 back-to-back pulls of 12 s, with 90 s between them, on a day of 27.0 degC?',
    );
    const session = driving(stock, ['pull', 'idle', 'pull', 'idle'], 2);
    expect(askQuestion(session, FILE_WORDING)).toContain('through the 4 pulls of this session on a day');
  });

  it('counts one pull as one', () => {
    const one = car('as it stands', [50]);
    expect(askQuestion(one, FILE_WORDING)).toContain('through 1 pull of 12 s, with 90 s of rest, on a day');
    const before = driving(one, ['pull'], 1).config.cycle.block;
    const session = { ...one, config: { ...ESTATE, cycle: { before, block: [], repeats: 0, after: [] } } };
    expect(askQuestion(session, FILE_WORDING)).toContain('through the pull of this session on a day');
  });

  it('counts the pulls of the cycle, however many came to their end', () => {
    expect(askQuestion(stoppedCar('as it stands', [50, 51, 52]), FILE_WORDING)).toContain('4 back-to-back pulls');
  });

  it('comes in pieces that join to the same words, its quantities marked', () => {
    const eight = car('with a bigger core', [50, 51, 52, 53, 54, 54, 54, 54]);
    const slots = (asked: LetterCar) =>
      questionPieces(asked, FILE_WORDING).flatMap(({ slot, text }) => (slot ? [[slot, text]] : []));
    expect(slots(eight)).toEqual([
      ['change', 'with a bigger core'],
      ['limit', '58.0 degC'],
      ['pulls', '8'],
      ['length', '12 s'],
      ['rest', '90 s'],
      ['day', '27.0 degC'],
    ]);
    const session = driving(stock, ['pull', 'idle', 'pull', 'idle'], 2);
    expect(slots(session).map(([slot]) => slot)).toEqual(['change', 'limit', 'day']);
    const joined = questionPieces(eight, FILE_WORDING).map(({ text }) => text);
    expect(joined.join('')).toBe(askQuestion(eight, FILE_WORDING));
  });

  it('says where two cars are not asked the same', () => {
    const eight = car('as it stands', [50, 51, 52, 53, 54, 54, 54, 54]);
    const ambient = { ...ESTATE.ambient, temperature: 308.15 };
    const hotter = { ...eight, label: 'with a bigger core', config: { ...eight.config, ambient } };
    expect(explainUnlike(eight, hotter, FILE_WORDING)).toBe(
      'Before and after are not asked the same: the day is 27.0 degC before and 35.0 degC after.',
    );
    expect(explainUnlike(eight, { ...eight, label: 'with a bigger core' }, FILE_WORDING)).toBe('');
  });
});

describe('the answer begins', () => {
  it.each([
    [
      'Yes',
      [63, 64],
      [50, 52],
      /^Yes\. The car as it stands goes over 58\.0 degC in pull 1; with a bigger core it stays under in all 2, with 6\.0 K to spare\.$/,
    ],
    [
      'In part',
      [63, 64, 65],
      [50, 57, 59],
      /^In part\. With a bigger core it makes 2 of 3 pulls in place of 0, then goes over/,
    ],
    [
      'Not needed',
      [50, 51],
      [48, 49],
      /^Not needed\. The car as it stands stays under .*; with a bigger core its hottest pull is 2\.0 K cooler\.$/,
    ],
    ['Not needed, without effect', [50, 51], [50, 51.05], /nothing changes that counts\.$/],
    ['Not needed, another pull the hottest', [55, 54, 53], [51, 54, 57], /its hottest pull is 2\.0 K hotter\.$/],
    ['No, though cooler', [63, 64], [61.4, 62], /^No\. With a bigger core pull 1 is 1\.6 K cooler, not enough/],
    ['No, nothing', [63, 64], [63.04, 64], /^No\. With a bigger core nothing changes that counts: 0 of 2/],
    ['No, worse in kelvins', [63, 64], [64, 65], /^No, it gets worse\. With a bigger core pull 1 is 1\.0 K hotter/],
    [
      'No, worse in pulls',
      [50, 64],
      [63, 64],
      /^No, it gets worse\. With a bigger core the car makes 0 of 2 pulls in place of 1\.$/,
    ],
    [
      'Yes alone',
      [50, 51],
      undefined,
      /^Yes\. It stays under 58\.0 degC in all 2; hottest is pull 2 at 51\.0 degC, with 7\.0 K to spare\.$/,
    ],
    [
      'Yes alone, one pull',
      [50],
      undefined,
      /^Yes\. It stays under 58\.0 degC in its one pull; hottest is pull 1 at 50\.0 degC, with 8\.0 K to spare\.$/,
    ],
    ['No alone, in the first', [63, 64], undefined, /^No\. It goes over 58\.0 degC in its first pull, by 5\.0 K\.$/],
    ['No alone, later', [57, 64], undefined, /^No\. It makes 1 of 2, and goes over 58\.0 degC in pull 2, by 6\.0 K\.$/],
    ['without pulls', [], undefined, /nothing to answer/],
  ] as const)('%s', (_, before, after, words) => {
    expect(answer(before, after)).toMatch(words);
  });

  it.each([
    [
      'alone',
      stoppedCar('as it stands', [50, 51, 52]),
      undefined,
      'No answer: the run stops at 305.0 s (pull 4), because coolant boils in the core.',
    ],
    [
      'before',
      stoppedCar('as it stands', [50]),
      car('with a bigger core', [50, 51]),
      'No answer: the run of the car as it stands stops at 105.0 s (pull 2), because coolant boils in the core.',
    ],
    [
      'after',
      car('as it stands', [63, 64]),
      stoppedCar('with a bigger core', [50]),
      'No answer: the run of the car with a bigger core stops at 105.0 s (pull 2), because coolant boils in the core.',
    ],
    [
      'both',
      stoppedCar('as it stands', []),
      stoppedCar('with a bigger core', [50]),
      'No answer: the run of the car as it stands stops at 5.0 s (pull 1), because coolant boils in the core; the run of the car with a bigger core stops at 105.0 s (pull 2), because coolant boils in the core.',
    ],
  ] as const)('No answer where a run stopped: %s', (_, before, after, words) => {
    expect(answerQuestion(before, after, FILE_WORDING)).toBe(words);
  });
});

describe('the other parts', () => {
  it('why: the part, or a tie, and what each alone would buy', () => {
    const told = (heldBackBy: ('core conductance' | 'intake air')[]) =>
      explainWhy(
        {
          ...stock,
          study: {
            answer: {} as PullsToLimit,
            bottleneck: {
              pull: 1,
              heldBackBy,
              falls: [
                { part: 'core conductance', fall: 8.25 },
                { part: 'intake air', fall: 0.04 },
              ],
            },
          },
        },
        FILE_WORDING,
      );
    expect(told(['core conductance'])).toEqual([
      'What holds the car as it stands back is the core.',
      'If one part alone were perfect, pull 1 would peak lower by: the core 8.3 K.',
    ]);
    expect(told(['core conductance', 'intake air'])[0]).toContain('is a tie: the core and the intake air.');
    expect(told([])[0]).toBe('No one part holds the car as it stands back.');
    expect(explainWhy(stock, FILE_WORDING)).toEqual([]);
  });

  it('log: what the gauge shows, the lag, and the rise after lift', () => {
    expect(explainLog(stock, FILE_WORDING)).toEqual([
      'In pull 1 of the car as it stands a log shows 59.0 degC at most; the charge itself peaks at 63.0 degC: the sensor lags by 4.0 K.',
      'It goes on rising to 61.0 degC after lift.',
      'Coolant goes into the core at 32.0 degC and out at 44.5 degC, 13.2 L/min of it.',
    ]);
  });

  it('log: a sensor that is hotter than the charge ever was', () => {
    const [pull] = stock.pulls;
    const soaked = { ...stock, pulls: [{ ...pull, indicatedPeak: pull.peak + 6 }] };
    expect(explainLog(soaked, FILE_WORDING)[0]).toBe(
      'In pull 1 of the car as it stands a log shows 69.0 degC at most; the charge itself peaks at 63.0 degC: the sensor still shows heat from before the pull, or of the metal that holds it.',
    );
  });

  it('return: what goes up, down and stays', () => {
    const after = car('with a bigger core', [50], { coreAirDrop: 5200, drivePower: 24.7e3 });
    expect(explainReturn(stock, after, FILE_WORDING)[0]).toBe(
      'At the end of pull 1 the core pressure drop goes from 7.7 kPa to 5.2 kPa, the manifold stays at 174.0 kPa, drive power goes from 25.9 kW to 24.7 kW and the coolant flow stays at 13.2 L/min.',
    );
  });

  it('doubt: the core 5 % off, and pulls without end', () => {
    const doubt = (settled: PullsToLimit['settled'], low = 0, high = 0) =>
      explainDoubt(
        {
          ...stock,
          study: {
            answer: {
              limit: 331,
              count: 0,
              pullsRun: 4,
              settled,
              countAtLowerConductance: low,
              countAtHigherConductance: high,
            },
          },
        },
        FILE_WORDING,
      ).join(' ');
    const settled = { kind: 'settled', peak: 330, afterPulls: 9 } as const;
    expect(doubt(settled)).toMatch(
      /the count is the same\. Repeated on, the peak settles at 56\.9 degC after 9 pulls and never/,
    );
    const stopped = { kind: 'not settled', peak: 330, afterPulls: 9, stoppedBecause: ['coolant boils'] } as const;
    expect(doubt(stopped)).toMatch(/Repeated on, the run stops after 9 pulls: coolant boils\.$/);
    expect(doubt({ ...settled, firstOverLimit: 6 }, 0, 1)).toMatch(
      /it is 0 of 4, with 5 % more 1\. Repeated on, pull 6 goes over/,
    );
    expect(doubt({ ...settled, firstOverLimit: 2 })).toMatch(/settles at 56\.9 degC after 9 pulls\.$/);
    expect(doubt({ kind: 'not settled', peak: 330, afterPulls: 200 })).toContain('has not settled');
    expect(doubt({ kind: 'no repeated pulls' })).not.toContain('Repeated');
  });
});

describe('the whole letter', () => {
  it('of a real change says what the two runs say, part by part, and leaves out what it was not given', () => {
    const runOf = (label: string, variant?: string) => {
      const config = shippedConfig('rolling-road-estate', variant);
      const series = simulate(config);
      const pulls = summarisePulls(series, config.limit.chargeTemperature);
      return { label, config, series, pulls, study: conduct(studyRun(config, pulls)) };
    };
    const [before, after] = [runOf('as it stands'), runOf('with a bigger core', 'bigger core')];
    const written = writeLetter({ before, after, steps: ['A step.'], notes: 'All invented.' }, FILE_WORDING);
    expect(written.answer).toMatch(/^Yes\. .* stays under in all 8/);
    // Counts of an independently written model: none of eight, and all eight.
    expect(written.counts.map(({ count, of }) => [count, of])).toEqual([
      [0, 8],
      [8, 8],
    ]);
    expect(written.parts.map(({ part }) => part)).toEqual([
      'why',
      'log',
      'steps',
      'return',
      'doubt',
      'cautions',
      'notes',
    ]);
    expect(JSON.stringify(written)).not.toMatch(/undefined|NaN|Infinity/);
    const alone = writeLetter({ before }, FILE_WORDING);
    expect(alone.parts.map(({ part }) => part)).toEqual(['why', 'log', 'doubt', 'cautions']);
  });

  it('of a run that stopped has no answer, no count, and nothing that hangs on one', () => {
    const { scenario } = parseScenario(JSON.stringify(boilingDocument()));
    if (scenario === undefined) throw new Error('refused');
    const config = toConfig(scenario);
    const series = simulate(config);
    const pulls = summarisePulls(series, config.limit.chargeTemperature);
    expect([series.outcome.kind, pulls.length]).toEqual(['stopped', 3]);
    const before = { label: 'as it stands', config, series, pulls };
    const written = writeLetter({ before, steps: ['A step.'], otherDays: ['A day.'], notes: 'All.' }, FILE_WORDING);
    expect(written.question).toContain('through 4 back-to-back pulls');
    expect(written.answer).toMatch(/^No answer: the run stops at \d+\.\d s \(pull 4\), because coolant boils/);
    expect(written.counts).toEqual([
      { label: 'as it stands', of: 4, said: expect.stringMatching(/^Pulls that came to their end: 3\. Hottest/) },
    ]);
    expect(written.parts.map(({ part }) => part)).toEqual(['doubt', 'cautions', 'notes']);
    expect(written.parts[0].paragraphs[0]).toMatch(/^The run stopped at/);
  });
});

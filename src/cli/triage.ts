import {
  decimals,
  ESTIMATE_CAUTION,
  explainTriage,
  FILE_WORDING,
  LAST_PULL_OF_TRIAGE,
  LOOP_CAUTIONS,
  studyTriage,
  TRIAGE_RANGE,
  type Triage,
  type TriageReading,
  WHY_NO_ANSWER,
} from '../sim/index.ts';
import { aligned } from './aligned.ts';
import { csvOf } from './csv.ts';
import { EXIT } from './exit-codes.ts';
import { hasPartLoadBeforePull, noAnswer } from './no-answer.ts';
import { numberIn } from './number-in.ts';
import { onAllCores } from './on-all-cores.ts';
import { type FormOptions, printAnswer } from './print-answer.ts';
import { readConfig } from './read-scenario.ts';

export interface TriageCommandOptions extends TriageReading, FormOptions {
  readonly variant?: string;
}

/** Ranks what can be wrong with a car by two measured temperature differences. */
export async function triage(file: string, options: TriageCommandOptions): Promise<number> {
  const config = readConfig(file, options.variant);
  if (typeof config === 'number') return config;
  const found = await onAllCores(studyTriage(config, options));
  if (found === undefined) {
    return noAnswer(WHY_NO_ANSWER.noPartLoadBeforePull, hasPartLoadBeforePull(config, LAST_PULL_OF_TRIAGE));
  }
  printAnswer(options, {
    json: () => reported(found),
    csv: () => asCsv(found),
    text: () => lines(found),
  });
  return EXIT.done;
}

/** A temperature difference as it is typed: "3.5", "6.3F". */
export const difference = (text: string): number => numberIn(text, ...TRIAGE_RANGE, 'K', ', or as 6.3F');

/** A doubt is a difference above 0. */
export const doubt = (text: string): number => numberIn(text, 0.001, TRIAGE_RANGE[1], 'K', ', or as 6.3F');

const percent = (share: number | undefined): string => (share === undefined ? '' : `${Math.round(100 * share)} %`);

function lines(found: Triage): string[] {
  const { reading, phase, pull, candidates } = found;
  const row = (name: string, { rise, approach }: { rise: number; approach: number }, ...rest: string[]): string[] => [
    name,
    decimals(rise, 1),
    decimals(approach, 1),
    ...rest,
  ];
  return [
    `Coolant rise through the core at the end of ${phase}; indicated charge less coolant into the core at the end of pull ${pull}:`,
    ...aligned([
      ['cause', 'rise, K', 'approach, K', 'size', 'distance, in doubts'],
      row('measured', reading, '', ''),
      ...candidates.map((candidate) =>
        row(candidate.cause, candidate, percent(candidate.size), decimals(candidate.distance, 1)),
      ),
    ]),
    `Doubt of the measurements: ${reading.riseDoubt} K and ${reading.approachDoubt} K.`,
    '',
    ...explainTriage(found, FILE_WORDING),
    '',
    ...LOOP_CAUTIONS,
  ];
}

function reported(found: Triage) {
  const { reading, phase, pull, candidates, leading, next, notRun } = found;
  return {
    measured: {
      rise_K: reading.rise,
      approach_K: reading.approach,
      rise_doubt_K: reading.riseDoubt,
      approach_doubt_K: reading.approachDoubt,
    },
    phase,
    pull,
    causes: candidates.map(({ cause, size, rise, approach, distance }) => ({
      cause,
      ...(size !== undefined && { size_share: size }),
      rise_K: rise,
      approach_K: approach,
      distance_in_doubts: distance,
    })),
    leading: leading.map(({ cause }) => cause),
    ...(next && { measure_next: next.quantity }),
    not_run: notRun,
    sentences: explainTriage(found, FILE_WORDING),
    cautions: [...LOOP_CAUTIONS, ESTIMATE_CAUTION],
  };
}

const asCsv = ({ candidates }: Triage): string =>
  csvOf(
    ['cause', 'size [-]', 'rise [K]', 'approach [K]', 'distance [doubts]'],
    candidates.map(({ cause, size, rise, approach, distance }) => [cause, size, rise, approach, distance]),
  );

import { explainRest, FILE_WORDING, type RestStudy, studyRest, WHY_NO_ANSWER } from '../sim/index.ts';
import { aligned } from './aligned.ts';
import { csvOf } from './csv.ts';
import { EXIT } from './exit-codes.ts';
import { noAnswer } from './no-answer.ts';
import { onAllCores } from './on-all-cores.ts';
import { type FormOptions, printAnswer } from './print-answer.ts';
import { readConfig } from './read-scenario.ts';
import { wantedPulls } from './wanted-pulls.ts';

export interface RestCommandOptions extends FormOptions {
  readonly variant?: string;
  readonly pulls?: number;
}

/** Prints how long to rest between pulls, and how soon the coolant recovers. */
export async function rest(file: string, options: RestCommandOptions): Promise<number> {
  const config = readConfig(file, options.variant);
  if (typeof config === 'number') return config;
  const wanted = wantedPulls(config, options.pulls);
  if (wanted === undefined) return EXIT.nothingToAnswer;
  const study = await onAllCores(studyRest(config, wanted.pulls));
  if (study === undefined) {
    return noAnswer(WHY_NO_ANSWER.noRest, false);
  }
  printAnswer(options, {
    json: () => study,
    csv: () => asCsv(study),
    text: () => [...table(study), '', ...explainRest(study, FILE_WORDING)],
  });
  return EXIT.done;
}

const table = ({ pulls, curve }: RestStudy): string[] =>
  aligned(
    [['rest, s', 'pulls'], ...curve.map(({ rest: seconds, count }) => [seconds.toFixed(1), `${count} of ${pulls}`])],
    [],
  );

function asCsv({ pulls, now, needed, curve, recovery }: RestStudy): string {
  const head = ['rest [s]', 'pulls wanted [-]', 'pulls made [-]', 'what it is'];
  return csvOf(head, [
    ...curve.map(({ rest: seconds, count }) => [seconds, pulls, count, seconds === now ? 'the cycle' : 'tried']),
    [needed, pulls, needed === undefined ? undefined : pulls, 'shortest that does'],
    [recovery, undefined, undefined, 'recovery from the first pull'],
  ]);
}

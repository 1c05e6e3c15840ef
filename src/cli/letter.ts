import {
  applyVariant,
  conduct,
  FILE_WORDING,
  type Letter,
  type LetterRun,
  type Scenario,
  simulate,
  studyRun,
  summarisePulls,
  toConfig,
  variants,
  writeLetter,
} from '../sim/index.ts';
import { EXIT } from './exit-codes.ts';
import { readScenarioFile } from './read-scenario.ts';

export interface LetterCommandOptions {
  readonly variant?: string;
  readonly change?: string;
  readonly json?: true;
}

/** Prints the customer's letter: the question, the answer, why, and what goes with it. */
export function letter(file: string, options: LetterCommandOptions): number {
  const scenario = readScenarioFile(file);
  if (typeof scenario === 'number') return scenario;
  const before = runOf(scenario, options.variant, 'as it stands');
  const after = options.change === undefined ? undefined : runOf(scenario, options.change, `with ${options.change}`);
  if (before === undefined || (options.change !== undefined && after === undefined)) return EXIT.badUsage;
  const { notes } = scenario.values;
  const written = writeLetter({ before, ...(after && { after }), ...(notes !== undefined && { notes }) }, FILE_WORDING);
  console.log(options.json ? JSON.stringify(written, undefined, 2) : textOf(written, scenario.values.name));
  return EXIT.done;
}

function runOf(scenario: Scenario, variant: string | undefined, label: string): LetterRun | undefined {
  const changed = variant === undefined ? scenario : applyVariant(scenario, variant).scenario;
  if (changed === undefined) {
    console.error(`There is no variant "${variant}". The file has: ${variants(scenario).join(', ') || 'none'}.`);
    return undefined;
  }
  const config = toConfig(changed);
  const series = simulate(config);
  const pulls = summarisePulls(series, config.limit.chargeTemperature);
  return { label, config, series, pulls, study: conduct(studyRun(config, pulls)) };
}

/** Of a terminal, and of paper. */
const WIDTH = 100;

function textOf({ question, answer, unlike, counts, parts }: Letter, name: string): string {
  return [
    name,
    '='.repeat(name.length),
    '',
    ...wrapped(question),
    '',
    ...wrapped(answer),
    ...(unlike === undefined ? [] : wrapped(unlike)),
    '',
    ...counts.flatMap(({ label, count, of, said }) => wrapped(`${count} of ${of} ${label}. ${said}`)),
    ...parts.flatMap(({ heading, paragraphs }) => [
      '',
      heading,
      '-'.repeat(heading.length),
      ...paragraphs.flatMap(wrapped),
    ]),
  ].join('\n');
}

function wrapped(text: string): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const line = lines.at(-1);
    if (line !== undefined && line.length + 1 + word.length <= WIDTH) lines[lines.length - 1] = `${line} ${word}`;
    else lines.push(word);
  }
  return lines;
}

import {
  explainHottestDay,
  explainSteps,
  FILE_WORDING,
  isStopped,
  type Letter,
  type LetterRun,
  type Scenario,
  simulate,
  studyHottestDay,
  studyRun,
  studyUpgrades,
  summarisePulls,
  toConfig,
  upgradeClashes,
  writeLetter,
} from '../sim/index.ts';
import { EXIT } from './exit-codes.ts';
import { hasPull } from './no-answer.ts';
import { onAllCores } from './on-all-cores.ts';
import { readScenarioFile, scenarioOf } from './read-scenario.ts';
import { underlined } from './underlined.ts';
import { upgradedConfigs } from './upgraded-configs.ts';

export interface LetterCommandOptions {
  readonly variant?: string;
  readonly change?: string;
  readonly json?: true;
}

/** Prints the customer's letter: the question, the answer, why, and what goes with it. */
export async function letter(file: string, options: LetterCommandOptions): Promise<number> {
  const scenario = readScenarioFile(file);
  if (typeof scenario === 'number') return scenario;
  const { variant, change } = options;
  const base = scenarioOf(file, scenario, variant);
  const changed = change === undefined ? undefined : scenarioOf(file, scenario, change);
  if (base === undefined || (change !== undefined && changed === undefined)) return EXIT.badUsage;
  const before = await runOf(base, 'as it stands');
  const after = changed && (await runOf(changed, `with ${change}`));
  const hasStopped = isStopped(before) || (after !== undefined && isStopped(after));
  const { notes } = scenario.values;
  const written = writeLetter(
    {
      before,
      ...(after && { after }),
      ...(!hasStopped && {
        steps: await stepsOf(file, scenario, base),
        otherDays: await hottestDayOf(changed ?? base, after ?? before),
      }),
      ...(notes !== undefined && { notes }),
    },
    FILE_WORDING,
  );
  console.log(options.json ? JSON.stringify(written, undefined, 2) : textOf(written, scenario.values.name));
  if (hasStopped) return EXIT.stopped;
  return hasPull((after ?? before).config) ? EXIT.done : EXIT.nothingToAnswer;
}

async function runOf(scenario: Scenario, label: string): Promise<LetterRun> {
  const config = toConfig(scenario);
  const series = simulate(config);
  const pulls = summarisePulls(series, config.limit.chargeTemperature);
  const run = { label, config, series, pulls };
  return isStopped(run) ? run : { ...run, study: await onAllCores(studyRun(config, pulls)) };
}

/** What the steps that the file lists would buy; nothing where it lists none, or the cycle has no pull to tell by. */
async function stepsOf(file: string, scenario: Scenario, base: Scenario): Promise<string[]> {
  const list = scenario.values.upgrades ?? [];
  if (list.length === 0 || !hasPull(toConfig(base))) return [];
  const study = await onAllCores(studyUpgrades(list, upgradedConfigs(file, base, list), { withOrders: false }));
  return study === undefined ? [] : explainSteps(study, list, upgradeClashes(list), FILE_WORDING);
}

async function hottestDayOf(scenario: Scenario, { config, pulls }: LetterRun): Promise<string[]> {
  const count = pulls.length;
  if (count === 0) return [];
  const hottest = await onAllCores(studyHottestDay(scenario, count));
  return explainHottestDay({ scenario, config }, hottest, count, FILE_WORDING);
}

/** Of a terminal, and of paper. */
const WIDTH = 100;

function textOf({ question, answer, unlike, counts, parts }: Letter, name: string): string {
  return [
    ...underlined(name),
    '',
    ...wrapped(question),
    '',
    ...wrapped(answer),
    ...(unlike === undefined ? [] : wrapped(unlike)),
    '',
    ...counts.flatMap(({ label, count, of, said }) =>
      wrapped(`${count === undefined ? 'No count' : `${count} of ${of}`} ${label}. ${said}`),
    ),
    ...parts.flatMap(({ heading, paragraphs }) => ['', ...underlined(heading, '-'), ...paragraphs.flatMap(wrapped)]),
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

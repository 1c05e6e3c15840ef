import { Command, CommanderError, Option } from 'commander';
import { isNumberRow, parameterGroups, TRIAGE_DOUBTS } from '../sim/index.ts';
import { type AgreeCommandOptions, agree, gaugeReadings, gaugeStep } from './agree.ts';
import { check } from './check.ts';
import { type CompareCommandOptions, compare } from './compare.ts';
import { type CoreCommandOptions, core } from './core.ts';
import { type DayCommandOptions, day } from './day.ts';
import { type DropCommandOptions, drop } from './drop.ts';
import { EXIT, EXIT_HELP } from './exit-codes.ts';
import { printKeys } from './keys.ts';
import { type LetterCommandOptions, letter } from './letter.ts';
import { type LoopCommandOptions, loop } from './loop.ts';
import { numberIn, wholeIn } from './number-in.ts';
import { type RestCommandOptions, rest } from './rest.ts';
import { type RoutesCommandOptions, routes } from './routes.ts';
import { type RunCommandOptions, run } from './run.ts';
import { type SensitivityCommandOptions, sensitivity } from './sensitivity.ts';
import { type SweepCommandOptions, sweep } from './sweep.ts';
import { readRange, readShard, readVary } from './sweep-axis.ts';
import { type TankCommandOptions, tank } from './tank.ts';
import { difference, doubt, type TriageCommandOptions, triage } from './triage.ts';
import { type UpgradesCommandOptions, upgrades } from './upgrades.ts';

/**
 * Reads the arguments, does what they ask, and returns the exit code.
 *
 * @param args - the command line after the program's name
 */
export async function runCommandLine(args: readonly string[]): Promise<number> {
  let code: number = EXIT.done;
  const program = new Command('soakbench')
    .description('How many back-to-back pulls until the charge is too hot, and what each part has to do with it.')
    .exitOverride()
    .configureHelp({ helpWidth: 110 })
    .addHelpText('after', `\n${EXIT_HELP}`);

  program
    .command('run')
    .description('simulate a scenario and print the answer, pull by pull')
    .argument('<file>', 'scenario file (JSON); - reads standard input')
    .addOption(new Option('--variant <name>', 'run this variant of the file').conflicts('allVariants'))
    .option('--all-variants', 'run the file as it stands and every variant in it')
    .addOption(new Option('--json', 'print the whole answer as JSON').conflicts('csv'))
    .addOption(new Option('--csv', 'print the time series as CSV instead').conflicts(['json', 'allVariants']))
    .option('--interval <seconds>', 'also record on every multiple of this', interval)
    .option(
      '--tolerance <kelvin>',
      "largest error of a step in any temperature; the file's own by default",
      asIn('numerics', 'tolerance'),
    )
    .action((file: string, options: RunCommandOptions) => {
      code = run(file, options);
    });

  program
    .command('letter')
    .description("the customer's letter: question, answer, why, what the log will show, how sure, cautions")
    .argument('<file>', 'scenario file (JSON); - reads standard input')
    .option('--variant <name>', 'the car as it stands is this variant of the file')
    .option('--change <name>', 'what is asked about: this variant of the file')
    .option('--json', 'print the letter as JSON')
    .action(async (file: string, options: LetterCommandOptions) => {
      code = await letter(file, options);
    });

  program
    .command('routes')
    .description('compare recirculated air taken before the core and behind it: temperatures, power, and why')
    .argument('<file>', 'scenario file (JSON); - reads standard input')
    .option('--variant <name>', 'use this variant of the file')
    .addOption(new Option('--json', 'print the comparison as JSON').conflicts('csv'))
    .option('--csv', 'print the table as CSV, SI units')
    .action(async (file: string, options: RoutesCommandOptions) => {
      code = await routes(file, options);
    });

  program
    .command('loop')
    .description('coolant flow: where pump and loop meet, what takes the pressure, what the next bore or pump buys')
    .argument('<file>', 'scenario file (JSON); - reads standard input')
    .option('--variant <name>', 'use this variant of the file')
    .option(
      '--at <degC>',
      'temperature of the coolant; else that at which its properties are taken',
      coolantTemperature,
    )
    .addOption(new Option('--json', 'print everything as JSON, the crossing curves among it').conflicts('csv'))
    .option('--csv', 'print the table as CSV, SI units')
    .action((file: string, options: LoopCommandOptions) => {
      code = loop(file, options);
    });

  program
    .command('tank')
    .description('how big a tank, or how much ice, is enough: pulls against size, the smallest that does, the knee')
    .argument('<file>', 'scenario file (JSON); - reads standard input')
    .option('--variant <name>', 'use this variant of the file')
    .option('--pulls <count>', 'pulls wanted; else those of the cycle', whole(1, 500))
    .option('--ice', 'ice in the tank, in place of litres')
    .addOption(new Option('--json', 'print everything as JSON').conflicts('csv'))
    .option('--csv', 'print the table as CSV')
    .action(async (file: string, options: TankCommandOptions) => {
      code = await tank(file, options);
    });

  program
    .command('rest')
    .description('how long to rest between pulls, and how soon the coolant recovers from one')
    .argument('<file>', 'scenario file (JSON); - reads standard input')
    .option('--variant <name>', 'use this variant of the file')
    .option('--pulls <count>', 'pulls wanted; else those of the cycle', whole(1, 500))
    .addOption(new Option('--json', 'print everything as JSON').conflicts('csv'))
    .option('--csv', 'print the table as CSV, SI units')
    .action(async (file: string, options: RestCommandOptions) => {
      code = await rest(file, options);
    });

  program
    .command('drop')
    .description("what the core's air drop takes, and what is left of what its cooling gives")
    .argument('<file>', 'scenario file (JSON); - reads standard input')
    .option('--variant <name>', 'use this variant of the file')
    .addOption(new Option('--json', 'print everything as JSON').conflicts('csv'))
    .option('--csv', 'print the table as CSV, SI units')
    .action(async (file: string, options: DropCommandOptions) => {
      code = await drop(file, options);
    });

  program
    .command('agree')
    .description('hold what the gauge showed at the end of each pull against the model; which core would fit')
    .argument('<file>', 'scenario file (JSON); - reads standard input')
    .requiredOption('--gauge <list>', 'readings of pull 1, 2, ... in degC: 52,55,57; 126F; - where none', gaugeReadings)
    .option('--gauge-step <kelvin>', 'what the last figure of the gauge is worth', gaugeStep, 1)
    .option('--variant <name>', 'use this variant of the file')
    .addOption(new Option('--json', 'print the comparison as JSON').conflicts('csv'))
    .option('--csv', 'print the table as CSV, SI units')
    .action(async (file: string, options: AgreeCommandOptions) => {
      code = await agree(file, options);
    });

  program
    .command('triage')
    .description('what is wrong with a car, from two measurements: faults ranked, and what to measure next')
    .argument('<file>', 'scenario file (JSON) of the healthy car; - reads standard input')
    .requiredOption('--rise <kelvin>', 'coolant out of less into the core, end of part load before pull 1', difference)
    .requiredOption('--approach <kelvin>', 'indicated charge less coolant into the core, end of that pull', difference)
    .option('--rise-doubt <kelvin>', 'what the rise may be off by', doubt, TRIAGE_DOUBTS.riseDoubt)
    .option('--approach-doubt <kelvin>', 'what the approach may be off by', doubt, TRIAGE_DOUBTS.approachDoubt)
    .option('--variant <name>', 'use this variant of the file')
    .addOption(new Option('--json', 'print the ranking as JSON').conflicts('csv'))
    .option('--csv', 'print the table as CSV, SI units')
    .action(async (file: string, options: TriageCommandOptions) => {
      code = await triage(file, options);
    });

  program
    .command('compare')
    .description('variants beside the file as it stands: what was changed, pulls, peaks, flow, drop, power, air')
    .argument('<file>', 'scenario file (JSON); - reads standard input')
    .requiredOption('--variants <names>', 'up to three names, with commas between them')
    .addOption(new Option('--json', 'print the comparison as JSON').conflicts('csv'))
    .addOption(new Option('--csv', 'print charge temperatures and differences over time as CSV').conflicts('json'))
    .option('--interval <seconds>', 'step of the time axis of --csv', interval, 0.5)
    .action(async (file: string, options: CompareCommandOptions) => {
      code = await compare(file, options);
    });

  program
    .command('core')
    .description('a core by its measures: sizes, films, drops at the first pull; what one row more does; --map')
    .argument('<file>', 'scenario file (JSON); - reads standard input')
    .option('--variant <name>', 'use this variant of the file')
    .option('--map', 'also go through fin density and depth: where it is too open to cool, where too dense to breathe')
    .option('--json', 'print everything as JSON')
    .action(async (file: string, options: CoreCommandOptions) => {
      code = await core(file, options);
    });

  program
    .command('upgrades')
    .description('what each upgrade of the file buys alone and on top of the others, in pulls and kelvins')
    .argument('<file>', 'scenario file (JSON); - reads standard input')
    .option('--variant <name>', 'start from this variant of the file')
    .option('--best-order', 'also run every set of them: the best order, and the cheapest way to each number of pulls')
    .addOption(new Option('--json', 'print everything as JSON').conflicts('csv'))
    .addOption(new Option('--csv', 'print one row a step as CSV, SI units').conflicts('json'))
    .action(async (file: string, options: UpgradesCommandOptions) => {
      code = await upgrades(file, options);
    });

  program
    .command('day')
    .description('the same car on another day: pulls, deciding peak, and the hottest day on which it makes so many')
    .argument('<file>', 'scenario file (JSON); - reads standard input')
    .option('--variant <name>', 'use this variant of the file')
    .option('--ambient <degC>', "outside temperature; the file's own by default", asIn('ambient', 'temperature'))
    .option(
      '--altitude <m>',
      'above sea level, with the pressure of the standard atmosphere',
      asIn('ambient', 'altitude'),
    )
    .option('--humidity <percent>', 'relative humidity', asIn('ambient', 'relativeHumidity'))
    .option('--pulls <count>', 'pulls that the hottest day is about; all of the session by default', whole(1, 500))
    .addOption(new Option('--json', 'print everything as JSON').conflicts('csv'))
    .option('--csv', 'print the table as CSV, SI units')
    .action(async (file: string, options: DayCommandOptions) => {
      code = await day(file, options);
    });

  program
    .command('sensitivity')
    .description('how far the answer may be off when inputs are not known well, and which to measure next')
    .argument('<file>', 'scenario file (JSON); - reads standard input')
    .option('--variant <name>', 'use this variant of the file')
    .option('--runs <count>', 'size of the quasi-random sample', whole(1, 1e6), 64)
    .option('--seed <number>', 'shifts the sample; the same seed gives the same bytes', whole(0, 2 ** 31), 1)
    .option('--range <path=low:high>', 'range of a key of the file, in its unit; may be given again', readRange)
    .addOption(new Option('--json', 'print everything as JSON').conflicts('csv'))
    .option('--csv', 'print a row for each run as CSV instead')
    .action(async (file: string, options: SensitivityCommandOptions) => {
      code = await sensitivity(file, options);
    });

  program
    .command('sweep')
    .description(
      'run a grid or a sample of changes in threads, a JSON line each; the same command goes on after a kill',
    )
    .argument('<file>', 'scenario file (JSON); - reads standard input')
    .option('--variant <name>', 'use this variant of the file')
    .requiredOption(
      '--vary <path=values>',
      'path=from:to:count or path=a,b,c; with --sample path=from:to. Given again: every combination',
      readVary,
    )
    .option('--sample <runs>', 'quasi-random points of all ranges instead of a grid', whole(1, 1e6))
    .option('--seed <number>', 'shifts the sample', whole(0, 2 ** 31), 1)
    .option('--shard <i/n>', 'only every n-th case, from the i-th on', readShard, { part: 1, of: 1 })
    .option('--workers <count>', 'threads; one a core by default', whole(1, 1024))
    .option('--out <file>', 'add the lines to this file and leave out cases that it has; else they are printed')
    .action(async (file: string, options: SweepCommandOptions) => {
      code = await sweep(file, options);
    });

  program
    .command('check')
    .description('check a scenario file and all its variants without running them')
    .argument('<file>', 'scenario file (JSON); - reads standard input')
    .option('--json', 'print the issues as JSON')
    .action((file: string, options: { json?: true }) => {
      code = check(file, options);
    });

  program
    .command('keys')
    .description('list every key of a scenario file: key, unit, default, range, meaning')
    .argument('[group]', 'only groups with this word in their title or place, e.g. core')
    .action((group: string | undefined) => {
      code = printKeys(group);
    });

  try {
    await program.parseAsync(args, { from: 'user' });
    return code;
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    return error.exitCode === 0 ? EXIT.done : EXIT.badUsage;
  }
}

/** Seconds between two rows. */
const interval = (text: string): number => numberIn(text, 1e-6, 1e6, 's');

/** Coolant is liquid somewhere between. */
const coolantTemperature = (text: string): number => numberIn(text, -50, 150, 'degC');

const whole =
  (low: number, high: number) =>
  (text: string): number =>
    wholeIn(text, low, high);

/** A number in the range that a key has in a scenario file. */
function asIn(path: string, key: string): (text: string) => number {
  const row = parameterGroups()
    .find(({ places }) => places.includes(path))
    ?.rows.find((each) => each.key === key)?.row;
  if (row === undefined || !isNumberRow(row)) throw new Error(`${path}.${key} is no number of a scenario file`);
  return (text) => numberIn(text, row.min, row.max, row.unit);
}

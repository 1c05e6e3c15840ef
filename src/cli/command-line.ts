import { Command, CommanderError, Option } from 'commander';
import { isNumberRow, parameterGroups, TRIAGE_DOUBTS } from '../sim/index.ts';
import { agree, gaugeReadings, gaugeStep } from './agree.ts';
import { check } from './check.ts';
import { compare } from './compare.ts';
import { core } from './core.ts';
import { day } from './day.ts';
import { drop } from './drop.ts';
import { EXIT, EXIT_HELP } from './exit-codes.ts';
import { printKeys } from './keys.ts';
import { letter } from './letter.ts';
import { loop } from './loop.ts';
import { numberIn, wholeIn } from './number-in.ts';
import { rest } from './rest.ts';
import { routes } from './routes.ts';
import { run } from './run.ts';
import { sensitivity } from './sensitivity.ts';
import { sweep } from './sweep.ts';
import { readRange, readShard, readVary } from './sweep-axis.ts';
import { tank } from './tank.ts';
import { difference, doubt, triage } from './triage.ts';
import { upgrades } from './upgrades.ts';

/** A command about a scenario file, with the options that most of them have in the usual words. */
class FileCommand extends Command {
  private readonly done: (exitCode: number) => void;

  constructor(name: string, done: (exitCode: number) => void) {
    super(name);
    this.done = done;
  }

  variant(words = 'use this variant of the file'): this {
    return this.option('--variant <name>', words);
  }

  forms(json = 'print everything as JSON', csv = 'print the table as CSV, SI units'): this {
    return this.addOption(new Option('--json', json).conflicts('csv')).option('--csv', csv);
  }

  answeredBy<Options>(answer: (file: string, options: Options) => number | Promise<number>): void {
    this.action(async (file: string, options: Options) => this.done(await answer(file, options)));
  }
}

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

  const about = (name: string, description: string, what = ''): FileCommand => {
    const command = new FileCommand(name, (exitCode) => {
      code = exitCode;
    });
    program.addCommand(command.copyInheritedSettings(program));
    return command.description(description).argument('<file>', `scenario file (JSON)${what}; - reads standard input`);
  };

  about('run', 'simulate a scenario and print the answer, pull by pull')
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
    .answeredBy(run);

  about('letter', "the customer's letter: question, answer, why, what the log will show, how sure, cautions")
    .variant('the car as it stands is this variant of the file')
    .option('--change <name>', 'what is asked about: this variant of the file')
    .option('--json', 'print the letter as JSON')
    .answeredBy(letter);

  about('routes', 'compare recirculated air taken before the core and behind it: temperatures, power, and why')
    .variant()
    .forms('print the comparison as JSON')
    .answeredBy(routes);

  about('loop', 'coolant flow: where pump and loop meet, what takes the pressure, what the next bore or pump buys')
    .variant()
    .option(
      '--at <degC>',
      'temperature of the coolant; else that at which its properties are taken',
      coolantTemperature,
    )
    .forms('print everything as JSON, with the crossing curves')
    .answeredBy(loop);

  about(
    'tank',
    'how big a tank, or how much ice, is enough: pulls against size, the smallest that does, where more buys less',
  )
    .variant()
    .option('--pulls <count>', 'pulls wanted; else those of the cycle', whole(1, 500))
    .option('--ice', 'ice in the tank, in place of litres')
    .forms('print everything as JSON', 'print the table as CSV')
    .answeredBy(tank);

  about('rest', 'how long to rest between pulls, and how soon the coolant recovers from one')
    .variant()
    .option('--pulls <count>', 'pulls wanted; else those of the cycle', whole(1, 500))
    .forms()
    .answeredBy(rest);

  about('drop', 'what the core pressure drop takes, and what is left of what its cooling gives')
    .variant()
    .forms()
    .answeredBy(drop);

  about('agree', 'hold what the gauge showed at the end of each pull against the model; which core would fit')
    .requiredOption('--gauge <list>', 'readings of pull 1, 2, ... in degC: 52,55,57; 126F; - where none', gaugeReadings)
    .option('--gauge-step <kelvin>', 'smallest step that the gauge shows', gaugeStep, 1)
    .variant()
    .forms('print the comparison as JSON')
    .answeredBy(agree);

  about(
    'triage',
    'what is wrong with a car, from two measurements: faults ranked, and what to measure next',
    ' of the healthy car',
  )
    .requiredOption(
      '--rise <kelvin>',
      'coolant out of the core less coolant into it, at the end of part load before pull 1',
      difference,
    )
    .requiredOption(
      '--approach <kelvin>',
      'indicated charge less coolant into the core, at the end of that pull',
      difference,
    )
    .option('--rise-doubt <kelvin>', 'what the rise may be off by', doubt, TRIAGE_DOUBTS.riseDoubt)
    .option('--approach-doubt <kelvin>', 'what the approach may be off by', doubt, TRIAGE_DOUBTS.approachDoubt)
    .variant()
    .forms('print the ranking as JSON')
    .answeredBy(triage);

  about('compare', 'variants beside the file as it stands: what was changed, pulls, peaks, flow, drop, power, air')
    .requiredOption('--variants <names>', 'up to three names, with commas between them')
    .forms('print the comparison as JSON', 'print charge temperatures and differences over time as CSV')
    .option('--interval <seconds>', 'step of the time axis of --csv', interval, 0.5)
    .answeredBy(compare);

  about('core', 'a core by its measures: sizes, films, drops at the first pull; what a little more width or depth does')
    .variant()
    .option(
      '--map',
      'also go through fin density, depth and width: where it is too open to cool, where too dense to breathe',
    )
    .option('--json', 'print everything as JSON')
    .answeredBy(core);

  about('upgrades', 'what each upgrade of the file buys alone and on top of the others, in pulls and kelvins')
    .variant('start from this variant of the file')
    .option('--best-order', 'also run every set of them: the best order, and the cheapest way to each number of pulls')
    .forms('print everything as JSON', 'print one row a step as CSV, SI units')
    .answeredBy(upgrades);

  about('day', 'the same car on another day: pulls, deciding peak, and the hottest day on which it makes so many')
    .variant()
    .option('--ambient <degC>', "outside temperature; the file's own by default", asIn('ambient', 'temperature'))
    .option(
      '--altitude <m>',
      'above sea level, with the pressure of the standard atmosphere',
      asIn('ambient', 'altitude'),
    )
    .option('--humidity <percent>', 'relative humidity', asIn('ambient', 'relativeHumidity'))
    .option('--pulls <count>', 'pulls that the hottest day is about; else those of the cycle', whole(1, 500))
    .forms()
    .answeredBy(day);

  about('sensitivity', 'how far the answer may be off when inputs are not known well, and which to measure next')
    .variant()
    .option('--runs <count>', 'size of the quasi-random sample', whole(1, 1e6), 64)
    .option('--seed <number>', 'shifts the sample; the same seed gives the same bytes', whole(0, 2 ** 31), 1)
    .option('--range <path=low:high>', 'range of a key of the file, in its unit; may be given again', readRange)
    .forms('print everything as JSON', 'print a row for each run as CSV instead')
    .answeredBy(sensitivity);

  about(
    'sweep',
    'run a grid or a sample of changes in threads, a JSON line each; the same command goes on after a kill',
  )
    .variant()
    .requiredOption(
      '--vary <path=values>',
      'path=from:to:count or path=a,b,c; with --sample path=from:to. Given again: every combination',
      readVary,
    )
    .option('--sample <runs>', 'quasi-random points of all ranges instead of a grid', whole(1, 1e6))
    .option('--seed <number>', 'shifts the sample', whole(0, 2 ** 31), 1)
    .addOption(
      new Option('--shard <i/n>', 'only every n-th case, from the i-th on')
        .argParser(readShard)
        .default({ part: 1, of: 1 }, 'all'),
    )
    .option('--workers <count>', 'threads; one for each processor core by default', whole(1, 1024))
    .option('--out <file>', 'add the lines to this file and leave out cases that it has; else they are printed')
    .answeredBy(sweep);

  about('check', 'check a scenario file and all its variants without running them')
    .option('--json', 'print the issues as JSON')
    .answeredBy(check);

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

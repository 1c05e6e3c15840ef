import { studyCoreDesign, studyCoreMap, WHY_NO_ANSWER } from '../sim/index.ts';
import { designAsText, mapAsText } from './core-text.ts';
import { EXIT } from './exit-codes.ts';
import { hasPumpedPull, noAnswer } from './no-answer.ts';
import { onAllCores } from './on-all-cores.ts';
import { type FormOptions, printAnswer } from './print-answer.ts';
import { readConfig } from './read-scenario.ts';

export interface CoreCommandOptions extends Pick<FormOptions, 'json'> {
  readonly variant?: string;
  readonly map?: true;
}

/** What a core described by its measures comes to, and what other measures would. */
export async function core(file: string, options: CoreCommandOptions): Promise<number> {
  const config = readConfig(file, options.variant);
  if (typeof config === 'number') return config;
  if (config.core.geometry === undefined) {
    return noAnswer(
      'Nothing to work out: the core of this file is given by test points. Describe it in coreGeometry (soakbench keys measures lists the keys), or name a variant that does.',
      false,
    );
  }
  const design = await onAllCores(studyCoreDesign(config));
  if (design === undefined) {
    return noAnswer(WHY_NO_ANSWER.noPumpedPull, hasPumpedPull(config));
  }
  const map = options.map && (await onAllCores(studyCoreMap(config)));
  printAnswer(options, {
    json: () => ({ ...design, ...(map && { map }) }),
    text: () => [...designAsText(config, design), ...(map ? ['', ...mapAsText(map)] : [])],
  });
  return EXIT.done;
}

import { describeParameters } from '../sim/index.ts';
import { EXIT } from './exit-codes.ts';

/** Prints every key of a scenario file, or the groups whose title or place holds a word. */
export function printKeys(word: string | undefined): number {
  const groups = describeParameters().split('\n\n');
  const wanted = groups.filter(
    (text) => word === undefined || text.split('\n', 1)[0].toLowerCase().includes(word.toLowerCase()),
  );
  if (wanted.length === 0) {
    const titles = groups.map((text) => text.split(':', 1)[0]);
    console.error(`No group of keys is called ${word}; there are: ${titles.join(', ')}.`);
    return EXIT.badUsage;
  }
  console.log(wanted.join('\n\n'));
  return EXIT.done;
}

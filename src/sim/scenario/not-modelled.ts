import { type JsonValue, quoted } from './issue.ts';

/** Words of the trade that this version knows and does not compute, looked for in a key and the word typed there. */
const NOT_MODELLED: readonly (readonly [RegExp, string])[] = [
  [
    /inject|methanol|alcohol|nitrous/i,
    'Whatever is injected into the charge (water, alcohol, fuel before the core, nitrous) is',
  ],
  [/twin|compound/i, 'More than one compressor is'],
];

/** The sentence that names what is not computed yet, where the key, or the word typed there, speaks of it. */
export function notModelled(key: string, value?: JsonValue): string | undefined {
  const text = typeof value === 'string' ? `${key} ${value}` : key;
  const known = NOT_MODELLED.find(([words]) => words.test(text));
  return known && `${known[1]} not modelled yet: ${quoted(key)} cannot be used.`;
}

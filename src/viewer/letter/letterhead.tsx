import type { PageProps } from '../page.tsx';
import type { Letterhead as Words } from '../state/display.ts';

const FIELDS: readonly (readonly [keyof Words, string])[] = [
  ['customer', 'For'],
  ['shop', 'From'],
  ['date', 'Date'],
];

const today = (): string => new Date().toLocaleDateString('en-GB', { day: 'numeric', month: 'short', year: 'numeric' });

/** Who writes to whom, and when, in the shop's own words; kept in this browser only. */
export function Letterhead({ display }: Pick<PageProps, 'display'>) {
  const words = display.letterhead.value;
  return (
    <section class="letterhead" aria-label="Head of the letter">
      {FIELDS.map(([key, label]) => (
        <label key={key}>
          <span>{label}</span>
          <input
            type="text"
            autocomplete="off"
            placeholder={key === 'date' ? today() : key === 'shop' ? 'your shop' : 'the owner'}
            value={key === 'date' && words.date === '' ? today() : words[key]}
            onChange={({ currentTarget: { value } }) => {
              const typed = value.trim();
              display.letterhead.value = { ...words, [key]: key === 'date' && typed === today() ? '' : typed };
            }}
          />
        </label>
      ))}
    </section>
  );
}

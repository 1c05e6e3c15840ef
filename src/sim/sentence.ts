/** A quantity of a sentence, SI: written in the units of whoever reads it. A flow is of coolant, m3/s. */
type Quantity = { readonly temperature: number } | { readonly pressure: number } | { readonly flow: number };

/** Words with their quantities left open. Plain data: where it arises nobody knows the reader's units. */
export type Sentence = readonly (string | Quantity)[];

/**
 * Tag of a template: keeps quantities, and those of a sentence inside it, open; all else becomes text.
 *
 * @example
 * sentence`${'it'} boils: ${{ temperature: 400 }} reached` // ['it boils: ', { temperature: 400 }, ' reached']
 */
export function sentence(
  texts: TemplateStringsArray,
  ...values: readonly (string | number | Quantity | Sentence)[]
): Sentence {
  const pieces = texts.flatMap((text, k) => (k === 0 ? [text] : [...piecesOf(values[k - 1]), text]));
  const joined: (string | Quantity)[] = [];
  for (const piece of pieces) {
    const last = joined.at(-1);
    if (typeof piece === 'string' && typeof last === 'string') joined[joined.length - 1] = last + piece;
    else joined.push(piece);
  }
  return joined.filter((piece) => piece !== '');
}

function piecesOf(value: string | number | Quantity | Sentence): Sentence {
  if (typeof value === 'number') return [String(value)];
  return isSentence(value) ? value : [value];
}

const isSentence = (value: string | Quantity | Sentence): value is Sentence => Array.isArray(value);

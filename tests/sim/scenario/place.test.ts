import { describe, expect, it } from 'vitest';
import { withoutValue } from '../../../src/sim/scenario/place.ts';

describe('a document without a value', () => {
  const document = { a: { b: 1, c: 2 }, list: [{ d: 3 }, { d: 4, e: 5 }] };
  const copy = structuredClone(document);

  it.each([
    ['a key', ['a', 'b'], { ...document, a: { c: 2 } }],
    ['a whole object', ['a'], { list: document.list }],
    ['an item of a list', ['list', '0'], { ...document, list: [{ d: 4, e: 5 }] }],
    ['a key of an item', ['list', '1', 'e'], { ...document, list: [{ d: 3 }, { d: 4 }] }],
  ])('%s goes and the rest stays', (_, steps, rest) => expect(withoutValue(document, steps)).toEqual(rest));

  it.each([
    [['x']],
    [['x', 'y']],
    [['list', '2', 'd']],
    [['a', 'x']],
    [['a', 'b', 'x']],
    [['list', '2']],
    [['list', 'x']],
    [['toString']],
  ])('there is nothing at %j: the same', (steps) => expect(withoutValue(document, steps)).toStrictEqual(document));

  it('is another document: the given one stays as it is', () => {
    withoutValue(document, ['list', '1', 'e']);
    expect(document).toEqual(copy);
  });
});

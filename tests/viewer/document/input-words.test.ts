import { describe, expect, it } from 'vitest';
import { rowAt } from '../../../src/sim/index.ts';
import { fieldGroups } from '../../../src/viewer/document/field-groups.ts';
import { absentWords } from '../../../src/viewer/document/input-words.ts';
import { shippedDocument } from '../../support/shipped.ts';

const FIELDS = fieldGroups(shippedDocument('motorway-wagon')).flatMap(({ fields }) => fields);

describe('what holds where a box is left empty', () => {
  it('is said by the label of the other input, of the file or of the same object', () => {
    const words = (path: string) => absentWords(path, rowAt(path) ?? expect.fail(path));
    expect(words('lines.afterCore.0.bore')).toBe('as line bore');
    expect(words('start.reservoir')).toBe('as coolant at the start');
    expect(words('coreGeometry.webThickness')).toBe('as tube wall');
  });

  it('names no key of the file', () => {
    const said = FIELDS.flatMap(({ path, row }) => absentWords(path, row) ?? []);
    expect(said.length).toBeGreaterThan(20);
    for (const words of said) expect(words).not.toMatch(/[a-z][A-Z]|[a-z]\.[a-z]/);
  });
});

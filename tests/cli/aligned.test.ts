import { describe, expect, it } from 'vitest';
import { aligned } from '../../src/cli/aligned.ts';

describe('columns', () => {
  const ROWS = [
    ['part', 'K', 'note'],
    ['core', '10', 'stands'],
    ['line after it', '9', ''],
  ];

  it('stand to the right but for the first, without spaces at the end', () => {
    expect(aligned(ROWS)).toEqual(['part            K    note', 'core           10  stands', 'line after it   9']);
  });

  it('stand to the left where it is asked for, and nowhere else', () => {
    expect(aligned(ROWS, [2])).toEqual(['         part   K  note', '         core  10  stands', 'line after it   9']);
    expect(aligned(ROWS, [0, 2])[1]).toBe('core           10  stands');
  });

  it('of no rows are no lines', () => {
    expect(aligned([])).toEqual([]);
  });
});

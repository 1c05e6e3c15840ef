import { describe, expect, it } from 'vitest';
import { signed } from '../../src/cli/signed.ts';

describe('a difference as text', () => {
  it.each([
    [1.26, 1, '+1.3'],
    [-1.26, 1, '-1.3'],
    [3, 0, '+3'],
    [0, 2, '0.00'],
    [-0, 1, '0.0'],
    [0.04, 1, '0.0'],
    [-0.04, 1, '0.0'],
    [-0.4, 0, '0'],
    [-0.06, 1, '-0.1'],
  ])('%d with %d digits is %s', (value, digits, text) => {
    expect(signed(value, digits)).toBe(text);
  });
});

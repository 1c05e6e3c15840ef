import { describe, expect, it } from 'vitest';
import { FILE_WORDING, written } from '../../src/sim/answers/wording.ts';
import { sentence } from '../../src/sim/sentence.ts';

describe('a sentence with its quantities left open', () => {
  // 20 L/min is 20e-3/60 m3/s; 400 K is 126.85 degC.
  const flow = sentence`flow ${{ flow: 20e-3 / 60 }}`;
  const whole = sentence`${'coolant'} reaches ${{ temperature: 400 }} at ${3} bar, ${flow}, outside ${{ pressure: 99.5e3 }}`;

  it('is text and quantities in turn, with those of the sentences inside it', () => {
    expect(whole).toEqual([
      'coolant reaches ',
      { temperature: 400 },
      ' at 3 bar, flow ',
      { flow: 20e-3 / 60 },
      ', outside ',
      { pressure: 99.5e3 },
    ]);
    expect(structuredClone(whole)).toEqual(whole);
  });

  it('is written in the units of a reader', () => {
    expect(written(whole, FILE_WORDING)).toBe('coolant reaches 126.9 degC at 3 bar, flow 20.0 L/min, outside 99.5 kPa');
    const fahrenheit = {
      ...FILE_WORDING,
      temperature: (kelvin: number) => `${Math.round(1.8 * kelvin - 459.67)} degF`,
    };
    expect(written(whole, fahrenheit)).toContain('260 degF');
  });
});

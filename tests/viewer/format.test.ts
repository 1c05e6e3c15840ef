import { describe, expect, it } from 'vitest';
import {
  briefly,
  clockTime,
  columnShown,
  difference,
  fixed,
  flow,
  joined,
  onScreen,
  scaleOf,
  seconds,
  signed,
  signedDifference,
  temperature,
} from '../../src/viewer/format.ts';
import { IMPERIAL, METRIC } from '../../src/viewer/state/display.ts';

describe('messages of the simulator', () => {
  it('come with units as the page writes them, and leave what was typed alone', () => {
    expect(onScreen('Limit is "140 degF x"; expected -40 to 200 degC.')).toBe(
      'Limit is "140 degF x"; expected −40 to 200\u00a0°C.',
    );
    expect(onScreen('a degree of freedom')).toBe('a degree of freedom');
  });

  it.each([
    ['-3 to +3 K', '−3 to +3 K'],
    ['x0.85 to x1.15', '×0.85 to ×1.15'],
    ['exchanger 0.18 m2, ducted', 'exchanger 0.18 m², ducted'],
    ['got (-2); 12 cm2, 3 m3/h, W/m2', 'got (−2); 12 cm², 3 m³/h, W/m²'],
    ['2024-05-01, 5 W/K-9, 1e-5, 16x32, pump-2, om2, m2.5', '2024-05-01, 5 W/K-9, 1e-5, 16x32, pump-2, om2, m2.5'],
    ['"-9 m2" is typed', '"-9 m2" is typed'],
  ])('write %s as %s, once and for all', (text, written) => {
    expect(onScreen(text)).toBe(written);
    expect(onScreen(written)).toBe(written);
  });
});

describe('numbers with units', () => {
  it('shows metric values with the digits of a report', () => {
    expect(temperature(336.65, METRIC)).toEqual({ value: '63.5', unit: '°C' });
    expect(difference(5.5, METRIC)).toEqual({ value: '5.5', unit: 'K' });
    expect(flow(13.2e-3 / 60, METRIC)).toEqual({ value: '13.2', unit: 'L/min' });
    expect(columnShown(175_310, 'manifoldPressure', METRIC)).toEqual({ value: '175.3', unit: 'kPa abs' });
    expect(columnShown(6024, 'coreAirDrop', METRIC)).toEqual({ value: '6.02', unit: 'kPa' });
    expect(columnShown(31_460, 'drivePower', METRIC)).toEqual({ value: '31.5', unit: 'kW' });
    expect(seconds(8.94)).toEqual({ value: '8.9', unit: 's' });
  });

  // 63.5 degC = 146.3 degF by definition; 13.2 L/min / 3.785411784 = 3.487; 175.31 kPa / 6.894757 = 25.427;
  // 31.46 kW / 0.74569987 = 42.19.
  it('shows them in the other units', () => {
    expect(temperature(336.65, IMPERIAL)).toEqual({ value: '146.3', unit: '°F' });
    expect(difference(5, IMPERIAL)).toEqual({ value: '9.0', unit: '°F' });
    expect(flow(13.2e-3 / 60, IMPERIAL)).toEqual({ value: '3.49', unit: 'gpm' });
    expect(columnShown(175_310, 'manifoldPressure', IMPERIAL)).toEqual({ value: '25.43', unit: 'psi abs' });
    expect(columnShown(6024, 'coreAirDrop', IMPERIAL)).toEqual({ value: '0.874', unit: 'psi' });
    expect(columnShown(31_460, 'drivePower', IMPERIAL)).toEqual({ value: '42.2', unit: 'hp' });
  });

  it('knows the columns of a run', () => {
    expect(columnShown(1.7512, 'pressureRatio', METRIC)).toEqual({ value: '1.751', unit: '' });
    expect(columnShown(0.21349, 'airFlow', METRIC)).toEqual({ value: '0.2135', unit: 'kg/s' });
    expect(columnShown(6500, 'engineSpeed', IMPERIAL)).toEqual({ value: '6500', unit: 'rpm' });
  });

  it('binds number and unit, and leaves a pure number alone', () => {
    expect(joined(temperature(336.65, METRIC))).toBe('63.5\u00a0°C');
    expect(joined({ value: '1.751', unit: '' })).toBe('1.751');
  });

  it('writes tenths beside an axis only where they say something', () => {
    expect([58, 46.5, 136.4, -3.2].map(briefly)).toEqual(['58', '46.5', '136', '−3.2']);
  });

  it('writes no minus before zero', () => {
    expect(fixed(-0.04, 1)).toBe('0.0');
    expect(fixed(-0.06, 1)).toBe('−0.1');
  });

  it('signs a difference, and one of nothing has no sign', () => {
    expect([1.24, -1.24, 0.04, -0.04].map((miss) => signedDifference(miss, METRIC))).toEqual([
      '+1.2',
      '−1.2',
      '0.0',
      '0.0',
    ]);
    expect(signedDifference(5, IMPERIAL)).toBe('+9.0');
  });
  it.each([
    ['0.72\u00a0K', '+0.72\u00a0K'],
    ['−0.17 K', '−0.17 K'],
    ['0.00 K', '0.00 K'],
    ['10 W', '+10 W'],
  ])('%s as a change is %s', (text, expected) => expect(signed(text)).toBe(expected));

  it('comes back to SI from what is shown', () => {
    const { unit, toSi } = scaleOf('degC', IMPERIAL);
    expect(unit).toBe('°F');
    expect(toSi(212)).toBeCloseTo(373.15, 10);
    expect(scaleOf('kPa', IMPERIAL).toSi(14.5)).toBeCloseTo(99_973.98, 1);
    expect(scaleOf('degC', METRIC).toSi(58)).toBe(331.15);
  });
});

describe('clock', () => {
  it.each([
    [0, '0:00.0'],
    [8.94, '0:08.9'],
    [59.96, '1:00.0'],
    [312, '5:12.0'],
    [3599.97, '1:00:00.0'],
    [3723.4, '1:02:03.4'],
  ])('%s s is %s', (time, text) => expect(clockTime(time)).toBe(text));

  it('leaves the tenths away when asked', () => {
    expect(clockTime(1116, 0)).toBe('18:36');
    expect(clockTime(125.6, 0)).toBe('2:06');
  });
});

import { describe, expect, it } from 'vitest';
import type { Edits } from '../../support/short-session.ts';
import { type BadInput, changed, judge, parsed } from './judge.ts';

describe('a machine on a pulley past its highest speed', () => {
  it('is named with the phase and the speed that it reaches', () => {
    judge('quarter-mile-saloon', {
      what: '',
      edits: { 'compressor.highestSpeed': 14000 },
      severity: 'warning',
      path: 'compressor.highestSpeed',
      // 6700 x 2.35
      message:
        'In the phase "pass" the compressor turns 15745 rpm (6700 rpm of the engine times 2.35): above the 14000 rpm typed as its highest.',
      fix: 2.089,
    });
  });

  it('is no issue below it', () => {
    expect(parsed(changed('quarter-mile-saloon', { 'compressor.highestSpeed': 15800 })).issues).toEqual([]);
  });
});

describe('a boost that was not expected', () => {
  const TURBINE: Edits = {
    'compressor.kind': 'turbine-driven',
    'compressor.driveRatio': undefined,
    'compressor.targetManifoldPressure': 160.9,
    'compressor.highestSpeed': 44600,
    'bypass.recirculation': undefined,
  };
  const BAD: readonly (BadInput & { readonly file: string })[] = [
    {
      // k = 2 x 3 x 1.55/(3 x 0.95) x 330/306.15 = 3.5174, a = 1.12/19.8, PR = k (1 + a)/(1 + k a) = 3.100
      what: 'from the ratio of another pulley',
      file: 'rolling-road-estate',
      edits: { 'compressor.driveRatio': 3, 'compressor.expectedBoost': '0.8 bar' },
      path: 'compressor.expectedBoost',
      message:
        'Compressor and engine come to about 210 kPa of boost at 6600 rpm of the engine; you expect 80 kPa. Check drive ratio, swept volume and engine displacement.',
    },
    {
      // The same with a ratio of 1.62: PR 1.750.
      what: 'below what the machine gives',
      file: 'rolling-road-estate',
      edits: { 'compressor.expectedBoost': 20 },
      path: 'compressor.expectedBoost',
      message: 'come to about 75 kPa of boost at 6600 rpm of the engine; you expect 20 kPa.',
    },
    {
      // k = 0.6526: the engine swallows more than it is given.
      what: 'where there is none',
      file: 'rolling-road-estate',
      edits: { 'compressor.sweptVolume': 0.5, 'compressor.expectedBoost': 60 },
      path: 'compressor.expectedBoost',
      message: 'come to no boost at 6600 rpm of the engine; you expect 60 kPa.',
    },
    {
      // 46800 rpm is the speed of the known boost, 37 degC its inlet: 73 kPa.
      what: 'of a centrifugal machine',
      file: 'session-coupe',
      edits: { 'compressor.expectedBoost': 150 },
      path: 'compressor.expectedBoost',
      message:
        'come to about 73 kPa of boost at 7200 rpm of the engine; you expect 150 kPa. Check drive ratio and the known boost with its speed.',
    },
    {
      // 1.21 times the head at 1.1 times the speed: (1 + 1.21 (1.72637^(2/7) - 1))^3.5 = 1.9167
      what: 'of a centrifugal machine on a smaller pulley',
      file: 'session-coupe',
      edits: { 'compressor.driveRatio': 7.15, 'compressor.expectedBoost': 45 },
      path: 'compressor.expectedBoost',
      message: 'come to about 92 kPa of boost at 7200 rpm of the engine; you expect 45 kPa.',
    },
    {
      what: 'beside another target',
      file: 'session-coupe',
      edits: { ...TURBINE, 'compressor.expectedBoost': 120 },
      path: 'compressor.expectedBoost',
      message:
        'come to about 60 kPa of boost at 7200 rpm of the engine; you expect 120 kPa. Check the target manifold pressure, which is absolute.',
    },
    {
      what: 'held by a bypass at less than the pulley gives',
      file: 'rolling-road-estate',
      edits: { 'compressor.targetManifoldPressure': 129.5, 'compressor.expectedBoost': 90 },
      path: 'compressor.expectedBoost',
      message: 'come to about 30 kPa of boost',
    },
    {
      what: 'in pounds per square inch',
      file: 'rolling-road-estate',
      edits: { 'compressor.expectedBoost': 14 },
      path: 'compressor.expectedBoost',
      message: 'Expected boost is 14 kPa: unusually low, usually 15 to 250 kPa. Did you mean 14 psi (96.53 kPa)?',
      fix: '14 psi',
    },
  ];
  it.each(BAD)('$what', ({ file, ...bad }) => judge(file, { ...bad, severity: 'warning' }));

  it.each([
    ['rolling-road-estate', 70],
    ['session-coupe', 70],
  ])('%s: within a quarter of the pressure ratio there is nothing to say', (file, expectedBoost) => {
    expect(parsed(changed(file, { 'compressor.expectedBoost': expectedBoost })).issues).toEqual([]);
  });
});

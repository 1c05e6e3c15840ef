import { describe, expect, it } from 'vitest';
import { keysOfKind } from '../../../src/viewer/document/compressor-keys.ts';
import { shippedDocument } from '../../support/shipped.ts';

const DOCUMENT = shippedDocument('motorway-wagon');

describe('keys by kind of compressor', () => {
  // From the scenario guide: what each kind needs, and what says nothing about it.
  it.each([
    ['displacement', 'compressor.sweptVolume', 'compressor.boostSpeed'],
    ['displacement', 'compressor.driveRatio', 'compressor.boostOutletPressure'],
    ['displacement', 'compressor.driveRatio', 'bypass.recirculation'],
    ['displacement', 'compressor.driveRatio', 'compressor.boostInletTemperature'],
    ['centrifugal', 'compressor.boostSpeed', 'compressor.sweptVolume'],
    ['centrifugal', 'bypass.recirculation', 'compressor.leak'],
    ['centrifugal', 'compressor.driveRatio', 'compressor.targetManifoldPressure'],
    ['turbine-driven', 'compressor.highestSpeed', 'compressor.driveRatio'],
    ['turbine-driven', 'compressor.targetManifoldPressure', 'compressor.builtInVolumeRatio'],
  ])('%s needs %s and has no use for %s', (kind, needed, unused) => {
    const keys = keysOfKind(DOCUMENT, kind);
    expect(keys.needed.has(needed)).toBe(true);
    expect(keys.unused.has(needed)).toBe(false);
    expect(keys.unused.has(unused)).toBe(true);
    expect(keys.needed.has(unused)).toBe(false);
  });

  it('has use for the throttle, the drop of the bypass and its leak with every kind', () => {
    for (const kind of ['displacement', 'centrifugal', 'turbine-driven']) {
      const { unused } = keysOfKind(DOCUMENT, kind);
      for (const key of ['throttle', 'drop', 'leak', 'route']) expect(unused.has(`bypass.${key}`)).toBe(false);
    }
  });
});

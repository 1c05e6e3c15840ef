import { describe, expect, it } from 'vitest';
import { areRelated } from '../../../src/viewer/state/cars.ts';

describe('paths', () => {
  it('are related where one leads to or through the other', () => {
    expect(areRelated('core', 'core.airDrop')).toBe(true);
    expect(areRelated('a.x.1', 'a.x')).toBe(true);
    expect(areRelated('core.airDrop', 'core.airDropAtFlow')).toBe(false);
    expect(areRelated('core.airDropAtFlow', 'core.airDrop')).toBe(false);
  });
});

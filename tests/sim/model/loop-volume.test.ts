import { expect, it } from 'vitest';
import { loopVolume } from '../../../src/sim/model/loop-volume.ts';
import { shortConfig } from '../../support/short-session.ts';

it('the coolant of the loop holds what stands where a core of two passes turns it round', () => {
  const onePass = loopVolume(shortConfig());
  const twoPasses = loopVolume(shortConfig({ 'core.passes': 2, 'core.turnVolume': 0.4 }));
  expect(1000 * (twoPasses - onePass)).toBeCloseTo(0.4, 9);
});

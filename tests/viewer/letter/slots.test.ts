import { expect, it } from 'vitest';
import { slotPaths } from '../../../src/viewer/letter/slots.ts';
import { shippedDocument } from '../../support/shipped.ts';

// Places in the cycle stand in the files of scenarios/.
it('finds the quantities of one pull that is repeated', () => {
  expect(slotPaths(shippedDocument('rolling-road-estate'))).toEqual({
    limit: 'limit.chargeTemperature',
    pulls: 'cycle.1.repeat',
    length: 'cycle.1.phases.0.duration',
    rest: 'cycle.1.phases.1.duration',
    day: 'ambient.temperature',
  });
});

it.each(['motorway-wagon', 'session-coupe'])('finds limit and day alone where several pulls differ: %s', (file) => {
  expect(Object.keys(slotPaths(shippedDocument(file)))).toEqual(['limit', 'day']);
});

it('leaves a rest of several phases alone', () => {
  const phase = { kind: 'idle', duration: 5 };
  const cycle = [{ repeat: 3, phases: [{ kind: 'pull', duration: 12 }, phase, phase] }];
  expect(slotPaths({ cycle })).toMatchObject({ pulls: 'cycle.0.repeat', length: 'cycle.0.phases.0.duration' });
  expect(slotPaths({ cycle })).not.toHaveProperty('rest');
});

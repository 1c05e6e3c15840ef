import { describe, expect, it } from 'vitest';
import { exchangerPutIn } from '../../../src/viewer/document/exchanger-changes.ts';
import { partTakenOut, tankChanges } from '../../../src/viewer/document/loop-changes.ts';
import { changed, shippedCar } from './changed.ts';

describe('the front exchanger', () => {
  it.each(['rolling-road-estate', 'ridge-roadster', 'motorway-wagon', 'session-coupe'])(
    '%s: taken out and put in again, the reader has nothing to say against either',
    (name) => {
      const car = shippedCar(name);
      const out = changed(car, partTakenOut(car, 'exchanger'));
      expect(out.config.exchanger).toBeUndefined();
      expect(out.config.lines.map(({ after }) => after)).toEqual(['reservoir', 'pump', 'core']);
      const back = changed(out, exchangerPutIn(out));
      // 0.11 m2: the first demo car
      expect(back.config.exchanger?.faceArea).toBe(0.11);
      expect(back.config.lines).toHaveLength(4);
    },
  );

  it('goes out of an order of its own and comes back behind the core', () => {
    const car = shippedCar('motorway-wagon');
    const moved = changed(car, tankChanges(car, 'after the core'));
    const out = changed(moved, partTakenOut(moved, 'exchanger'));
    expect(out.config.loop).toEqual(['pump', 'core', 'reservoir']);
    expect(changed(out, exchangerPutIn(out)).config.loop).toEqual(['pump', 'core', 'exchanger', 'reservoir']);
  });
});

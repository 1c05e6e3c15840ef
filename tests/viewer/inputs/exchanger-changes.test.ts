import { describe, expect, it } from 'vitest';
import { exchangerPutIn, exchangerTakenOut } from '../../../src/viewer/inputs/exchanger-changes.ts';
import { readCar } from '../../../src/viewer/state/cars.ts';
import { withChanges } from '../../../src/viewer/state/session.ts';
import { shippedDocument } from '../../support/shipped.ts';

describe('the front exchanger', () => {
  it.each(['rolling-road-estate', 'ridge-roadster', 'motorway-wagon', 'session-coupe'])(
    '%s: taken out and put in again, the reader has nothing to say against either',
    (name) => {
      const { variants: _, upgrades: __, ...document } = shippedDocument(name);
      const without = withChanges(document, exchangerTakenOut(document));
      const out = readCar('', without);
      expect(out.issues).toEqual([]);
      expect(out.car?.config.exchanger).toBeUndefined();
      expect(out.car?.config.lines.map(({ after }) => after)).toEqual(['reservoir', 'pump', 'core']);
      const back = readCar('', withChanges(without, exchangerPutIn(without)));
      expect(back.issues).toEqual([]);
      // 0.11 m2: the first demo car
      expect(back.car?.config.exchanger?.faceArea).toBe(0.11);
      expect(back.car?.config.lines).toHaveLength(4);
    },
  );
});

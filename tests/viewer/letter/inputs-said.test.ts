import { beforeEach, expect, it } from 'vitest';
import { sayInputs } from '../../../src/viewer/letter/inputs-said.ts';
import type { Car } from '../../../src/viewer/state/cars.ts';
import { IMPERIAL, METRIC } from '../../../src/viewer/state/display.ts';
import { Session } from '../../../src/viewer/state/session.ts';
import { shippedDocument } from '../../support/shipped.ts';

let session: Session;
beforeEach(() => {
  session = new Session();
  session.open(JSON.stringify(shippedDocument('rolling-road-estate')));
});
const inputs = (units = METRIC) => {
  const { changed, main } = sayInputs(session.before.value as Car, session.after.value, units);
  const plain = (texts: readonly string[]) => texts.map((text) => text.replaceAll('\u00a0', ' '));
  return { changed: plain(changed), main: plain(main) };
};

// Values stand in scenarios/rolling-road-estate.json.
it('tells limit, parts and drive of a car that stands alone', () => {
  const { changed, main } = inputs();
  expect(changed).toEqual([]);
  expect(main).toContain('limit of the charge temperature 58 °C');
  expect(main).toContain('line bore 16.5 mm');
  expect(main).toContain('rest: duration of the phase 90 s');
  // The file names a pressure and no altitude, which is 0 by default.
  expect(main.filter((text) => text.startsWith('altitude'))).toEqual([]);
});

it('tells a change from where to where, and no more among the rest', () => {
  session.change({ 'lines.bore': 22 }, 'bore');
  const { changed, main } = inputs();
  expect(changed).toEqual(['line bore 16.5 mm to 22 mm']);
  expect(main.filter((text) => text.startsWith('line bore'))).toEqual([]);
});

it('tells words, ends of a rise, and what was not there', () => {
  session.change({ 'bypass.route': 'after core', 'cycle.1.phases.0.engineSpeed': [2500, 7000] }, 'more');
  session.change({ 'room.volume': 400, 'room.extraction': 3, 'room.heatPerAir': 0.5 }, 'room');
  const { changed } = inputs();
  expect(changed).toContain('bypass route before core to after core');
  expect(changed.find((text) => text.includes('7000'))).toMatch(/^pull: engine speed.* 6600 rpm to 7000 rpm$/);
  expect(changed.find((text) => text.includes('400'))).toMatch(/none to 400 m³$/);
});

it('writes the units of the page', () => {
  // 58 degC is 136.4 degF.
  expect(inputs(IMPERIAL).main).toContain('limit of the charge temperature 136.4 °F');
});

import { describe, expect, it } from 'vitest';
import type { PullSummary, RunStudy } from '../../../src/sim/index.ts';
import { describeCooling } from '../../../src/viewer/answer/cooling-words.ts';
import { type CarRun, NO_RUN, readCar } from '../../../src/viewer/state/cars.ts';
import { IMPERIAL, METRIC } from '../../../src/viewer/state/display.ts';
import { shippedDocument } from '../../support/shipped.ts';

const { car } = readCar('', shippedDocument('rolling-road-estate'));
if (car === undefined) throw new Error('no car');
const spaced = (text: string) => text.replaceAll('\u00a0', ' ');

/** A run whose first pull ends at such a charge [degC], gauge [kPa], air [kg/s] and drive power [kW]. */
function run(charge: number, kPa: number, airFlow: number, kW: number, band?: RunStudy['airBand']): CarRun {
  const atEnd = { chargeTemperature: charge + 273.15, manifoldPressure: 1000 * kPa, airFlow, drivePower: 1000 * kW };
  return {
    ...NO_RUN,
    kind: 'solved',
    pulls: [{ pull: 1, atEnd } as unknown as PullSummary],
    study: { ...(band && { airBand: band }) } as RunStudy,
  };
}

describe('what another charge temperature does', () => {
  it('tells charge, gauge, air mass and drive power of the first pull, from Before to After', () => {
    const said = spaced(describeCooling(run(63.5, 175, 0.3, 30), run(50.1, 171.2, 0.303, 28.5), car, METRIC));
    expect(said).toContain(
      'Charge 13.4 K cooler at the end of the pull: the boost gauge falls by 3.8 kPa, air mass +1.0 %,',
    );
    expect(said).toContain('drive power falls by 1.5 kW.');
    expect(said).not.toContain('exponents');
  });

  it('is in the units of the reader: 13.4 K is 24.1 °F, 3.8 kPa is 0.55 psi', () => {
    const said = spaced(describeCooling(run(63.5, 175, 0.3, 30), run(50.1, 171.2, 0.303, 28.5), car, IMPERIAL));
    expect(said).toContain('24.1 °F cooler');
    expect(said).toContain('0.55 psi');
    expect(said).toContain('2.01 hp');
  });

  it('names both ends of the exponent where both studies have them for that pull', () => {
    const [a, b] = [
      { pull: 1, plainDensity: 0.3, steepest: 0.3 },
      { pull: 1, plainDensity: 0.306, steepest: 0.303 },
    ];
    const said = describeCooling(run(63.5, 175, 0.3, 30, a), run(50.1, 171, 0.304, 28, b), car, METRIC);
    expect(said).toContain('(+1.0\u00a0% to +2.0\u00a0% for swallowing exponents 0 to 0.5)');
    const ofOther = describeCooling(
      run(63.5, 175, 0.3, 30, a),
      run(50.1, 171, 0.304, 28, { ...b, pull: 8 }),
      car,
      METRIC,
    );
    expect(ofOther).not.toContain('exponents');
  });

  it('says nothing where the charge is as warm, or there is no pull', () => {
    expect(describeCooling(run(63.5, 175, 0.3, 30), run(63.52, 175, 0.3, 30), car, METRIC)).toBe('');
    expect(describeCooling(NO_RUN, run(50, 171, 0.3, 28), car, METRIC)).toBe('');
  });
});

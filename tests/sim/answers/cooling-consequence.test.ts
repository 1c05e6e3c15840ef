import { describe, expect, it } from 'vitest';
import { studyAirBand } from '../../../src/sim/answers/air-band.ts';
import { withCoreConductance } from '../../../src/sim/answers/car-changes.ts';
import { compareCooling, explainCooling } from '../../../src/sim/answers/cooling-consequence.ts';
import { summarisePulls } from '../../../src/sim/answers/pull-summary.ts';
import { conduct } from '../../../src/sim/answers/study.ts';
import type { DisplacementConfig } from '../../../src/sim/scenario/config/compressor.ts';
import type { Config } from '../../../src/sim/scenario/config.ts';
import { simulate } from '../../../src/sim/simulate.ts';
import { shippedConfig } from '../../support/shipped.ts';

const WORDING = {
  difference: (kelvin: number) => `${kelvin.toFixed(1)} K`,
  pressure: (pascal: number) => `${(pascal / 1e3).toFixed(1)} kPa`,
  power: (watts: number) => `${watts.toFixed(0)} W`,
};

/** The first pull of a car, with its band. */
function carOf(config: Config) {
  const pull = summarisePulls(simulate(config), config.limit.chargeTemperature)[0];
  return { pull, airBand: conduct(studyAirBand(config, 1)) };
}
const consequenceOf = (before: Config, after: Config) => compareCooling(carOf(before), carOf(after));

const ESTATE = shippedConfig('rolling-road-estate');
const COUPE = shippedConfig('session-coupe');

// The circles of a run are closed to a hundredth of a kelvin, hence four digits. Common practice, no published
// source: cooling lowers the gauge on a fixed displacement pulley and adds mass elsewhere.
describe('a core of twice the conductance', () => {
  it('lowers the gauge of a displacement machine, by p = m R T/(eta V N) of the same mass', () => {
    const machine = { ...(ESTATE.compressor as DisplacementConfig), leak: 0 };
    const tight = { ...ESTATE, compressor: machine, engine: { ...ESTATE.engine, temperatureExponent: 0 } };
    const [before, after] = [carOf(tight), carOf(withCoreConductance(tight, 2))];
    const { chargeChange, manifoldChange, airChange, driveChange } = compareCooling(before, after);
    expect(chargeChange).toBeLessThan(-5);
    expect(Math.abs(airChange)).toBeLessThan(1e-5);
    const ratio = after.pull.atEnd.chargeTemperature / before.pull.atEnd.chargeTemperature;
    expect(manifoldChange / before.pull.atEnd.manifoldPressure).toBeCloseTo(ratio - 1, 4);
    expect(driveChange).toBeLessThan(0);
  });

  it('adds mass to a centrifugal machine, whose pressure stands, by T to the power of exponent - 1', () => {
    const [before, after] = [carOf(COUPE), carOf(withCoreConductance(COUPE, 2))];
    const { airChange, airChangeEnds, manifoldChange } = compareCooling(before, after);
    expect(airChange).toBeGreaterThan(0.01);
    const [from, to] = [before.pull.atEnd, after.pull.atEnd];
    const swallowed = (to.chargeTemperature / from.chargeTemperature) ** (COUPE.engine.temperatureExponent - 1);
    expect(1 + airChange).toBeCloseTo(swallowed * (to.manifoldPressure / from.manifoldPressure), 4);
    // More air drops more in the core; the compressor's outlet stays.
    expect(Math.abs(manifoldChange)).toBeLessThan(0.003 * from.manifoldPressure);
    // The plain density rule promises most.
    expect(airChangeEnds?.[0]).toBeGreaterThan(airChangeEnds?.[1] ?? 1);
    expect(airChange).toBeGreaterThan(airChangeEnds?.[1] ?? 1);
    expect(airChange).toBeLessThan(airChangeEnds?.[0] ?? 0);
  });
});

describe('what is said of it', () => {
  it('gives charge, gauge, mass with both ends and drive power, and the reason of the machine', () => {
    const said = explainCooling(consequenceOf(ESTATE, withCoreConductance(ESTATE, 2)), ESTATE.compressor, WORDING);
    expect(said).toMatch(
      /^Charge \d+\.\d K cooler at the end of the pull: the boost gauge falls by \d\.\d kPa, air mass \+/,
    );
    expect(said).toMatch(
      /\(\+\d\.\d % to \+\d\.\d % for swallowing exponents 0 to 0\.5\), drive power falls by \d+ W\./,
    );
    expect(said).toContain('the boost gauge shows what the engine makes of it');
    const held = { ...(ESTATE.compressor as DisplacementConfig), targetManifoldPressure: 150e3 };
    const consequence = consequenceOf(COUPE, withCoreConductance(COUPE, 0.5));
    expect(explainCooling(consequence, held, WORDING)).toContain('The bypass holds the pressure');
    expect(explainCooling(consequence, COUPE.compressor, WORDING)).toMatch(/K warmer .* air mass -/);
  });

  it('leaves the ends out where they were not run', () => {
    const before = { pull: carOf(ESTATE).pull };
    const after = { pull: carOf(withCoreConductance(ESTATE, 2)).pull };
    expect(explainCooling(compareCooling(before, after), ESTATE.compressor, WORDING)).not.toContain('exponents');
  });
});

describe('the air band', () => {
  it('is absent where a run has no such pull', () => {
    expect(conduct(studyAirBand(ESTATE, 99))).toBeUndefined();
  });

  it('is what a run with that exponent takes', () => {
    const plain = { ...ESTATE, engine: { ...ESTATE.engine, temperatureExponent: 0 } };
    expect(conduct(studyAirBand(ESTATE, 1))?.plainDensity).toBeCloseTo(carOf(plain).pull.atEnd.airFlow, 12);
  });
});

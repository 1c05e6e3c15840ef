import { describe, expect, it } from 'vitest';
import { type CoreDropStudy, studyCoreDrop } from '../../../src/sim/answers/core-drop.ts';
import { explainCoreDrop } from '../../../src/sim/answers/core-drop-sentence.ts';
import { conduct } from '../../../src/sim/answers/study.ts';
import { FILE_WORDING } from '../../../src/sim/answers/wording.ts';
import type { Config } from '../../../src/sim/scenario/config.ts';
import { scaledAirDrop } from '../../../src/sim/scenario/laws.ts';
import { shippedConfig } from '../../support/shipped.ts';

const ESTATE = shippedConfig('rolling-road-estate');
const COUPE = shippedConfig('session-coupe');
/** The coupe's machine driven by a turbine, its manifold held where the pulley would leave it. */
const HELD: Config = {
  ...COUPE,
  compressor: { ...COUPE.compressor, kind: 'turbine-driven', highestSpeed: 2e5, targetManifoldPressure: 165.8e3 },
} as Config;

function studyOf(config: Config): CoreDropStudy {
  const study = conduct(studyCoreDrop(config));
  if (study === undefined) throw new Error('no pull');
  return study;
}

/** The study of a car whose core takes some pressure, and what a pascal of it does. */
function slopesOf(config: Config): CoreDropStudy & Required<Pick<CoreDropStudy, 'perPascal'>> {
  const { perPascal, ...study } = studyOf(config);
  if (perPascal === undefined) throw new Error('no drop');
  return { ...study, perPascal };
}

describe('a kilopascal of core drop', () => {
  // From an independently written model of the same cars, another method and language, core drop alone changed. Held,
  // its shaft keeps its speed; a turbine's speeds up with the pressure ratio, and so do its idle losses: 0.06 K more.
  it.each([
    ['a displacement machine on its pulley', ESTATE, { discharge: 0.68, drive: 0.19, peak: 0.22, within: 0.03 }],
    ['a held manifold pressure', HELD, { discharge: 0.76, drive: 0.27, peak: 0.2, within: 0.06 }],
  ])('costs with %s', (_, config, expected) => {
    const { perPascal, free } = slopesOf(config);
    expect(Math.abs(1e3 * perPascal.discharge - expected.discharge)).toBeLessThan(expected.within);
    expect(Math.abs(perPascal.drivePower - expected.drive)).toBeLessThan(0.5 * expected.within);
    expect(Math.abs(1e3 * perPascal.peak - expected.peak)).toBeLessThan(0.03);
    expect(Math.abs((1e3 * perPascal.airFlow) / free.airFlow)).toBeLessThan(1.5e-3);
  });

  it('comes straight off the manifold of a centrifugal machine on its pulley, and takes 0.6 % of its air', () => {
    const { perPascal, asItIs } = slopesOf(COUPE);
    expect(perPascal.manifold).toBeCloseTo(-1, 3);
    expect(perPascal.pressureRatio).toBeCloseTo(0, 9);
    expect((1e3 * perPascal.airFlow) / asItIs.airFlow).toBeCloseTo(-0.006, 3);
  });

  it('is nothing to be told of a core that takes none', () => {
    const { core } = ESTATE;
    const { perPascal, asItIs, free, doubled } = studyOf({
      ...ESTATE,
      core: { ...core, airDrop: scaledAirDrop(core.airDrop, 0) },
    });
    expect(perPascal).toBeUndefined();
    expect(asItIs).toEqual(free);
    expect(doubled).toEqual(free);
  });
});

describe('no core at all', () => {
  it('sends the discharge into the engine', () => {
    const { none } = studyOf(ESTATE);
    expect(none.drop).toBe(0);
    // The plenum's metal takes a little off.
    expect(none.discharge - none.peak).toBeGreaterThan(0);
    expect(none.discharge - none.peak).toBeLessThan(3);
  });
});

describe('in words', () => {
  const words = (config: Config) => explainCoreDrop(studyOf(config), config.compressor, FILE_WORDING).join(' ');

  it('each kind of machine has its own reason', () => {
    expect(words(ESTATE)).toMatch(
      /^The core takes 7\.7 kPa .* The pulley makes the compressor work against it: discharge \+/,
    );
    expect(words(HELD)).toContain('The held pressure makes the compressor work against it');
    expect(words(COUPE)).toMatch(/comes straight off the manifold: -7\.7 kPa, and the air changes by -4\.3 %/);
  });

  it('a change of next to nothing is none', () => {
    const same = { ...studyOf(COUPE) };
    const sentences = explainCoreDrop(
      { ...same, free: same.asItIs, none: same.asItIs },
      COUPE.compressor,
      FILE_WORDING,
    );
    expect(sentences.join(' ')).toContain('the air changes not at all');
    expect(sentences.join(' ')).not.toMatch(/[-+]0\.0/);
  });
});

import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../../src/sim/scenario/parse.ts';
import { toConfig } from '../../../src/sim/scenario/to-config.ts';
import { simulate } from '../../../src/sim/simulate.ts';
import { type Edits, estateWith, issuesWith } from './estate.ts';

const PROPYLENE: Edits = { 'coolant.glycol': 'propylene' };

function configWith(edits: Edits) {
  const { scenario, issues } = parseScenario(estateWith(edits));
  if (scenario === undefined) throw new Error(JSON.stringify(issues));
  return toConfig(scenario);
}

const messagesWith = (edits: Edits) =>
  issuesWith(edits)
    .map(({ message }) => message)
    .join('\n');

describe('the kind of glycol', () => {
  it('is ethylene where nothing is said, and what is said elsewhere', () => {
    expect(configWith({}).coolant.glycol).toBe('ethylene');
    expect(configWith(PROPYLENE).coolant.glycol).toBe('propylene');
  });

  it('without glycol makes no difference to a whole run', () => {
    const cycle = [{ kind: 'pull', duration: 6, engineSpeed: [3000, 6000], exchangerAirSpeed: 3 }];
    const [ethylene, propylene] = ['ethylene', 'propylene'].map((glycol) =>
      simulate(configWith({ cycle, 'coolant.glycolByVolume': 0, 'coolant.glycol': glycol })),
    );
    expect(propylene.columns.chargeTemperature).toEqual(ethylene.columns.chargeTemperature);
  });

  it('with glycol does: the thicker mix flows less', () => {
    const cycle = [{ kind: 'pull', duration: 6, engineSpeed: [3000, 6000], exchangerAirSpeed: 3 }];
    const [ethylene, propylene] = ['ethylene', 'propylene'].map((glycol) =>
      simulate(configWith({ cycle, 'coolant.glycol': glycol })),
    );
    expect(propylene.columns.coolantFlow[0]).toBeLessThan(ethylene.columns.coolantFlow[0]);
  });
});

describe('messages about propylene glycol', () => {
  it('range up to 60 % by mass: 59.1 % by volume, from 1036.12 and 998.207 kg/m3 (CRC Handbook, IAPWS)', () => {
    expect(messagesWith({ ...PROPYLENE, 'coolant.glycolByVolume': 59 })).toBe('');
    expect(messagesWith({ 'coolant.glycolByVolume': 59 })).toContain('expected 0 to 57.3 %');
    expect(messagesWith({ ...PROPYLENE, 'coolant.glycolByVolume': 60 })).toContain(
      'expected 0 to 59.1 %. The published fit for propylene glycol ends at 60 % by mass. 60 % by mass is about 59',
    );
  });

  it('by mass: 0.5/1036.12 over 0.5/1036.12 + 0.5/998.207 is 49.07 %', () => {
    expect(messagesWith({ ...PROPYLENE, 'coolant.glycolByVolume': '50 % by mass' })).toContain(
      '50 % by mass is about 49 % by volume.',
    );
  });

  it('freezing names the glycol in the mix and in the proposal', () => {
    const cold = { ...PROPYLENE, 'ambient.temperature': -8, 'start.coolant': -8, 'coolant.glycolByVolume': 10 };
    const [issue] = issuesWith(cold).filter(({ path }) => path === 'coolant.glycolByVolume');
    // ASHRAE Handbook Fundamentals (2001), chapter 21, table 5: 10 % by volume freezes at -3.3 degC, 30 % at -13 degC.
    const [, freezes, proposed, then] =
      /10 % propylene glycol freezes at (\S+) degC .* takes (\d+) % propylene glycol, which freezes at (\S+) degC/.exec(
        issue.message,
      ) ?? [];
    expect(Math.abs(Number(freezes) + 3.3)).toBeLessThan(0.6);
    expect([30, 35]).toContain(Number(proposed));
    expect(Number(then)).toBeLessThanOrEqual(-13);
    const mended = issuesWith({ ...cold, 'coolant.glycolByVolume': Number(proposed) });
    expect(mended.filter(({ path }) => path === 'coolant.glycolByVolume')).toEqual([]);
  });

  it('a word for another glycol is refused with the two that are known', () => {
    expect(messagesWith({ 'coolant.glycol': 'triethylene' })).toContain('expected "ethylene" or "propylene"');
  });
});

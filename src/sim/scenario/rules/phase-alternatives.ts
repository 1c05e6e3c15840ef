import { figure } from '../../units.ts';
import { listed, type Report } from '../issue.ts';
import type { PhaseValues, Values } from '../shape.ts';

/** Ways to say how much air crosses the exchanger. */
export const AIR_KEYS = ['exchangerAirSpeed', 'roadSpeed', 'fanFlow'] as const;

/** What a phase says of the air at the exchanger, in whichever key. */
export const exchangerAir = (phase: PhaseValues): readonly [number, number] | undefined =>
  AIR_KEYS.map((key) => phase[key]).find((flow) => flow !== undefined);

/** Of keys of a phase that say the same thing in other words, one is kept; and each must find its part. */
export function checkAlternatives(phase: PhaseValues, path: string, values: Values, report: Report): void {
  const said = AIR_KEYS.filter((key) => phase[key] !== undefined);
  if (said.length > 1) {
    const message = `The air at the front exchanger is given ${said.length} times: by ${listed(said)}. Keep one.`;
    report({ severity: 'error', path: `${path}.${said[1]}`, message, found: said.join(', '), expected: 'one of them' });
  }
  const { supplyVoltage, pumpVoltageRatio } = phase;
  if (supplyVoltage !== undefined && pumpVoltageRatio !== undefined) {
    const message = `The voltage of the pump is given twice: ${figure(supplyVoltage)} V at the battery and a ratio of ${figure(pumpVoltageRatio)}. Keep one.`;
    report({ severity: 'error', path: `${path}.supplyVoltage`, message, found: 'both', expected: 'one of them' });
  }
  for (const name of ['pump', 'secondPump'] as const) {
    if (supplyVoltage === undefined || values[name] === undefined || values[name].ratedVoltage !== undefined) continue;
    report({
      severity: 'error',
      path: `${name}.ratedVoltage`,
      message: `A phase gives the voltage of the battery, ${figure(supplyVoltage)} V: it takes the rated voltage of the ${name === 'pump' ? 'pump' : 'second pump'} to make anything of it.`,
      found: 'nothing',
      expected: 'the voltage at which its curve was measured, 12 to 14 V',
    });
  }
}

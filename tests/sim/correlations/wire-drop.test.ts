import { describe, expect, it } from 'vitest';
import { voltageAtMotor, wireResistance } from '../../../src/sim/correlations/wire-drop.ts';
import { shortConfig } from '../../support/short-session.ts';

/**
 * By hand: 4 m of 2.5 mm2 there and back at 1/58 ohm mm2/m (IEC 60028, 1925) are 8/(58 x 2.5) = 0.0551724 ohm. A motor
 * of 120 W at 12 V draws 10 A there and 10 (V/12)^2 A at V. From 12.00 V: 10 A lose 0.5517 V, 11.448 V draw 9.102 A,
 * which lose 0.5022 V, 11.498 V draw 9.181 A, ... and settle at 11.49384 V, 9.17419 A and 0.50616 V.
 */
const RESISTANCE = 0.0551724;
const AT_MOTOR = 11.49384;

describe('the drop in the wires of a pump', () => {
  it('has the resistance of both wires', () => {
    expect(wireResistance(4, 2.5e-6)).toBeCloseTo(RESISTANCE, 7);
  });

  it('is what the motor draws at the voltage that reaches it', () => {
    expect(voltageAtMotor(12, 12, 120, RESISTANCE)).toBeCloseTo(AT_MOTOR, 5);
    expect(voltageAtMotor(12, 12, 120, 0)).toBe(12);
    expect(voltageAtMotor(0, 12, 120, RESISTANCE)).toBe(0);
  });

  it('closes the circuit at any supply: motor and wires together take it', () => {
    for (const supply of [6, 12, 14.4, 28]) {
      for (const resistance of [1e-6, 0.05, 2]) {
        const voltage = voltageAtMotor(supply, 12, 120, resistance);
        expect(voltage + resistance * 10 * (voltage / 12) ** 2).toBeCloseTo(supply, 10);
      }
    }
  });

  it('comes into a scenario by the voltage of the battery', () => {
    const edits = {
      'pump.electricalPower': 120,
      'pump.ratedVoltage': 12,
      'pump.wireLength': 4,
      'pump.wireArea': 2.5,
      'cycle.1.phases.0.supplyVoltage': 12,
    };
    const [pull, cruise] = shortConfig(edits).cycle.block;
    expect(pull.pumpVoltageRatio).toBeCloseTo(AT_MOTOR / 12, 6);
    expect(pull.supplyVoltage).toBe(12);
    expect(cruise.pumpVoltageRatio).toBe(1);
    // Without wire all of it arrives.
    const bare = shortConfig({ ...edits, 'pump.wireLength': 0, 'cycle.1.phases.0.supplyVoltage': 13.8 });
    expect(bare.cycle.block[0].pumpVoltageRatio).toBeCloseTo(13.8 / 12, 12);
  });
});

import { describe, expect, it } from 'vitest';
import { DisplacementCompressor } from '../../../src/sim/model/displacement-compressor.ts';
import type { DisplacementConfig } from '../../../src/sim/scenario/config/compressor.ts';

/** Invented machine. */
const MACHINE: DisplacementConfig = {
  kind: 'displacement',
  sweptVolume: 1.55e-3,
  driveRatio: 1.62,
  leak: 1.12,
  quoted: { efficiency: 0.66, speed: 10692, pressureRatio: 1.86, inletTemperature: 306.15, inletPressure: 99500 },
  idlePower: { power: 900, speed: 10000, exponent: 1.6 },
  mechanicalLoss: { power: 700, exponent: 1.5, toCasing: 0.3 },
};

/** dry air: J/(kg K), J/(kg K), (g - 1)/g with g = 1.4 */
const CP = 1006;
const R = 287.05;
const K = 2 / 7;

/** What the machine does at a point, by the laws in its docstring and nothing else. */
function atPoint(machine: DisplacementCompressor, ratio: number, temperature: number, pressure: number) {
  const flow = (machine.volumeFlow(ratio) * pressure) / (R * temperature);
  const compression = flow * CP * temperature * (machine.temperatureRatio(ratio) - 1);
  const ideal = flow * CP * temperature * (ratio ** K - 1);
  return { flow, ideal, total: compression + machine.idlePower(pressure) };
}

describe('the quoted point', () => {
  it('has the quoted efficiency of everything that ends in the air, idle power among it', () => {
    for (const [efficiency, idle] of [
      [0.66, 900],
      [0.5, 2000],
      [0.78, 0],
    ]) {
      const config = {
        ...MACHINE,
        quoted: { ...MACHINE.quoted, efficiency },
        idlePower: { ...MACHINE.idlePower, power: idle },
      };
      const machine = new DisplacementCompressor(config);
      machine.setSpeed(config.quoted.speed);
      const { ideal, total } = atPoint(machine, 1.86, 306.15, 99500);
      expect(Math.abs(ideal / total / efficiency - 1)).toBeLessThan(1e-9);
    }
  });

  // Mass flow by the swept-volume law and the inner efficiency that follows, worked out by another program in another
  // language for four invented machines; printed to four digits.
  it.each([
    ['0.9 L', 0.9e-3, 1.78, 0.6, 11560, 1.65, 303.15, 86000, 700, 10000, 0.1542, 0.6403],
    ['2.3 L', 2.3e-3, 1.36, 0.7, 15745, 2.16, 315.15, 100000, 1600, 10000, 0.6003, 0.7364],
    ['1.55 L', 1.55e-3, 1.12, 0.66, 10692, 1.86, 306.15, 99500, 900, 10000, 0.2846, 0.6866],
    ['1.32 L', 1.32e-3, 1.72, 0.57, 9300, 1.65, 309.15, 100000, 1100, 10000, 0.2028, 0.6048],
  ])(
    'of the %s machine',
    (_, sweptVolume, leak, efficiency, speed, pressureRatio, inletTemperature, inletPressure, power, at, flow, inner) => {
      const machine = new DisplacementCompressor({
        ...MACHINE,
        sweptVolume,
        leak,
        quoted: { efficiency, speed, pressureRatio, inletTemperature, inletPressure },
        idlePower: { power, speed: at, exponent: 1.6 },
      });
      machine.setSpeed(speed);
      expect(atPoint(machine, pressureRatio, inletTemperature, inletPressure).flow).toBeCloseTo(flow, 4);
      const rise = machine.temperatureRatio(pressureRatio) - 1;
      expect((pressureRatio ** K - 1) / rise).toBeCloseTo(inner, 4);
    },
  );
});

describe('a built-in volume ratio', () => {
  const withRatio = (builtInVolumeRatio: number, changes: Partial<DisplacementConfig> = {}) =>
    new DisplacementCompressor({ ...MACHINE, builtInVolumeRatio, ...changes });
  /** Without idle power the quoted efficiency, isentropic over real work, fixes the work at the quoted point. */
  const NO_IDLE = { idlePower: { ...MACHINE.idlePower, power: 0 } };
  const QUOTED = MACHINE.quoted.pressureRatio;
  /** Ideal rise over the real one, constant, from the ideal rise at the quoted point. */
  const innerBy = (idealAtQuoted: number) => (MACHINE.quoted.efficiency * idealAtQuoted) / (QUOTED ** K - 1);

  /** Work of the indicator diagram over p1 V, drawn by hand: trapezoids along the closed compression, then delivery. */
  function diagram(ratio: number, volumeRatio: number): number {
    const strips = 20000;
    let closed = 0;
    const pressureAt = (volume: number) => volume ** -1.4;
    for (let n = 0; n < strips; n++) {
      const width = (1 - 1 / volumeRatio) / strips;
      const volume = 1 - n * width;
      closed += 0.5 * width * (pressureAt(volume) + pressureAt(volume - width));
    }
    const intake = 1;
    const delivery = ratio / volumeRatio;
    return closed + delivery - intake;
  }

  it.each([1, 1.3, 1.6])('of %d takes the work of its indicator diagram', (volumeRatio) => {
    const machine = withRatio(volumeRatio, NO_IDLE);
    const inner = innerBy(K * diagram(QUOTED, volumeRatio));
    for (const ratio of [1, 1.2, 1.8, 2.6]) {
      const rise = (machine.temperatureRatio(ratio) - 1) * inner;
      // W = m cp T1 rise and m = p1 V/(R T1): the rise is (g - 1)/g of the work over p1 V.
      expect(Math.abs(rise - K * diagram(ratio, volumeRatio))).toBeLessThan(1e-8);
    }
  });

  it('of 1 pushes the air out against the whole pressure: work goes with PR - 1', () => {
    const machine = withRatio(1, NO_IDLE);
    const inner = innerBy(K * (QUOTED - 1));
    for (const ratio of [1.3, 1.86, 2.5]) {
      const rise = (machine.temperatureRatio(ratio) - 1) * inner;
      expect(rise).toBeCloseTo(K * (ratio - 1), 12);
    }
    expect(machine.temperatureRatio(1)).toBe(1);
  });

  it('that fits the pressure ratio, v^g = PR, wastes nothing: isentropic work', () => {
    for (const ratio of [1.3, 1.86, 2.5]) {
      const volumeRatio = ratio ** (1 / 1.4);
      const machine = withRatio(volumeRatio, NO_IDLE);
      const rise = (machine.temperatureRatio(ratio) - 1) * innerBy(K * diagram(QUOTED, volumeRatio));
      expect(Math.abs(rise - (ratio ** K - 1))).toBeLessThan(1e-8);
    }
  });

  it('above 1 works against its own discharge with the bypass open', () => {
    expect(withRatio(1.3).temperatureRatio(1)).toBeGreaterThan(1.005);
    expect(withRatio(1.6).temperatureRatio(1)).toBeGreaterThan(withRatio(1.3).temperatureRatio(1));
  });

  it.each([1, 1.3])(
    'of %d keeps the quoted efficiency at the quoted point, isentropic work over all',
    (volumeRatio) => {
      const machine = withRatio(volumeRatio);
      machine.setSpeed(MACHINE.quoted.speed);
      const { ideal, total } = atPoint(machine, 1.86, 306.15, 99500);
      expect(Math.abs(ideal / total / 0.66 - 1)).toBeLessThan(1e-9);
    },
  );
});

describe('a displacement compressor', () => {
  it('delivers what it sweeps, less a leak that grows with pressure and shrinks with speed', () => {
    const machine = new DisplacementCompressor(MACHINE);
    for (const speed of [3000, 10692]) {
      machine.setSpeed(speed);
      const swept = (1.55e-3 * speed) / 60;
      expect(machine.volumeFlow(1)).toBeCloseTo(swept, 12);
      expect(1 - machine.volumeFlow(1.8) / swept).toBeCloseTo((1.12 * 0.8) / (speed / 1000), 12);
      expect(machine.volumeFlow(machine.highestPressureRatio())).toBeCloseTo(0.05 * swept, 12);
    }
  });

  it('churns and rubs by powers of its speed, the churning also by the density at its inlet', () => {
    const machine = new DisplacementCompressor(MACHINE);
    machine.setSpeed(5000);
    expect(machine.idlePower(40000)).toBeCloseTo(900 * 0.5 ** 1.6 * 0.4, 9);
    expect(machine.mechanicalLoss).toBeCloseTo(700 * 0.5 ** 1.5, 9);
  });

  // Second law: no adiabatic machine leaves a gas with less entropy than it came with, s2 - s1 = cp ln(T2/T1)
  // - R ln PR.
  it('never cools air that drives its rotors below what an ideal expander would', () => {
    for (const efficiency of [0.3, 0.66, 0.9]) {
      const machine = new DisplacementCompressor({
        ...MACHINE,
        quoted: { ...MACHINE.quoted, efficiency },
        idlePower: { ...MACHINE.idlePower, power: 100 },
      });
      for (const ratio of [0.1, 0.3, 0.6, 0.9, 0.999, 1, 1.001, 1.5, 3]) {
        const gain = CP * Math.log(machine.temperatureRatio(ratio)) - CP * K * Math.log(ratio);
        expect(gain, `PR ${ratio} at ${efficiency}`).toBeGreaterThanOrEqual(-1e-9);
      }
    }
  });
});

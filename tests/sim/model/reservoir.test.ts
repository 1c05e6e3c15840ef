import { describe, expect, it } from 'vitest';
import { createCoolant } from '../../../src/sim/fluids/coolant.ts';
import type { TimeSeries } from '../../../src/sim/results/time-series.ts';
import { simulate } from '../../../src/sim/simulate.ts';
import { type Edits, shortConfig } from '../../support/short-session.ts';

const KELVIN = 273.15;
/** J/kg, CRC Handbook: enthalpy of fusion of water */
const FUSION = 333.55e3;

/** A tank of ice by itself: engine and pump off, air of a steady temperature round it. */
const BY_ITSELF = {
  cycle: [{ kind: 'hot soak', duration: 3600, pump: 'off', bayAboveAmbient: 0 }],
  'ambient.temperature': 30,
  'reservoir.gainFrom': 'outside',
  'reservoir.gain': 40,
  'reservoir.coolantVolume': 7,
  'reservoir.iceMass': 2,
  'reservoir.meltConductance': 130,
  'coolant.glycolByVolume': 0,
  'coolant.propertiesAt': 15,
  'start.coolant': 4,
  'numerics.tolerance': 1e-4,
} satisfies Edits;

const tankOf = (edits: Edits = {}): TimeSeries => simulate(shortConfig({ ...BY_ITSELF, ...edits }));

/** y' = f(y) by the classical Runge-Kutta method of fourth order, 0.05 s at a time, to each of `times`. */
function rungeKutta(f: (y: readonly number[]) => number[], start: readonly number[], times: ArrayLike<number>) {
  const moved = (y: readonly number[], k: readonly number[], h: number) => y.map((value, n) => value + h * k[n]);
  let y = [...start];
  let time = 0;
  return Array.from(times, (until) => {
    const steps = Math.ceil((until - time) / 0.05);
    const h = steps > 0 ? (until - time) / steps : 0;
    for (let n = 0; n < steps; n++) {
      const k1 = f(y);
      const k2 = f(moved(y, k1, h / 2));
      const k3 = f(moved(y, k2, h / 2));
      const k4 = f(moved(y, k3, h));
      y = y.map((value, n) => value + (h / 6) * (k1[n] + 2 * k2[n] + 2 * k3[n] + k4[n]));
    }
    time = until;
    return y;
  });
}

describe('a tank of ice', () => {
  // The two equations of a mixed tank and of pieces that keep their shape, with mass and temperature as unknowns,
  // by a general-purpose method: water 999.1 kg/m3 and 4189 J/(kg K) at 15 degC (IAPWS SR6-08).
  it('melts and warms as its two equations say', () => {
    const { columns, rowCount, events } = tankOf();
    const filled = 7e-3 * 999.1;
    const exact = rungeKutta(
      ([ice, temperature]) => {
        const melt = (130 * 2 * Math.max(0, ice / 2) ** (2 / 3) * temperature) / FUSION;
        const heat = 40 * (30 - temperature) - melt * (FUSION + 4189 * temperature);
        return [-melt, heat / ((filled + 2 - ice) * 4189)];
      },
      [2, 4],
      columns.time.subarray(0, rowCount),
    );
    for (let row = 0; row < rowCount; row++) {
      const [ice, temperature] = exact[row];
      expect(Math.abs(columns.iceMass[row] - ice), `${columns.time[row]} s`).toBeLessThan(1e-3);
      expect(Math.abs(columns.reservoirTemperature[row] - KELVIN - temperature)).toBeLessThan(4e-3);
    }
    const gone = exact.findIndex(([ice]) => ice < 2e-6);
    const [event] = events.filter(({ kind }) => kind === 'ice gone');
    expect(gone).toBeGreaterThan(10);
    expect(event.time).toBeGreaterThan(columns.time[gone - 1] - 5);
    expect(event.time).toBeLessThan(columns.time[gone] + 5);
  });

  // Whatever the path: heat let in until the ice is gone = its heat of fusion, and the warming of what is there then.
  it('that melts easily takes its heat of fusion, and keeps near 0 degC while most of it is left', () => {
    const { columns, events } = tankOf({ 'start.coolant': 0.02, 'reservoir.meltConductance': 5000 });
    const [gone] = events.filter(({ kind }) => kind === 'ice gone');
    const { time, reservoirTemperature } = columns;
    let heat = 0;
    let row = 0;
    for (; time[row] < gone.time; row++) {
      if (time[row] < 0.8 * gone.time) expect(reservoirTemperature[row]).toBeLessThan(KELVIN + 0.5);
      const mean = (reservoirTemperature[row] + reservoirTemperature[row + 1]) / 2 - KELVIN;
      heat += 40 * (30 - mean) * (time[row + 1] - time[row]);
    }
    const filled = 7e-3 * 999.1 * 4189;
    const warmed = (filled + 2 * 4189) * (reservoirTemperature[row] - KELVIN) - filled * 0.02;
    expect(heat / (2 * FUSION + warmed)).toBeCloseTo(1, 3);
  });

  it('in a glycol mix starts melting below 0 degC, at a first ice that rises as the mix weakens', () => {
    const edits = { 'coolant.glycolByVolume': 30, 'start.coolant': -8, 'reservoir.iceMass': 6 };
    const config = shortConfig({ ...BY_ITSELF, ...edits });
    const { columns, rowCount } = simulate(config);
    // Pieces lie at the first ice of the mix; no tank can be warmer than the air or colder than its own ice.
    const first = createCoolant(0.3).freezingPoint;
    expect(first).toBeLessThan(KELVIN - 14);
    expect(columns.iceMass[rowCount - 1]).toBeLessThan(6);
    for (let row = 0; row < rowCount; row++) expect(columns.reservoirTemperature[row]).toBeGreaterThan(first);
    // -8 degC is above the first ice of 30 %, so ice melts at once and takes the mix down before it warms.
    expect(Math.min(...columns.reservoirTemperature.subarray(0, rowCount))).toBeLessThan(KELVIN - 9);
  });

  it('none at all is the tank without ice, to the last digit', () => {
    const [none, absent] = [{ 'reservoir.iceMass': 0 }, { 'reservoir.iceMass': undefined }].map(tankOf);
    expect(none.columns).toEqual(absent.columns);
    expect(none.events).toEqual(absent.events);
  });
});

import { describe, expect, it } from 'vitest';
import { Room } from '../../../src/sim/model/room.ts';
import type { PhaseConfig } from '../../../src/sim/scenario/config/cycle.ts';
import type { Config } from '../../../src/sim/scenario/config.ts';
import { simulate } from '../../../src/sim/simulate.ts';
import { shortConfig } from '../../support/short-session.ts';

// A well-mixed room at constant pressure, its air at its own density: rho V cp dT/dt = q m - rho E cp (T - T_out) with
// rho = p/(R T). Constants of dry air.
const CP = 1006;
const R = 287.05;

const ROOM = { volume: 400, extraction: 3, heatPerAir: 5e5 };
const PRESSURE = 99500;
const OUTSIDE = 300.15;

/** One idling phase of an engine whose air flow does not depend on the charge: volumetric efficiency goes with it. */
function idlingIn(room: NonNullable<Config['room']>, duration: number): Config {
  const { cycle, engine, numerics, ...car } = shortConfig();
  const phase: PhaseConfig = { ...cycle.before[0], duration };
  return {
    ...car,
    room,
    engine: { ...engine, temperatureExponent: 1 },
    cycle: { before: [phase], block: [], repeats: 0, after: [] },
    numerics: { ...numerics, tolerance: 1e-4 },
  };
}

describe('a room round a car on rollers', () => {
  it.each([
    ['as it is', ROOM],
    ['shut', { ...ROOM, extraction: 0 }],
    ['small, with a strong fan', { ...ROOM, volume: 60, extraction: 6 }],
  ])('%s: warms by the exact solution at constant engine flow', (_, room) => {
    const { columns, outcome, rowCount } = simulate(idlingIn(room, 900));
    expect(outcome.kind).toBe('finished');
    const flow = columns.airFlow[0];
    expect(Math.max(...columns.airFlow) / flow - 1).toBeLessThan(1e-9);
    // With rho at the room's own temperature: dT/dt = (w - c) T + c T_out, linear.
    const c = room.extraction / room.volume;
    const w = (room.heatPerAir * flow * R) / (PRESSURE * room.volume * CP);
    const settled = (c * OUTSIDE) / (c - w);
    for (let row = 0; row < rowCount; row++) {
      const exact = settled + (OUTSIDE - settled) * Math.exp((w - c) * columns.time[row]);
      expect(Math.abs(columns.outsideTemperature[row] - exact)).toBeLessThan(1e-3);
    }
    expect(columns.outsideTemperature[rowCount - 1] - OUTSIDE).toBeGreaterThan(0.5);
  });

  it('takes in through a session just the heat that it stores and gives to the extraction', () => {
    const config = { ...shortConfig(), room: ROOM };
    const { columns, rowCount } = simulate(config, { interval: 0.05 });
    const { time, airFlow, outsideTemperature: room } = columns;
    // rho cp V dT = p V cp/R dT/T; rho cp E (T - T_out) = p E cp/R (1 - T_out/T)
    const perVolume = (PRESSURE * CP) / R;
    let [heat, drawn] = [0, 0];
    for (let row = 1; row < rowCount; row++) {
      const span = time[row] - time[row - 1];
      heat += 0.5 * span * ROOM.heatPerAir * (airFlow[row] + airFlow[row - 1]);
      drawn += span * perVolume * ROOM.extraction * (1 - 0.5 * (OUTSIDE / room[row] + OUTSIDE / room[row - 1]));
    }
    const stored = perVolume * ROOM.volume * Math.log(room[rowCount - 1] / room[0]);
    expect(heat).toBeGreaterThan(1e6);
    expect(drawn).toBeGreaterThan(0.05 * heat);
    expect(Math.abs(stored + drawn - heat) / heat).toBeLessThan(1e-4);
  });

  it('is the air round the car: intake, bay and front exchanger see it', () => {
    const inRoom = simulate({ ...shortConfig(), room: { ...ROOM, volume: 60 } });
    const outside = simulate(shortConfig());
    const last = inRoom.rowCount - 1;
    const warmer = inRoom.columns.outsideTemperature[last] - OUTSIDE;
    expect(warmer).toBeGreaterThan(2);
    expect(outside.columns.outsideTemperature.every((t) => Math.abs(t - OUTSIDE) < 1e-9)).toBe(true);
    // Engine off: the air at the compressor inlet is that at the intake, 6 K above the room.
    expect(inRoom.columns.compressorInletTemperature[last]).toBeCloseTo(OUTSIDE + warmer + 6, 9);
    // No fan in the soak: the exchanger's outlet column shows the air before it.
    const behindFan =
      inRoom.columns.exchangerAirOutlet[last] - outside.columns.exchangerAirOutlet[outside.rowCount - 1];
    expect(behindFan).toBeCloseTo(warmer, 6);
    expect(inRoom.energy.terms.coreBay).toBeGreaterThan(outside.energy.terms.coreBay);
  });

  it('solves its stage equation s (T - base) = dT/dt', () => {
    const [base, s, flow] = [310, 2.5, 0.2];
    const temperature = new Room(ROOM).temperatureAt(base, s, OUTSIDE, PRESSURE, flow);
    const density = PRESSURE / (R * temperature);
    const gained = ROOM.heatPerAir * flow - density * ROOM.extraction * CP * (temperature - OUTSIDE);
    expect(s * (temperature - base)).toBeCloseTo(gained / (density * ROOM.volume * CP), 9);
  });
});

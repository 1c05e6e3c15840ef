import type { LineConfig, LinePlace, LineSegment, PumpConfig } from '../../src/sim/scenario/config/loop.ts';
import type { Config } from '../../src/sim/scenario/config.ts';
import { shortConfig } from './short-session.ts';

const { exchanger: shortExchanger, ...withoutExchanger } = shortConfig({ 'coolant.glycolByVolume': 0 });

/** L/min, kPa */
export const LITRES = 1 / 60000;
export const KPA = 1000;

export function parabola(shutOffPressure: number, freeFlow: number): PumpConfig {
  return {
    curve: { kind: 'parabola', shutOffPressure, freeFlow },
    electricalPower: 50,
    shareIntoCoolant: 0.9,
    suctionNeeded: 0,
  };
}

/** A line of one stretch; without length it is all loss coefficient. */
export function lineAfter(after: LinePlace, segment: Partial<LineSegment>): LineConfig {
  return {
    after,
    segments: [{ length: 0, bore: 0.02, lossCoefficient: 0, ...segment }],
    roughness: 0,
    coolantToWall: 10,
    wallToBay: 0,
    wallHeatCapacity: 400,
  };
}

/** K on a bore [m] that takes `perFlow2` Q^2 [Pa], Q in m3/s: K rho V^2/2 = K rho 8 Q^2/(pi^2 D^4). */
export function lossFor(perFlow2: number, bore: number, density: number): number {
  return (perFlow2 * Math.PI ** 2 * bore ** 4) / (8 * density);
}

/** The short session's exchanger without resistance. */
export const freeExchanger = {
  ...(shortExchanger as NonNullable<Config['exchanger']>),
  coolantDrop: { kind: 'power', factor: 0 } as const,
};

/** The short session with water in a loop of pump, core and reservoir without any resistance, but for what is given. */
export function ringConfig(parts: Partial<Config>): Config {
  return {
    ...withoutExchanger,
    core: { ...withoutExchanger.core, coolantDrop: { kind: 'power', factor: 0 } },
    loop: ['pump', 'core', 'reservoir'],
    lines: [],
    ...parts,
  };
}

import type { LineConfig } from '../scenario/config/loop.ts';
import type { Config } from '../scenario/config.ts';

/** Coolant in one stretch of line [m3]. */
export function segmentVolume({ bore, length }: LineConfig['segments'][number]): number {
  return (Math.PI / 4) * bore ** 2 * length;
}

/** Coolant in all lines [m3]. */
export function linesVolume(lines: readonly LineConfig[]): number {
  return lines.flatMap(({ segments }) => segments).reduce((sum, segment) => sum + segmentVolume(segment), 0);
}

/** Coolant in the whole loop, without ice [m3]. */
export function loopVolume({ core, exchanger, secondExchanger, lines, reservoir }: Config): number {
  const inExchangers = (exchanger?.coolantVolume ?? 0) + (secondExchanger?.coolantVolume ?? 0);
  const inTurn = core.layout.passes === 2 ? core.layout.turnVolume : 0;
  return core.coolantVolume + inTurn + inExchangers + linesVolume(lines) + reservoir.coolantVolume;
}

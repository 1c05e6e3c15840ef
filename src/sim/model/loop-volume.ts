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

/** Coolant that is neither in the core nor in the tank [m3]. */
export function volumeBetween({ exchanger, secondExchanger, lines }: Config): number {
  const inExchangers = (exchanger?.coolantVolume ?? 0) + (secondExchanger?.coolantVolume ?? 0);
  return inExchangers + linesVolume(lines);
}

/** Coolant in the whole loop, without ice [m3]. */
export function loopVolume(config: Config): number {
  const { core, reservoir } = config;
  const inTurn = core.layout.passes === 2 ? core.layout.turnVolume : 0;
  return core.coolantVolume + inTurn + volumeBetween(config) + reservoir.coolantVolume;
}

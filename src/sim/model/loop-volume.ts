import type { Config } from '../scenario/config.ts';

/** Coolant in the whole loop, without ice [m3]. */
export function loopVolume({ core, exchanger, secondExchanger, lines, reservoir }: Config): number {
  const inLines = lines
    .flatMap(({ segments }) => segments)
    .reduce((sum, { bore, length }) => sum + (Math.PI / 4) * bore ** 2 * length, 0);
  const inExchangers = (exchanger?.coolantVolume ?? 0) + (secondExchanger?.coolantVolume ?? 0);
  return core.coolantVolume + inExchangers + inLines + reservoir.coolantVolume;
}

import { CoreVapour } from '../../src/sim/model/core-vapour.ts';

/** Humid air over one cell of cold metal. */
interface HumidCell {
  /** kg/s of dry air */
  readonly dryAirFlow: number;
  /** kg of vapour per kg of dry air, entering */
  readonly humidityRatio: number;
  /** K */
  readonly metalTemperature: number;
  /** absolute, Pa */
  readonly pressure: number;
  /** conductance from air to metal over heat capacity rate of the air, of this cell [-] */
  readonly transferUnits: number;
}

/** What the vapour of the core leaves on one cell whose metal is known: kg/kg behind it, kg/s of water, W. */
export function condensationOn({ dryAirFlow, humidityRatio, metalTemperature, pressure, transferUnits }: HumidCell) {
  const vapour = new CoreVapour();
  vapour.set(humidityRatio, dryAirFlow, pressure);
  const excess = Math.max(0, humidityRatio - vapour.saturatedAt(metalTemperature));
  const shed = excess * vapour.shedShareOf(transferUnits);
  const condensate = dryAirFlow * shed;
  return {
    humidityRatio: humidityRatio - shed,
    condensate,
    latentHeat: condensate * vapour.heatAt(metalTemperature),
  };
}

import {
  type AirDropLaw,
  COOLANT_DROP_EXPONENT,
  type ConductanceLaw,
  type CoolantDropLaw,
  type CoreConfig,
  type ExchangerConfig,
} from './config/exchangers.ts';
import type { PumpConfig } from './config/loop.ts';

/** The same side with `factor` times the conductance at every flow. */
export function scaledConductance(law: ConductanceLaw, factor: number): ConductanceLaw {
  if (law.kind === 'power') return { ...law, reference: factor * law.reference };
  return { ...law, value: law.value.map((value) => factor * value), floor: factor * law.floor };
}

/** `count` such sides beside each other, the flow shared: count times the conductance at count times the flow. */
export function conductanceSideBySide(law: ConductanceLaw, count: number): ConductanceLaw {
  const scaled = scaledConductance(law, count);
  if (scaled.kind === 'power') return { ...scaled, atFlow: count * scaled.atFlow };
  return { ...scaled, flow: scaled.flow.map((flow) => count * flow) };
}

/** The same core with `factor` times the air drop at every flow. */
export function scaledAirDrop(law: AirDropLaw, factor: number): AirDropLaw {
  if (law.kind === 'power') return { ...law, drop: factor * law.drop };
  const dropTimesDensity = law.dropTimesDensity.map((value) => factor * value);
  return { ...law, dropTimesDensity, acceleration: factor * law.acceleration };
}

function airDropSideBySide(law: AirDropLaw, count: number): AirDropLaw {
  if (law.kind === 'power') return { ...law, atFlow: count * law.atFlow };
  return { ...law, flow: law.flow.map((flow) => count * flow), acceleration: law.acceleration / count ** 2 };
}

function coolantDropOf(law: CoolantDropLaw, sideBySide: number, inSeries: number): CoolantDropLaw {
  if (law.kind === 'power')
    return { kind: 'power', factor: (inSeries * law.factor) / sideBySide ** COOLANT_DROP_EXPONENT };
  const flow = law.flow.map((each) => sideBySide * each);
  return { ...law, flow, drop: law.drop.map((drop) => inSeries * drop) };
}

/**
 * Laws, metal and coolant of all cores together from those of one: beside each other in the air, in the coolant beside
 * each other too or one after the other.
 */
export function ofAllCores<
  Laws extends Pick<
    CoreConfig,
    'airConductance' | 'coolantConductance' | 'airDrop' | 'coolantDrop' | 'metalHeatCapacity' | 'coolantVolume'
  >,
>(one: Laws, { sideBySide, inSeries }: { readonly sideBySide: number; readonly inSeries: number }): Laws {
  const count = sideBySide * inSeries;
  if (count === 1) return one;
  return {
    ...one,
    airConductance: conductanceSideBySide(one.airConductance, count),
    coolantConductance: scaledConductance(conductanceSideBySide(one.coolantConductance, sideBySide), inSeries),
    airDrop: airDropSideBySide(one.airDrop, count),
    coolantDrop: coolantDropOf(one.coolantDrop, sideBySide, inSeries),
    metalHeatCapacity: count * one.metalHeatCapacity,
    coolantVolume: count * one.coolantVolume,
  };
}

/** What one of the cores gets of the engine's air [kg/s], its leak past left out, and of the loop's coolant [m3/s]. */
export function flowsOfOneCore(
  { leakPast, layout: { inSeries, sideBySide } }: CoreConfig,
  airFlow: number,
  coolantFlow: number,
): { readonly air: number; readonly coolant: number } {
  return { air: (airFlow * (1 - leakPast)) / (inSeries * sideBySide), coolant: coolantFlow / sideBySide };
}

/**
 * The same core with a share of its layers full of air: they pass the charge uncooled, as a leak does, and the wet ones
 * get all of the coolant. The dry metal counts no more.
 */
export function withAirLock(core: CoreConfig, share: number): CoreConfig {
  const wet = 1 - share;
  return {
    ...ofAllCores(core, { sideBySide: wet, inSeries: 1 }),
    leakPast: 1 - (1 - core.leakPast) * wet,
    layout: { ...core.layout, wetShare: wet * core.layout.wetShare },
  };
}

/** The same exchanger with a share of its face blocked: what is left is a smaller face with the same air speed. */
export function withBlockedFace(exchanger: ExchangerConfig, share: number): ExchangerConfig {
  const clear = 1 - share;
  return {
    ...exchanger,
    airConductance: conductanceSideBySide(exchanger.airConductance, clear),
    faceArea: clear * exchanger.faceArea,
  };
}

/** The same pump with its flows and its pressures scaled. */
export function scaledPump(pump: PumpConfig, flowFactor: number, pressureFactor: number): PumpConfig {
  const { curve } = pump;
  if (curve.kind === 'parabola') {
    const shutOffPressure = pressureFactor * curve.shutOffPressure;
    return { ...pump, curve: { kind: 'parabola', shutOffPressure, freeFlow: flowFactor * curve.freeFlow } };
  }
  const flow = curve.flow.map((each) => flowFactor * each);
  const pressure = curve.pressure.map((each) => pressureFactor * each);
  return { ...pump, curve: { kind: 'points', flow, pressure } };
}

import { AIR_GAS_CONSTANT } from '../fluids/moist-air.ts';
import { toSi } from '../units.ts';
import { placedPhases } from './phases.ts';
import type { Values } from './shape.ts';
import { stationPressure } from './station-pressure.ts';
import { voltageRatio } from './to-config/loop.ts';

/** How far past what is estimated the laws of a core are worked out, as a factor; own choice. */
const MARGIN = 1.15;
/** Share of the free flow below which no loop with this pump is looked at; own choice. */
const LEAST_OF_FREE_FLOW = 0.03;
/** A compressor that makes pressure by speed may pass its typed boost by this factor; own judgement. */
const BOOST_MARGIN = 1.3;

/**
 * Lowest and highest charge air flow that a scenario can bring to its core [kg/s]; a rough estimate from both sides.
 */
export function reachOfAir(values: Values): readonly [number, number] {
  const { engine, compressor, ambient, bypass } = values;
  const running = placedPhases(values).map(({ phase }) => phase);
  const speeds = running.flatMap(({ engineSpeed = [0, 0] }) => engineSpeed).filter((speed) => speed > 0);
  const [slowest, fastest] = speeds.length > 0 ? [Math.min(...speeds), Math.max(...speeds)] : [800, 7000];
  const station = stationPressure(values);
  const partLoad = running.flatMap(({ manifoldPressure = [] }) => manifoldPressure).map((p) => toSi(p, 'kPa abs'));
  const density = (pressure: number): number => pressure / (AIR_GAS_CONSTANT * toSi(ambient.temperature, 'degC'));
  const engineFlow = (speed: number, pressure: number): number =>
    (speed / 120) * toSi(engine.displacement, 'L') * engine.volumetricEfficiency * density(pressure);

  const lowest = engineFlow(slowest, Math.min(station, ...partLoad));
  const boost = Math.max(compressor.boostOutletPressure ?? 0, compressor.targetManifoldPressure ?? 0);
  const byBoost =
    engineFlow(fastest, Math.max(station, BOOST_MARGIN * toSi(boost, 'kPa abs'))) * (1 + (bypass.recirculation ?? 0));
  const perTurn = toSi(compressor.sweptVolume ?? 0, 'L/rev') * (compressor.driveRatio ?? 0);
  const byVolume = (fastest / 60) * perTurn * density(station);
  const highest = compressor.kind === 'displacement' ? byVolume : byBoost;
  return [lowest / MARGIN, Math.max(highest, 2 * lowest) * MARGIN];
}

/**
 * Lowest and highest coolant flow that the pumps can bring to the core, beside each other where there are two [m3/s].
 */
export function reachOfCoolant(values: Values): readonly [number, number] {
  const phases = placedPhases(values).map(({ phase }) => phase);
  const highest = [values.pump, values.secondPump ?? []]
    .flat()
    .map((pump) => {
      const rated = pump.freeFlow ?? Math.max(...(pump.curve ?? []).map(({ flow }) => flow));
      return toSi(rated, 'L/min') * Math.max(1, ...phases.map((phase) => voltageRatio(phase, pump)));
    })
    .reduce((sum, flow) => sum + flow, 0);
  return [LEAST_OF_FREE_FLOW * MARGIN * highest, MARGIN * highest];
}

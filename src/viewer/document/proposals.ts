import { AIR_GAS_CONSTANT, type PullSummary, phasesOf, toSi } from '../../sim/index.ts';
import { type Car, valueAt } from '../state/cars.ts';
import type { Changes } from '../state/session.ts';

/** What is known of the car from its run; absent before there is one. */
export interface Known {
  readonly pull?: PullSummary | undefined;
  /** recirculated over engine air, the most of the run */
  readonly recirculation?: number | undefined;
}

/** Room above the known boost that a turbine is proposed to have. */
const SPEED_ABOVE_BOOST = 1.2;
/** Changes of air an hour: what one dynamometer manual asks for in a closed shop. */
const AIR_CHANGES = 4;
/** m3; a bay for one car with its rollers: common practice */
const ROOM = 300;

const threeFigures = (value: number): number => Number(value.toPrecision(3));

/**
 * A first value for keys that a choice makes necessary, in file units: those that keep the boost near what the car has
 * now, so that the run starts. None is a figure of the new compressor; each is there to be typed over.
 *
 * @param changes - what is being tried
 */
export function proposals(car: Car, changes: Changes, { pull, recirculation = 0 }: Known): Record<string, number> {
  const { compressor } = car.scenario.values;
  const { quotedSpeed, quotedPressureRatio, quotedInletPressure, quotedInletTemperature, boostInletPressure } =
    compressor;
  const outlet = quotedPressureRatio * boostInletPressure;
  const boostSpeed = compressor.boostSpeed ?? quotedSpeed;
  const density = toSi(quotedInletPressure, 'kPa abs') / (AIR_GAS_CONSTANT * toSi(quotedInletTemperature, 'degC'));
  const { compressor: machine } = car.config;
  const flow =
    machine.kind === 'displacement' ? (machine.sweptVolume * quotedSpeed * density) / 60 : machine.quoted.flow;
  const fastest = Math.max(0, ...pullSpeeds(car));
  const station = car.config.ambient.pressure;
  const target = Math.max(pull?.atEnd.manifoldPressure ?? 1.5 * station, 1.05 * station) / 1000;
  const roomVolume = Number(changes['room.volume'] ?? valueAt(car.document, 'room.volume') ?? ROOM);
  const all: Record<string, number> = {
    'compressor.boostOutletPressure': outlet,
    'compressor.boostSpeed': boostSpeed,
    'compressor.quotedFlow': flow,
    'compressor.highestSpeed': SPEED_ABOVE_BOOST * boostSpeed,
    'compressor.targetManifoldPressure': target,
    'compressor.driveRatio': fastest > 0 ? quotedSpeed / fastest : 1,
    'compressor.sweptVolume': (1000 * 60 * flow) / (density * quotedSpeed),
    'bypass.recirculation': recirculation,
    'bypass.shareAfterCore': 0.5,
    'room.extraction': ((Number.isFinite(roomVolume) ? roomVolume : ROOM) * AIR_CHANGES) / 3600,
    'room.volume': ROOM,
    ...measuresOfKinds(car),
  };
  return Object.fromEntries(Object.entries(all).map(([path, value]) => [path, threeFigures(value)]));
}

/** Measures of other fins and tubes that have room in the core as it is, in file units: own choice, none measured. */
function measuresOfKinds({ scenario }: Car): Record<string, number> {
  const { coreGeometry } = scenario.values;
  if (coreGeometry === undefined) return {};
  const { depth, rows, finHeight, tubeHeight, tubeWall } = coreGeometry;
  const inside = depth / rows - 2 * tubeWall;
  return {
    'coreGeometry.louvrePitch': Math.min(1.4, depth / 8),
    'coreGeometry.louvreLength': 0.82 * finHeight,
    'coreGeometry.louvreAngle': 27,
    'coreGeometry.stripLength': Math.min(3.2, depth / 4),
    // Ports about as wide as they are high.
    'coreGeometry.ports': Math.max(1, Math.min(200, Math.round(inside / (tubeHeight - tubeWall)))),
  };
}

/** Engine speeds at the ends of pulls [rpm]. */
function pullSpeeds({ config }: Car): number[] {
  return phasesOf(config.cycle).flatMap(({ kind, engineSpeed }) =>
    kind === 'pull' ? [engineSpeed.from, engineSpeed.to] : [],
  );
}

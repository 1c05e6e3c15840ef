import { AIR_ISENTROPIC_EXPONENT } from '../../fluids/moist-air.ts';
import { figure, fromSi, toSi } from '../../units.ts';
import type { Report } from '../issue.ts';
import { placedPhases } from '../phases.ts';
import type { Values } from '../shape.ts';
import { stationPressure } from '../station-pressure.ts';

/** What a compressor comes to on this engine, against what is typed about it. */
export function checkBoost(values: Values, report: Report): void {
  checkSpeed(values, report);
  checkExpectedBoost(values, report);
}

/** A compressor on a pulley turns past the speed that it is made for. */
function checkSpeed(values: Values, report: Report): void {
  const { kind, driveRatio, highestSpeed } = values.compressor;
  if (kind === 'turbine-driven' || driveRatio === undefined || highestSpeed === undefined) return;
  const phases = placedPhases(values).map(({ phase: { name, kind, engineSpeed = [0] } }) => ({
    name: name ?? kind,
    speed: Math.max(...engineSpeed),
  }));
  const fastest = phases.reduce((most, phase) => (phase.speed > most.speed ? phase : most), { name: '', speed: 0 });
  const reached = driveRatio * fastest.speed;
  if (!(reached > highestSpeed)) return;
  const slower = Math.floor((1000 * highestSpeed) / fastest.speed) / 1000;
  report({
    severity: 'warning',
    path: 'compressor.highestSpeed',
    message: `In the phase "${fastest.name}" the compressor turns ${figure(reached)} rpm (${figure(fastest.speed)} rpm of the engine times ${figure(driveRatio)}): above the ${figure(highestSpeed)} rpm typed as its highest.`,
    found: `${figure(reached)} rpm`,
    expected: `at most ${figure(highestSpeed)} rpm`,
    fix: { path: 'compressor.driveRatio', value: slower, label: `Use a drive ratio of ${figure(slower)}` },
  });
}

/**
 * Pressure ratios further apart than this are another compressor or engine: the estimate leaves out drops and warming.
 * Own judgement.
 */
const BOOST_WITHIN = 0.25;

const CHECK_BY_KIND = {
  displacement: 'drive ratio, swept volume and engine displacement',
  centrifugal: 'drive ratio and the known boost with its speed',
  'turbine-driven': 'the target manifold pressure, which is absolute',
} as const;

function checkExpectedBoost(values: Values, report: Report): void {
  const { kind, expectedBoost } = values.compressor;
  const pull = placedPhases(values).find(({ phase }) => phase.kind === 'pull')?.phase;
  if (expectedBoost === undefined || pull?.engineSpeed === undefined || !(kind in CHECK_BY_KIND)) return;
  const speed = Math.max(...pull.engineSpeed);
  const outside = fromSi(stationPressure(values), 'kPa abs');
  const expected = 1 + expectedBoost / outside;
  const computed = pressureRatioAt(values, speed);
  if (!(Math.abs(computed / expected - 1) > BOOST_WITHIN)) return;
  const boost = Number(((computed - 1) * outside).toPrecision(2));
  const said = boost > 0 ? `about ${figure(boost)} kPa of boost` : 'no boost';
  report({
    severity: 'warning',
    path: 'compressor.expectedBoost',
    message: `Compressor and engine come to ${said} at ${figure(speed)} rpm of the engine; you expect ${figure(expectedBoost)} kPa. Check ${CHECK_BY_KIND[kind]}.`,
    found: `${figure(expectedBoost)} kPa`,
    expected: `about ${figure(Math.max(0, boost))} kPa`,
  });
}

/**
 * Manifold pressure over that outside at a speed of the engine, drops left out, charge at the reference temperature of
 * the volumetric efficiency.
 *
 *     displacement: PR = k (1 - a (PR - 1)),  k = 2 r V_s T_c/(V_e eta_v T_1),  a = leak/(compressor rpm/1000)
 *     by head:      (PR^(2/7) - 1) T_1 goes with speed squared
 */
function pressureRatioAt(values: Values, engineSpeed: number): number {
  const { compressor, engine, ambient, intake } = values;
  const { kind, driveRatio = Number.NaN, sweptVolume = Number.NaN, targetManifoldPressure } = compressor;
  const target = toSi(targetManifoldPressure ?? Number.POSITIVE_INFINITY, 'kPa abs') / stationPressure(values);
  if (kind === 'turbine-driven') return target;
  const inlet = toSi(ambient.temperature + intake.pickUp, 'degC');
  const rotation = driveRatio * engineSpeed;
  if (kind === 'displacement') {
    const swept = (2 * driveRatio * sweptVolume) / (engine.displacement * engine.volumetricEfficiency);
    const swallowed = (swept * toSi(engine.referenceTemperature, 'degC')) / inlet;
    const leak = compressor.leak / (rotation / 1000);
    return Math.min(target, (swallowed * (1 + leak)) / (1 + swallowed * leak));
  }
  const { boostOutletPressure = Number.NaN, boostInletPressure, boostInletTemperature, boostSpeed } = compressor;
  const power = (AIR_ISENTROPIC_EXPONENT - 1) / AIR_ISENTROPIC_EXPONENT;
  const head = ((boostOutletPressure / boostInletPressure) ** power - 1) * toSi(boostInletTemperature, 'degC');
  return (1 + (head / inlet) * (rotation / (boostSpeed ?? Number.NaN)) ** 2) ** (1 / power);
}

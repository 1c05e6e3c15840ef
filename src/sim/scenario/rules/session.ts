import { figure, fromSi } from '../../units.ts';
import { isPartLoad, type PhaseKind } from '../config/cycle.ts';
import { capitalised, type Report } from '../issue.ts';
import { SESSION } from '../parameters/session.ts';
import { isRepetition, type PlacedPhase, placedPhases } from '../phases.ts';
import { reportMissing } from '../read-value.ts';
import type { Values } from '../shape.ts';
import { stationPressure } from '../station-pressure.ts';
import { AIR_KEYS, checkAlternatives, exchangerAir } from './phase-alternatives.ts';

export function checkSession(values: Values, report: Report): void {
  checkSensor(values, report);
  const phases = placedPhases(values);
  for (const each of phases) checkPhase(each, values, report);
  checkRepetitions(values, report);
  checkCycle(phases, values, report);
  checkSteps(phases, values, report);
  if (values.exchanger === undefined) checkNoExchanger(phases, report);
  else checkExchangerAir(phases, report);
  checkRoom(values, report);
  checkChargeTable(values, report);
}

function checkChargeTable({ chargeTable = [] }: Values, report: Report): void {
  chargeTable.forEach(({ chargeTemperature }, k) => {
    if (k === 0 || !(chargeTemperature <= chargeTable[k - 1].chargeTemperature)) return;
    const before = figure(chargeTable[k - 1].chargeTemperature);
    report({
      severity: 'error',
      path: `chargeTable.${k}.chargeTemperature`,
      message: `The rows of the charge table must rise: ${figure(chargeTemperature)} degC comes after ${before} degC.`,
      found: `${figure(chargeTemperature)} degC`,
      expected: `above ${before} degC`,
    });
  });
}

function checkRoom({ room: { volume, extraction } }: Values, report: Report): void {
  if (volume !== undefined && extraction === undefined) {
    reportMissing(
      { ...SESSION.room.extraction, meaning: 'needed where a room has a volume' },
      'room.extraction',
      report,
    );
  }
  if (volume !== undefined || extraction === undefined) return;
  reportMissing({ ...SESSION.room.volume, meaning: 'needed where a room has an extraction' }, 'room.volume', report);
}

function checkSensor({ sensor }: Values, report: Report): void {
  const { timeConstantMoving, timeConstantStill } = sensor;
  if (!(timeConstantStill < timeConstantMoving)) return;
  const [still, moving] = [figure(timeConstantStill), figure(timeConstantMoving)];
  report({
    severity: 'error',
    path: 'sensor.timeConstantStill',
    message: `A sensor is slower in still air than in moving air, but ${still} s still is below ${moving} s moving. Exchanged?`,
    found: `${still} s`,
    expected: `at least ${moving} s`,
  });
}

function checkPhase({ phase, path }: PlacedPhase, values: Values, report: Report): void {
  const { kind, engineSpeed, manifoldPressure, pump, pumpVoltageRatio } = phase;
  if (!SESSION.phase.kind.choices.includes(kind)) return;
  const isSoak = kind === 'hot soak';
  const need = (key: 'engineSpeed' | 'manifoldPressure' | 'exchangerAirSpeed' | 'secondExchangerAirSpeed'): void =>
    reportMissing({ ...SESSION.phase[key], meaning: `needed where the kind is "${kind}"` }, `${path}.${key}`, report);

  if (engineSpeed === undefined && !isSoak) need('engineSpeed');
  if (exchangerAir(phase) === undefined && !isSoak && values.exchanger !== undefined) need('exchangerAirSpeed');
  const { secondExchangerAirSpeed: secondAir } = phase;
  if (values.secondExchanger === undefined) {
    if (secondAir?.some((speed) => speed > 0)) reportNoSecondExchanger(`${path}.secondExchangerAirSpeed`, report);
  } else if (secondAir === undefined && !isSoak && values.exchanger === undefined) need('secondExchangerAirSpeed');
  checkAlternatives(phase, path, values, report);
  if (manifoldPressure === undefined && isPartLoad(kind)) need('manifoldPressure');
  if (engineSpeed !== undefined) checkEngineSpeed(kind, engineSpeed, `${path}.engineSpeed`, report);
  if (manifoldPressure !== undefined) {
    checkManifoldPressure(
      kind,
      manifoldPressure,
      Math.min(...(phase.stationPressure ?? [fromSi(stationPressure(values), 'kPa abs')])),
      `${path}.manifoldPressure`,
      report,
    );
  }

  if (isSoak && pump === undefined && pumpVoltageRatio === undefined && phase.supplyVoltage === undefined) {
    report({
      severity: 'error',
      path: `${path}.pump`,
      message: 'A hot soak must say whether the pump runs on: "pump": "on" or "off".',
      found: 'nothing',
      expected: '"on" or "off"',
      fix: { path: `${path}.pump`, value: 'off', label: 'Pump off' },
    });
  }
  if (pump === undefined || pumpVoltageRatio === undefined || Number.isNaN(pumpVoltageRatio)) return;
  if ((pump === 'on') === pumpVoltageRatio > 0) return;
  report({
    severity: 'error',
    path: `${path}.pumpVoltageRatio`,
    message: `The pump is ${pump} and its voltage ratio ${figure(pumpVoltageRatio)}. Keep one of the two keys.`,
    found: figure(pumpVoltageRatio),
    expected: pump === 'on' ? 'above 0' : '0',
  });
}

function checkEngineSpeed(kind: string, [first, last]: readonly [number, number], path: string, report: Report): void {
  if (Number.isNaN(first + last)) return;
  const isSoak = kind === 'hot soak';
  const found = first === last ? `${figure(first)} rpm` : `${figure(first)} to ${figure(last)} rpm`;
  if (isSoak ? first > 0 || last > 0 : first === 0 || last === 0) {
    const message = isSoak
      ? `The engine is off in a hot soak, but turns ${found}.`
      : `A phase of kind "${kind}" needs the engine running. With the engine off it is a "hot soak".`;
    const fix = isSoak && { fix: { path, value: 0, label: 'Engine off' } };
    report({ severity: 'error', path, message, found, expected: isSoak ? '0 rpm' : 'above 0 rpm', ...fix });
  }
  if (kind === 'pull' && last < first) {
    report({
      severity: 'error',
      path,
      message: `The pull ends at ${figure(last)} rpm but starts at ${figure(first)} rpm.`,
      found,
      expected: `an end at or above ${figure(first)} rpm`,
      fix: { path, value: [last, first], label: `Use ${figure(last)} to ${figure(first)} rpm` },
    });
  }
}

function checkManifoldPressure(
  kind: PhaseKind,
  pressures: readonly [number, number],
  outside: number,
  path: string,
  report: Report,
): void {
  const highest = Math.max(...pressures);
  if (Number.isNaN(highest)) return;
  const found = `${figure(highest)} kPa abs`;
  if (!isPartLoad(kind)) {
    const why = kind === 'pull' ? 'it follows from compressor and engine' : 'the engine is off';
    const message = `A manifold pressure is not used in a ${kind}: ${why}. Leave it out.`;
    report({ severity: 'warning', path, message, found, expected: 'nothing' });
  } else if (highest > outside) {
    const message = `Manifold pressure ${found} is above the station pressure ${figure(outside)} kPa: with the bypass open there is no boost. Wide open is a pull.`;
    report({ severity: 'error', path, message, found, expected: `at most ${figure(outside)} kPa abs` });
  }
}

function checkRepetitions({ cycle }: Values, report: Report): void {
  const repetitions = cycle.flatMap((item, index) => (isRepetition(item) ? [index] : []));
  for (const index of repetitions.slice(1)) {
    const message = 'A cycle can hold one repetition. Write the phases of the others out.';
    report({ severity: 'error', path: `cycle.${index}`, message, found: 'another repetition', expected: 'a phase' });
  }
}

/** s; a session, a soak and a drive home fit in it, own judgement */
const LONG_CYCLE = 4 * 3600;

const lasting = (seconds: number): string =>
  seconds >= 7200
    ? `${figure(seconds / 3600)} h`
    : seconds >= 120
      ? `${figure(seconds / 60)} min`
      : `${figure(seconds)} s`;

const durationOf = (phases: readonly PlacedPhase[]): number =>
  phases.reduce((sum, { phase, times }) => sum + times * phase.duration, 0);

function checkCycle(phases: readonly PlacedPhase[], { numerics }: Values, report: Report): void {
  const whole = durationOf(phases);
  if (whole > LONG_CYCLE && numerics.longestStep > 0) {
    const points = figure(whole / numerics.longestStep);
    report({
      severity: 'warning',
      path: 'cycle',
      message: `The cycle lasts ${lasting(whole)}: at steps of up to ${figure(numerics.longestStep)} s that is ${points} points or more. Is a duration in the wrong unit?`,
      found: lasting(whole),
      expected: `usually below ${lasting(LONG_CYCLE)}`,
    });
  }
  if (phases.length > 0 && phases.every(({ phase }) => phase.kind !== 'pull' && String(phase.kind) !== '')) {
    const message = 'The cycle has no pull: there is nothing to hold against the limit.';
    report({ severity: 'warning', path: 'cycle', message, found: 'no pull', expected: 'at least one pull' });
  }
}

/** A table of more rows than this serves nobody, and fills the memory of a page: own choice. */
const MOST_POINTS = 500_000;

/** Steps so short that a session has more of them than anybody can look at. */
function checkSteps(phases: readonly PlacedPhase[], { numerics }: Values, report: Report): void {
  const isPull = ({ phase }: PlacedPhase): boolean => phase.kind === 'pull';
  const [pulls, others] = [phases.filter(isPull), phases.filter((each) => !isPull(each))].map(durationOf);
  for (const [key, duration] of [['longestStepInPull', pulls] as const, ['longestStep', others] as const]) {
    const points = duration / numerics[key];
    if (!(points > MOST_POINTS)) continue;
    const { label, default: usual } = SESSION.numerics[key];
    report({
      severity: 'warning',
      path: `numerics.${key}`,
      message: `${capitalised(label)} is ${figure(numerics[key])} s: over ${lasting(duration)} that is ${figure(points)} points or more. The step shortens by itself where it has to.`,
      found: `${figure(numerics[key])} s`,
      expected: `usually ${usual} s`,
      fix: { path: `numerics.${key}`, value: usual, label: `Use ${usual} s` },
    });
  }
}

function reportNoSecondExchanger(path: string, report: Report): void {
  report({
    severity: 'warning',
    path,
    message: 'The car has no second exchanger for this air to cross: it is ignored.',
    found: 'an air speed',
    expected: 'a second exchanger, or no such key',
  });
}

/** What a phase says of an exchanger that the car does not have. */
function checkNoExchanger(phases: readonly PlacedPhase[], report: Report): void {
  for (const { phase, path } of phases) {
    const moving = AIR_KEYS.find((name) => phase[name]?.some((flow) => flow > 0));
    const key = moving ?? (phase.exchangerPickUp && 'exchangerPickUp');
    if (!key) continue;
    const message = 'The car has no front exchanger for this air to cross.';
    report({
      severity: 'error',
      path: `${path}.${key}`,
      message,
      found: key,
      expected: 'a front exchanger, or no such key',
    });
  }
}

/** s without air through the exchanger, engine running: own judgement, longer than any wait on rollers for a pull */
const LONG_WITHOUT_AIR = 600;

function checkExchangerAir(phases: readonly PlacedPhase[], report: Report): void {
  const still = phases.filter(
    ({ phase }) => phase.kind !== 'hot soak' && exchangerAir(phase)?.every((flow) => flow === 0),
  );
  if (still.length === 0) return;
  const duration = durationOf(still);
  const isInPull = still.some(({ phase }) => phase.kind === 'pull');
  if (!(duration >= (isInPull ? 0 : LONG_WITHOUT_AIR))) return;
  report({
    severity: 'warning',
    path: `${still[0].path}.exchangerAirSpeed`,
    message: `No air through the front exchanger ${isInPull ? 'during pulls' : 'with the engine running'}, ${lasting(duration)} in all. Fan off?`,
    found: '0 m/s',
    expected: 'a fan before the car gives 3 to 8 m/s',
  });
}

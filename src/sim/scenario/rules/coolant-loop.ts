import { createCoolant, largestGlycolByVolume } from '../../fluids/coolant.ts';
import type { GlycolKind } from '../../fluids/glycol-fits.ts';
import { figure, fromSi } from '../../units.ts';
import type { Report } from '../issue.ts';
import { COOLANT_LOOP } from '../parameters/coolant-loop.ts';
import { placedPhases } from '../phases.ts';
import { reportMissing } from '../read-value.ts';
import type { PointValues, PumpValues, Values } from '../shape.ts';
import { checkPercentage } from './air-path.ts';

export function checkCoolantLoop(values: Values, report: Report): void {
  checkPercentage('coolant.glycolByVolume', values.coolant.glycolByVolume, report);
  checkFreezing(values, report);
  checkPropertiesAt(values, report);
  checkPump('pump', values.pump, report);
  if (values.secondPump) checkPump('secondPump', values.secondPump, report);
  checkPasses(values, report);
  checkVelocity(values, report);
}

/** Places must rise, and somewhere air must move. */
function checkVelocity({ core: { airVelocity = [] } }: Values, report: Report): void {
  airVelocity.forEach(({ place }, k) => {
    if (k === 0 || !(place <= airVelocity[k - 1].place)) return;
    report({
      severity: 'error',
      path: `core.airVelocity.${k}.place`,
      message: `The places of the air velocity must rise: ${figure(place)} comes after ${figure(airVelocity[k - 1].place)}.`,
      found: figure(place),
      expected: `above ${figure(airVelocity[k - 1].place)}`,
    });
  });
  if (airVelocity.length === 0 || airVelocity.some(({ speed }) => speed !== 0)) return;
  report({
    severity: 'error',
    path: 'core.airVelocity',
    message: 'The air velocity is 0 at every place: no air would cross the core.',
    found: '0 everywhere',
    expected: 'a speed above 0 somewhere',
  });
}

/** Each pass has half of the cells along the air. */
function checkPasses({ core: { passes, cellsAlongAir } }: Values, report: Report): void {
  if (passes !== 2 || !(cellsAlongAir % 2 === 1)) return;
  report({
    severity: 'error',
    path: 'core.cellsAlongAir',
    message: `Two passes share the cells along the air: ${figure(cellsAlongAir)} is odd.`,
    found: figure(cellsAlongAir),
    expected: 'an even number',
    fix: { path: 'core.cellsAlongAir', value: cellsAlongAir + 1, label: `Use ${figure(cellsAlongAir + 1)}` },
  });
}

/** K that a proposed mix stays above its freezing point: common practice, no published source */
const FREEZING_MARGIN = 5;

const freezingPoint = (glycolByVolume: number, kind: GlycolKind): number =>
  fromSi(createCoolant(glycolByVolume / 100, kind).freezingPoint, 'degC');

/** A word of the file that is at fault reads as the default. */
const glycolOf = ({ glycol }: Values['coolant']): GlycolKind => (glycol === 'propylene' ? 'propylene' : 'ethylene');

/** The coldest that the coolant may meet [degC], and where, as a sentence goes on. */
function coldestOf(values: Values): readonly [number, string] {
  const places: readonly (readonly [number, string])[] = [
    [values.ambient.temperature, 'the air outside is'],
    [values.start.coolant ?? Number.NaN, 'the coolant starts at'],
    [values.start.reservoir ?? Number.NaN, 'the tank starts at'],
    ...placedPhases(values).map(
      ({ phase: { name, kind, outsideTemperature = [Number.NaN] } }) =>
        [Math.min(...outsideTemperature), `the air outside in the phase "${name ?? kind}" is`] as const,
    ),
  ];
  return places.reduce((coldest, place) => (place[0] < coldest[0] ? place : coldest), [Number.POSITIVE_INFINITY, '']);
}

function checkFreezing(values: Values, report: Report): void {
  const { glycolByVolume, freezingAccepted } = values.coolant;
  if (Number.isNaN(glycolByVolume)) return;
  const kind = glycolOf(values.coolant);
  const freezing = freezingPoint(glycolByVolume, kind);
  const [coldest, where] = coldestOf(values);
  if (!(coldest <= freezing)) return;

  const path = 'coolant.glycolByVolume';
  const mix = glycolByVolume === 0 ? 'Water' : `A mix of ${figure(glycolByVolume)} % ${kind} glycol`;
  const mixes = Array.from({ length: 100 / 5 }, (_, k) => 5 * k).filter(
    (mix) => mix < 100 * largestGlycolByVolume(kind),
  );
  const enough = mixes.find((mix) => freezingPoint(mix, kind) <= coldest - FREEZING_MARGIN);
  const isAccepted = freezingAccepted === 'yes';
  report({
    severity: isAccepted ? 'warning' : 'error',
    path,
    message: [
      `${mix} freezes at ${figure(freezing)} degC and ${where} ${figure(coldest)} degC. Pump, core and front exchanger can split.`,
      ...(enough === undefined
        ? []
        : [
            `With ${FREEZING_MARGIN} K to spare it takes ${enough} % ${kind} glycol, which freezes at ${figure(freezingPoint(enough, kind))} degC.`,
          ]),
      isAccepted
        ? 'Accepted as typed: the run stops where coolant freezes.'
        : 'To run it all the same, set coolant.freezingAccepted to "yes".',
    ].join(' '),
    found: `${figure(glycolByVolume)} %`,
    expected: `a mix that freezes below ${figure(coldest)} degC`,
    ...(enough !== undefined && { fix: { path, value: enough, label: `Use ${enough} % ${kind} glycol` } }),
  });
}

/** Below the first ice the fits of density and heat capacity run away. */
function checkPropertiesAt({ coolant }: Values, report: Report): void {
  const { glycolByVolume, propertiesAt } = coolant;
  if (Number.isNaN(glycolByVolume) || Number.isNaN(propertiesAt)) return;
  const freezing = freezingPoint(glycolByVolume, glycolOf(coolant));
  if (propertiesAt >= freezing) return;
  report({
    severity: 'error',
    path: 'coolant.propertiesAt',
    message: `Density and heat capacity are taken at ${figure(propertiesAt)} degC, where this mix is no liquid: its first ice forms at ${figure(freezing)} degC.`,
    found: `${figure(propertiesAt)} degC`,
    expected: `${figure(freezing)} degC or above, near the temperature at which the loop runs`,
  });
}

function checkPump(path: 'pump' | 'secondPump', pump: PumpValues, report: Report): void {
  const { shutOffPressure, freeFlow, curve } = pump;
  if (curve !== undefined) {
    checkPumpCurve(curve, path, report);
    if (shutOffPressure === undefined && freeFlow === undefined) return;
    report({
      severity: 'error',
      path: `${path}.curve`,
      message: 'The pump is given twice: by its curve and by shutOffPressure and freeFlow. Keep one.',
      found: 'both',
      expected: 'curve, or shutOffPressure and freeFlow',
    });
  } else if (shutOffPressure === undefined && freeFlow === undefined) {
    report({
      severity: 'error',
      path,
      message:
        'The pump has no curve. Give shutOffPressure and freeFlow, or curve with two or more points; the free flow on a label alone does not tell the flow in the loop.',
      found: 'nothing',
      expected: 'curve, or shutOffPressure and freeFlow',
    });
  } else if (shutOffPressure === undefined || freeFlow === undefined) {
    const missing = freeFlow === undefined ? 'freeFlow' : 'shutOffPressure';
    reportMissing(COOLANT_LOOP.pump[missing], `${path}.${missing}`, report);
  }
}

function checkPumpCurve(curve: readonly PointValues[], pump: string, report: Report): void {
  const place = (index: number): string =>
    `${index + 1} (${figure(curve[index].flow)} L/min, ${figure(curve[index].pressure)} kPa)`;
  for (let k = 1; k < curve.length; k++) {
    if (![k - 1, k].every((index) => Number.isFinite(curve[index].flow + curve[index].pressure))) continue;
    const path = `${pump}.curve.${k}`;
    const found = `Row ${place(k)}`;
    const before = `row ${place(k - 1)}`;
    if (curve[k].flow <= curve[k - 1].flow) {
      const message = `Flow must rise from row to row. ${found} is not beyond ${before}.`;
      report({ severity: 'error', path, message, found, expected: `more than ${figure(curve[k - 1].flow)} L/min` });
    } else if (curve[k].pressure >= curve[k - 1].pressure) {
      const message = `Pressure must fall as flow rises. ${found} is not below ${before}.`;
      report({ severity: 'error', path, message, found, expected: `below ${figure(curve[k - 1].pressure)} kPa` });
    }
  }
}

/** Of the car on which it was measured. */
export function checkMeasuredFlow({ pump, secondPump }: Values, report: Report): void {
  const { measuredFlow, measuredFlowVoltage } = pump;
  if (measuredFlow === undefined || secondPump !== undefined) return;
  // A curve of fewer points is refused where it is read.
  if (pump.curve !== undefined && pump.curve.length < 2) return;
  const free = (pump.curve === undefined ? pump.freeFlow : freeFlowOf(pump.curve)) ?? Number.NaN;
  const most = measuredFlowVoltage * free;
  if (!(measuredFlow >= most)) return;
  report({
    severity: 'error',
    path: 'pump.measuredFlow',
    message: `${figure(measuredFlow)} L/min was measured, but the pump gives ${figure(most)} L/min without any resistance. Check the meter, the curve or the voltage.`,
    found: `${figure(measuredFlow)} L/min`,
    expected: `below ${figure(most)} L/min`,
  });
}

/** Where the last line of a pump curve meets zero pressure. */
function freeFlowOf(curve: readonly { readonly flow: number; readonly pressure: number }[]): number {
  const [before, last] = curve.slice(-2);
  return last.flow + (last.pressure * (last.flow - before.flow)) / (before.pressure - last.pressure);
}

/** Warmer coolant gives up no less heat. */
export function checkSink({ heatSink }: Values, report: Report): void {
  heatSink?.curve.forEach(({ coolant, heat }, k) => {
    const before = heatSink.curve[k - 1];
    if (before === undefined) return;
    const path = `heatSink.curve.${k}`;
    if (coolant <= before.coolant) {
      const message = `Temperatures of the heat sink must rise: ${figure(coolant)} degC comes after ${figure(before.coolant)} degC.`;
      report({
        severity: 'error',
        path,
        message,
        found: `${figure(coolant)} degC`,
        expected: `above ${figure(before.coolant)} degC`,
      });
    }
    if (heat < before.heat) {
      const message = `A sink draws no less heat from warmer coolant: ${figure(heat)} W comes after ${figure(before.heat)} W.`;
      report({
        severity: 'error',
        path,
        message,
        found: `${figure(heat)} W`,
        expected: `${figure(before.heat)} W or more`,
      });
    }
  });
}

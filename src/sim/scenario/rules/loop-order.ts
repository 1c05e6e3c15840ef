import { figure } from '../../units.ts';
import { LOOP_PARTS, type LoopItem, type LoopPart, PART_WORDS } from '../config/loop.ts';
import type { Report } from '../issue.ts';
import { loopOf, partsOf } from '../loop.ts';
import { GROUPS, lineAfter, type Values } from '../shape.ts';

/** The ring of parts: each there and once, the way closed, and a line said after each. */
export function checkLoopOrder(values: Values, report: Report): void {
  const loop = loopOf(values);
  const parts = partsOf(loop);
  const isThere = (part: LoopPart): boolean => values[part] !== undefined;

  const fail = (path: string, message: string, found: string, expected: string): void =>
    report({ severity: 'error', path, message, found, expected });

  for (const part of LOOP_PARTS) {
    const count = parts.filter((each) => each === part).length;
    const title = GROUPS[part].title;
    if (count > 1) fail('loop', `The ${title} stands ${count} times in the loop.`, `${count} times`, 'once');
    if (count > 0 && !isThere(part)) {
      fail('loop', `The loop names the ${title}, but the group ${part} is missing.`, `no ${part}`, `the group ${part}`);
    }
    if (count === 0 && isThere(part)) {
      const message = `The loop does not say where the ${title} stands: the coolant would never reach it.`;
      fail('loop', message, `no ${part}`, `a loop with "${part}" in it`);
    }
    checkLine(values, part, count > 0, report);
  }
  checkWays(values, loop, report);
  for (const part of ['core', 'reservoir'] as const) {
    if (!parts.includes(part) || loop.includes(part)) continue;
    const message = `The ${GROUPS[part].title} stands in one of two ways beside each other; all coolant must come through it.`;
    fail('loop', message, `${part} in a way`, `${part} by itself`);
  }
}

function checkLine({ lines }: Values, part: LoopPart, isInLoop: boolean, report: Report): void {
  const key = lineAfter(part);
  const path = `lines.${key}`;
  const isLine = lines[key] !== undefined;
  if (isLine === isInLoop) return;
  const title = GROUPS[part].title;
  const message = isLine
    ? `There is no ${title} in the loop for this line to leave.`
    : `Segments of ${key} are missing: no way on from the ${title}. [] bolts it to the next part.`;
  const [found, expected] = isLine ? ['a line', 'no such line'] : ['nothing', 'a line, or []'];
  report({ severity: 'error', path, message, found, expected });
}

function checkWays({ lines }: Values, loop: readonly LoopItem[], report: Report): void {
  const pairs = loop.filter((item) => typeof item !== 'string').length;
  if (pairs > 2) {
    const message = `The loop divides ${pairs} times; up to two pairs of ways are computed.`;
    report({ severity: 'error', path: 'loop', message, found: `${pairs} pairs`, expected: 'two at most' });
  }
  (['ways', 'secondWays'] as const).forEach((place, k) => {
    const key = lineAfter(place);
    if (lines[key] === undefined || pairs > k) return;
    const message = `There are no ${PART_WORDS[place]} in the loop for this line to leave.`;
    report({ severity: 'error', path: `lines.${key}`, message, found: 'a line', expected: 'no such line' });
  });
}

/** What two of the loop's keys make of each other. */
export function checkLoopValues(values: Values, report: Report): void {
  checkSink(values, report);
  checkLayers(values, report);
  checkMissing(values, report);
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

function checkSink({ heatSink }: Values, report: Report): void {
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

function checkLayers({ reservoir }: Values, report: Report): void {
  if (!(reservoir.layers > 1 && reservoir.iceMass > 0)) return;
  report({
    severity: 'error',
    path: 'reservoir.layers',
    message: `A tank with ice is taken as stirred: ${figure(reservoir.iceMass)} kg of ice and ${figure(reservoir.layers)} layers do not go together.`,
    found: `${figure(reservoir.layers)} layers`,
    expected: '1 with ice',
    fix: { path: 'reservoir.layers', value: 1, label: 'One mixed tank' },
  });
}

/** L that must be left in the tank */
const LEAST_LEFT = 0.05;

function checkMissing({ reservoir }: Values, report: Report): void {
  const { coolantVolume, missingCoolant } = reservoir;
  if (!(missingCoolant > coolantVolume - LEAST_LEFT)) return;
  report({
    severity: 'error',
    path: 'reservoir.missingCoolant',
    message: `The tank holds ${figure(coolantVolume)} L: with ${figure(missingCoolant)} L missing the pump draws air. That is an air-locked core (core.airLockedShare) or no flow at all.`,
    found: `${figure(missingCoolant)} L`,
    expected: `below ${figure(coolantVolume - LEAST_LEFT)} L`,
  });
}

import { figure } from '../../units.ts';
import { capitalised, type Fix, isObject, type JsonObject, listed, type Report } from '../issue.ts';
import { COOLANT_LOOP } from '../parameters/coolant-loop.ts';
import { TEST_POINT } from '../parameters/test-point.ts';
import { reportMissing } from '../read-value.ts';
import type { TestValues, Values } from '../shape.ts';
import {
  BY_TEST,
  effectivenessAt,
  effectivenessByTemperatures,
  mostEffectiveness,
  ratesOfTest,
  TESTED_PARTS,
  type TestedPart,
  type TestRates,
} from '../test-point.ts';

/** Effectiveness of two sources within this share of each other is the same; own judgement. */
const SAME_WITHIN = 0.02;
/** An effectiveness typed with two digits is met within this; own judgement. */
const TWO_DIGITS = 0.006;

const PROBES = ['airIn', 'airOut', 'coolantIn'] as const;
type Probes = Readonly<Record<(typeof PROBES)[number], number>>;

/** One part with its test point, as the checks hand it on. */
interface Tested {
  readonly part: TestedPart;
  readonly path: string;
  readonly test: TestValues;
  /** the part as it stands in the file */
  readonly typed: JsonObject;
  readonly values: Values;
  readonly report: Report;
}

/** Core and front exchanger by a test point: that it is whole, that it can be, and that nothing else says otherwise. */
export function checkTestPoints(values: Values, document: JsonObject, report: Report): void {
  for (const part of TESTED_PARTS) {
    const test = values[part]?.test;
    const typed = document[part];
    if (test !== undefined && isObject(typed))
      checkTestPoint({ part, path: `${part}.test`, test, typed, values, report });
  }
}

function checkTestPoint(tested: Tested): void {
  const { test, values } = tested;
  if (hasOtherSource(tested) || !isWhole(tested)) return;
  const rates = ratesOfTest(test, values);
  if (rates === undefined || Number.isNaN(rates.smaller)) return;
  const probes = probesOf(test);
  if (probes !== undefined && !areProbesRight(tested, probes)) return;
  const measured = effectivenessByTemperatures(test, rates);
  const effectiveness = test.effectiveness ?? measured ?? Number.NaN;
  if (Number.isNaN(effectiveness) || !isWithinReach(tested, effectiveness, rates)) return;
  if (test.effectiveness !== undefined && measured !== undefined) checkBasis(tested, measured);
  checkConductances(tested, effectiveness, rates);
}

/** The measures of a core say more than a test point, and two passes are not what it is worked out for. */
function hasOtherSource({ part, path, values, report }: Tested): boolean {
  if (part !== 'core') return false;
  if (values.coreGeometry !== undefined) {
    report({
      severity: 'error',
      path,
      message:
        'The core is given twice: by its measures and by a test point. Leave one out; measuredHeat holds the measures to a test.',
      found: 'both',
      expected: 'test or coreGeometry',
    });
    return true;
  }
  if (values.core.passes !== 2) return false;
  report({
    severity: 'error',
    path,
    message:
      'A test point is worked out for coolant that crosses the air once, and this core has two passes. Give the conductances instead, or set core.passes to 1.',
    found: '2 passes',
    expected: '1 pass, or conductances',
  });
  return true;
}

/** Either an effectiveness or all three temperatures. */
function isWhole({ path, test, report }: Tested): boolean {
  const missing = PROBES.filter((key) => test[key] === undefined);
  if (missing.length === 0 || (missing.length === PROBES.length && test.effectiveness !== undefined)) return true;
  if (missing.length < PROBES.length) {
    for (const key of missing) reportMissing(TEST_POINT.test[key], `${path}.${key}`, report);
    return false;
  }
  report({
    severity: 'error',
    path,
    message: `A test point needs effectiveness, or the measured ${PROBES.join(', ')}: without either it says nothing.`,
    found: 'nothing',
    expected: 'effectiveness, or three temperatures',
  });
  return false;
}

function probesOf({ airIn, airOut, coolantIn }: TestValues): Probes | undefined {
  if (airIn === undefined || airOut === undefined || coolantIn === undefined) return undefined;
  return { airIn, airOut, coolantIn };
}

/** What cannot be in a steady test: the core cools its air towards the coolant, the exchanger warms it. */
function faultOf(part: TestedPart, { airIn, airOut, coolantIn }: Probes): string | undefined {
  const sign = part === 'core' ? 1 : -1;
  const [above, below] = part === 'core' ? ['warmer', 'colder'] : ['colder', 'warmer'];
  const [into, out, coolant] = [airIn, airOut, coolantIn].map((value) => `${figure(value)} degC`);
  if (sign * (airIn - coolantIn) <= 0) return `Air in (${into}) is not ${above} than coolant in (${coolant}).`;
  if (sign * (airIn - airOut) <= 0) return `Air out (${out}) is not ${below} than air in (${into}).`;
  if (sign * (airOut - coolantIn) < 0) return `Air out (${out}) is ${below} than coolant in (${coolant}).`;
  return undefined;
}

function areProbesRight({ part, path, test, typed, report }: Tested, probes: Probes): boolean {
  if (PROBES.some((key) => Number.isNaN(probes[key]))) return false;
  const fault = faultOf(part, probes);
  if (fault === undefined) return true;
  const swapped = [
    ['airOut', 'coolantIn'],
    ['airIn', 'airOut'],
    ['airIn', 'coolantIn'],
  ] as const;
  const right = swapped.find(([a, b]) => faultOf(part, { ...probes, [a]: probes[b], [b]: probes[a] }) === undefined);
  const own = typed.test;
  const fix: Fix | undefined =
    right && isObject(own)
      ? {
          path,
          value: { ...own, [right[0]]: own[right[1]], [right[1]]: own[right[0]] },
          label: `Exchange ${right.join(' and ')}`,
        }
      : undefined;
  const why = part === 'core' ? 'Probes swapped, or taken on lift-off?' : 'Probes swapped?';
  report({
    severity: 'error',
    path,
    message: `${fault} ${why}`,
    found: PROBES.map((key) => `${key} ${figure(test[key] ?? Number.NaN)} degC`).join(', '),
    expected: part === 'core' ? 'airIn above airOut above coolantIn' : 'airIn below airOut below coolantIn',
    ...(fix && { fix }),
  });
  return false;
}

function isWithinReach({ path, test, report }: Tested, effectiveness: number, rates: TestRates): boolean {
  const most = mostEffectiveness(rates);
  if (effectiveness < most) return true;
  report({
    severity: 'error',
    path: test.effectiveness === undefined ? path : `${path}.effectiveness`,
    message: `The test comes to an effectiveness of ${figure(effectiveness)}; at these flows none above ${figure(most)} is possible. Check both flows, their units, and whether it had settled.`,
    found: figure(effectiveness),
    expected: `below ${figure(most)}`,
  });
  return false;
}

/** An effectiveness beside the temperatures that it was worked out from. */
function checkBasis({ path, test, report }: Tested, measured: number): void {
  const { effectiveness = Number.NaN, airIn = Number.NaN, airOut = Number.NaN, ambient = Number.NaN } = test;
  if (Math.abs(effectiveness / measured - 1) <= SAME_WITHIN) return;
  const isAgainstAmbient = Math.abs((airIn - airOut) / (airIn - ambient) - effectiveness) <= TWO_DIGITS;
  const right = Number(measured.toPrecision(3));
  report({
    severity: isAgainstAmbient ? 'warning' : 'error',
    path: `${path}.effectiveness`,
    message: isAgainstAmbient
      ? `This number used outside air as the cold side. Against the coolant it is ${figure(right)}, not ${figure(effectiveness)}; the run takes it as typed.`
      : `The effectiveness of ${figure(effectiveness)} and the temperatures, which give ${figure(right)}, disagree. Keep one.`,
    found: figure(effectiveness),
    expected: `about ${figure(right)}`,
    fix: { path: `${path}.effectiveness`, value: right, label: `Use ${figure(right)}` },
  });
}

/** Conductances typed beside the test point that they follow from. */
function checkConductances({ part, typed, values, report }: Tested, effectiveness: number, rates: TestRates): void {
  const there = BY_TEST.filter((key) => Object.hasOwn(typed, key));
  const own = values[part];
  if (there.length === 0 || own === undefined) return;
  const rest = Object.fromEntries(Object.entries(typed).filter(([key]) => !there.some((each) => each === key)));
  const refuse = (message: string, found: string): void =>
    report({
      severity: 'error',
      path: `${part}.${there[0]}`,
      message,
      found,
      expected: 'test, or the conductances',
      fix: { path: part, value: rest, label: 'Keep the test point' },
    });
  if (there.length < BY_TEST.length) {
    const { label } = COOLANT_LOOP[part === 'core' ? 'core' : 'exchanger'][there[0]];
    const left = BY_TEST.filter((key) => !there.includes(key));
    refuse(
      `${capitalised(label)} stands beside a test point, from which both sides follow. Leave it out, or give ${listed(left)} too.`,
      'both',
    );
    return;
  }
  const air = own.airConductance * (rates.airFlow / own.airConductanceAtFlow) ** own.airConductanceExponent;
  const share = (rates.coolantFlow / own.coolantConductanceAtFlow) ** own.coolantConductanceExponent;
  const coolant = own.coolantConductance * Math.max(share, own.coolantConductanceFloor);
  if (Number.isNaN(air + coolant)) return;
  const byConductances = effectivenessAt(air, coolant, rates);
  if (Math.abs(byConductances / effectiveness - 1) <= SAME_WITHIN) return;
  refuse(
    `Conductances and test point give an effectiveness of ${figure(byConductances)} and ${figure(effectiveness)} at this flow. Keep one.`,
    `${figure(byConductances)} and ${figure(effectiveness)}`,
  );
}

import { useSignal } from '@preact/signals';
import { explainAgreement, type GaugeReading, toSi } from '../../sim/index.ts';
import { difference, fixed, scaleOf, temperature, wordingIn } from '../format.ts';
import type { PageProps } from '../page.tsx';
import type { UnitChoice } from '../state/display.ts';
import { AnswerTable } from './answer-table.tsx';
import { GaugeFigure, signedDifference } from './gauge-figure.tsx';
import { pullsOf, whyNoPulls } from './pulls-wanted.tsx';
import { QuestionFrame, Sentences } from './question-frame.tsx';
import { expected, isNumber, type Range, type Typed, TypedBox } from './typed-box.tsx';
import { type FoundAnswer, useQuestion } from './use-question.ts';

/** What a gauge may show [degC], and what its last figure may be worth [K]. */
const READINGS: Range = [-50, 200];
const STEPS: Range = [0.01, 10];
/** Boxes that are there before anything is typed; there is always an empty one more. */
const FIRST_BOXES = 3;

/** Does the car agree? What the gauge showed at the end of each pull beside what the model reads there. */
export function GaugeQuestion(props: PageProps) {
  const { session, display } = props;
  const car = session.inHand.value;
  const units = display.units.value;
  const typed = useSignal<readonly Typed[]>([]);
  const step = useSignal<Typed>(1);
  const readings = readingsOf(typed.value);
  const asked = { readings, gaugeStep: isNumber(step.value) ? step.value : 1 };
  const { found, ...asking } = useQuestion(props, 'gauge', asked);
  const pulls = pullsOf(car);
  return (
    <QuestionFrame
      title="Does the car agree?"
      inputs={
        <>
          <p class="question-intro small">
            What the gauge showed at the end of the pulls; leave out a pull that nobody read.
          </p>
          {Array.from({ length: boxesFor(typed.value, pulls) }, (_, k) => (
            <TypedBox
              key={k}
              label={`Pull ${k + 1}`}
              fileUnit="degC"
              units={units}
              range={READINGS}
              value={typed.value[k] ?? 'empty'}
              onChange={(value) => {
                typed.value = withReading(typed.value, k, value);
              }}
            />
          ))}
          <TypedBox
            label="Step of the gauge"
            fileUnit="K"
            units={units}
            range={STEPS}
            value={step.value}
            onChange={(value) => {
              step.value = value;
            }}
          />
        </>
      }
      why={whyNoPulls(car) ?? whyNot(typed.value, step.value, units)}
      {...asking}
    >
      {found && <Answer found={found} units={units} />}
    </QuestionFrame>
  );
}

/** So many boxes that one is empty, as far as there are pulls. */
export const boxesFor = (typed: readonly Typed[], pulls: number): number =>
  Math.min(pulls, Math.max(FIRST_BOXES, typed.findLastIndex((each) => each !== 'empty') + 2));

/** The boxes with another value in one of them. */
export function withReading(typed: readonly Typed[], pull: number, value: Typed): readonly Typed[] {
  const length = Math.max(typed.length, pull + 1);
  return Array.from({ length }, (_, k) => (k === pull ? value : (typed[k] ?? 'empty')));
}

/** Readings of the boxes that hold one, degC as typed to K. */
export const readingsOf = (typed: readonly Typed[]): GaugeReading[] =>
  typed.flatMap((each, k) => (isNumber(each) ? [{ pull: k + 1, indicated: toSi(each, 'degC') }] : []));

function whyNot(typed: readonly Typed[], step: Typed, units: UnitChoice): string | undefined {
  const wrong = typed.indexOf('unreadable');
  if (wrong >= 0) return expected(`Pull ${wrong + 1}`, 'degC', units, READINGS);
  if (!isNumber(step)) return expected('Step of the gauge', 'K', units, STEPS);
  return typed.some(isNumber) ? undefined : 'Type at least one reading.';
}

function Answer({
  found: { result, car },
  units,
}: {
  readonly found: FoundAnswer<'gauge'>;
  readonly units: UnitChoice;
}) {
  if (result.kind === 'no such pull') {
    return (
      <p>
        Pull {result.pull} was read, but this run has {result.pullsRun} whole pulls.
      </p>
    );
  }
  const { unit } = scaleOf('K', units);
  const { unit: absolute } = scaleOf('degC', units);
  const factor = fixed(result.fit.factor, 2);
  return (
    <>
      <Sentences of={explainAgreement(result, wordingIn(units))} />
      <GaugeFigure agreement={result} floor={car.config.ambient.temperature} units={units} />
      <AnswerTable
        name="Indicated temperature at the end of each pull; a miss is model less gauge"
        heads={[
          'Pull',
          `Gauge, ${absolute}`,
          `Model, ${absolute}`,
          `Miss, ${unit}`,
          `Left with ${factor} × core, ${unit}`,
        ]}
        rows={[
          ...result.pulls.map(({ pull, indicated, model, miss, missLeft }) => [
            String(pull),
            temperature(indicated, units).value,
            temperature(model, units).value,
            signedDifference(miss, units),
            signedDifference(missLeft, units),
          ]),
          ['rms', '', '', difference(result.rmsMiss, units).value, difference(result.fit.rmsLeft, units).value],
        ]}
      />
    </>
  );
}

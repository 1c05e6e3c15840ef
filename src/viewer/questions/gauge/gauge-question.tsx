import { useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { explainAgreement, GAUGE_RANGE, GAUGE_STEP_RANGE, whyNoSuchPull } from '../../../sim/index.ts';
import { difference, fixed, named, scaleOf, signedDifference, temperature, wordingIn } from '../../format.ts';
import type { PageProps } from '../../page.tsx';
import type { UnitChoice } from '../../state/display.ts';
import { type Gauge, readingsOf, withReading } from '../../state/gauge.ts';
import { AnswerTable } from '../answer-table.tsx';
import { pullsOf, whyNoPulls } from '../pulls-wanted.tsx';
import { QuestionFrame, Sentences } from '../question-frame.tsx';
import { expected, isNumber, type Typed } from '../typed.ts';
import { TypedBox } from '../typed-box.tsx';
import { type FoundAnswer, useQuestion } from '../use-question.ts';
import { GaugeFigure } from './gauge-figure.tsx';

/** Pulls whose boxes stand open; those of later ones are folded. */
const OPEN_BOXES = 12;

/** Does the car agree? What the gauge showed at the end of each pull beside what the model reads there. */
export function GaugeQuestion(props: PageProps) {
  const { session, display } = props;
  const car = session.inHand.value;
  const units = display.units.value;
  const gauge = session.gauge.value;
  /** places of the pulls whose boxes hold a text that is no reading; the step's box may hold one too */
  const wrong = useSignal<ReadonlySet<number>>(new Set());
  const isStepWrong = useSignal(false);
  const readings = readingsOf(gauge);
  const { found, ...asking } = useQuestion(props, 'gauge', { readings, gaugeStep: gauge.step });
  const pulls = pullsOf(car);
  const typed = boxesOf(gauge.byPull, wrong.value).slice(0, pulls);
  const hasLater = useMemo(() => gauge.byPull.length > OPEN_BOXES, []);
  const boxOf = (place: number) => (
    <TypedBox
      key={place}
      label={`Pull ${place + 1}`}
      fileUnit="degC"
      units={units}
      range={GAUGE_RANGE}
      value={typed[place] ?? 'empty'}
      onChange={(value) => {
        const others = [...wrong.value].filter((each) => each !== place);
        wrong.value = new Set(value === 'unreadable' ? [...others, place] : others);
        session.gauge.value = withReading(session.gauge.value, place, isNumber(value) ? value : null);
      }}
    />
  );
  const places = Array.from({ length: pulls }, (_, place) => place);
  const step = isStepWrong.value ? 'unreadable' : gauge.step;
  return (
    <QuestionFrame
      title="Does the car agree?"
      inputs={
        <>
          <p class="question-intro small">
            What the gauge showed at the end of the pulls; a box left empty is a pull that nobody read. The readings
            stand as dots on the bars of the pulls.
          </p>
          {places.slice(0, OPEN_BOXES).map(boxOf)}
          {pulls > OPEN_BOXES && (
            // Boxes that are folded stay, with what was typed.
            <details class="fold later-pulls" open={hasLater}>
              <summary class="fold-line">
                Pulls {OPEN_BOXES + 1} to {pulls}
              </summary>
              <div>{places.slice(OPEN_BOXES).map(boxOf)}</div>
            </details>
          )}
          <TypedBox
            label="Step of the gauge"
            fileUnit="K"
            units={units}
            range={GAUGE_STEP_RANGE}
            value={step}
            onChange={(value) => {
              isStepWrong.value = !isNumber(value);
              if (isNumber(value)) session.gauge.value = { ...session.gauge.value, step: value };
            }}
          />
          <button
            type="button"
            disabled={readings.length === 0 && wrong.value.size === 0}
            onClick={() => {
              wrong.value = new Set();
              session.clearReadings();
            }}
          >
            Clear readings
          </button>
        </>
      }
      why={whyNoPulls(car) ?? whyNot(typed, step, units)}
      {...asking}
    >
      {found && <Answer found={found} units={units} />}
    </QuestionFrame>
  );
}

/** What the boxes hold: the readings, and texts that are none. */
export function boxesOf(byPull: Gauge['byPull'], wrong: ReadonlySet<number>): Typed[] {
  const length = Math.max(byPull.length, ...[...wrong].map((place) => place + 1));
  return Array.from({ length }, (_, k) => (wrong.has(k) ? 'unreadable' : (byPull[k] ?? 'empty')));
}

function whyNot(typed: readonly Typed[], step: Typed, units: UnitChoice): string | undefined {
  const wrong = typed.indexOf('unreadable');
  if (wrong >= 0) return expected(`Pull ${wrong + 1}`, 'degC', units, GAUGE_RANGE);
  if (!isNumber(step)) return expected('Step of the gauge', 'K', units, GAUGE_STEP_RANGE);
  return typed.some(isNumber) ? undefined : 'Type at least one reading.';
}

function Answer({
  found: { result, car },
  units,
}: {
  readonly found: FoundAnswer<'gauge'>;
  readonly units: UnitChoice;
}) {
  if (result.kind === 'no such pull') return <p>{whyNoSuchPull(result)}</p>;
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
          named('Gauge', absolute),
          named('Model', absolute),
          named('Miss', unit),
          named(`Left with ${factor} × core`, unit),
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

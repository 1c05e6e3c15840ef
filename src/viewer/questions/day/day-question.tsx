import { useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { type Day, type DayStudy, explainDay, type FileUnit, onDay } from '../../../sim/index.ts';
import { boxText, type Measure, measureOf } from '../../fields/measure.ts';
import { degrees, named, onScreen, scaleOf, temperature, wordingIn } from '../../format.ts';
import type { PageProps } from '../../page.tsx';
import type { Car } from '../../state/cars.ts';
import type { UnitChoice } from '../../state/display.ts';
import { AnswerTable } from '../answer-table.tsx';
import { PullsWanted, pullsOf, whyNotPulls } from '../pulls-wanted.tsx';
import { QuestionFrame, Sentences } from '../question-frame.tsx';
import { expected, isNumber, keyOfFile, type Range, type Typed } from '../typed.ts';
import { TypedBox } from '../typed-box.tsx';
import { useQuestion } from '../use-question.ts';
import { DayFigure } from './day-figure.tsx';

type Key = keyof Day;
interface Box {
  readonly key: Key;
  readonly label: string;
  readonly unit: FileUnit;
  readonly range: Range;
}
/** Unit and range are those of the key in the file. */
const boxOf = (key: Key, label: string): Box => ({ key, label, ...keyOfFile(`ambient.${key}`) });
const BOXES = [boxOf('temperature', 'Outside'), boxOf('altitude', 'Altitude'), boxOf('relativeHumidity', 'Humidity')];

/** The same car on another day, and the hottest day on which it still makes so many pulls. */
export function DayQuestion(props: PageProps) {
  const car = props.session.inHand.value;
  return car === undefined ? null : <DayOf {...props} car={car} />;
}

function DayOf({ car, ...props }: PageProps & { readonly car: Car }) {
  const units = props.display.units.value;
  const typed = useSignal<Readonly<Partial<Record<Key, Typed>>>>({});
  const pulls = useSignal(Math.max(1, pullsOf(car)));
  const there = useMemo(() => onDay(car.scenario, dayOf(typed.value)), [car, typed.value]);
  const { found, ...asking } = useQuestion(props, 'day', {
    typed: car.scenario,
    there: there.scenario ?? car.scenario,
    pulls: pulls.value,
  });
  const wrong = BOXES.find(({ key }) => typed.value[key] === 'unreadable');
  const refused = there.scenario === undefined ? there.issues.find(({ severity }) => severity === 'error') : undefined;
  return (
    <QuestionFrame
      title="What does it make on another day?"
      inputs={
        <>
          {BOXES.map(({ key, label, unit, range }) => (
            <TypedBox
              key={key}
              label={label}
              fileUnit={unit}
              units={units}
              range={range}
              value={typed.value[key] ?? 'empty'}
              placeholder={placeholderOf(car, key, measureOf(unit, units))}
              onChange={(value) => {
                typed.value = { ...typed.value, [key]: value };
              }}
            />
          ))}
          <PullsWanted pulls={pulls} />
        </>
      }
      why={
        whyNotPulls(car, pulls.value) ??
        (wrong === undefined
          ? refused && onScreen(refused.message)
          : expected(wrong.label, wrong.unit, units, wrong.range))
      }
      {...asking}
    >
      {found && (
        <>
          <Sentences of={explainDay(found.result, wordingIn(units))} />
          <DayFigure study={found.result} units={units} />
          <div class="table-stack">
            <DayTable study={found.result} units={units} />
            <CurveTable study={found.result} units={units} />
          </div>
        </>
      )}
    </QuestionFrame>
  );
}

/** What the file has; the altitude of a car with a typed pressure is not known. */
function placeholderOf({ scenario: { values } }: Car, key: Key, measure: Measure): string {
  const value = key === 'altitude' && values.ambient.pressure !== undefined ? undefined : values.ambient[key];
  return value === undefined ? 'as typed' : boxText(value, measure);
}

/** What the boxes say of the day; an empty one leaves the day as the file has it. */
export const dayOf = (typed: Readonly<Partial<Record<Key, Typed>>>): Day =>
  Object.fromEntries(Object.entries(typed).filter(([, value]) => isNumber(value)));

/** Both days with the band of 5 % of core conductance. */
function DayTable({ study, units }: { readonly study: DayStudy; readonly units: UnitChoice }) {
  const { unit } = scaleOf('degC', units);
  const peak = (kelvin: number | undefined): string =>
    kelvin === undefined ? 'not run' : temperature(kelvin, units).value;
  return (
    <AnswerTable
      name={`With 5 % less and 5 % more core conductance beside it; limit ${degrees(study.limit, units)}`}
      heads={['Core conductance', '−5 %', 'as typed', '+5 %']}
      rows={(['typed', 'day'] as const).flatMap((which) => {
        const { temperature: outside, count, pullsRun, deciding, lower, higher } = study[which];
        const name = which === 'typed' ? 'As typed' : 'That day';
        const made = [lower.count, count, higher.count].map((each) => `${each} of ${pullsRun}`);
        return [
          [`${name}, ${degrees(outside, units)} outside: pulls`, ...made],
          ...(deciding
            ? [
                [
                  named(`${name}: peak of pull ${deciding.pull}`, unit),
                  ...[lower.peak, deciding.peak, higher.peak].map(peak),
                ],
              ]
            : []),
        ];
      })}
    />
  );
}

/** The curve of the picture. */
function CurveTable({ study: { curve, pulls }, units }: { readonly study: DayStudy; readonly units: UnitChoice }) {
  return (
    <AnswerTable
      name="Pulls by the temperature outside"
      heads={['Outside', 'Pulls']}
      rows={curve.map(({ temperature: outside, count }) => [degrees(outside, units), `${count} of ${pulls}`])}
    />
  );
}

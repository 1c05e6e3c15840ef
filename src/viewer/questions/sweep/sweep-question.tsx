import './sweep.css';
import { type Signal, useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import type { SweepResult } from '../../../sim/index.ts';
import { capitalised, named, scaleOf } from '../../format.ts';
import type { PageProps } from '../../page.tsx';
import type { Car } from '../../state/cars.ts';
import type { UnitChoice } from '../../state/display.ts';
import { AnswerTable } from '../answer-table.tsx';
import { type FileNumber, fileNumbers } from '../file-numbers.ts';
import { NumberSelect } from '../number-select.tsx';
import { whyNoPulls } from '../pulls-wanted.tsx';
import { QuestionFrame, Sentences } from '../question-frame.tsx';
import { expected } from '../typed.ts';
import { TypedBox } from '../typed-box.tsx';
import { type FoundAnswer, useQuestion } from '../use-question.ts';
import { type AxisChoice, axesOf, rangeOf, usualChoice } from './sweep-axes.ts';
import { SweepFigure } from './sweep-figure.tsx';
import { SweepGrid } from './sweep-grid.tsx';
import { SWEEP_SHOWS, type SweepShow, type SweptNumber, shownFigure, sweptNumber } from './sweep-shows.ts';
import { explainSweep } from './sweep-words.ts';

/** Where a shop begins, as far as its car has it. */
const FIRST = 'core.airConductance';
const COUNTS = [3, 5, 7, 9, 11, 15];
const [USUAL_ALONE, USUAL_SECOND] = [9, 5];

/** What pulls and temperatures do when one number of the car changes, or two together. */
export function SweepQuestion(props: PageProps) {
  const car = props.session.inHand.value;
  return car === undefined ? null : <SweepOf {...props} car={car} />;
}

function SweepOf({ car, ...props }: PageProps & { readonly car: Car }) {
  const units = props.display.units.value;
  const numbers = useMemo(() => fileNumbers(car), [car]);
  const numberAt = (path: string) => numbers.find((each) => each.path === path);
  const start = numberAt(FIRST) ?? numbers[0];
  const choices = useSignal<readonly AxisChoice[]>([usualChoice(start, USUAL_ALONE)]);
  const known = choices.value.filter(({ path }) => numberAt(path) !== undefined);
  const axes = axesOf(known, (path) => capitalised(numberAt(path)?.name ?? path));
  const { found, ...asking } = useQuestion(props, 'grid', {
    scenario: car.scenario,
    axes: 'why' in axes ? [] : axes,
  });
  const wrong = known.find(({ low, high }) => low === 'unreadable' || high === 'unreadable');
  const wrongNumber = wrong && numberAt(wrong.path);
  return (
    <QuestionFrame
      title="What if one number changes, or two together?"
      inputs={[0, 1].map((place) => <AxisInputs key={place} {...{ place, numbers, units, choices, known }} />)}
      why={
        whyNoPulls(car) ??
        (wrongNumber && expected(capitalised(wrongNumber.name), wrongNumber.row.unit, units, rangeOf(wrongNumber))) ??
        ('why' in axes ? axes.why : undefined)
      }
      {...asking}
    >
      {found && <Answer found={found} units={units} />}
    </QuestionFrame>
  );
}

interface AxisInputsProps {
  readonly place: number;
  readonly numbers: readonly FileNumber[];
  readonly units: UnitChoice;
  readonly choices: Signal<readonly AxisChoice[]>;
  readonly known: readonly AxisChoice[];
}

/** One number of the car: which, from, to, and at how many values. */
function AxisInputs({ place, numbers, units, choices, known }: AxisInputsProps) {
  const choice = known[place];
  const number = choice && numbers.find(({ path }) => path === choice.path);
  if (place > known.length) return null;
  const put = (changed: AxisChoice | undefined) => {
    choices.value = known.toSpliced(place, 1, ...(changed === undefined ? [] : [changed]));
  };
  return (
    <fieldset class="sweep-axis" aria-label={place === 0 ? 'First number' : 'Second number'}>
      <NumberSelect
        label={place === 0 ? 'Change' : 'And'}
        numbers={numbers}
        path={choice?.path ?? ''}
        none={place === 0 ? 'Choose a number' : 'Nothing else'}
        onChoose={(chosen) => put(chosen && usualChoice(chosen, place === 0 ? USUAL_ALONE : USUAL_SECOND))}
      />
      {number !== undefined && (
        <>
          {(['low', 'high'] as const).map((end) => (
            <TypedBox
              key={`${choice.path} ${end}`}
              label={end === 'low' ? 'from' : 'to'}
              fileUnit={number.row.unit}
              units={units}
              range={rangeOf(number)}
              value={choice[end]}
              onChange={(value) => put({ ...choice, [end]: value })}
            />
          ))}
          <label>
            at{' '}
            <select
              value={String(choice.count)}
              onChange={({ currentTarget }) => put({ ...choice, count: Number(currentTarget.value) })}
            >
              {COUNTS.map((count) => (
                <option key={count} value={String(count)}>
                  {count} values
                </option>
              ))}
            </select>
          </label>
        </>
      )}
    </fieldset>
  );
}

function Answer({ found, units }: { readonly found: FoundAnswer<'grid'>; readonly units: UnitChoice }) {
  const { car, asked, result } = found;
  const show = useSignal<SweepShow>('pulls');
  const numbers = useMemo(() => fileNumbers(car), [car]);
  const sides = asked.axes.flatMap(({ path, values }) => {
    const number = numbers.find((each) => each.path === path);
    return number === undefined ? [] : [sweptNumber(number, values.map(Number), units)];
  });
  const figure = shownFigure(show.value, units);
  const title = named(capitalised(show.value), figure.unit);
  return (
    <>
      <div>
        <Sentences of={explainSweep(sides, result, figure, show.value, units)} />
        <label class="sweep-show">
          Show{' '}
          <select
            value={show.value}
            onChange={({ currentTarget }) => {
              show.value = currentTarget.value as SweepShow;
            }}
          >
            {SWEEP_SHOWS.map((each) => (
              <option key={each} value={each}>
                {each}
              </option>
            ))}
          </select>
        </label>
      </div>
      {sides.length === 2 ? (
        <SweepGrid down={sides[0]} across={sides[1]} results={result} figure={figure} title={title} units={units} />
      ) : (
        <>
          <SweepFigure
            side={sides[0]}
            results={result}
            figure={figure}
            upTitle={title}
            limit={limitOf(found, figure.isTemperature, units)}
          />
          <SweepTable side={sides[0]} results={result} units={units} />
        </>
      )}
    </>
  );
}

/** In the unit of the page, where a temperature is shown and the limit is not what is changed. */
function limitOf({ car, asked }: FoundAnswer<'grid'>, isTemperature: boolean, units: UnitChoice): number | undefined {
  const isSwept = asked.axes.some(({ path }) => path === 'limit.chargeTemperature');
  return isTemperature && !isSwept ? scaleOf('degC', units).fromSi(car.config.limit.chargeTemperature) : undefined;
}

interface SweepTableProps {
  readonly side: SweptNumber;
  readonly results: readonly SweepResult[];
  readonly units: UnitChoice;
}

/** All figures of each car along one number. */
function SweepTable({ side, results, units }: SweepTableProps) {
  const figures = SWEEP_SHOWS.map((show) => ({ show, ...shownFigure(show, units) }));
  return (
    <AnswerTable
      name={`By ${side.title}`}
      heads={[capitalised(side.name), ...figures.map(({ show, unit }) => named(capitalised(show), unit))]}
      rows={results.map((result) => [
        side.write(Number(result.changes[side.path])),
        ...figures.map(({ read, write }) => {
          const value = read(result);
          return value === undefined ? (result.refused === undefined ? '–' : 'refused') : write(value);
        }),
      ])}
    />
  );
}

import './compare.css';
import { useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import type { ComparedCar } from '../../../../workers/questions.ts';
import { counted, written } from '../../../sim/index.ts';
import { Fold } from '../../fields/fold.tsx';
import { onScreen, wordingIn } from '../../format.ts';
import type { PageProps } from '../../page.tsx';
import type { UnitChoice } from '../../state/display.ts';
import { endOf, plannedPhases } from '../../time/phases.ts';
import { AnswerTable } from '../answer-table.tsx';
import { QuestionFrame, Sentences } from '../question-frame.tsx';
import { type FoundAnswer, useBuiltQuestion } from '../use-question.ts';
import { CompareFigure, LineSample } from './compare-figure.tsx';
import { changeRows, compareRows, peakRows } from './compare-rows.ts';
import {
  candidatesOf,
  firstPicks,
  MOST_CARS,
  type PickedCar,
  type Picks,
  pickedCars,
  withPick,
} from './compared-cars.ts';

/** The common time axis: so many steps of the longest cycle at most, and no step below this [s]. */
const MOST_STEPS = 10_000;
const LEAST_STEP = 0.1;
/** Above so many pulls their peaks are folded. */
const MOST_PEAKS = 12;

/** Cars of the file side by side: temperature over time, figures, and what was changed. */
export function CompareQuestion(props: PageProps) {
  const { session, display } = props;
  const { before, after } = session;
  const candidates = useMemo(() => candidatesOf(session), [before.value, after.value]);
  const picks = useSignal<Picks>(firstPicks(candidates, after.value?.label));
  const cars = useMemo(() => pickedCars(candidates, picks.value), [candidates, picks.value]);
  const { found, ...asking } = useBuiltQuestion(
    props,
    'compare',
    { cars, interval: intervalOf(cars) },
    (_, asked) => asked,
  );
  return (
    <QuestionFrame
      title="Which car is better, and by how much?"
      inputs={
        <fieldset class="compare-picks">
          <legend class="small">Up to {MOST_CARS} cars; the first is what the others are held against</legend>
          {candidates.map(({ name }) => {
            const line = picks.value.get(name);
            return (
              <label key={name}>
                <input
                  type="checkbox"
                  checked={line !== undefined}
                  disabled={line === undefined && cars.length >= MOST_CARS}
                  onChange={() => {
                    const known = [...picks.value].filter(([each]) => candidates.some((other) => other.name === each));
                    picks.value = withPick(new Map(known), name);
                  }}
                />
                {onScreen(name)}
                {line !== undefined && <LineSample line={line} />}
              </label>
            );
          })}
        </fieldset>
      }
      why={
        candidates.length < 2
          ? 'The file has no variant and nothing is changed: there is nothing to compare.'
          : cars.length < 2
            ? 'Pick at least two cars.'
            : undefined
      }
      {...asking}
    >
      {found && <Answer found={found} units={display.units.value} />}
    </QuestionFrame>
  );
}

/** Step of the common time axis [s]. */
function intervalOf(cars: readonly ComparedCar[]): number {
  const ends = cars.map(({ config }) => endOf(plannedPhases(config.cycle)));
  return Math.max(LEAST_STEP, Math.max(...ends) / MOST_STEPS);
}

type Found = FoundAnswer<'compare', { readonly cars: readonly PickedCar[] }>;

function Answer({ found, units }: { readonly found: Found; readonly units: UnitChoice }) {
  const { asked, result } = found;
  const { cars } = asked;
  const [figures, peaks] = [compareRows(result, units), peakRows(result, units)];
  const isLong = peaks.length > MOST_PEAKS;
  const changes = changeRows(cars, units);
  const names = cars.map(({ name }) => name);
  const marks = [null, ...cars.map(({ line }) => <LineSample key={line} line={line} />)];
  return (
    <>
      <div class="whole-row">
        <Sentences of={sentences(found, units)} />
      </div>
      <CompareFigure cars={cars} comparison={result} units={units} />
      <AnswerTable
        name={`Figures; in brackets the difference from ${cars[0].name}`}
        heads={['Figure', ...names]}
        marks={marks}
        rows={isLong ? figures : [...figures, ...peaks]}
      />
      {changes.length > 0 && (
        <AnswerTable name="Inputs in which they differ" heads={['Input', ...names]} marks={marks} rows={changes} />
      )}
      {isLong && (
        <div class="whole-row folded-tables">
          <Fold title={`Peaks of all ${peaks.length} pulls`}>
            {() => <AnswerTable name="Peaks of all pulls" heads={['Pull', ...names]} marks={marks} rows={peaks} />}
          </Fold>
        </div>
      )}
    </>
  );
}

/** What each car makes, the first standing out, and which run ended early. */
function sentences({ asked: { cars }, result }: Found, units: UnitChoice): string[] {
  const wording = wordingIn(units);
  const { temperature, difference } = wording;
  return result.cars.flatMap(({ count, peaks, decidingPull, decidingPeak, difference: change, stoppedBecause }, k) => {
    const made =
      decidingPull === undefined || decidingPeak === undefined
        ? 'no whole pull'
        : `${count} of ${counted(peaks.length, 'pull')} to the limit; pull ${decidingPull} decides and peaks at ${temperature(decidingPeak)}`;
    const first = change.peaks[0];
    const against =
      k === 0 || first === undefined
        ? ''
        : `, and pull 1 peaks ${difference(Math.abs(first))} ${first < 0 ? 'lower' : 'higher'} than with ${cars[0].name}`;
    const stop = stoppedBecause === undefined ? [] : [`${cars[k].name} stopped: ${written(stoppedBecause, wording)}.`];
    return [`${cars[k].name}: ${made}${against}.`, ...stop];
  });
}

import { useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { explainRanking, explainSensitivity, type Sensitivity, WHY_NO_ANSWER } from '../../../sim/index.ts';
import { fixed, named, scaleOf, temperature, wordingIn } from '../../format.ts';
import type { PageProps } from '../../page.tsx';
import type { Car } from '../../state/cars.ts';
import type { UnitChoice } from '../../state/display.ts';
import { AnswerTable } from '../answer-table.tsx';
import { fileNumbers } from '../file-numbers.ts';
import { whyNoPulls } from '../pulls-wanted.tsx';
import { QuestionFrame, Sentences } from '../question-frame.tsx';
import { whyNotWhole } from '../typed.ts';
import { useQuestion } from '../use-question.ts';
import { WholeBox } from '../whole-box.tsx';
import { USUAL_RANGES } from './own-ranges.ts';
import { RangeList } from './range-list.tsx';
import { faultOf, rangeRows, variedInputs } from './range-rows.ts';
import { rangeShown } from './range-words.ts';
import { ShareFigure } from './share-figure.tsx';

const MOST_RUNS = 4096;
const MOST_SEED = 2 ** 31;

/** How far the answer may be off when inputs are not known well, and which of them to measure next. */
export function SensitivityQuestion(props: PageProps) {
  const car = props.session.inHand.value;
  return car === undefined ? null : <SensitivityOf {...props} car={car} />;
}

function SensitivityOf({ car, ...props }: PageProps & { readonly car: Car }) {
  const units = props.display.units.value;
  const runs = useSignal(64);
  const seed = useSignal(1);
  const own = useSignal(USUAL_RANGES);
  const { scenario } = car;
  const numbers = useMemo(() => fileNumbers(car), [car]);
  const rows = useMemo(() => rangeRows(scenario, numbers, own.value), [scenario, numbers, own.value]);
  const fault = useMemo(() => faultOf(rows, scenario, units), [rows, scenario, units]);
  const inputs = variedInputs(rows);
  const leastRuns = inputs.length + 2;
  const { found, ...asking } = useQuestion(props, 'sensitivity', {
    scenario,
    inputs,
    runs: runs.value,
    seed: seed.value,
  });
  return (
    <QuestionFrame
      title="What to measure next?"
      inputs={
        <>
          <RangeList scenario={scenario} numbers={numbers} units={units} own={own} rows={rows} fault={fault} />
          <WholeBox label="Runs" value={runs} least={leastRuns} most={MOST_RUNS} />
          <WholeBox label="Seed" value={seed} least={0} most={MOST_SEED} />
        </>
      }
      why={
        whyNoPulls(car) ??
        fault?.message ??
        whyNotWhole('Runs', runs.value, leastRuns, MOST_RUNS) ??
        whyNotWhole('Seed', seed.value, 0, MOST_SEED)
      }
      {...asking}
    >
      {found && <Answer study={found.result} units={units} />}
    </QuestionFrame>
  );
}

function Answer({ study, units }: { readonly study: Sensitivity | undefined; readonly units: UnitChoice }) {
  if (study === undefined) return <p>{WHY_NO_ANSWER.tooFewDecided}</p>;
  const { unit } = scaleOf('degC', units);
  const peak = (kelvin: number | undefined): string =>
    kelvin === undefined ? 'not run' : temperature(kelvin, units).value;
  return (
    <>
      <Sentences of={[...explainSensitivity(study, wordingIn(units)), ...explainRanking(study)]} />
      <ShareFigure ranking={study.ranking} />
      <AnswerTable
        name={`Peak of pull ${study.pull}: the share of its spread, and with that input alone at either end`}
        heads={['Input', 'Share, %', named('Peak at low', unit), named('Peak at high', unit), 'Range']}
        rows={study.ranking.map(({ input, share, peakAtLow, peakAtHigh }) => [
          input.name,
          fixed(100 * share, 1),
          peak(peakAtLow),
          peak(peakAtHigh),
          rangeShown(input, units),
        ])}
      />
    </>
  );
}

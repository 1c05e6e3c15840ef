import { useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import {
  explainRanking,
  explainSensitivity,
  issuesOfRanges,
  rangeInWords,
  type Sensitivity,
  uncertainInputs,
} from '../../sim/index.ts';
import { fixed, onScreen, scaleOf, temperature, wordingIn } from '../format.ts';
import type { PageProps } from '../page.tsx';
import type { Car } from '../state/cars.ts';
import type { UnitChoice } from '../state/display.ts';
import { AnswerTable } from './answer-table.tsx';
import { Estimate } from './estimate.tsx';
import { whyNoPulls } from './pulls-wanted.tsx';
import { QuestionFrame, Sentences } from './question-frame.tsx';
import { ShareFigure } from './share-figure.tsx';
import { useQuestion } from './use-question.ts';
import { WholeBox } from './whole-box.tsx';

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
  const { scenario } = car;
  const { inputs, issues } = useMemo(() => {
    const each = uncertainInputs(scenario, []);
    return { inputs: each, issues: issuesOfRanges(scenario, each) };
  }, [scenario]);
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
          <WholeBox label="Runs" value={runs} least={inputs.length + 2} most={MOST_RUNS} />
          <WholeBox label="Seed" value={seed} least={0} most={MOST_SEED} />
        </>
      }
      why={whyNoPulls(car) ?? (issues[0] && onScreen(issues[0].message))}
      {...asking}
    >
      {found && <Answer study={found.result} units={units} />}
    </QuestionFrame>
  );
}

function Answer({ study, units }: { readonly study: Sensitivity | undefined; readonly units: UnitChoice }) {
  if (study === undefined) return <p>Nothing to rank: too few of the runs have the pull that decides.</p>;
  const { unit } = scaleOf('degC', units);
  const peak = (kelvin: number | undefined): string =>
    kelvin === undefined ? 'not run' : temperature(kelvin, units).value;
  return (
    <>
      <div>
        <Sentences of={[...explainSensitivity(study, wordingIn(units)), ...explainRanking(study)]} />
        <Estimate />
      </div>
      <ShareFigure ranking={study.ranking} />
      <AnswerTable
        name={`Peak of pull ${study.pull}: the share of its spread, and with that input alone at either end`}
        heads={['Input', 'Share, %', `Peak at low, ${unit}`, `Peak at high, ${unit}`, 'Range']}
        rows={study.ranking.map(({ input, share, peakAtLow, peakAtHigh }) => [
          input.name,
          fixed(100 * share, 1),
          peak(peakAtLow),
          peak(peakAtHigh),
          rangeInWords(input),
        ])}
      />
    </>
  );
}

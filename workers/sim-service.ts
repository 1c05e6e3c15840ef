import { transfer } from 'comlink';
import {
  type Config,
  type Study,
  startRun,
  studyCoreDesign,
  studyCoreMap,
  studyRoutes,
  studyRun,
  summarisePulls,
  type TimeSeries,
} from '../src/sim/index.ts';
import { Conductor } from './conductor.ts';
import type { Helper } from './helpers.ts';
import type { AnswerOf, AskedOf, Question } from './questions.ts';
import type { Failure, Progress, QuestionRequest, SimApi, SolveReply, StudyProgress, StudyReply } from './sim-api.ts';
import { Slicer } from './slicer.ts';

/** Progress is told at most this often [ms]. */
const PROGRESS_EVERY = 100;

/**
 * The simulator as a service that listens while it works: what a worker exposes.
 *
 * @param startHelpers - other workers to share the runs of a study with, started when first needed
 */
export function createSimService(startHelpers: () => readonly Helper[] = () => []): SimApi {
  const slicer = new Slicer();
  const conductor = new Conductor(slicer, startHelpers);
  async function answer<Result>(
    run: number,
    study: Study<Result>,
    onProgress?: (progress: StudyProgress) => void,
  ): Promise<StudyReply<Result>> {
    try {
      const done = await conductor.conduct(run, study, onProgress);
      return done === undefined ? { kind: 'cancelled', run } : { kind: 'studied', run, result: done.result };
    } catch (error) {
      return failure(run, error);
    }
  }
  return {
    async solve({ run, config }, onProgress) {
      try {
        const solving = startRun(config, { fields: true });
        const limit = config.limit.chargeTemperature;
        let nextWord = performance.now() + PROGRESS_EVERY;
        const isWhole = await slicer.work(run, solving.step, () => {
          if (performance.now() < nextWord) return;
          nextWord = performance.now() + PROGRESS_EVERY;
          const { time, duration } = solving;
          const progress: Progress = { run, time, duration, pulls: summarisePulls(solving.soFar(), limit) };
          onProgress(progress);
        });
        const series = solving.finish();
        const pulls = summarisePulls(series, limit);
        const reply: SolveReply = { kind: isWhole ? 'solved' : 'cancelled', run, series, pulls };
        return transfer(reply, buffersOf(series));
      } catch (error) {
        return failure(run, error);
      }
    },

    async runJob({ run, job }) {
      try {
        const result = await conductor.runHere(run, job);
        if (result === undefined) return { kind: 'cancelled', run };
        const reply: StudyReply<TimeSeries> = { kind: 'studied', run, result };
        return transfer(reply, buffersOf(result));
      } catch (error) {
        return failure(run, error);
      }
    },

    study: ({ run, config, pulls }) => answer(run, studyRun(config, pulls)),

    studyRoutes: ({ run, config }) => answer(run, studyRoutes(config)),

    studyCore: ({ run, config }) => answer(run, studyCoreDesign(config)),

    studyCoreMap: ({ run, config, lists }, onProgress) => answer(run, studyCoreMap(config, lists), onProgress),

    async ask<Q extends Question>(
      { run, config, question, asked }: QuestionRequest<Q>,
      onProgress: (progress: StudyProgress) => void,
    ) {
      // Fetched with the first question: a visit that asks none does not load what only questions need.
      const { QUESTIONS } = await import('./questions.ts');
      const study = QUESTIONS[question] as (config: Config, asked: AskedOf<Q>) => Study<AnswerOf<Q>>;
      return answer(run, study(config, asked), onProgress);
    },

    async cancel(run) {
      conductor.cancel(run);
    },
  };
}

function buffersOf(series: TimeSeries): Transferable[] {
  const arrays: (Float64Array | Float32Array)[] = Object.values(series.columns);
  if (series.core !== undefined) arrays.push(series.core.metal, series.core.coolant, series.core.air);
  return arrays.map(({ buffer }) => buffer as ArrayBuffer);
}

const failure = (run: number, error: unknown): Failure => ({
  kind: 'failed',
  run,
  message: error instanceof Error ? error.message : String(error),
});

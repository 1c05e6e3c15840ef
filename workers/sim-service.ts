import { transfer } from 'comlink';
import {
  type Config,
  type RunOptions,
  type Study,
  startRun,
  studyCoreDesign,
  studyCoreMap,
  studyRoutes,
  studyRun,
  summarisePulls,
  type TimeSeries,
} from '../src/sim/index.ts';
import type { AnswerOf, AskedOf, Question } from './questions.ts';
import type { Progress, QuestionRequest, SimApi, SolveReply, StudyProgress, StudyReply } from './sim-api.ts';

/** The service gives way to messages after this long [ms], so that a cancel is heard. */
const SLICE = 30;
/** Progress is told at most this often [ms]. */
const PROGRESS_EVERY = 100;

/** The simulator as a service that listens while it works: what a worker exposes. */
export function createSimService(): SimApi {
  const slicer = new Slicer();
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
        return { kind: 'failed', run, message: messageOf(error) };
      }
    },

    study: ({ run, config, pulls }) => answer(slicer, run, studyRun(config, pulls)),

    studyRoutes: ({ run, config }) => answer(slicer, run, studyRoutes(config)),

    studyCore: ({ run, config }) => answer(slicer, run, studyCoreDesign(config)),

    studyCoreMap: ({ run, config, lists }, onProgress) => answer(slicer, run, studyCoreMap(config, lists), onProgress),

    async ask<Q extends Question>(
      { run, config, question, asked }: QuestionRequest<Q>,
      onProgress: (progress: StudyProgress) => void,
    ) {
      // Fetched with the first question: a visit that asks none does not load what only questions need.
      const { QUESTIONS } = await import('./questions.ts');
      const study = QUESTIONS[question] as (config: Config, asked: AskedOf<Q>) => Study<AnswerOf<Q>>;
      return answer(slicer, run, study(config, asked), onProgress);
    },

    async cancel(run) {
      slicer.cancelledUpTo = Math.max(slicer.cancelledUpTo, run);
    },
  };
}

async function answer<Result>(
  slicer: Slicer,
  run: number,
  study: Study<Result>,
  onProgress?: (progress: StudyProgress) => void,
): Promise<StudyReply<Result>> {
  try {
    const done = await conductInSlices(slicer, run, study, onProgress);
    return done === undefined ? { kind: 'cancelled', run } : { kind: 'studied', run, result: done.result };
  } catch (error) {
    return { kind: 'failed', run, message: messageOf(error) };
  }
}

/** Conducts a study run by run; undefined where it was cancelled. */
async function conductInSlices<Result>(
  slicer: Slicer,
  run: number,
  study: Study<Result>,
  onProgress?: (progress: StudyProgress) => void,
): Promise<{ readonly result: Result } | undefined> {
  let step = study.next();
  let [done, of] = [0, 0];
  while (!step.done) {
    const results: TimeSeries[] = [];
    of += step.value.length;
    for (const { config, options } of step.value) {
      const series = await runInSlices(slicer, run, config, options);
      if (series === undefined) return undefined;
      results.push(series);
      onProgress?.({ done: ++done, of });
    }
    step = study.next(results);
  }
  return { result: step.value };
}

async function runInSlices(
  slicer: Slicer,
  run: number,
  config: Config,
  options: RunOptions | undefined,
): Promise<TimeSeries | undefined> {
  const solving = startRun(config, options);
  return (await slicer.work(run, solving.step)) ? solving.finish() : undefined;
}

/** Works in slices and lets messages in between them. */
class Slicer {
  cancelledUpTo = -1;
  private readonly channel = new MessageChannel();
  private waiting: (() => void)[] = [];

  constructor() {
    this.channel.port1.onmessage = () => {
      const { waiting } = this;
      this.waiting = [];
      for (const resume of waiting) resume();
    };
  }

  /** Steps until there are no more; false where the run was cancelled. */
  async work(run: number, step: () => boolean, between?: () => void): Promise<boolean> {
    let sliceEnd = performance.now() + SLICE;
    while (run > this.cancelledUpTo && step()) {
      if (performance.now() < sliceEnd) continue;
      between?.();
      await this.nextMacrotask();
      sliceEnd = performance.now() + SLICE;
    }
    return run > this.cancelledUpTo;
  }

  /** Messages are only heard between macrotasks; a resolved promise alone would not let one in. */
  private nextMacrotask(): Promise<void> {
    return new Promise((resolve) => {
      this.waiting.push(resolve);
      this.channel.port2.postMessage(undefined);
    });
  }
}

function buffersOf(series: TimeSeries): Transferable[] {
  const arrays: (Float64Array | Float32Array)[] = Object.values(series.columns);
  if (series.core !== undefined) arrays.push(series.core.metal, series.core.coolant, series.core.air);
  return arrays.map(({ buffer }) => buffer as ArrayBuffer);
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

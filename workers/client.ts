import { proxy } from 'comlink';
import type {
  Config,
  CoreDesignStudy,
  CoreMap,
  CoreMapLists,
  PullSummary,
  RouteStudy,
  RunJob,
  RunStudy,
  TimeSeries,
} from '../src/sim/index.ts';
import type { AnswerOf, Question } from './questions.ts';
import type { Progress, QuestionRequest, SolveReply, StudyProgress, StudyReply } from './sim-api.ts';
import { holdWorker, PATIENCE, type SimWorker } from './sim-worker.ts';

/**
 * The page's side of the simulator: two workers, one to solve and one to study, each the other's warm spare. The one
 * that studies shares its runs with helpers of its own.
 */
export class SimClient {
  private run = 0;
  private solver = startWorker();
  private scholar = startWorker();

  /** A number for a new run, larger than all before. */
  nextRun(): number {
    return ++this.run;
  }

  /** Solves a configuration; a newer call does not end an older one, {@link cancel} does. */
  solve(run: number, config: Config, onProgress: (progress: Progress) => void): Promise<SolveReply> {
    // Told on a port of its own, progress may arrive after the result: it is dropped then.
    let isOver = false;
    const heard = proxy((progress: Progress) => {
      if (!isOver) onProgress(progress);
    });
    return this.solver
      .ask(async (api): Promise<SolveReply> => await api.solve({ run, config }, heard), run)
      .finally(() => {
        isOver = true;
      });
  }

  /** One run of a study that the page conducts by itself. */
  runJob(run: number, job: RunJob): Promise<StudyReply<TimeSeries>> {
    return this.scholar.ask(async (api): Promise<StudyReply<TimeSeries>> => await api.runJob({ run, job }), run);
  }

  /** Works out what needs many runs, beside and after the solving. */
  study(run: number, config: Config, pulls: readonly PullSummary[]): Promise<StudyReply<RunStudy>> {
    return this.scholar.ask(async (api): Promise<StudyReply<RunStudy>> => await api.study({ run, config, pulls }), run);
  }

  /** Routes of the bypass air, in the same place. */
  studyRoutes(run: number, config: Config): Promise<StudyReply<RouteStudy>> {
    return this.scholar.ask(
      async (api): Promise<StudyReply<RouteStudy>> => await api.studyRoutes({ run, config }),
      run,
    );
  }

  /** A core by its measures, in the same place. */
  studyCore(run: number, config: Config): Promise<StudyReply<CoreDesignStudy | undefined>> {
    return this.scholar.ask(
      async (api): Promise<StudyReply<CoreDesignStudy | undefined>> => await api.studyCore({ run, config }),
      run,
    );
  }

  /** Cores of other measures, in the same place. */
  studyCoreMap(
    run: number,
    config: Config,
    lists: CoreMapLists,
    onProgress: (progress: StudyProgress) => void,
  ): Promise<StudyReply<CoreMap | undefined>> {
    const heard = proxy(onProgress);
    return this.scholar.ask(
      async (api): Promise<StudyReply<CoreMap | undefined>> => await api.studyCoreMap({ run, config, lists }, heard),
      run,
    );
  }

  /** One of the questions, in the same place. */
  ask<Q extends Question>(
    request: QuestionRequest<Q>,
    onProgress: (progress: StudyProgress) => void,
  ): Promise<StudyReply<AnswerOf<Q>>> {
    const heard = proxy(onProgress);
    return this.scholar.ask(
      async (api) => (await api.ask(request as never, heard)) as StudyReply<AnswerOf<Q>>,
      request.run,
    );
  }

  /** Ends a solve; a worker that does not listen is replaced, by its spare. */
  async cancel(run: number): Promise<void> {
    if (await this.solver.cancel(run)) return;
    this.solver.end(`the run did not answer within ${PATIENCE} ms and was ended`);
    this.solver = this.scholar;
    this.scholar = startWorker();
  }

  /** Ends a study; a worker that does not listen is replaced. */
  async cancelStudies(run: number): Promise<void> {
    if (await this.scholar.cancel(run)) return;
    this.scholar.end('the study was ended');
    this.scholar = startWorker();
  }

  dispose(): void {
    this.solver.end('closed');
    this.scholar.end('closed');
  }
}

const startWorker = (): SimWorker =>
  holdWorker(new Worker(new URL('./sim.worker.ts', import.meta.url), { type: 'module' }));

import { proxy, type Remote } from 'comlink';
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
import type { Failure, Progress, QuestionRequest, SimApi, SolveReply, StudyProgress, StudyReply } from './sim-api.ts';
import { holdWorker, PATIENCE, type WorkerHandle } from './worker-handle.ts';

type Call<Reply> = (api: Remote<SimApi>) => Promise<Reply>;

/**
 * The page's side of the simulator: two workers, one to solve and one to study, each the other's warm spare. The one
 * that studies shares its runs with helpers of its own.
 */
export class SimClient {
  private run = 0;
  private readonly start: () => WorkerHandle;
  private solver: WorkerHandle;
  private scholar: WorkerHandle;
  /** calls that have not been answered */
  private readonly underWay: { readonly run: number; readonly worker: WorkerHandle }[] = [];

  constructor(start: () => WorkerHandle = startWorker) {
    this.start = start;
    this.solver = start();
    this.scholar = start();
  }

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
    return this.call<SolveReply>(this.solver, run, async (api) => await api.solve({ run, config }, heard)).finally(
      () => {
        isOver = true;
      },
    );
  }

  /** Works out what needs many runs, beside and after the solving. */
  study(run: number, config: Config, pulls: readonly PullSummary[]): Promise<StudyReply<RunStudy>> {
    return this.studyCall(run, async (api) => await api.study({ run, config, pulls }));
  }

  /** One run of a study that the page conducts by itself, in the same place. */
  runJob(run: number, job: RunJob): Promise<StudyReply<TimeSeries>> {
    return this.studyCall(run, async (api) => await api.runJob({ run, job }));
  }

  /** Routes of the recirculated air, in the same place. */
  studyRoutes(run: number, config: Config): Promise<StudyReply<RouteStudy>> {
    return this.studyCall(run, async (api) => await api.studyRoutes({ run, config }));
  }

  /** A core by its measures, in the same place. */
  studyCore(run: number, config: Config): Promise<StudyReply<CoreDesignStudy | undefined>> {
    return this.studyCall(run, async (api) => await api.studyCore({ run, config }));
  }

  /** Cores of other measures, in the same place. */
  studyCoreMap(
    run: number,
    config: Config,
    lists: CoreMapLists,
    onProgress: (progress: StudyProgress) => void,
  ): Promise<StudyReply<CoreMap | undefined>> {
    const heard = proxy(onProgress);
    return this.studyCall(run, async (api) => await api.studyCoreMap({ run, config, lists }, heard));
  }

  /** One of the questions, in the same place. */
  ask<Q extends Question>(
    request: QuestionRequest<Q>,
    onProgress: (progress: StudyProgress) => void,
  ): Promise<StudyReply<AnswerOf<Q>>> {
    const heard = proxy(onProgress);
    return this.studyCall(
      request.run,
      async (api) => (await api.ask(request as never, heard)) as StudyReply<AnswerOf<Q>>,
    );
  }

  /** Ends a run or a study, wherever it is under way; a worker that does not listen is replaced. */
  async cancel(run: number): Promise<void> {
    const worker = this.underWay.find((call) => call.run === run)?.worker;
    if (worker === undefined || (await worker.cancel(run))) return;
    worker.end(`the run did not answer within ${PATIENCE} ms and was ended`);
    if (worker === this.solver) {
      this.solver = this.scholar;
      this.scholar = this.start();
    } else if (worker === this.scholar) {
      this.scholar = this.start();
    }
  }

  dispose(): void {
    this.solver.end('closed');
    this.scholar.end('closed');
  }

  private studyCall<Result>(run: number, call: Call<StudyReply<Result>>): Promise<StudyReply<Result>> {
    return this.call(this.scholar, run, call);
  }

  /** A worker that breaks answers as a failure. */
  private async call<Reply>(worker: WorkerHandle, run: number, call: Call<Reply>): Promise<Reply | Failure> {
    const underWay = { run, worker };
    this.underWay.push(underWay);
    const reply = await worker.ask(call, run);
    this.underWay.splice(this.underWay.indexOf(underWay), 1);
    return reply;
  }
}

const startWorker = (): WorkerHandle =>
  holdWorker(new Worker(new URL('./sim.worker.ts', import.meta.url), { type: 'module' }));

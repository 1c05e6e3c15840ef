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
import type { AnswerOf, AskedOf, Question } from './questions.ts';

/** What crosses between page and worker. Plain data and typed arrays only; failures are data too. */

/** How far a run is; pulls are those that have ended. */
export interface Progress {
  readonly run: number;
  readonly time: number;
  readonly duration: number;
  readonly pulls: readonly PullSummary[];
}

/** What a call comes to that broke: its worker, or the work itself. */
export interface Failure {
  readonly kind: 'failed';
  readonly run: number;
  readonly message: string;
}

/** 'cancelled' carries what was solved until then. A run that stopped by itself is 'solved': its outcome says so. */
export type SolveReply =
  | {
      readonly kind: 'solved' | 'cancelled';
      readonly run: number;
      readonly series: TimeSeries;
      readonly pulls: readonly PullSummary[];
    }
  | Failure;

interface CarRequest {
  /** number of the run; larger is newer */
  readonly run: number;
  readonly config: Config;
}

interface StudyRequest extends CarRequest {
  readonly pulls: readonly PullSummary[];
}

interface JobRequest {
  readonly run: number;
  readonly job: RunJob;
}

interface CoreMapRequest extends CarRequest {
  readonly lists: CoreMapLists;
}

export interface QuestionRequest<Q extends Question> extends CarRequest {
  readonly question: Q;
  readonly asked: AskedOf<Q>;
}

/** How many runs of a study are done, and of how many that it has asked for so far. */
export interface StudyProgress {
  readonly done: number;
  readonly of: number;
}

export type StudyReply<Result> =
  | { readonly kind: 'studied'; readonly run: number; readonly result: Result }
  | { readonly kind: 'cancelled'; readonly run: number }
  | Failure;

export interface SimApi {
  solve(request: CarRequest, onProgress: (progress: Progress) => void): Promise<SolveReply>;
  study(request: StudyRequest): Promise<StudyReply<RunStudy>>;
  /** One run of a study that is conducted elsewhere. */
  runJob(request: JobRequest): Promise<StudyReply<TimeSeries>>;
  /** Routes of the recirculated air, and where they turn. */
  studyRoutes(request: CarRequest): Promise<StudyReply<RouteStudy>>;
  /** A core by its measures at the end of the first pull, and one row more; undefined where there is none. */
  studyCore(request: CarRequest): Promise<StudyReply<CoreDesignStudy | undefined>>;
  /** The first pull with cores of other measures; undefined where the core has none. */
  studyCoreMap(
    request: CoreMapRequest,
    onProgress: (progress: StudyProgress) => void,
  ): Promise<StudyReply<CoreMap | undefined>>;
  /** One of the questions, by its name. */
  ask<Q extends Question>(
    request: QuestionRequest<Q>,
    onProgress: (progress: StudyProgress) => void,
  ): Promise<StudyReply<AnswerOf<Q>>>;
  /** The run or study of this number ends as soon as it notices. */
  cancel(run: number): Promise<void>;
}

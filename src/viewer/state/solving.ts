import { effect, type Signal, untracked } from '@preact/signals';
import type { SimClient } from '../../../workers/client.ts';
import type { AnswerOf, AskedOf, Question } from '../../../workers/questions.ts';
import type { SolveReply, StudyProgress, StudyReply } from '../../../workers/sim-api.ts';
import {
  type CoreDesignStudy,
  type CoreMap,
  type CoreMapLists,
  conductWith,
  type HottestDay,
  type RouteStudy,
  studyHottestDay,
} from '../../sim/index.ts';
import { type Car, type CarRun, NO_RUN } from './cars.ts';
import type { Session } from './session.ts';

/** A run that takes longer than this gives way to a newer value [ms]; a shorter one ends first, so a drag stays live. */
const GIVES_WAY_AFTER = 250;

/** The hand on the solver. */
export interface Solving {
  /** ends what is under way; what was solved stays, marked as part of a run */
  cancel(): void;
  /** solves cancelled runs from the start again */
  resume(): void;
  /** works out the routes of a car's recirculated air; one car at a time */
  studyRoutes(car: Car): Promise<StudyReply<RouteStudy>>;
  /** ends what {@link studyRoutes} has under way */
  cancelRoutes(): void;
  /** works out a core by its measures, and one row more; it is short and cannot be ended by itself */
  studyCore(car: Car): Promise<StudyReply<CoreDesignStudy | undefined>>;
  /** works out the first pull with cores of other measures; one car at a time */
  studyCoreMap(
    car: Car,
    lists: CoreMapLists,
    onProgress: (progress: StudyProgress) => void,
  ): Promise<StudyReply<CoreMap | undefined>>;
  /** ends what {@link studyCoreMap} has under way */
  cancelCoreMap(): void;
  /** answers one of the questions about a car; one question at a time */
  ask<Q extends Question>(
    car: Car,
    question: Q,
    asked: AskedOf<Q>,
    onProgress: (progress: StudyProgress) => void,
  ): Promise<StudyReply<AnswerOf<Q>>>;
  /** ends what {@link ask} has under way */
  cancelQuestion(): void;
}

/**
 * Keeps the runs of both cars up with the cars: solves what changed, newest value wins, and works out the answers
 * that take many runs once no gesture is under way.
 */
export function keepSolved(session: Session, client: SimClient): Solving {
  const before = new Solver(client, session.before, session.beforeRun);
  const after = new Solver(client, session.after, session.afterRun);
  for (const solver of [before, after]) {
    effect(() => {
      const car = solver.car.value;
      untracked(() => solver.follow(car));
    });
    effect(() => {
      const run = solver.run.value;
      const isFree = !session.isDragging.value;
      if (isFree && run.kind === 'solved' && run.of === solver.car.value) untracked(() => solver.study());
    });
  }
  let ending: Promise<void> = Promise.resolve();
  const routes = new EndableStudy();
  const map = new EndableStudy();
  const questions = new EndableStudy();
  /** A worker that is being ended would take the next study with it: it waits. */
  const ask = <Result>(study: EndableStudy, call: StudyCall<Result>) => study.ask(client.nextRun(), ending, call);
  const end = (study: EndableStudy) => {
    if (study.run !== undefined) ending = client.cancel(study.run);
    study.run = undefined;
  };
  return {
    studyRoutes: (car) => ask(routes, (run) => client.studyRoutes(run, car.config)),
    cancelRoutes: () => end(routes),
    studyCore: async (car) => {
      await ending;
      return client.studyCore(client.nextRun(), car.config);
    },
    studyCoreMap: (car, lists, onProgress) =>
      ask(map, (run) =>
        client.studyCoreMap(run, car.config, lists, (progress) => {
          if (map.run === run) onProgress(progress);
        }),
      ),
    cancelCoreMap: () => end(map),
    ask: (car, question, asked, onProgress) =>
      ask(questions, (run) =>
        client.ask({ run, config: car.config, question, asked }, (progress) => {
          if (questions.run === run) onProgress(progress);
        }),
      ),
    cancelQuestion: () => end(questions),
    cancel: () => {
      before.cancel();
      after.cancel();
    },
    resume: () => {
      for (const solver of [before, after]) if (solver.run.value.kind === 'cancelled') solver.restart();
    },
  };
}

type StudyCall<Result> = (run: number) => Promise<StudyReply<Result>>;

/** A study of which one at a time is under way, so that it can be ended. */
class EndableStudy {
  /** of the one that is waited for */
  run: number | undefined;

  async ask<Result>(run: number, ending: Promise<void>, call: StudyCall<Result>): Promise<StudyReply<Result>> {
    this.run = run;
    await ending;
    if (this.run !== run) return { kind: 'cancelled', run };
    const reply = await call(run);
    if (this.run === run) this.run = undefined;
    return reply;
  }
}

/** Follows one car with its run. */
class Solver {
  readonly car: Signal<Car | undefined>;
  readonly run: Signal<CarRun>;
  private readonly client: SimClient;
  private underWay: { run: number; since: number; car: Car } | undefined;
  /** the study that is under way, or was the last */
  private studied: { car: Car; run: number } | undefined;

  constructor(client: SimClient, car: Signal<Car | undefined>, run: Signal<CarRun>) {
    this.client = client;
    this.car = car;
    this.run = run;
  }

  follow(car: Car | undefined): void {
    if (this.studied !== undefined && this.studied.car !== car) {
      void this.client.cancel(this.studied.run);
      this.studied = undefined;
    }
    if (car === undefined) {
      this.run.value = NO_RUN;
      this.cancel();
      return;
    }
    // A car that came with its results (kept as Before) is not solved again.
    if (this.run.value.of === car && this.underWay === undefined) return;
    if (this.underWay === undefined) void this.solve(car);
    else if (performance.now() - this.underWay.since > GIVES_WAY_AFTER) this.cancel();
  }

  /** Ends the run that is under way. */
  cancel(): void {
    if (this.underWay === undefined) return;
    void this.client.cancel(this.underWay.run);
  }

  restart(): void {
    if (this.car.value !== undefined && this.underWay === undefined) void this.solve(this.car.value);
  }

  study(): void {
    const car = this.car.value;
    if (car === undefined || this.studied?.car === car) return;
    const run = this.client.nextRun();
    this.studied = { car, run };
    void this.studyAll(car, run);
  }

  /** The causes first, then the hottest day; what a car that was kept as Before brought along is not asked again. */
  private async studyAll(car: Car, run: number): Promise<void> {
    if (this.run.value.study === undefined) {
      const reply = await this.client.study(run, car.config, this.run.value.pulls);
      if (this.car.value !== car || reply.kind !== 'studied') return;
      this.run.value = { ...this.run.value, study: reply.result };
    }
    if (this.run.value.hottestDay !== undefined) return;
    const hottestDay = await this.studyHottestDay(car, run);
    if (this.car.value === car && hottestDay !== undefined) this.run.value = { ...this.run.value, hottestDay };
  }

  /** Conducted here, since another day is made of the file; the runs are the worker's. Undefined where it was ended. */
  private async studyHottestDay(car: Car, run: number): Promise<HottestDay | undefined> {
    const { pulls } = this.run.value;
    if (pulls.length === 0) return undefined;
    const found = await conductWith(studyHottestDay(car.scenario, pulls.length), async (jobs) => {
      const replies = await Promise.all(jobs.map((job) => this.client.runJob(run, job)));
      const results = replies.flatMap((reply) => (reply.kind === 'studied' ? [reply.result] : []));
      return results.length < replies.length || this.studied?.run !== run ? undefined : results;
    });
    return found?.result;
  }

  private async solve(car: Car): Promise<void> {
    const run = this.client.nextRun();
    this.underWay = { run, since: performance.now(), car };
    const { study: _stale, hottestDay: _staleToo, message: _old, ...kept } = this.run.value;
    this.run.value = { ...kept, kind: 'running', time: 0, duration: 0 };
    const reply = await this.client.solve(run, car.config, ({ time, duration, pulls }) => {
      if (this.car.value === car) this.run.value = { ...this.run.value, time, duration, pulls };
    });
    this.underWay = undefined;
    const current = this.car.value;
    if (current === undefined) return;
    if (reply.kind === 'failed') {
      this.run.value = { ...this.run.value, kind: 'failed', message: reply.message };
    } else if (reply.kind === 'solved' || current === car) {
      this.take(car, reply);
    }
    if (current !== car) void this.solve(current);
  }

  private take(car: Car, { kind, series, pulls }: Exclude<SolveReply, { kind: 'failed' }>): void {
    const { outcome } = series;
    const time = series.columns.time[series.rowCount - 1];
    const { before, block, repeats, after } = car.config.cycle;
    const length = (phases: typeof block) => phases.reduce((sum, { duration }) => sum + duration, 0);
    this.run.value = {
      kind: kind === 'cancelled' ? 'cancelled' : outcome.kind === 'stopped' ? 'stopped' : 'solved',
      time,
      duration: length(before) + repeats * length(block) + length(after),
      pulls,
      series,
      of: car,
    };
  }
}

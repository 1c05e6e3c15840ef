/**
 * The one thing model and solver share: what a stepper may ask of a model. No code, no physics.
 *
 * The state is a flat array of temperatures in K, so that one absolute tolerance serves all of it.
 */
export interface StageSystem {
  /** numbers in the state */
  readonly size: number;
  /** places in the state whose estimated error rules the length of the steps */
  readonly watched: Int32Array;
  /** powers that `solveStage` books, W; the first `boundaryCount` cross the boundary, the others are inside */
  readonly powerCount: number;
  readonly boundaryCount: number;
  /** state events: one function each, whose change of sign is the event; the solver lands on it */
  readonly eventCount: number;

  /** Takes the inputs of segment `index` from now on and forgets the history of the one before. */
  enterSegment(index: number, time: number, state: Float64Array): void;

  /**
   * Solves Y = base + f(time, Y)/s by sweeps and books the powers that were used.
   *
   * @returns sweeps needed; 0 where there is no answer
   */
  solveStage(stage: Stage): number;

  /** Tells that the step of length `h` ending in `state` stands. */
  acceptStep(h: number, state: Float64Array): void;

  /**
   * Looks over a state, after the last stage or `enterSegment` that belongs to it: writes the event functions into
   * `events` and returns the stored energy above that of the start [J].
   */
  examine(state: Float64Array, events: Float64Array): number;

  /** Whether the run ends at event `index`. */
  isTerminal(index: number): boolean;
}

/** One stage of a step, as the solver asks for it. */
export interface Stage {
  /** which stage of the step */
  number: 1 | 2;
  /** s */
  time: number;
  /** 1/(gamma h) [1/s] */
  s: number;
  /** `out` receives base + reach (Y - base): what the solver needs next, without another pass over the state */
  reach: number;
  /** right-hand side [K]; not changed */
  base: Float64Array;
  /** K */
  out: Float64Array;
  /** booked powers [W], positive into the system */
  powers: Float64Array;
}

/** A stretch of time with smooth inputs. The solver lands on both ends and starts afresh at each. */
export interface Segment {
  readonly start: number;
  readonly end: number;
  /** s */
  readonly longestStep: number;
  /** times inside that a step must end on, ascending, without starting afresh */
  readonly stops: readonly number[];
}

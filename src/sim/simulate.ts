import { ChargeSystem, EVENTS } from './model/charge-system.ts';
import { explainEnd } from './model/end-of-coolant.ts';
import { namedEnergies } from './model/powers.ts';
import { fillRow } from './record-row.ts';
import { CoreFieldRecorder } from './results/core-field-recorder.ts';
import { makeRow, Recorder } from './results/recorder.ts';
import type { EnergyBalance, Outcome, PhaseSpan, RunEvent, Stopped, TimeSeries } from './results/time-series.ts';
import type { Config } from './scenario/config.ts';
import type { Sentence } from './sentence.ts';
import { type StateEvent, Stepper } from './solver/stepper.ts';

export interface RunOptions {
  /** largest error of a step in any temperature [K]; the scenario's own where left out */
  readonly tolerance?: number;
  /** also record on every multiple of this [s] */
  readonly interval?: number;
  /** steps of just this length without error control [s]; for studies of the order */
  readonly fixedStep?: number;
  /** keep the temperatures of every core cell at every recorded row */
  readonly fields?: boolean;
  /** asked at the end of each phase; false ends the run there as cancelled */
  readonly continueAfter?: (phase: PhaseSpan, soFar: TimeSeries['columns']) => boolean;
}

/** A run under way: call `step` until it returns false, then `finish`. */
export interface Run {
  /** simulated time [s] and its end */
  readonly time: number;
  readonly duration: number;
  /** Takes one step; false when the run is over. */
  step(): boolean;
  /** Columns and ended phases until now; the columns are views that further steps may leave behind. */
  soFar(): Pick<TimeSeries, 'columns' | 'phases' | 'outcome'>;
  /** What was recorded until now; a run that was left early counts as cancelled. */
  finish(): TimeSeries;
}

/**
 * Joins model, solver and recorder for one configuration.
 *
 * @example
 * const run = startRun(config);
 * while (run.step());
 * const series = run.finish();
 */
export function startRun(config: Config, options: RunOptions = {}): Run {
  const tolerance = options.tolerance ?? config.numerics.tolerance;
  const system = new ChargeSystem(config, tolerance);
  const stepper = new Stepper(system, system.segments, system.startState(), { ...options, tolerance });
  const recorder = new Recorder();
  const row = makeRow();
  const { nx, ny } = system.ring.core;
  const fields = options.fields ? new CoreFieldRecorder(nx, ny) : undefined;
  const duration = system.segments[system.segments.length - 1].end;
  let outcome: Outcome | undefined;
  let firstRow = 0;

  function closePhase(): boolean {
    const { phase, block, start } = system.segments[stepper.segment];
    const span: PhaseSpan = {
      name: phase.name,
      kind: phase.kind,
      start,
      end: stepper.time,
      firstRow,
      lastRow: recorder.rowCount - 1,
      block,
      isWhole: stepper.isAtSegmentEnd,
    };
    recorder.phases.push(span);
    return options.continueAfter?.(span, recorder.columns()) ?? true;
  }

  function step(): boolean {
    if (outcome !== undefined) return false;
    const kind = stepper.step();
    if (kind === 'finished') {
      outcome = { kind: 'finished' };
      return false;
    }
    if (kind === 'entered') firstRow = recorder.rowCount;
    const isKnown = kind === 'entered' || endOfCoolant(stepper) !== undefined;
    if (kind === 'stepped' || (isKnown && system.failure === undefined)) {
      fillRow(system, stepper, row);
      recorder.add(row);
      if (fields !== undefined) system.ring.core.fillFields(stepper.state, system.air.gas.coreInlet, fields.nextRow());
    }
    if (kind === 'stopped') {
      if (recorder.rowCount > firstRow) closePhase();
      outcome = { kind: 'stopped', time: stepper.time, ...whyStopped(stepper, system, config) };
      return false;
    }
    if (kind === 'stepped' && stepper.isAtSegmentEnd && !closePhase()) {
      outcome = { kind: 'cancelled', time: stepper.time };
      return false;
    }
    return true;
  }

  function finish(): TimeSeries {
    if (outcome === undefined) {
      if (recorder.rowCount > firstRow && !stepper.isAtSegmentEnd) closePhase();
      outcome = { kind: 'cancelled', time: stepper.time };
    }
    return {
      columns: recorder.finalColumns(),
      rowCount: recorder.rowCount,
      ...(fields === undefined ? {} : { core: fields.finish() }),
      phases: recorder.phases,
      events: stepper.events.flatMap(nameEvent),
      outcome,
      energy: closeBalance(stepper),
      work: { steps: stepper.accepted, rejected: stepper.rejected, sweeps: stepper.sweeps },
    };
  }

  return {
    get time() {
      return stepper.time;
    },
    duration,
    step,
    soFar: () => ({
      columns: recorder.columns(),
      phases: recorder.phases,
      outcome: outcome ?? { kind: 'cancelled', time: stepper.time },
    }),
    finish,
  };
}

/** Runs a configuration to its end. */
export function simulate(config: Config, options: RunOptions = {}): TimeSeries {
  const run = startRun(config, options);
  while (run.step());
  return run.finish();
}

/** Names of events that do not end a run: when the event function rises above 0, and when it falls below. */
const CROSSINGS: Partial<
  Record<(typeof EVENTS)[number], readonly [rising: RunEvent['kind'], falling: RunEvent['kind']]>
> = {
  limit: ['limit exceeded', 'limit met again'],
  'dew point': ['core below dew point', 'core above dew point again'],
  'target pressure': ['target pressure lost', 'target pressure regained'],
  ice: ['ice gone', 'ice forms'],
};

function nameEvent({ time, index, rising }: StateEvent): RunEvent[] {
  const names = CROSSINGS[EVENTS[index]];
  return names === undefined ? [] : [{ time, kind: names[rising ? 0 : 1] }];
}

/** What ended the coolant; undefined where the run stopped for something else. */
function endOfCoolant({ terminalEvent }: Stepper): 'boiling' | 'freezing' | undefined {
  const event = terminalEvent === undefined ? undefined : EVENTS[terminalEvent];
  return event === 'boiling' || event === 'freezing' ? event : undefined;
}

const NO_STEP: Sentence = [
  'no step is short enough for the wanted accuracy: raise numerics.tolerance, or look for a value far outside its usual range',
];

function whyStopped(stepper: Stepper, system: ChargeSystem, { coolant }: Config): Pick<Stopped, 'cause' | 'reason'> {
  const cause = endOfCoolant(stepper);
  if (cause === undefined) return { cause: 'no answer', reason: system.failure ?? NO_STEP };
  return { cause, reason: explainEnd(cause, system, stepper.state, coolant) };
}

function closeBalance({ ledger }: Stepper): EnergyBalance {
  return {
    ...namedEnergies(ledger.energies),
    stored: ledger.stored - ledger.storedAtStart,
    worstStepGap: ledger.worstGap,
  };
}

import { createCoolant } from './fluids/coolant.ts';
import { ChargeSystem, EVENTS } from './model/charge-system.ts';
import { BOUNDARY_POWERS, INTERNAL_POWERS } from './model/powers.ts';
import { CoreFieldRecorder } from './results/core-field-recorder.ts';
import { makeRow, Recorder, type Row } from './results/recorder.ts';
import type { EnergyBalance, Outcome, PhaseSpan, RunEvent, TimeSeries } from './results/time-series.ts';
import type { Config } from './scenario/config.ts';
import { Stepper } from './solver/stepper.ts';
import { figure, fromSi } from './units.ts';

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
    const isKnown = kind === 'entered' || isEndOfCoolant(stepper.failure);
    if (kind === 'stepped' || (isKnown && system.failure === '')) {
      fillRow(system, stepper, row);
      recorder.add(row);
      if (fields !== undefined) system.ring.core.fillFields(stepper.state, system.air.gas.coreInlet, fields.nextRow());
    }
    if (kind === 'stopped') {
      if (recorder.rowCount > firstRow) closePhase();
      const { time, failure } = stepper;
      const cause = isEndOfCoolant(failure) ? failure : 'no answer';
      outcome = { kind: 'stopped', time, cause, reason: explainStop(stepper, system, config) };
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
      events: stepper.events.flatMap(({ time, index, rising }) => nameEvent(time, index, rising)),
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

function nameEvent(time: number, index: number, rising: boolean): RunEvent[] {
  if (EVENTS[index] === 'limit') return [{ time, kind: rising ? 'limit exceeded' : 'limit met again' }];
  if (EVENTS[index] === 'dew point') {
    return [{ time, kind: rising ? 'core below dew point' : 'core above dew point again' }];
  }
  if (EVENTS[index] === 'target pressure') {
    return [{ time, kind: rising ? 'target pressure lost' : 'target pressure regained' }];
  }
  if (EVENTS[index] === 'ice') return [{ time, kind: rising ? 'ice gone' : 'ice forms' }];
  return [];
}

const isEndOfCoolant = (failure: string): failure is 'boiling' | 'freezing' =>
  failure === 'boiling' || failure === 'freezing';

function explainStop({ failure, state }: Stepper, system: ChargeSystem, { coolant }: Config): string {
  if (!isEndOfCoolant(failure)) return failure;
  const { extremes, ring } = system;
  const flow = `coolant flow ${(ring.flow * 6e4).toFixed(1)} L/min`;
  if (failure === 'freezing') {
    const coldest = extremes.coldestCoolant;
    return `coolant freezes ${system.placeOfCoolant(state, coldest)}: ${celsius(coldest)} degC reached, first ice at ${celsius(system.reservoir.freezingPointIn(state))} degC, ${flow}`;
  }
  const hottest = extremes.hottestCoolant;
  const pressures = `${kilopascal(coolant.capPressure)} cap, ${kilopascal(ring.outsidePressure)} outside`;
  const plainWater = createCoolant(0).boilingPoint(ring.outsidePressure + coolant.capPressure);
  const mix =
    coolant.glycolByVolume === 0
      ? 'plain water'
      : `${figure(100 * coolant.glycolByVolume)} % ${coolant.glycol} glycol as an ideal mixture; plain water ${celsius(plainWater)} degC`;
  return `coolant boils ${system.placeOfCoolant(state, hottest)}: ${celsius(hottest)} degC reached, boiling point ${celsius(ring.boilingPoint)} degC (${pressures}, ${mix}), ${flow}`;
}

function celsius(temperature: number): string {
  // The sum keeps -0.04 from reading "-0.0".
  return (Math.round(10 * fromSi(temperature, 'degC')) / 10 + 0).toFixed(1);
}

function kilopascal(pressure: number): string {
  return `${(pressure / 1e3).toFixed(1)} kPa`;
}

function closeBalance(stepper: Stepper): EnergyBalance {
  const { ledger } = stepper;
  const named = (names: readonly string[], first: number) =>
    Object.fromEntries(names.map((name, k) => [name, ledger.energies[first + k]]));
  return {
    terms: named(BOUNDARY_POWERS, 0) as EnergyBalance['terms'],
    internal: named(INTERNAL_POWERS, BOUNDARY_POWERS.length) as EnergyBalance['internal'],
    stored: ledger.stored - ledger.storedAtStart,
    worstStepGap: ledger.worstGap,
  };
}

function fillRow(system: ChargeSystem, stepper: Stepper, row: Row): void {
  const { air, ring, inputs } = system;
  const { state } = stepper;
  const { core } = ring;
  const { exchanger, secondExchanger } = ring.exchangers;
  row.time = stepper.time;
  row.engineSpeed = inputs.engineSpeed;
  row.outsideTemperature = system.surroundings.temperature;
  row.chargeTemperature = air.gas.chargeTemperature;
  row.indicatedTemperature = system.lumps.indicatedIn(state);
  row.compressorInletTemperature = air.gas.inletTemperature;
  row.dischargeTemperature = air.gas.dischargeTemperature;
  row.coreOutletTemperature = air.gas.airFlow > 0 ? core.airOut : core.metalMean;
  row.airFlow = air.gas.airFlow;
  row.compressorSpeed = air.compressor.rotation;
  row.recirculation = air.gas.airFlow > 0 ? air.gas.recirculatedFlow / air.gas.airFlow : 0;
  row.compressorInletPressure = air.pressures.inlet;
  row.pressureRatio = air.pressures.ratio;
  row.manifoldPressure = air.pressures.manifold;
  row.coreAirDrop = air.pressures.coreDrop;
  row.drivePower = system.shaftPower;
  row.gasPower = air.gas.gasPower;
  row.heatAirToCore = system.airToCore;
  row.latentHeat = core.latentPower;
  row.condensateFlow = core.condensate;
  row.coolantFlow = ring.flow;
  row.coolantIntoCore = core.coolantIn;
  row.coolantOutOfCore = core.coolantOut;
  row.coolantOutOfExchanger = exchanger?.block.coolantOut ?? Number.NaN;
  row.coolantOutOfSecondExchanger = secondExchanger?.block.coolantOut ?? Number.NaN;
  row.heatFromExchangers = ring.exchangerHeat;
  row.heatSinkPower = ring.heatSink === undefined ? Number.NaN : -ring.heatSink.heat;
  row.reservoirTemperature = system.reservoir.temperatureIn(state);
  row.reservoirMean = system.reservoir.meanIn(state);
  row.iceMass = system.reservoir.iceIn(state);
  row.coreMetalMean = core.metalMean;
  row.coreMetalLowest = system.extremes.coldestMetal;
  row.coreCoolantMean = core.coolantMean;
  row.exchangerMetalMean = exchanger?.block.metalMean ?? Number.NaN;
  row.exchangerCoolantMean = exchanger?.block.coolantMean ?? Number.NaN;
  row.exchangerAirOutlet = exchanger?.airOut ?? Number.NaN;
  row.secondExchangerMetalMean = secondExchanger?.block.metalMean ?? Number.NaN;
  row.secondExchangerCoolantMean = secondExchanger?.block.coolantMean ?? Number.NaN;
  row.secondExchangerAirOutlet = secondExchanger?.airOut ?? Number.NaN;
  fillLineMeans(system, row);
  row.casingTemperature = system.lumps.casingIn(state);
  row.plenumTemperature = system.lumps.plenumIn(state);
  row.hottestCoolant = system.extremes.hottestCoolant;
  row.coldestCoolant = system.extremes.coldestCoolant;
  row.chargeDewPoint = system.chargeDewPoint;
}

function fillLineMeans(system: ChargeSystem, row: Row): void {
  let volume = 0;
  let length = 0;
  row.lineCoolantMean = 0;
  row.lineWallMean = 0;
  for (const stretch of system.ring.stretches) {
    row.lineCoolantMean += stretch.volume * stretch.block.coolantMean;
    row.lineWallMean += stretch.length * stretch.block.metalMean;
    volume += stretch.volume;
    length += stretch.length;
  }
  row.lineCoolantMean /= volume;
  row.lineWallMean /= length;
}

import { AIR_HEAT_CAPACITY, humidityRatio } from '../fluids/moist-air.ts';
import { Extrapolation } from '../kernels/extrapolation.ts';
import { Secant } from '../kernels/secant.ts';
import type { Config } from '../scenario/config.ts';
import { type Sentence, sentence } from '../sentence.ts';
import type { Stage, StageSystem } from '../solver/stage-system.ts';
import { AirPath, type AirPathInputs } from './air-path.ts';
import type { Extremes } from './cell-block.ts';
import { CoolantRing } from './coolant-ring.ts';
import { CoreFeed } from './core-feed.ts';
import { type DriveInputs, type DriveSegment, layOutCycle, makeInputs, readInputs } from './drive-cycle.ts';
import { LayeredReservoir } from './layered-reservoir.ts';
import { type LumpNeighbours, MetalLumps } from './metal-lumps.ts';
import { BOUNDARY_POWERS, bookPowers, INTERNAL_POWERS } from './powers.ts';
import { MixedReservoir, type ReservoirInflow, type Store } from './reservoir.ts';
import { Surroundings } from './surroundings.ts';

/** Events in the order in which `examine` writes them; the last two end the run. */
export const EVENTS = ['limit', 'dew point', 'target pressure', 'ice', 'boiling', 'freezing'] as const;
const LIMIT = 0;
const DEW_POINT = 1;
const TARGET_PRESSURE = 2;
const ICE_GONE = 3;
const BOILING = 4;
const FREEZING = 5;

/** Scalars that close the circles of a stage, in this order; the stretches' mean temperatures follow. */
const CORE_OUTLET = 0;
const CORE_INLET = 1;
const CASING = 2;
const PLENUM = 3;
const CORE_METAL = 4;
const RETURN = 5;
const ROOM = 6;
const FIRST_STRETCH = 7;

/** A circle counts as closed when its scalars agree to this share of the step tolerance; own choice. */
const CLOSED_SHARE = 0.1;
const MOST_ROUNDS = 25;
/**
 * Between two states of the air path, not round one: a discharge that differs by this much from round to round [K]; own
 * choice.
 */
const JUMP = 50;

/**
 * The whole car as the solver sees it: cells of core, exchangers and lines, and the lumps reservoir, casing, plenum
 * metal, sensor and, where there is one, the room.
 *
 * A stage marches once round: air path, reservoir to core, core, core to reservoir. What closes the circles are a
 * few scalars (air entering and leaving the core, coolant returning to the reservoir, casing, plenum, mean core metal,
 * room); they are guessed, and the march repeats, with a secant on the two that feed back most, until guess and result
 * agree. The stretches' means, which the flow follows, are guessed once a stage. Fluxes are always booked with the
 * values that were used, and the lumps take up just those fluxes, so a loose agreement never touches the energy.
 */
export class ChargeSystem implements StageSystem {
  readonly size: number;
  readonly watched: Int32Array;
  readonly boundaryCount = BOUNDARY_POWERS.length;
  readonly powerCount = BOUNDARY_POWERS.length + INTERNAL_POWERS.length;
  readonly eventCount = EVENTS.length;
  readonly segments: readonly DriveSegment[];
  readonly air: AirPath;
  readonly ring: CoolantRing;
  readonly coreFeed: CoreFeed;
  readonly reservoir: Store;
  readonly lumps: MetalLumps;
  readonly surroundings: Surroundings;
  readonly inputs: DriveInputs = makeInputs();
  /** why the state looked at last has no answer; undefined where it has one */
  failure: Sentence | undefined;
  /** of the state examined last; the metal is the core's */
  readonly extremes: Extremes = { coldestMetal: 0, coldestCoolant: 0, hottestCoolant: 0 };
  private readonly config: Config;
  private readonly closed: number;
  private segment: DriveSegment;
  private readonly scalars: Float64Array;
  private readonly history: Extrapolation;
  private readonly airSecant = new Secant(-0.9, 0.9, 0.1);
  private readonly returnSecant = new Secant(-0.9, 0.995, 0.1);
  private readonly airInputs: AirPathInputs;
  private readonly inflow: ReservoirInflow;
  private readonly near: LumpNeighbours = {
    bay: 0,
    oil: 0,
    engineMetal: 0,
    isRunning: false,
    coreMetal: 0,
    casing: 0,
    plenum: 0,
  };

  constructor(config: Config, tolerance = config.numerics.tolerance) {
    this.config = config;
    this.closed = CLOSED_SHARE * tolerance;
    this.segments = layOutCycle(config);
    this.segment = this.segments[0];
    this.air = new AirPath(config);
    this.ring = new CoolantRing(config);
    this.coreFeed = new CoreFeed(config, this.air, this.ring);
    const Kind = config.reservoir.layers > 1 ? LayeredReservoir : MixedReservoir;
    this.reservoir = new Kind(config, this.ring, this.ring.size);
    const afterReservoir = this.ring.size + this.reservoir.size;
    this.lumps = new MetalLumps(config, afterReservoir);
    this.surroundings = new Surroundings(config, afterReservoir + MetalLumps.count);
    this.size = afterReservoir + MetalLumps.count + (config.room ? 1 : 0);
    const inLumps = Int32Array.from({ length: this.size - this.ring.size }, (_, k) => this.ring.size + k);
    this.watched = joined([...this.ring.watchedPlaces(), inLumps]);
    this.scalars = new Float64Array(FIRST_STRETCH + this.ring.stretches.length);
    this.history = new Extrapolation(this.scalars.length);
    this.inflow = { rate: 0, temperature: 0, gain: config.reservoir.gain, around: 0 };
    this.airInputs = {
      mode: 'engine off',
      engineSpeed: 0,
      manifoldPressure: 0,
      coreOutlet: 0,
      coreInletGuess: 0,
      casingHeat: 0,
      casingConductance: 0,
      plenumHeat: 0,
      plenumConductance: 0,
      freshAir: 0,
      outsidePressure: 0,
    };
  }

  /** State at time 0. */
  startState(): Float64Array {
    const { start } = this.config;
    const state = new Float64Array(this.size);
    state.fill(start.coolant);
    this.ring.core.fillMetal(state, start.metal);
    for (const element of this.ring.round) element.fillMetal(state, start.metal);
    this.reservoir.fillStart(state, start.reservoir);
    this.lumps.fillStart(state);
    if (this.config.room) state[this.surroundings.index] = this.segments[0].phase.outsideTemperature.from;
    return state;
  }

  /** Heat from charge air into the core [W]. */
  get airToCore(): number {
    const { gas } = this.air;
    return gas.coreFlow * AIR_HEAT_CAPACITY * (gas.coreInlet - this.ring.core.airOut);
  }

  /** Shaft power of the compressor [W]. */
  get shaftPower(): number {
    return this.segment.phase.kind === 'hot soak' ? 0 : this.air.gas.gasPower + this.air.compressor.mechanicalLoss;
  }

  enterSegment(index: number, time: number, state: Float64Array): void {
    this.segment = this.segments[index];
    const { outsideTemperature, outsidePressure, relativeHumidity } = this.segment.phase;
    const humidity = humidityRatio(outsideTemperature.from, outsidePressure.from, relativeHumidity);
    this.coreFeed.humidity = humidity;
    readInputs(this.segment, time, this.inputs);
    this.surroundings.set(state[this.surroundings.index], this.inputs);
    this.ring.core.restart(state, humidity);
    this.observe(state);
    this.history.restart(time, this.scalars);
    this.airSecant.reset();
    this.returnSecant.reset();
    this.ring.watchFronts(state, 0);
    this.reservoir.watch(state);
  }

  acceptStep(h: number, state: Float64Array): void {
    this.history.accept();
    this.ring.watchFronts(state, h);
    this.reservoir.watch(state);
  }

  solveStage(stage: Stage): number {
    const { scalars, ring, air, coreFeed, surroundings, lumps, near } = this;
    const { time, s, base } = stage;
    this.failure = undefined;
    readInputs(this.segment, time, this.inputs);
    this.history.guess(stage.number, time, scalars);
    surroundings.set(scalars[ROOM], this.inputs);
    ring.setFlow(this.segment.phase, scalars, FIRST_STRETCH);
    this.airSecant.start();
    this.returnSecant.start();
    const { reservoir, inflow } = this;
    inflow.rate = ring.coolantRate;
    const store = reservoir.promptCapacity * s;

    let coldest = Number.POSITIVE_INFINITY;
    let hottest = 0;
    for (let round = 1; round <= MOST_ROUNDS; round++) {
      this.failure = this.solveAir(s, base);
      if (this.failure !== undefined) return 0;
      inflow.temperature = scalars[RETURN];
      inflow.around = this.gainTemperature;
      const coreInlet = ring.sweepToCore(stage, reservoir.solve(stage, inflow), surroundings);
      coreFeed.setRates(surroundings.bay);
      const vapour = coreFeed.wetting(this.extremes.coldestMetal);
      ring.core.sweep(coreFeed.rates, stage, air.gas.coreInlet, coreInlet, vapour);
      ring.sweepFromCore(stage, ring.core.coolantOut, surroundings);

      const returnGap = ring.return - scalars[RETURN];
      const airGap = air.gas.airFlow > 0 ? ring.core.airOut - scalars[CORE_OUTLET] : 0;
      const around = surroundings.temperatureAt(s, base, this.inputs, air.gas.airFlow);
      const gap = Math.max(
        Math.abs(returnGap * ring.coolantRate) / store,
        this.airSecant.distance(airGap),
        lumps.gap(s, near, air, ring.core.metalMean),
        Math.abs(around - surroundings.temperature),
      );
      if (gap <= this.closed) {
        this.finishStage(stage);
        return round;
      }
      if (round > MOST_ROUNDS / 2) {
        coldest = Math.min(coldest, air.gas.coreInlet);
        hottest = Math.max(hottest, air.gas.coreInlet);
      }
      scalars[CORE_OUTLET] = this.airSecant.next(scalars[CORE_OUTLET], ring.core.airOut);
      scalars[RETURN] = this.returnSecant.next(scalars[RETURN], ring.return);
      scalars[CASING] = air.gas.casingTemperature;
      scalars[PLENUM] = air.gas.plenumTemperature;
      scalars[CORE_METAL] = ring.core.metalMean;
      scalars[CORE_INLET] = air.gas.coreInlet;
      surroundings.set(around, this.inputs);
    }
    this.failure =
      hottest - coldest > JUMP
        ? sentence`recirculated air heats itself: the discharge jumps between ${{ temperature: coldest }} and ${{ temperature: hottest }}; the compressor is far too large for what the engine takes`
        : [
            'temperatures of air path and coolant loop do not settle: look for a value far outside its usual range, first among compressor, core and coolant flow',
          ];
    return 0;
  }

  examine(state: Float64Array, events: Float64Array): number {
    const { extremes, air, config, ring } = this;
    const reference = config.start.coolant;
    extremes.coldestCoolant = Number.POSITIVE_INFINITY;
    extremes.hottestCoolant = Number.NEGATIVE_INFINITY;
    this.reservoir.survey(state, extremes);
    const inCells = ring.survey(state, reference, extremes);
    events[LIMIT] = air.gas.chargeTemperature - config.limit.chargeTemperature;
    events[DEW_POINT] = this.coreFeed.chargeDewPoint - extremes.coldestMetal;
    events[TARGET_PRESSURE] = air.shortfall;
    events[ICE_GONE] = this.reservoir.iceGone(state);
    events[BOILING] = extremes.hottestCoolant - this.ring.boilingPoint;
    events[FREEZING] = this.reservoir.freezingPointIn(state) - extremes.coldestCoolant;
    return inCells + this.reservoir.heatIn(state, reference) + this.lumps.heatIn(state, reference);
  }

  isTerminal(index: number): boolean {
    return index === BOILING || index === FREEZING;
  }

  /** Lumps take up the fluxes that were used, and every boundary power is booked from the same values. */
  private finishStage(stage: Stage): void {
    const { s, reach, base, out, powers } = stage;
    const { scalars, ring, air, config, lumps, surroundings, near } = this;
    const { gas } = air;
    const toReservoir = this.reservoir.takeUp(stage, ring.return);
    near.coreMetal = ring.core.metalMean;
    lumps.takeUp(stage, near, air, ring.core.airOut, surroundings.freshAir);
    if (config.room) {
      const { index } = surroundings;
      const around = surroundings.temperatureAt(s, base, this.inputs, gas.airFlow);
      out[index] = base[index] + reach * (around - base[index]);
    }

    const booked = {
      shaft: gas.gasPower + lumps.mechanical,
      mechanicalLoss: lumps.mechanicalToCasing - lumps.mechanical,
      throughflow: gas.airFlow * AIR_HEAT_CAPACITY * surroundings.freshAir - gas.outflow,
      condensation: ring.core.latentPower,
      exchanger: ring.exchangerHeat,
      pump: ring.pumpHeat,
      heatSink: ring.heatSink?.heat ?? 0,
      lines: ring.lineHeat,
      reservoir: toReservoir,
      coreBay: config.core.toBay * (surroundings.bay - ring.core.metalMean),
      casingBay: lumps.casingBay,
      casingOil: lumps.casingOil,
      plenumBay: lumps.plenumBay,
      plenumEngine: lumps.plenumEngine,
      airToCore: this.airToCore,
      casingToCore: lumps.casingToCore,
      casingToPlenum: lumps.casingToPlenum,
    };
    bookPowers(booked, powers);

    scalars[CORE_OUTLET] = ring.core.airOut;
    scalars[CORE_INLET] = gas.coreInlet;
    scalars[CORE_METAL] = ring.core.metalMean;
    scalars[CASING] = gas.casingTemperature;
    scalars[PLENUM] = gas.plenumTemperature;
    scalars[RETURN] = ring.return;
    scalars[ROOM] = surroundings.temperature;
    for (let n = 0; n < ring.stretches.length; n++) scalars[FIRST_STRETCH + n] = ring.stretches[n].block.coolantMean;
    this.history.tryPoint(stage.number, stage.time, scalars);
  }

  /** Air path with casing and plenum implicit in the stage. */
  private solveAir(s: number, base: Float64Array): Sentence | undefined {
    const { compressor } = this.config;
    const { inputs, scalars, near, surroundings, air } = this;
    near.bay = surroundings.bay;
    near.oil = inputs.oil;
    near.engineMetal = inputs.engineMetal;
    near.isRunning = inputs.engineSpeed > 0;
    near.coreMetal = scalars[CORE_METAL];
    near.casing = scalars[CASING];
    near.plenum = scalars[PLENUM];
    if (near.isRunning && compressor.kind !== 'turbine-driven') {
      air.compressor.setSpeed(inputs.engineSpeed * compressor.driveRatio);
    }
    this.lumps.joinAir(s, base, near, air, this.airInputs);
    return this.askAir();
  }

  private askAir(): Sentence | undefined {
    const { inputs, scalars, airInputs, surroundings } = this;
    const { kind } = this.segment.phase;
    airInputs.freshAir = surroundings.freshAir;
    airInputs.outsidePressure = inputs.outsidePressure;
    airInputs.mode = kind === 'hot soak' ? 'engine off' : kind === 'pull' ? 'wide open' : 'part load';
    airInputs.engineSpeed = inputs.engineSpeed;
    airInputs.manifoldPressure = inputs.manifoldPressure;
    airInputs.coreOutlet = scalars[CORE_OUTLET];
    airInputs.coreInletGuess = scalars[CORE_INLET];
    return this.air.solve(airInputs);
  }

  private get gainTemperature(): number {
    return this.config.reservoir.gainFrom === 'bay' ? this.surroundings.bay : this.surroundings.temperature;
  }

  /** Everything that follows from a known state at once: flow, air path and all outlets. */
  private observe(state: Float64Array): void {
    const { scalars, ring, air, coreFeed, lumps, surroundings } = this;
    scalars[CASING] = lumps.casingIn(state);
    scalars[PLENUM] = lumps.plenumIn(state);
    ring.stretches.forEach(({ block }, k) => {
      let sum = 0;
      for (let j = 0; j < block.ny; j++) sum += state[block.offset + 2 * j + 1];
      scalars[FIRST_STRETCH + k] = sum / block.ny;
    });
    ring.setFlow(this.segment.phase, scalars, FIRST_STRETCH);
    const coreInlet = ring.marchToCore(state, this.reservoir.temperatureIn(state), surroundings);
    lumps.holdAir(state, this.airInputs);
    // Metal is known, so the air leaving the core depends on the flow alone: a few rounds settle it.
    scalars[CORE_OUTLET] = ring.core.metalMean > 0 ? ring.core.metalMean : scalars[CASING];
    scalars[CORE_INLET] = scalars[CASING];
    for (let round = 0; round < MOST_ROUNDS; round++) {
      this.failure = this.askAir();
      if (this.failure !== undefined) return;
      coreFeed.setRates(surroundings.bay);
      const vapour = coreFeed.wetting(this.extremes.coldestMetal);
      ring.core.march(coreFeed.rates, state, air.gas.coreInlet, coreInlet, vapour);
      const gap = Math.abs(ring.core.airOut - scalars[CORE_OUTLET]);
      scalars[CORE_OUTLET] = ring.core.airOut;
      scalars[CORE_INLET] = air.gas.coreInlet;
      if (gap < 1e-9) break;
    }
    scalars[CORE_METAL] = ring.core.metalMean;
    air.gas.leavePlenum(surroundings.freshAir, ring.core.airOut, scalars[PLENUM]);
    ring.marchFromCore(state, ring.core.coolantOut, surroundings);
    scalars[ROOM] = surroundings.temperature;
    scalars[RETURN] = ring.return;
  }
}

function joined(parts: readonly Int32Array[]): Int32Array {
  const all = new Int32Array(parts.reduce((length, part) => length + part.length, 0));
  let length = 0;
  for (const part of parts) {
    all.set(part, length);
    length += part.length;
  }
  return all;
}

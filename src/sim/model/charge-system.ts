import { AIR_HEAT_CAPACITY, dewPoint, humidityRatio } from '../fluids/moist-air.ts';
import { Extrapolation } from '../kernels/extrapolation.ts';
import { Secant } from '../kernels/secant.ts';
import type { Config } from '../scenario/config.ts';
import type { Stage, StageSystem } from '../solver/stage-system.ts';
import { AirPath, type AirPathInputs } from './air-path.ts';
import type { Extremes } from './cell-block.ts';
import { conductanceAt } from './conductance.ts';
import { CoolantRing, type ExchangerAir, emptyRates } from './coolant-ring.ts';
import type { CoreRates } from './core.ts';
import { CoreVapour } from './core-vapour.ts';
import { type DriveInputs, type DriveSegment, layOutCycle, makeInputs, readInputs } from './drive-cycle.ts';
import { BOUNDARY_POWERS, INTERNAL_POWERS } from './powers.ts';
import { Room } from './room.ts';
import { sensorTimeConstant } from './sensor.ts';

/** Events in the order in which `examine` writes them; the last two end the run. */
export const EVENTS = ['limit', 'dew point', 'target pressure', 'boiling', 'freezing'] as const;
const LIMIT = 0;
const DEW_POINT = 1;
const TARGET_PRESSURE = 2;
const BOILING = 3;
const FREEZING = 4;

/** Scalars that close the circles of a stage, in this order; the stretches' mean temperatures follow. */
const CORE_OUTLET = 0;
const CORE_INLET = 1;
const CASING = 2;
const PLENUM = 3;
const CORE_METAL = 4;
const RETURN = 5;
const ROOM = 6;
const FIRST_STRETCH = 7;

/** A circle counts as closed when its scalars agree to this share of the step tolerance. */
const CLOSED_SHARE = 0.1;
const MOST_ROUNDS = 25;
/** Metal this far above the charge's dew point may still wet within a step [K]. */
const NEARLY_WET = 3;
/** W/K that hold the casing at a known temperature while outlets are only read off */
const HELD = 1e15;

/**
 * The whole car as the solver sees it: cells of core, front exchanger and lines, and the lumps reservoir, casing,
 * plenum metal and sensor.
 *
 * A stage marches once round: air path, reservoir to core, core, core to reservoir. What closes the circles are a
 * few scalars (air leaving the core, reservoir and plenum temperature, mean core metal); they are guessed, and the
 * march repeats with a secant until guess and result agree. Fluxes are always booked with the values that were
 * used, and the lumps take up just those fluxes, so a loose agreement never touches the energy.
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
  readonly inputs: DriveInputs = makeInputs();
  failure = '';
  /** of the state examined last; the metal is the core's */
  readonly extremes: Extremes = { coldestMetal: 0, coldestCoolant: 0, hottestCoolant: 0 };
  private readonly config: Config;
  private readonly closed: number;
  private readonly reservoirIndex: number;
  private readonly reservoirCapacity: number;
  /** humidity ratio outside [kg/kg] */
  private humidity = 0;
  private readonly vapour = new CoreVapour();
  private readonly room: Room | undefined;
  /** air round the car and in its engine bay [K] */
  surroundings = 0;
  private bay = 0;
  private segment: DriveSegment;
  private readonly scalars: Float64Array;
  private readonly history: Extrapolation;
  private readonly airSecant = new Secant(-0.9, 0.9, 0.1);
  private readonly returnSecant = new Secant(-0.9, 0.995, 0.1);
  private readonly coreRates: CoreRates = { ...emptyRates(), airFlow: 0, coolantFlow: 0 };
  private readonly airInputs: AirPathInputs;
  private readonly exchangerAir: ExchangerAir = { speed: 0, temperature: 0, pressure: 0 };

  constructor(config: Config, tolerance = config.numerics.tolerance) {
    this.config = config;
    this.closed = CLOSED_SHARE * tolerance;
    this.segments = layOutCycle(config);
    this.segment = this.segments[0];
    this.air = new AirPath(config);
    this.ring = new CoolantRing(config);
    this.reservoirIndex = this.ring.size;
    this.room = config.room && new Room(config.room);
    const lumps = [0, 1, 2, 3, ...(this.room ? [4] : [])].map((lump) => this.reservoirIndex + lump);
    this.size = this.ring.size + lumps.length;
    this.watched = joined([...this.ring.watchedPlaces(), Int32Array.from(lumps)]);
    this.reservoirCapacity = config.reservoir.coolantVolume * this.ring.density * this.ring.heatCapacity;
    this.scalars = new Float64Array(FIRST_STRETCH + this.ring.stretches.length);
    this.history = new Extrapolation(this.scalars.length);
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
    const lump = this.reservoirIndex;
    state[lump + 1] = start.casing;
    state[lump + 2] = start.plenum;
    state[lump + 3] = start.sensor;
    if (this.room) state[lump + 4] = this.segments[0].phase.outsideTemperature.from;
    return state;
  }

  reservoirTemperature(state: Float64Array): number {
    return state[this.reservoirIndex];
  }
  casingTemperature(state: Float64Array): number {
    return state[this.reservoirIndex + 1];
  }
  plenumTemperature(state: Float64Array): number {
    return state[this.reservoirIndex + 2];
  }
  indicatedTemperature(state: Float64Array): number {
    return state[this.reservoirIndex + 3];
  }

  /** Where the coolant of the state examined last has this temperature, one of its extremes; in words. */
  placeOfCoolant(state: Float64Array, temperature: number): string {
    if (this.extremes.hottestCoolant === this.extremes.coldestCoolant) return 'everywhere in the loop';
    return this.reservoirTemperature(state) === temperature
      ? 'in the reservoir'
      : this.ring.placeOf(state, temperature);
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

  /** Dew point of the charge where it leaves the core [K]. */
  get chargeDewPoint(): number {
    return dewPoint(this.humidity, this.air.pressures.coreOutlet);
  }

  enterSegment(index: number, time: number, state: Float64Array): void {
    this.segment = this.segments[index];
    const { outsideTemperature, outsidePressure, relativeHumidity } = this.segment.phase;
    this.humidity = humidityRatio(outsideTemperature.from, outsidePressure.from, relativeHumidity);
    readInputs(this.segment, time, this.inputs);
    this.setSurroundings(this.room ? state[this.reservoirIndex + 4] : this.inputs.outside);
    this.ring.core.restart(state, this.humidity);
    this.observe(state);
    this.history.restart(time, this.scalars);
    this.airSecant.reset();
    this.returnSecant.reset();
    this.ring.watchFronts(state, 0);
  }

  acceptStep(h: number, state: Float64Array): void {
    this.history.accept();
    this.ring.watchFronts(state, h);
  }

  solveStage(stage: Stage): number {
    const { scalars, ring, air, reservoirIndex } = this;
    const { time, s, base } = stage;
    this.failure = '';
    readInputs(this.segment, time, this.inputs);
    this.history.guess(stage.number, time, scalars);
    this.setSurroundings(this.room ? scalars[ROOM] : this.inputs.outside);
    ring.setFlow(this.inputs.pumpVoltageRatio, scalars, FIRST_STRETCH);
    this.airSecant.start();
    this.returnSecant.start();
    const { gain } = this.config.reservoir;
    const store = this.reservoirCapacity * s;

    for (let round = 1; round <= MOST_ROUNDS; round++) {
      const failure = this.solveAir(s, base);
      if (failure !== '') {
        this.failure = failure;
        return 0;
      }
      const held = store * base[reservoirIndex] + gain * this.gainTemperature;
      const reservoir = (held + ring.coolantRate * scalars[RETURN]) / (store + gain + ring.coolantRate);
      const coreInlet = ring.sweepToCore(stage, reservoir, this.bay);
      this.setCoreRates();
      ring.core.sweep(this.coreRates, stage, air.gas.coreInlet, coreInlet, this.condensing());
      ring.sweepFromCore(stage, ring.core.coolantOut, this.exchangerAir, this.bay);

      const returnGap = ring.return - scalars[RETURN];
      const airGap = air.gas.airFlow > 0 ? ring.core.airOut - scalars[CORE_OUTLET] : 0;
      const metalGap = ring.core.metalMean - scalars[CORE_METAL];
      const surroundings = this.surroundingsAt(s, base);
      const gap = Math.max(
        Math.abs(returnGap * ring.coolantRate) / store,
        this.airSecant.distance(airGap),
        this.lumpGap(s, metalGap),
        Math.abs(surroundings - this.surroundings),
      );
      if (gap <= this.closed) {
        this.finishStage(stage, reservoir);
        return round;
      }
      scalars[CORE_OUTLET] = this.airSecant.next(scalars[CORE_OUTLET], ring.core.airOut);
      scalars[RETURN] = this.returnSecant.next(scalars[RETURN], ring.return);
      scalars[CASING] = air.gas.casingTemperature;
      scalars[PLENUM] = air.gas.plenumTemperature;
      scalars[CORE_METAL] = ring.core.metalMean;
      scalars[CORE_INLET] = air.gas.coreInlet;
      this.setSurroundings(surroundings);
    }
    this.failure = `temperatures of air path and coolant loop do not settle at ${time.toFixed(2)} s`;
    return 0;
  }

  examine(state: Float64Array, events: Float64Array): number {
    const { extremes, air, config, ring } = this;
    const reference = config.start.coolant;
    const reservoir = this.reservoirTemperature(state);
    extremes.coldestCoolant = reservoir;
    extremes.hottestCoolant = reservoir;
    const inCells = ring.survey(state, reference, extremes);
    events[LIMIT] = air.gas.chargeTemperature - config.limit.chargeTemperature;
    events[DEW_POINT] = this.chargeDewPoint - extremes.coldestMetal;
    events[TARGET_PRESSURE] = air.shortfall;
    events[BOILING] = extremes.hottestCoolant - this.ring.boilingPoint;
    events[FREEZING] = ring.coolant.freezingPoint - extremes.coldestCoolant;
    return (
      inCells +
      this.reservoirCapacity * (reservoir - reference) +
      config.casing.heatCapacity * (this.casingTemperature(state) - reference) +
      config.plenum.heatCapacity * (this.plenumTemperature(state) - reference)
    );
  }

  terminalReason(index: number): string {
    if (index === BOILING) return 'boiling';
    return index === FREEZING ? 'freezing' : '';
  }

  /** Lumps take up the fluxes that were used, and every boundary power is booked from the same values. */
  private finishStage(stage: Stage, reservoirOut: number): void {
    const { s, reach, base, out, powers } = stage;
    const { scalars, ring, air, config, inputs, reservoirIndex } = this;
    const { casing, plenum, reservoir } = config;
    const { gas } = air;
    const isRunning = inputs.engineSpeed > 0;
    const usedPlenum = air.gas.plenumTemperature;
    const toReservoir = reservoir.gain * (this.gainTemperature - reservoirOut);
    const mechanical = isRunning ? air.compressor.mechanicalLoss : 0;
    const mechanicalToCasing = mechanical * config.compressor.mechanicalLoss.toCasing;
    const airToCasing =
      air.gas.compressorFlow * AIR_HEAT_CAPACITY * (air.gas.rotorOutlet - air.gas.dischargeTemperature);
    const airToPlenum = gas.plenumExchange * (gas.plenumInlet(ring.core.airOut) - usedPlenum);
    const casingBay = casing.toBay * (this.bay - air.gas.casingTemperature);
    const casingOil = casing.toOil * (inputs.oil - air.gas.casingTemperature);
    const casingToPlenum = casing.toPlenum * (air.gas.casingTemperature - usedPlenum);
    const casingToCore = casing.toCoreFlange * (air.gas.casingTemperature - ring.core.metalMean);
    const plenumBay = plenum.toBay * (this.bay - usedPlenum);
    const plenumEngine = plenum.toEngine * (inputs.engineMetal - usedPlenum);

    out[reservoirIndex] =
      base[reservoirIndex] +
      (reach * (ring.coolantRate * (ring.return - reservoirOut) + toReservoir)) / (this.reservoirCapacity * s);
    out[reservoirIndex + 1] =
      base[reservoirIndex + 1] +
      (reach * (airToCasing + mechanicalToCasing + casingBay + casingOil - casingToPlenum - casingToCore)) /
        (casing.heatCapacity * s);
    out[reservoirIndex + 2] =
      base[reservoirIndex + 2] +
      (reach * (airToPlenum + plenumBay + plenumEngine + casingToPlenum)) / (plenum.heatCapacity * s);
    gas.leavePlenum(this.airInputs.freshAir, ring.core.airOut, usedPlenum);
    if (this.room) {
      const room = reservoirIndex + 4;
      out[room] = base[room] + reach * (this.surroundingsAt(s, base) - base[room]);
    }
    this.finishSensor(stage, usedPlenum);

    let k = 0;
    powers[k++] = air.gas.gasPower + mechanical;
    powers[k++] = mechanicalToCasing - mechanical;
    powers[k++] = gas.airFlow * AIR_HEAT_CAPACITY * this.airInputs.freshAir - gas.outflow;
    powers[k++] = ring.core.latentPower;
    powers[k++] = ring.exchangerHeat;
    powers[k++] = ring.pumpHeat;
    powers[k++] = ring.lineHeat;
    powers[k++] = toReservoir;
    powers[k++] = config.core.toBay * (this.bay - ring.core.metalMean);
    powers[k++] = casingBay;
    powers[k++] = casingOil;
    powers[k++] = plenumBay;
    powers[k++] = plenumEngine;
    powers[k++] = this.airToCore;
    powers[k++] = casingToCore;
    powers[k++] = casingToPlenum;

    scalars[CORE_OUTLET] = ring.core.airOut;
    scalars[CORE_INLET] = air.gas.coreInlet;
    scalars[CORE_METAL] = ring.core.metalMean;
    scalars[CASING] = air.gas.casingTemperature;
    scalars[PLENUM] = usedPlenum;
    scalars[RETURN] = ring.return;
    scalars[ROOM] = this.surroundings;
    for (let n = 0; n < ring.stretches.length; n++) scalars[FIRST_STRETCH + n] = ring.stretches[n].block.coolantMean;
    this.history.tryPoint(stage.number, stage.time, scalars);
  }

  private finishSensor({ s, reach, base, out }: Stage, housing: number): void {
    const { sensor } = this.config;
    const tau = sensorTimeConstant(sensor, this.air.gas.airFlow);
    const target = sensor.airShare * this.air.gas.chargeTemperature + (1 - sensor.airShare) * housing;
    const index = this.reservoirIndex + 3;
    out[index] = base[index] + (reach * (target - base[index])) / (1 + tau * s);
  }

  /** Air round the car, and what it is to intake, bay and exchanger. */
  private setSurroundings(temperature: number): void {
    const { inputs, airInputs, exchangerAir } = this;
    this.surroundings = temperature;
    this.bay = temperature + inputs.bayAboveOutside;
    airInputs.freshAir = temperature + this.config.intake.pickUp;
    airInputs.outsidePressure = inputs.outsidePressure;
    exchangerAir.speed = inputs.airSpeed;
    exchangerAir.temperature = temperature + inputs.exchangerPickUp;
    exchangerAir.pressure = inputs.outsidePressure;
  }

  private surroundingsAt(s: number, base: Float64Array): number {
    const { inputs, room } = this;
    if (!room) return inputs.outside;
    const { outside, outsidePressure } = inputs;
    return room.temperatureAt(base[this.reservoirIndex + 4], s, outside, outsidePressure, this.air.gas.airFlow);
  }

  /** Air path with the casing implicit in the stage: it takes part with its store and all its other exchanges. */
  private solveAir(s: number, base: Float64Array): string {
    const { casing, compressor, plenum } = this.config;
    const { inputs, scalars, airInputs } = this;
    const store = casing.heatCapacity * s;
    const isRunning = inputs.engineSpeed > 0;
    if (isRunning && compressor.kind !== 'turbine-driven') {
      this.air.compressor.setSpeed(inputs.engineSpeed * compressor.driveRatio);
    }
    const mechanical = isRunning ? this.air.compressor.mechanicalLoss * compressor.mechanicalLoss.toCasing : 0;
    airInputs.casingConductance = store + casing.toBay + casing.toPlenum + casing.toCoreFlange + casing.toOil;
    airInputs.casingHeat =
      store * base[this.reservoirIndex + 1] +
      casing.toBay * this.bay +
      casing.toPlenum * scalars[PLENUM] +
      casing.toCoreFlange * scalars[CORE_METAL] +
      casing.toOil * inputs.oil +
      mechanical;
    const plenumStore = plenum.heatCapacity * s;
    airInputs.plenumConductance = plenumStore + plenum.toEngine + plenum.toBay + casing.toPlenum;
    airInputs.plenumHeat =
      plenumStore * base[this.reservoirIndex + 2] +
      plenum.toEngine * inputs.engineMetal +
      plenum.toBay * this.bay +
      casing.toPlenum * scalars[CASING];
    return this.askAir();
  }

  private askAir(): string {
    const { inputs, scalars, airInputs } = this;
    const { kind } = this.segment.phase;
    airInputs.mode = kind === 'hot soak' ? 'engine off' : kind === 'pull' ? 'wide open' : 'part load';
    airInputs.engineSpeed = inputs.engineSpeed;
    airInputs.manifoldPressure = inputs.manifoldPressure;
    airInputs.coreOutlet = scalars[CORE_OUTLET];
    airInputs.coreInletGuess = scalars[CORE_INLET];
    return this.air.solve(airInputs);
  }

  private setCoreRates(): void {
    const { core, casing } = this.config;
    const { air, ring, coreRates } = this;
    const { coreFlow, casingTemperature } = air.gas;
    coreRates.airRate = coreFlow * AIR_HEAT_CAPACITY;
    coreRates.airConductance = coreFlow > 0 ? conductanceAt(core.airConductance, coreFlow) : 0;
    coreRates.coolantRate = ring.coolantRate;
    coreRates.airFlow = coreFlow;
    coreRates.coolantFlow = ring.flow * ring.density;
    coreRates.metalLoss = core.toBay + casing.toCoreFlange;
    coreRates.metalSource = core.toBay * this.bay + casing.toCoreFlange * casingTemperature;
  }

  /** The vapour that reaches the core; undefined where no metal can be cold enough to wet. */
  private condensing(): CoreVapour | undefined {
    const { vapour, ring, humidity } = this;
    const { gas, pressures } = this.air;
    const returned = Math.max(0, gas.plenumFlow - gas.airFlow);
    const content =
      gas.airFlow > 0 ? (gas.airFlow * humidity + returned * ring.core.vapourOut) / (gas.airFlow + returned) : humidity;
    if (this.config.core.condensation && gas.coreFlow > 0) {
      const pressure = 0.5 * (pressures.ratio * pressures.inlet + pressures.coreOutlet);
      vapour.set(content, gas.coreFlow, pressure);
      if (vapour.dewPointOf(content) > this.extremes.coldestMetal - NEARLY_WET) return vapour;
    }
    return undefined;
  }

  /** What guessed neighbours may move casing and plenum by [K]. */
  private lumpGap(s: number, coreMetalGap: number): number {
    const { casing, plenum } = this.config;
    const casingGap = this.air.gas.casingTemperature - this.scalars[CASING];
    const plenumGap = this.air.gas.plenumTemperature - this.scalars[PLENUM];
    const onCasing = Math.abs(casing.toPlenum * plenumGap) + Math.abs(casing.toCoreFlange * coreMetalGap);
    return Math.max(onCasing / casing.heatCapacity, Math.abs(casing.toPlenum * casingGap) / plenum.heatCapacity) / s;
  }

  private get gainTemperature(): number {
    return this.config.reservoir.gainFrom === 'bay' ? this.bay : this.surroundings;
  }

  /** Everything that follows from a known state at once: flow, air path and all outlets. */
  private observe(state: Float64Array): void {
    const { scalars, ring, air } = this;
    scalars[CASING] = this.casingTemperature(state);
    scalars[PLENUM] = this.plenumTemperature(state);
    ring.stretches.forEach(({ block }, k) => {
      let sum = 0;
      for (let j = 0; j < block.ny; j++) sum += state[block.offset + 2 * j + 1];
      scalars[FIRST_STRETCH + k] = sum / block.ny;
    });
    ring.setFlow(this.inputs.pumpVoltageRatio, scalars, FIRST_STRETCH);
    const coreInlet = ring.marchToCore(state, this.reservoirTemperature(state), this.bay);
    this.airInputs.casingConductance = HELD;
    this.airInputs.casingHeat = HELD * scalars[CASING];
    this.airInputs.plenumConductance = HELD;
    this.airInputs.plenumHeat = HELD * scalars[PLENUM];
    // Metal is known, so the air leaving the core depends on the flow alone: a few rounds settle it.
    scalars[CORE_OUTLET] = ring.core.metalMean > 0 ? ring.core.metalMean : this.casingTemperature(state);
    scalars[CORE_INLET] = this.casingTemperature(state);
    for (let round = 0; round < MOST_ROUNDS; round++) {
      this.failure = this.askAir();
      if (this.failure !== '') return;
      this.setCoreRates();
      ring.core.march(this.coreRates, state, air.gas.coreInlet, coreInlet, this.condensing());
      const gap = Math.abs(ring.core.airOut - scalars[CORE_OUTLET]);
      scalars[CORE_OUTLET] = ring.core.airOut;
      scalars[CORE_INLET] = air.gas.coreInlet;
      if (gap < 1e-9) break;
    }
    scalars[CORE_METAL] = ring.core.metalMean;
    air.gas.leavePlenum(this.airInputs.freshAir, ring.core.airOut, scalars[PLENUM]);
    ring.marchFromCore(state, ring.core.coolantOut, this.exchangerAir, this.bay);
    scalars[ROOM] = this.surroundings;
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

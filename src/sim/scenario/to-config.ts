import { velocityWeights } from '../correlations/distribution-weights.ts';
import { type FileUnit, toSi } from '../units.ts';
import type {
  CellBlockConfig,
  CompressorConfig,
  Config,
  CoreLayout,
  CycleConfig,
  ExchangerConfig,
  LoopConfig,
  PhaseConfig,
  Ramp,
} from './config.ts';
import { coreOfGeometry } from './geometry-values.ts';
import type { JsonObject } from './issue.ts';
import { ofAllCores, withAirLock, withBlockedFace } from './laws.ts';
import { fromReservoir, loopOf } from './loop.ts';
import { heatSinkOf, linesOf, measuredFlowOf, pumpOf, voltageRatio } from './loop-config.ts';
import { isRepetition } from './phases.ts';
import { deeplyFrozen, type Scenario } from './scenario.ts';
import type { ExchangerValues, PhaseValues, Values } from './shape.ts';
import { stationPressure } from './station-pressure.ts';

/**
 * What the model is built from: a scenario in SI, with every value that follows from others filled in. A measured flow
 * comes with the loop that it was measured on, so that changes of the configuration leave the resistances as they are.
 *
 * @param scenario - a scenario that was parsed without errors
 * @returns the configuration, deeply frozen
 * @example
 * toConfig(scenario).lines[0].segments[0].bore // 0.0165
 */
export function toConfig({ values, document, measuredOn }: Scenario): Config {
  const { ambient, intake, engine, reservoir, sensor, limit, numerics } = values;
  const loop = loopConfigOf(values, document);
  const { measuredFlow } = measuredOn === undefined ? measuredFlowOf(values, loop) : toConfig(measuredOn);
  return deeplyFrozen<Config>({
    name: values.name,
    ambient: {
      temperature: toSi(ambient.temperature, 'degC'),
      pressure: stationPressure(values),
      relativeHumidity: toSi(ambient.relativeHumidity, '%'),
    },
    ...roomOf(values),
    intake: { pickUp: intake.pickUp, drop: toSi(intake.drop, 'kPa'), dropAtFlow: intake.dropAtFlow },
    engine: {
      displacement: toSi(engine.displacement, 'L'),
      volumetricEfficiency: engine.volumetricEfficiency,
      referenceTemperature: toSi(engine.referenceTemperature, 'degC'),
      temperatureExponent: engine.temperatureExponent,
    },
    compressor: compressorOf(values),
    bypass: bypassOf(values),
    casing: { ...values.casing, heatCapacity: toSi(values.casing.heatCapacity, 'kJ/K') },
    plenum: { ...values.plenum, heatCapacity: toSi(values.plenum.heatCapacity, 'kJ/K') },
    ...loop,
    ...(measuredFlow && { measuredFlow }),
    reservoir: {
      coolantVolume: toSi(reservoir.coolantVolume - reservoir.missingCoolant, 'L'),
      ...(reservoir.vesselVolume !== undefined && { vesselVolume: toSi(reservoir.vesselVolume, 'L') }),
      heightAbovePump: reservoir.heightAbovePump,
      layers: reservoir.layers,
      returnHeight: reservoir.returnHeight,
      drawOffHeight: reservoir.drawOffHeight,
      iceMass: reservoir.iceMass,
      meltConductance: reservoir.meltConductance,
      gain: reservoir.gain,
      gainFrom: reservoir.gainFrom,
    },
    sensor: {
      timeConstantMoving: sensor.timeConstantMoving,
      atFlow: sensor.atFlow,
      timeConstantStill: sensor.timeConstantStill,
      airShare: sensor.airShare,
    },
    start: startOf(values),
    ...chargeTableOf(values),
    limit: { chargeTemperature: toSi(limit.chargeTemperature, 'degC') },
    cycle: cycleOf(values),
    numerics,
  });
}

function loopConfigOf(values: Values, document: JsonObject): LoopConfig {
  const { coolant, pump, secondPump } = values;
  return {
    core: withAirLock(coreOfGeometry(coreOf(values), values, document), values.core.airLockedShare),
    ...exchangersOf(values),
    ...heatSinkOf(values),
    loop: fromReservoir(loopOf(values)),
    coolant: {
      glycol: coolant.glycol,
      glycolByVolume: toSi(coolant.glycolByVolume, '%'),
      propertiesAt: toSi(coolant.propertiesAt, 'degC'),
      capPressure: toSi(coolant.capPressure, 'kPa'),
    },
    lines: linesOf(values),
    pump: pumpOf(pump),
    ...(secondPump && { secondPump: pumpOf(secondPump) }),
  };
}

function roomOf({ room }: Values): Pick<Config, 'room'> {
  const { volume, extraction = 0, heatPerAir } = room;
  return volume === undefined ? {} : { room: { volume, extraction, heatPerAir: toSi(heatPerAir, 'MJ/kg') } };
}

function bypassOf({ bypass }: Values): Config['bypass'] {
  const { route, shareAfterCore, leak } = bypass;
  const share = route === 'before core' ? 0 : route === 'after core' ? 1 : (shareAfterCore ?? Number.NaN);
  return {
    throttle: bypass.throttle,
    shareAfterCore: share * (1 - leak),
    drop: toSi(bypass.drop, 'kPa'),
    dropAtFlow: bypass.dropAtFlow,
    recirculation: bypass.recirculation ?? 0,
  };
}

function layoutOf(core: Values['core']): CoreLayout {
  const { passes, passArrangement, turnVolume, count, coolantOrder, airVelocity, cellsAlongCoolant } = core;
  const isPair = count === 2;
  const points = airVelocity?.map(({ place, speed }) => [place, speed] as const);
  return {
    passes: passes === 2 ? 2 : 1,
    isCounter: passArrangement === 'cross-counter',
    turnVolume: count * toSi(turnVolume, 'L'),
    sheets: [{ layers: 1, flow: 1 }],
    inSeries: isPair && coolantOrder === 'series' ? 2 : 1,
    sideBySide: isPair && coolantOrder === 'parallel' ? 2 : 1,
    ...(points && { airVelocity: velocityWeights(points, cellsAlongCoolant) }),
  };
}

/**
 * Where the opening leaves only a share of the face to the air, the core acts as one as much narrower: air faster by
 * the inverse (conductance share^(1 - n), drop share^-m), and only that much of the coolant's way exchanges.
 */
function coreOf({ core }: Values): Config['core'] {
  const block = cellBlock(core);
  const { airConductance, coolantConductance } = block;
  const share = core.exposedShare;
  const layout = layoutOf(core);
  const one = {
    ...block,
    airConductance: { ...airConductance, reference: airConductance.reference * share ** (1 - airConductance.exponent) },
    coolantConductance: { ...coolantConductance, reference: coolantConductance.reference * share },
    airDrop: {
      kind: 'power' as const,
      drop: toSi(core.airDrop, 'kPa') * share ** -core.airDropExponent,
      atFlow: core.airDropAtFlow,
      atDensity: core.airDropAtDensity,
      exponent: core.airDropExponent,
    },
  };
  return {
    ...ofAllCores(one, layout),
    marks: [],
    toBay: core.count * core.toBay,
    leakPast: core.leakPast,
    ...(core.airPortArea !== undefined && { airPortArea: toSi(core.airPortArea, 'cm2') }),
    layout,
    condensation: core.condensation === 'on',
  };
}

function compressorOf({ compressor }: Values): CompressorConfig {
  const { driveRatio = Number.NaN, builtInVolumeRatio, targetManifoldPressure } = compressor;
  const target = targetManifoldPressure === undefined ? undefined : toSi(targetManifoldPressure, 'kPa abs');
  const losses = lossesOf(compressor);
  if (compressor.kind === 'displacement') {
    return {
      kind: 'displacement',
      sweptVolume: toSi(compressor.sweptVolume ?? Number.NaN, 'L/rev'),
      driveRatio,
      leak: compressor.leak,
      ...(builtInVolumeRatio !== undefined && { builtInVolumeRatio }),
      ...(target !== undefined && { targetManifoldPressure: target }),
      ...losses,
    };
  }
  const byHead = {
    ...losses,
    quoted: { ...losses.quoted, flow: compressor.quotedFlow ?? Number.NaN },
    typedBoost: {
      outletPressure: toSi(compressor.boostOutletPressure ?? Number.NaN, 'kPa abs'),
      speed: compressor.boostSpeed ?? Number.NaN,
      inletTemperature: toSi(compressor.boostInletTemperature, 'degC'),
      inletPressure: toSi(compressor.boostInletPressure, 'kPa abs'),
    },
  };
  if (compressor.kind === 'centrifugal') return { kind: 'centrifugal', driveRatio, ...byHead };
  return {
    kind: 'turbine-driven',
    highestSpeed: compressor.highestSpeed ?? Number.NaN,
    targetManifoldPressure: target ?? Number.NaN,
    ...byHead,
  };
}

function lossesOf(compressor: Values['compressor']) {
  return {
    quoted: {
      efficiency: compressor.quotedEfficiency,
      speed: compressor.quotedSpeed,
      pressureRatio: compressor.quotedPressureRatio,
      inletTemperature: toSi(compressor.quotedInletTemperature, 'degC'),
      inletPressure: toSi(compressor.quotedInletPressure, 'kPa abs'),
    },
    idlePower: {
      power: toSi(compressor.idlePower, 'kW'),
      speed: compressor.idlePowerSpeed,
      exponent: compressor.idlePowerExponent,
    },
    mechanicalLoss: {
      power: toSi(compressor.mechanicalLoss, 'kW'),
      exponent: compressor.mechanicalLossExponent,
      toCasing: compressor.mechanicalLossToCasing,
    },
  };
}

function exchangersOf({ exchanger, secondExchanger }: Values): Pick<Config, 'exchanger' | 'secondExchanger'> {
  return {
    ...(exchanger && { exchanger: exchangerOf(exchanger) }),
    ...(secondExchanger && { secondExchanger: exchangerOf(secondExchanger) }),
  };
}

function exchangerOf(exchanger: ExchangerValues): ExchangerConfig {
  return withBlockedFace({ ...cellBlock(exchanger), faceArea: exchanger.faceArea }, exchanger.blockedShare);
}

/** The keys that core and exchanger share. */
function cellBlock(part: Values['core'] | ExchangerValues) {
  return {
    airConductance: {
      kind: 'power',
      reference: part.airConductance,
      atFlow: part.airConductanceAtFlow,
      exponent: part.airConductanceExponent,
      floor: 0,
    },
    coolantConductance: {
      kind: 'power',
      reference: part.coolantConductance,
      atFlow: part.coolantConductanceAtFlow,
      exponent: part.coolantConductanceExponent,
      floor: part.coolantConductanceFloor,
    },
    metalHeatCapacity: toSi(part.metalHeatCapacity, 'kJ/K'),
    coolantVolume: toSi(part.coolantVolume, 'L'),
    coolantDrop: { kind: 'power', factor: toSi(part.coolantDropFactor, 'Pa/(L/min)^1.8') },
    cellsAlongAir: part.cellsAlongAir,
    cellsAlongCoolant: part.cellsAlongCoolant,
  } as const satisfies CellBlockConfig;
}

function chargeTableOf({ chargeTable }: Values): Pick<Config, 'chargeTable'> {
  if (chargeTable === undefined) return {};
  return {
    chargeTable: chargeTable.map(({ chargeTemperature, spark, torque }) => ({
      chargeTemperature: toSi(chargeTemperature, 'degC'),
      spark,
      torque: toSi(torque, '%'),
    })),
  };
}

function startOf({ start, ambient }: Values): Config['start'] {
  const coolant = start.coolant ?? ambient.temperature;
  const plenum = start.plenum ?? ambient.temperature;
  return {
    coolant: toSi(coolant, 'degC'),
    reservoir: toSi(start.reservoir ?? coolant, 'degC'),
    metal: toSi(start.metal ?? coolant, 'degC'),
    casing: toSi(start.casing ?? ambient.temperature, 'degC'),
    plenum: toSi(plenum, 'degC'),
    sensor: toSi(start.sensor ?? plenum, 'degC'),
  };
}

function cycleOf(values: Values): CycleConfig {
  const { cycle } = values;
  const split = cycle.findIndex(isRepetition);
  const repetition = cycle[split];
  const phases = (items: readonly (typeof cycle)[number][]): PhaseConfig[] =>
    items.flatMap((item) => (isRepetition(item) ? [] : [phaseOf(item, values)]));
  if (repetition === undefined || !isRepetition(repetition)) {
    return { before: phases(cycle), block: [], repeats: 0, after: [] };
  }
  return {
    before: phases(cycle.slice(0, split)),
    block: phases(repetition.phases),
    repeats: repetition.repeat,
    after: phases(cycle.slice(split + 1)),
  };
}

const ramp = ([from, to]: readonly [number, number], unit: FileUnit): Ramp => ({
  from: toSi(from, unit),
  to: toSi(to, unit),
});

function pickUpOf(exchanger: ExchangerValues | undefined): Ramp {
  return { from: exchanger?.airPickUp ?? 0, to: exchanger?.airPickUp ?? 0 };
}

/** Air at the face of an exchanger: as typed, its share of the road speed, or a fan's volume over its clear face. */
function airSpeed(phase: PhaseValues, exchanger: ExchangerValues | undefined): Ramp {
  const { exchangerAirSpeed, roadSpeed, fanFlow } = phase;
  const scaled = (typed: readonly [number, number], unit: FileUnit, factor: number): Ramp => {
    const { from, to } = ramp(typed, unit);
    return { from: factor * from, to: factor * to };
  };
  if (exchanger && roadSpeed) return scaled(roadSpeed, 'km/h', exchanger.ramShare);
  if (exchanger && fanFlow) {
    return scaled(fanFlow, 'm3/h', 1 / (exchanger.faceArea * (1 - exchanger.blockedShare)));
  }
  return ramp(exchangerAirSpeed ?? [0, 0], 'm/s');
}

function phaseOf(phase: PhaseValues, values: Values): PhaseConfig {
  const { ambient, exchanger, secondExchanger, pump, secondPump } = values;
  const nothing = [0, 0] as const;
  const station = stationPressure(values);
  const outsidePressure = phase.stationPressure
    ? ramp(phase.stationPressure, 'kPa abs')
    : { from: station, to: station };
  return {
    name: phase.name ?? phase.kind,
    kind: phase.kind,
    duration: phase.duration,
    engineSpeed: ramp(phase.engineSpeed ?? nothing, 'rpm'),
    // Only part load uses it, and there it is required.
    manifoldPressure: phase.manifoldPressure ? ramp(phase.manifoldPressure, 'kPa abs') : outsidePressure,
    exchangerAir: {
      speed: airSpeed(phase, exchanger),
      pickUp: phase.exchangerPickUp ? ramp(phase.exchangerPickUp, 'K') : pickUpOf(exchanger),
    },
    secondExchangerAir: {
      speed: phase.secondExchangerAirSpeed
        ? ramp(phase.secondExchangerAirSpeed, 'm/s')
        : airSpeed(phase, secondExchanger),
      pickUp: pickUpOf(secondExchanger),
    },
    isExchangerBypassed: phase.exchangerValve === 'by-passed',
    isHeatSinkOn: phase.heatSink === 'on',
    outsideTemperature: ramp(phase.outsideTemperature ?? [ambient.temperature, ambient.temperature], 'degC'),
    outsidePressure,
    relativeHumidity: toSi(phase.relativeHumidity ?? ambient.relativeHumidity, '%'),
    bayAboveOutside: phase.bayAboveAmbient,
    engineMetalTemperature: toSi(phase.engineMetal, 'degC'),
    oilTemperature: toSi(phase.oil, 'degC'),
    pumpVoltageRatio: voltageRatio(phase, pump),
    secondPumpVoltageRatio: secondPump && phase.secondPump === 'on' ? voltageRatio(phase, secondPump) : 0,
    ...(phase.supplyVoltage !== undefined && { supplyVoltage: phase.supplyVoltage }),
  };
}

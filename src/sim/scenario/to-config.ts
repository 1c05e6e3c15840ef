import { velocityWeights } from '../correlations/distribution-weights.ts';
import { bendLossRennels, contractionLossRennels, expansionLossBordaCarnot } from '../correlations/losses.ts';
import { type FileUnit, toSi } from '../units.ts';
import {
  type CellBlockConfig,
  type CompressorConfig,
  type Config,
  type CoreLayout,
  type CycleConfig,
  LINE_NAMES,
  type LineConfig,
  type LineSegment,
  type PhaseConfig,
  type PumpConfig,
  type Ramp,
} from './config.ts';
import { coreOfGeometry } from './geometry-values.ts';
import { ofAllCores } from './laws.ts';
import { isRepetition } from './phases.ts';
import { deeplyFrozen, type Scenario } from './scenario.ts';
import type { PhaseValues, Values } from './shape.ts';
import { stationPressure } from './station-pressure.ts';

/**
 * What the model is built from: a scenario in SI, with every value that follows from others filled in.
 *
 * @param scenario - a scenario that was parsed without errors
 * @returns the configuration, deeply frozen
 * @example
 * toConfig(scenario).lines[0].segments[0].bore // 0.0165
 */
export function toConfig({ values, document }: Scenario): Config {
  const { ambient, intake, engine, coolant, reservoir, sensor, limit, numerics } = values;
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
    core: coreOfGeometry(coreOf(values), values, document),
    ...exchangerOf(values),
    coolant: {
      glycol: coolant.glycol,
      glycolByVolume: toSi(coolant.glycolByVolume, '%'),
      propertiesAt: toSi(coolant.propertiesAt, 'degC'),
      capPressure: toSi(coolant.capPressure, 'kPa'),
    },
    lines: linesOf(values),
    pump: pumpOf(values),
    reservoir: {
      coolantVolume: toSi(reservoir.coolantVolume, 'L'),
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

function exchangerOf({ exchanger }: Values): Pick<Config, 'exchanger'> {
  return exchanger === undefined ? {} : { exchanger: { ...cellBlock(exchanger), faceArea: exchanger.faceArea } };
}

/** The keys that core and exchanger share. */
function cellBlock(part: Values['core'] | NonNullable<Values['exchanger']>) {
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

/** A 90 degree bend of hose or tube: centre line 1.5 bores, Darcy factor of a smooth bore at Re 20000 (0.026). */
const BEND_RADIUS_OVER_BORE = 1.5;
const BEND_FRICTION = 0.026;

function linesOf({ lines }: Values): LineConfig[] {
  const bend = bendLossRennels(BEND_RADIUS_OVER_BORE, BEND_FRICTION);
  return LINE_NAMES.flatMap((name) => {
    const typed = lines[name];
    if (typed === undefined) return [];
    let boreBefore: number | undefined;
    const segments = typed.map((segment): LineSegment => {
      const bore = toSi(segment.bore ?? lines.bore, 'mm');
      const own = segment.lossCoefficient + segment.bends * bend;
      const lossCoefficient = own + lossOfChange(boreBefore ?? bore, bore);
      boreBefore = bore;
      return { length: segment.length, bore, lossCoefficient };
    });
    return {
      name,
      segments,
      roughness: toSi(lines.roughness, 'um'),
      coolantToWall: lines.coolantToWall,
      wallToBay: lines.wallToBay,
      wallHeatCapacity: lines.wallHeatCapacity,
    };
  });
}

/** Loss of a sudden change of bore, on the bore that is entered. */
function lossOfChange(bore: number, nextBore: number): number {
  if (bore === nextBore) return 0;
  return nextBore > bore ? expansionLossBordaCarnot(bore, nextBore) : contractionLossRennels(bore, nextBore);
}

function pumpOf({ pump }: Values): PumpConfig {
  const { curve, shutOffPressure = Number.NaN, freeFlow = Number.NaN } = pump;
  return {
    curve: curve
      ? {
          kind: 'points',
          flow: curve.map((point) => toSi(point.flow, 'L/min')),
          pressure: curve.map((point) => toSi(point.pressure, 'kPa')),
        }
      : {
          kind: 'parabola',
          shutOffPressure: toSi(shutOffPressure, 'kPa'),
          freeFlow: toSi(freeFlow, 'L/min'),
        },
    electricalPower: pump.electricalPower,
    shareIntoCoolant: pump.shareIntoCoolant,
  };
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

function phaseOf(phase: PhaseValues, values: Values): PhaseConfig {
  const { ambient, exchanger } = values;
  const pickUp = exchanger?.airPickUp ?? 0;
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
    exchangerAirSpeed: ramp(phase.exchangerAirSpeed ?? nothing, 'm/s'),
    exchangerPickUp: ramp(phase.exchangerPickUp ?? [pickUp, pickUp], 'K'),
    outsideTemperature: ramp(phase.outsideTemperature ?? [ambient.temperature, ambient.temperature], 'degC'),
    outsidePressure,
    relativeHumidity: toSi(phase.relativeHumidity ?? ambient.relativeHumidity, '%'),
    bayAboveOutside: phase.bayAboveAmbient,
    engineMetalTemperature: toSi(phase.engineMetal, 'degC'),
    oilTemperature: toSi(phase.oil, 'degC'),
    pumpVoltageRatio: phase.pump === 'off' ? 0 : (phase.pumpVoltageRatio ?? 1),
  };
}

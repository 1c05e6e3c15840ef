import { toSi } from '../units.ts';
import type { Config, LoopConfig } from './config.ts';
import { coreOfGeometry } from './geometry-values.ts';
import type { JsonObject } from './issue.ts';
import { withAirLock } from './laws.ts';
import { fromReservoir, loopOf } from './loop.ts';
import { deeplyFrozen, type Scenario } from './scenario.ts';
import type { Values } from './shape.ts';
import { stationPressure } from './station-pressure.ts';
import { compressorOf } from './to-config/compressor.ts';
import { cycleOf } from './to-config/cycle.ts';
import { coreOf, exchangersOf } from './to-config/exchangers.ts';
import { heatSinkOf, linesOf, measuredFlowOf, pumpOf } from './to-config/loop.ts';

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

import { type FileUnit, toSi } from '../../units.ts';
import type { CycleConfig, PhaseConfig, Ramp } from '../config/cycle.ts';
import { isRepetition } from '../phases.ts';
import type { ExchangerValues, PhaseValues, Values } from '../shape.ts';
import { stationPressure } from '../station-pressure.ts';
import { voltageRatio } from './loop.ts';

export function cycleOf(values: Values): CycleConfig {
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

function pickUpOf(exchanger: ExchangerValues | undefined): Ramp {
  return { from: exchanger?.airPickUp ?? 0, to: exchanger?.airPickUp ?? 0 };
}

const ramp = ([from, to]: readonly [number, number], unit: FileUnit): Ramp => ({
  from: toSi(from, unit),
  to: toSi(to, unit),
});

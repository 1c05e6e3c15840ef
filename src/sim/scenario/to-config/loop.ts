import { bendLossRennels, contractionLossRennels, expansionLossBordaCarnot } from '../../correlations/losses.ts';
import { voltageAtMotor, wireResistance } from '../../correlations/wire-drop.ts';
import { toSi } from '../../units.ts';
import type { LineConfig, LineSegment, PumpConfig } from '../config/loop.ts';
import type { Config, LoopConfig } from '../config.ts';
import { fromReservoir, linePlacesOf, loopOf } from '../loop.ts';
import { lineAfter, type PhaseValues, type PumpValues, type Values } from '../shape.ts';

/**
 * A 90 degree bend of hose or tube: centre line 1.5 bores, Darcy factor of a smooth bore at Re 20000 (0.026); own
 * choice.
 */
const BEND_RADIUS_OVER_BORE = 1.5;
const BEND_FRICTION = 0.026;

/** The lines of the loop in flow order, from the reservoir on. */
export function linesOf(values: Values): LineConfig[] {
  const { lines } = values;
  const bend = bendLossRennels(BEND_RADIUS_OVER_BORE, BEND_FRICTION);
  return ['reservoir' as const, ...linePlacesOf(fromReservoir(loopOf(values))).slice(0, -1)].flatMap((after) => {
    const typed = lines[lineAfter(after)] ?? [];
    if (typed.length === 0) return [];
    let boreBefore: number | undefined;
    const segments = typed.map((segment): LineSegment => {
      const bore = toSi(segment.bore ?? lines.bore, 'mm');
      const own = segment.lossCoefficient + segment.bends * bend;
      const lossCoefficient = own + lossOfChange(boreBefore ?? bore, bore);
      boreBefore = bore;
      return { length: segment.length, bore, lossCoefficient };
    });
    return {
      after,
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

export function pumpOf(pump: PumpValues): PumpConfig {
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
    suctionNeeded: toSi(pump.suctionNeeded, 'kPa'),
    ...(pump.ratedVoltage !== undefined && {
      wiring: {
        ratedVoltage: pump.ratedVoltage,
        resistance: wireResistance(pump.wireLength, toSi(pump.wireArea, 'mm2')),
      },
    }),
  };
}

/** Voltage at a pump over its rated voltage in a phase: as typed, or from the battery less the drop in the wires. */
export function voltageRatio(phase: PhaseValues, pump: PumpValues): number {
  if (phase.pump === 'off') return 0;
  const { wiring, electricalPower } = pumpOf(pump);
  if (phase.supplyVoltage === undefined || wiring === undefined) return phase.pumpVoltageRatio ?? 1;
  return (
    voltageAtMotor(phase.supplyVoltage, wiring.ratedVoltage, electricalPower, wiring.resistance) / wiring.ratedVoltage
  );
}

export function measuredFlowOf({ pump, coolant }: Values, on: LoopConfig): Pick<Config, 'measuredFlow'> {
  if (pump.measuredFlow === undefined) return {};
  return {
    measuredFlow: {
      flow: toSi(pump.measuredFlow, 'L/min'),
      temperature: toSi(pump.measuredFlowAt ?? coolant.propertiesAt, 'degC'),
      voltageRatio: pump.measuredFlowVoltage,
      on,
    },
  };
}

export function heatSinkOf({ heatSink }: Values): Pick<Config, 'heatSink'> {
  if (heatSink === undefined) return {};
  return {
    heatSink: {
      temperature: heatSink.curve.map(({ coolant }) => toSi(coolant, 'degC')),
      heat: heatSink.curve.map(({ heat }) => heat),
    },
  };
}

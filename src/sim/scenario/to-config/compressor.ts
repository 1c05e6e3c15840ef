import { toSi } from '../../units.ts';
import type { CompressorConfig } from '../config/compressor.ts';
import type { Values } from '../shape.ts';

export function compressorOf({ compressor }: Values): CompressorConfig {
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

import type { ChargeSystem } from './model/charge-system.ts';
import type { Row } from './results/recorder.ts';
import type { Stepper } from './solver/stepper.ts';

/** Writes what the system shows at the state that stands into a row of the time series; its means of the lines too. */
export function fillRow(system: ChargeSystem, stepper: Stepper, row: Row): void {
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
  row.airToCorePower = system.airToCore;
  row.condensationPower = core.latentPower;
  row.condensateFlow = core.condensate;
  row.coolantFlow = ring.flow;
  row.coolantIntoCore = core.coolantIn;
  row.coolantOutOfCore = core.coolantOut;
  row.coolantOutOfExchanger = exchanger?.block.coolantOut ?? Number.NaN;
  row.coolantOutOfSecondExchanger = secondExchanger?.block.coolantOut ?? Number.NaN;
  row.exchangerPower = ring.exchangerHeat;
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
  row.chargeDewPoint = system.coreFeed.chargeDewPoint;
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

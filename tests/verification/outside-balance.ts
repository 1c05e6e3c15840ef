import { createCoolant } from '../../src/sim/fluids/coolant.ts';
import type { TimeSeries } from '../../src/sim/results/time-series.ts';
import type { ExchangerAirConfig, PhaseConfig, Ramp } from '../../src/sim/scenario/config/cycle.ts';
import type { CellBlockConfig, ExchangerConfig } from '../../src/sim/scenario/config/exchangers.ts';
import type { Config } from '../../src/sim/scenario/config.ts';

/**
 * Energy account from outside: reads recorded columns and the scenario alone, and shares no code with model, solver
 * or their ledger. Every boundary flow is integrated by trapezoid between recorded rows, inside each phase (both
 * sides of a joint are recorded); stored energy is computed afresh from recorded means.
 */
export interface OutsideBalance {
  /** J through each boundary, positive inwards */
  readonly terms: Readonly<Record<string, number>>;
  /** rise of the stored energy [J] */
  readonly stored: number;
  /** sum of the magnitudes of all terms [J] */
  readonly moved: number;
  /** stored less the sum of all terms, over `moved` */
  readonly gap: number;
}

const AIR_CP = 1006;
const AIR_R = 287.05;

export function balanceFromOutside(config: Config, series: TimeSeries): OutsideBalance {
  const terms: Record<string, number> = {};
  const { before: first, block, repeats, after: last } = config.cycle;
  const phases = [...first, ...Array.from({ length: repeats }, () => block).flat(), ...last];
  series.phases.forEach((span, index) => {
    const phase = phases[index];
    for (let row = span.firstRow; row < span.lastRow; row++) {
      const duration = series.columns.time[row + 1] - series.columns.time[row];
      const before = boundaryFlows(config, series, phase, span.start, row);
      const after = boundaryFlows(config, series, phase, span.start, row + 1);
      for (const name of Object.keys(before)) {
        terms[name] = (terms[name] ?? 0) + 0.5 * duration * (before[name] + after[name]);
      }
    }
  });
  const stored = storedEnergy(config, series, series.rowCount - 1) - storedEnergy(config, series, 0);
  const values = Object.values(terms);
  const moved = values.reduce((sum, value) => sum + Math.abs(value), 0);
  const net = values.reduce((sum, value) => sum + value, 0);
  return { terms, stored, moved, gap: (stored - net) / moved };
}

function boundaryFlows(
  config: Config,
  { columns }: TimeSeries,
  phase: PhaseConfig,
  phaseStart: number,
  row: number,
): Record<string, number> {
  const { casing, plenum, core, compressor, reservoir, exchanger, secondExchanger } = config;
  const outside = columns.outsideTemperature[row];
  const bay = outside + phase.bayAboveOutside;
  const share = (columns.time[row] - phaseStart) / phase.duration;
  const compressorSpeed = columns.compressorSpeed[row];
  const { idlePower, mechanicalLoss } = compressor;
  const mechanical = mechanicalLoss.power * (compressorSpeed / idlePower.speed) ** mechanicalLoss.exponent;
  const fromAir = (part: ExchangerConfig | undefined, { speed, pickUp }: ExchangerAirConfig, out: number): number => {
    if (part === undefined) return 0;
    const airIn = outside + at(pickUp, share);
    const flow = at(speed, share) * part.faceArea * (at(phase.outsidePressure, share) / (AIR_R * airIn));
    return flow * AIR_CP * (airIn - out);
  };
  const pumped = (['pump', 'secondPump'] as const).reduce((sum, name) => {
    const { electricalPower = 0, shareIntoCoolant = 0 } = config[name] ?? {};
    return sum + electricalPower * shareIntoCoolant * phase[`${name}VoltageRatio`] ** 3;
  }, 0);
  const wallToBay = config.lines.reduce((sum, line) => sum + line.wallToBay * lengthOf(line), 0);
  const surroundings = reservoir.gainFrom === 'bay' ? bay : outside;
  return {
    shaft: columns.drivePower[row],
    mechanicalLoss: -(1 - mechanicalLoss.toCasing) * mechanical,
    throughflow: columns.airFlow[row] * AIR_CP * (outside + config.intake.pickUp - columns.chargeTemperature[row]),
    condensation: columns.condensationPower[row],
    exchanger:
      fromAir(exchanger, phase.exchangerAir, columns.exchangerAirOutlet[row]) +
      fromAir(secondExchanger, phase.secondExchangerAir, columns.secondExchangerAirOutlet[row]),
    heatSink: config.heatSink === undefined ? 0 : -columns.heatSinkPower[row],
    pump: columns.coolantFlow[row] > 0 ? pumped : 0,
    lines: config.lines.length === 0 ? 0 : wallToBay * (bay - columns.lineWallMean[row]),
    reservoir: reservoir.gain * (surroundings - columns.reservoirMean[row]),
    coreBay: core.toBay * (bay - columns.coreMetalMean[row]),
    casingBay: casing.toBay * (bay - columns.casingTemperature[row]),
    casingOil: casing.toOil * (phase.oilTemperature - columns.casingTemperature[row]),
    plenumBay: plenum.toBay * (bay - columns.plenumTemperature[row]),
    plenumEngine: plenum.toEngine * (phase.engineMetalTemperature - columns.plenumTemperature[row]),
  };
}

function storedEnergy(config: Config, { columns }: TimeSeries, row: number): number {
  const coolant = createCoolant(config.coolant.glycolByVolume, config.coolant.glycol);
  const { propertiesAt } = config.coolant;
  const perVolume = coolant.density(propertiesAt) * coolant.heatCapacity(propertiesAt);
  const part = (block: CellBlockConfig, metal: number, inside: number) =>
    block.metalHeatCapacity * metal + block.coolantVolume * perVolume * inside;
  // What mixes in a turn header is part of the core's coolant.
  const { layout, coolantVolume } = config.core;
  const core = { ...config.core, coolantVolume: coolantVolume + (layout.passes === 2 ? layout.turnVolume : 0) };
  const lineWall = config.lines.reduce((sum, line) => sum + line.wallHeatCapacity * lengthOf(line), 0);
  const lineVolume = config.lines
    .flatMap(({ segments }) => segments)
    .reduce((sum, { bore, length }) => sum + (Math.PI / 4) * bore ** 2 * length, 0);
  return (
    part(core, columns.coreMetalMean[row], columns.coreCoolantMean[row]) +
    (config.exchanger
      ? part(config.exchanger, columns.exchangerMetalMean[row], columns.exchangerCoolantMean[row])
      : 0) +
    (config.secondExchanger
      ? part(config.secondExchanger, columns.secondExchangerMetalMean[row], columns.secondExchangerCoolantMean[row])
      : 0) +
    (config.lines.length === 0
      ? 0
      : lineWall * columns.lineWallMean[row] + lineVolume * perVolume * columns.lineCoolantMean[row]) +
    reservoirEnergy(config, perVolume, columns.reservoirMean[row], columns.iceMass[row]) +
    config.casing.heatCapacity * columns.casingTemperature[row] +
    config.plenum.heatCapacity * columns.plenumTemperature[row]
  );
}

/** Liquid counted from 0 K, ice 333.55 kJ/kg below liquid of 0 degC: CRC Handbook, enthalpy of fusion of water. */
function reservoirEnergy({ coolant, reservoir }: Config, perVolume: number, liquid: number, ice: number): number {
  const density = createCoolant(coolant.glycolByVolume, coolant.glycol).density(coolant.propertiesAt);
  const perMass = perVolume / density;
  const melted = reservoir.iceMass - ice;
  return (reservoir.coolantVolume * perVolume + melted * perMass) * liquid + ice * (perMass * 273.15 - 333.55e3);
}

const at = ({ from, to }: Ramp, share: number): number => from + (to - from) * share;

const lengthOf = ({ segments }: Config['lines'][number]): number =>
  segments.reduce((sum, { length }) => sum + length, 0);

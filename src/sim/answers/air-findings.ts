import { dynamicPressureShare, portMach } from '../correlations/port-mach.ts';
import { AIR_GAS_CONSTANT, AIR_ISENTROPIC_EXPONENT } from '../fluids/moist-air.ts';
import { readChargeTable } from './charge-table.ts';
import { type FindingSource, highestRow, whenAt, whenAtRow } from './finding.ts';

/** Less water than this in a pull is not worth a warning [kg]: own judgement. */
const LEAST_WATER = 0.5e-3;
/** Above this a gas is commonly not taken as of one density any more; common practice, no published source. */
const FAST_PORT = 0.3;
export const condensation: FindingSource = (run) => {
  const { config, series, pulls } = run;
  const wet = series.events.find(({ kind }) => kind === 'core below dew point');
  if (!config.core.condensation) {
    const text =
      wet === undefined
        ? 'Condensation is switched off; no core metal falls below the dew point of the charge here.'
        : `Core metal falls below the dew point of the charge ${whenAt(run, wet.time)}. Water would condense there and warm the coolant, but condensation is switched off: peaks from then on are too low. Switch it on (core.condensation).`;
    return [{ rank: 'note', kind: 'condensation left out', text, ...(wet && { time: wet.time }), place: 'core' }];
  }
  if (wet === undefined) return [];
  const common = { kind: 'condensation', time: wet.time, place: 'core' } as const;
  const worst = pulls.toSorted((a, b) => b.condensate - a.condensate).at(0);
  if (worst === undefined || worst.condensate < LEAST_WATER) {
    const little = pulls.length === 0 ? '' : ', less than 1 g of water in any pull';
    return [{ rank: 'note', text: `The core begins to condense water ${whenAt(run, wet.time)}${little}.`, ...common }];
  }
  const grams = (1e3 * worst.condensate).toFixed(0);
  const heat = (worst.latentHeat / 1e3).toFixed(0);
  const text = `Water condenses in the core, ${grams} g in pull ${worst.pull}, the worst; it begins ${whenAt(run, wet.time)}. It puts ${heat} kJ into the coolant in that pull, and the drops go on into the engine: look for water behind the core. Coolant above the dew point keeps the core dry.`;
  return [{ rank: 'check', text, ...common }];
};

export const targetPressureLost: FindingSource = (run) => {
  const { compressor } = run.config;
  const lost = run.series.events.find(({ kind }) => kind === 'target pressure lost');
  if (lost === undefined) return [];
  const [floats, way] =
    compressor.kind === 'turbine-driven'
      ? ['at its highest speed', 'a larger compressor, or a lower target pressure']
      : ['at the speed of its pulley', 'a smaller compressor pulley, or a lower target pressure'];
  const text = `The compressor loses its target manifold pressure ${whenAt(run, lost.time)}: it runs ${floats} and the pressure floats until it is regained. It takes ${way}.`;
  return [{ rank: 'check', kind: 'target pressure lost', text, time: lost.time, place: 'compressor' }];
};

/** Flow, temperature and pressure before the core, through the port: where it is fastest. */
export const fastAirPort: FindingSource = (run) => {
  const { core, bypass } = run.config;
  const { columns, rowCount } = run.series;
  const area = core.airPortArea;
  if (area === undefined) return [];
  const pressureAt = (row: number) => columns.compressorInletPressure[row] * columns.pressureRatio[row];
  const machAt = (row: number) => {
    const flow = columns.airFlow[row] * (1 + bypass.shareAfterCore * columns.recirculation[row]);
    if (!(flow > 0)) return 0;
    const temperature = columns.dischargeTemperature[row];
    return portMach(flow, area, temperature, pressureAt(row), AIR_GAS_CONSTANT, AIR_ISENTROPIC_EXPONENT);
  };
  const row = highestRow(rowCount, machAt);
  if (row === undefined) return [];
  const mach = machAt(row);
  if (mach <= FAST_PORT) return [];
  const found = `Mach ${mach.toFixed(2)} in the narrowest air passage ${whenAtRow(run, row)}, above ${FAST_PORT}`;
  const share = mach < 1 ? dynamicPressureShare(mach, AIR_ISENTROPIC_EXPONENT) : undefined;
  const text =
    share === undefined
      ? `${found}: it cannot take this flow, and the engine gets less air than is worked out here. Check core.airPortArea; if it is right, open the passage.`
      : `${found}: a gauge in its wall reads ${run.wording.pressure(share * pressureAt(row))} (${(100 * share).toFixed(1)} %) below the full pressure, and the loss of the passage is not in the result. A wider passage is slower: Mach goes with one over its area.`;
  return [{ rank: 'check', kind: 'fast air port', text, time: columns.time[row], place: 'air' }];
};

export const outsideChargeTable: FindingSource = ({ config, pulls }) => {
  const beyond = pulls.filter(({ peak }) => readChargeTable(config.chargeTable, peak)?.isBeyond);
  if (beyond.length === 0) return [];
  const which = beyond.length === 1 ? `Pull ${beyond[0].pull} peaks` : `${beyond.length} pulls peak`;
  const text = `${which} outside the charge table: its end row is held there, which the engine may not do. Add rows.`;
  return [{ rank: 'note', kind: 'outside charge table', text }];
};

import { createCoolant } from '../fluids/coolant.ts';
import { ICE_DENSITY } from '../fluids/ice.ts';
import { linesVolume } from '../model/loop-volume.ts';
import { listed } from '../scenario/issue.ts';
import { decimals } from '../units.ts';
import { hasExchanger } from './car-changes.ts';
import { type FindingSource, highestRow, type RunView, whenAtRow } from './finding.ts';
import { measuredIn, meetingOf, meterNow } from './measured-flow.ts';
import { operatingPoint } from './operating-point.ts';
import { heatWhileWaiting } from './waiting-heat.ts';

/** Meter and curves that differ by more than this are worth a look: common practice, no published source. */
const METER_SHARE = 0.1;

/** The operating point with the hottest coolant that reaches the pump. */
function hottestPoint({ config, series }: RunView) {
  const { reservoirTemperature } = series.columns;
  const row = highestRow(series.rowCount, (k) => reservoirTemperature[k]);
  return row === undefined ? undefined : operatingPoint(config, reservoirTemperature[row]);
}

export const pumpMayCavitate: FindingSource = (run) => {
  const point = hottestPoint(run);
  if (point === undefined || point.suction.margin >= point.suction.needed) return [];
  const { pressure, temperature } = run.wording;
  const { margin, needed } = point.suction;
  const text = `At the pump inlet the coolant of ${temperature(point.temperature)} is ${pressure(Math.abs(margin))} ${margin < 0 ? 'below' : 'above'} its vapour pressure; the pump needs ${pressure(needed)} above it. It may cavitate and lose flow: mount the pump lower, or widen the line to it.`;
  return [{ rank: 'check', kind: 'pump may cavitate', text, place: 'pump' }];
};

export const pumpHeldShut: FindingSource = ({ config }) => {
  const shut = operatingPoint(config)?.heldShut ?? [];
  return shut.map((name) => ({
    rank: 'check',
    kind: 'pump held shut',
    text: `The ${name} cannot open against the one beside it and delivers nothing: pumps side by side should be alike, or stand one behind the other.`,
    place: 'pump',
  }));
};

export const measuredFlowDiffers: FindingSource = ({ config, wording }) => {
  const measured = measuredIn(config);
  if (measured === undefined) return [];
  const share = measured.flow / measured.byCurves - 1;
  const text = `${wording.flow(measured.flow)} was measured; by the curves it would be ${wording.flow(measured.byCurves)}. ${meetingOf(measured)}${Math.abs(share) > METER_SHARE ? ': look for air, a kinked line, low voltage or a wrong curve before trusting either' : ''}.${meterNow(measured, wording.flow)}`;
  const rank = Math.abs(share) > METER_SHARE ? 'check' : 'note';
  return [{ rank, kind: 'measured flow differs', text, place: 'loop' }];
};

/** How far warm coolant and melt raise the level, against the room above it. */
export const tankLevel: FindingSource = (run) => {
  const { config, series } = run;
  const { vesselVolume, coolantVolume, iceMass } = config.reservoir;
  if (vesselVolume === undefined) return [];
  const room = vesselVolume - coolantVolume - iceMass / ICE_DENSITY;
  const growth = growthOver(run);
  const atFirst = growth(0);
  const grown = (row: number): number => growth(row) - atFirst;
  const row = highestRow(series.rowCount, grown);
  if (row === undefined) return [];
  const rise = grown(row);
  const litres = (volume: number): string => `${decimals(1000 * volume, 2)} L`;
  const said = `Warming, the coolant of the loop grows by ${litres(rise)} ${whenAtRow(run, row)}`;
  const text =
    rise > room
      ? `${said}; the tank has ${litres(room)} of room, and ${litres(rise - room)} goes out of the overflow. That loss is not computed: leave more room.`
      : `${said}; ${litres(room - rise)} of room is left in the tank.`;
  const time = series.columns.time[row];
  return [{ rank: rise > room ? 'check' : 'note', kind: 'tank level', text, time, place: 'tank' }];
};

/** What the loop's coolant and the melt take up more at a row than the cold filling [m3]. */
function growthOver({ config, series: { columns } }: RunView): (row: number) => number {
  const { core, exchanger, secondExchanger, reservoir } = config;
  const coolant = createCoolant(config.coolant.glycolByVolume, config.coolant.glycol);
  const cold = coolant.density(config.start.coolant);
  const inLines = linesVolume(config.lines);
  const spread = (volume: number, temperature: number): number =>
    volume === 0 ? 0 : volume * (cold / coolant.density(Math.max(coolant.freezingPoint, temperature)) - 1);
  return (row) => {
    const melted = reservoir.iceMass - columns.iceMass[row];
    return (
      spread(core.coolantVolume, columns.coreCoolantMean[row]) +
      spread(exchanger?.coolantVolume ?? 0, columns.exchangerCoolantMean[row]) +
      spread(secondExchanger?.coolantVolume ?? 0, columns.secondExchangerCoolantMean[row]) +
      spread(inLines, columns.lineCoolantMean[row]) +
      spread(reservoir.coolantVolume, columns.reservoirMean[row]) +
      // Melt takes less room than its ice.
      melted * (1 / coolant.density(columns.reservoirMean[row]) - 1 / ICE_DENSITY)
    );
  };
}

/** What melts the ice between the pulls. */
export const waitingMeltsIce: FindingSource = ({ config, series, wording }) => {
  const heat = config.reservoir.iceMass > 0 ? heatWhileWaiting(config, series) : undefined;
  if (heat === undefined || heat.asIce === 0) return [];
  const kilojoules = (joules: number): string => `${decimals(joules / 1e3, 0)} kJ`;
  const ways = [
    `${kilojoules(heat.pump)} from the pump`,
    `${kilojoules(heat.lines)} through the lines`,
    `${kilojoules(heat.reservoir)} through the tank`,
    `${kilojoules(heat.core)} in the core`,
    ...(hasExchanger(config) ? [`${kilojoules(heat.exchanger)} from the air at the front exchanger`] : []),
    ...(config.heatSink ? [`${kilojoules(heat.heatSink)} from the heat sink`] : []),
  ];
  const text = `In ${wording.duration(heat.duration)} of waiting the coolant takes up ${listed(ways)}: as much as melts ${heat.asIce.toFixed(1)} kg of ice.`;
  return [{ rank: 'note', kind: 'heat while waiting', text, place: 'tank' }];
};

import { CAUSE_WORDS, causeInWords, counted, decimals, ENERGY_LABELS, type RunReport } from '../sim/index.ts';
import { aligned, indented } from './aligned.ts';
import { underlined } from './underlined.ts';

/** Columns of the table of pulls: heading, unit, and how a pull fills it. */
type PullColumn = readonly [heading: string, unit: string, show: (pull: RunReport['pulls'][number]) => string];
const PULL_TABLE: readonly PullColumn[] = [
  ['pull', '', ({ pull }) => String(pull)],
  ['peak', 'degC', ({ peak_degC }) => decimals(peak_degC, 1)],
  ['indicated', 'degC', ({ indicated_peak_degC }) => decimals(indicated_peak_degC, 1)],
  ['margin', 'K', ({ margin_K }) => decimals(margin_K, 1)],
  ['coolant in', 'degC', ({ coolant_into_core_degC }) => decimals(coolant_into_core_degC, 1)],
  ['coolant out', 'degC', ({ coolant_out_of_core_degC }) => decimals(coolant_out_of_core_degC, 1)],
  ['air', 'kg/s', ({ air_flow_kg_s }) => decimals(air_flow_kg_s, 4)],
  ['PR', '-', ({ pressure_ratio }) => decimals(pressure_ratio, 3)],
  ['manifold', 'kPa abs', ({ manifold_pressure_kPa }) => decimals(manifold_pressure_kPa, 1)],
  ['discharge', 'degC', ({ discharge_degC }) => decimals(discharge_degC, 1)],
  ['heat', 'kJ', ({ heat_into_core_kJ }) => decimals(heat_into_core_kJ, 1)],
  ['drive', 'kW', ({ drive_power_kW }) => decimals(drive_power_kW, 1)],
  ['core drop', 'kPa', ({ core_air_drop_kPa }) => decimals(core_air_drop_kPa, 2)],
];

/** Where water condensed. */
const WATER: readonly PullColumn[] = [
  ['water', 'g', ({ condensate_g }) => decimals(condensate_g, 0)],
  ['latent', 'kJ', ({ latent_heat_kJ }) => decimals(latent_heat_kJ, 0)],
];

/** Where ice was loaded. */
const ICE: readonly PullColumn[] = [['ice left', 'kg', ({ ice_left_kg }) => ice_left_kg?.toFixed(2) ?? '']];

/** Where the file has a table of its own. */
const CHARGE_TABLE: readonly PullColumn[] = [
  ['spark', 'deg', ({ spark_change_deg: change }) => (change === undefined ? '' : decimals(change, 1))],
  ['torque', '%', ({ torque_change_percent: change }) => (change === undefined ? '' : decimals(change, 1))],
];

/** One run as a person reads it at a terminal. */
export function reportAsText(report: RunReport): string {
  const title = report.variant === undefined ? report.scenario : `${report.scenario} / ${report.variant}`;
  const parts = [...underlined(title), ...answerLines(report), ''];
  parts.push(...findingLines(report), '');
  if (report.pulls.length > 0) parts.push(pullTable(report), '', ...heldBackLines(report), ...airLines(report), '');
  parts.push(...loopLines(report), '', ...energyLines(report), '');
  parts.push(`Solver: ${report.steps} steps, ${report.steps_rejected} rejected, ${report.sweeps} sweeps.`);
  parts.push(...report.cautions, '');
  return parts.join('\n');
}

function findingLines({ findings }: RunReport): string[] {
  return [
    'What else this run tells, gravest first:',
    ...findings.map(({ rank, text }) => `  ${rank.toUpperCase().padEnd(5)}  ${text}`),
  ];
}

function answerLines({ pulls_to_limit: answer }: RunReport): string[] {
  const limit = `${decimals(answer.limit_degC, 1)} degC`;
  if (answer.pulls_run === 0) return ['No whole pull in this run: nothing to count.'];
  const lines = [
    `Pulls to limit: ${answer.count}   (limit ${limit} true charge temperature, ${counted(answer.pulls_run, 'pull')} run)`,
  ];
  const margin = answer.deciding_margin_K ?? 0;
  if (answer.breaking_pull !== undefined) {
    const share = Math.round(100 * (answer.crossed_at_share_of_pull ?? 0));
    lines.push(
      `Pull ${answer.breaking_pull} passes the limit ${share} % of the way through and peaks ${decimals(Math.abs(margin), 1)} K over it; ${decimals(answer.time_above_limit_s, 1)} s above the limit in all pulls together.`,
    );
  } else {
    lines.push(`The hottest pull is number ${answer.deciding_pull}, ${decimals(margin, 1)} K under the limit.`);
  }
  lines.push(settledLine(answer));
  lines.push(
    `With 5 % less / 5 % more core conductance: ${answer.count_with_core_conductance_5_percent_lower} / ${answer.count_with_core_conductance_5_percent_higher} pulls.`,
  );
  return lines;
}

function settledLine(answer: RunReport['pulls_to_limit']): string {
  if (answer.settled_peak_degC === undefined) return 'No repeated pulls: no peak to settle at.';
  const after = counted(answer.settled_after_pulls ?? 0, 'pull');
  const where = `${decimals(answer.settled_peak_degC, 1)} degC after ${after}`;
  const { repeated_run_stopped_because: stop } = answer;
  if (stop !== undefined) return `Repeated on, the run stops after ${after}: ${stop}.`;
  const isSettled = answer.settled === 'settled';
  const settles = isSettled ? `Repeated on, the peaks settle at ${where}` : `Repeated on, not settled yet: ${where}`;
  const first = answer.first_pull_over_limit_when_repeated;
  if (first === undefined) return `${settles}: the limit is ${isSettled ? 'never passed' : 'not passed until then'}.`;
  return first > answer.pulls_run && answer.count === answer.pulls_run
    ? `${settles}: not in ${answer.pulls_run}, but pull ${first} passes the limit.`
    : `${settles}.`;
}

function pullTable({ pulls }: RunReport): string {
  const columns = [
    ...PULL_TABLE,
    ...(pulls.some(({ condensate_g }) => condensate_g > 0) ? WATER : []),
    ...(pulls[0].ice_left_kg === undefined ? [] : ICE),
    ...(pulls[0].spark_change_deg === undefined ? [] : CHARGE_TABLE),
  ];
  const cells = [
    columns.map(([heading]) => heading),
    columns.map(([, unit]) => unit),
    ...pulls.map((pull) => columns.map(([, , show]) => show(pull))),
  ];
  const head = 'True peak from 1 s after opening to lift; flows, pressures and coolant at lift.';
  return [head, ...aligned(cells, [])].join('\n');
}

/** Falls worth a line [K]. */
const WORTH_SAYING = 0.05;

function heldBackLines({ held_back_by: held }: RunReport): string[] {
  if (held === undefined) return [];
  const falls = held.falls.filter(({ fall_K }) => Math.abs(fall_K) >= WORTH_SAYING);
  const list = falls.map(({ part, fall_K }) => `${CAUSE_WORDS[part]} ${decimals(fall_K, 1)} K`).join(', ');
  return [
    `What holds pull ${held.pull} back: ${causeInWords(held.parts)}. Its peak would fall, one part ideal at a time, by: ${list || 'nothing'}.`,
  ];
}

function airLines({ air_flow_at_swallowing_exponent: band, pulls }: RunReport): string[] {
  if (band === undefined) return [];
  const typed = decimals(pulls[band.pull - 1].air_flow_kg_s, 4);
  const ends = [band.exponent_0_kg_s, band.exponent_0_5_kg_s].map((flow) => decimals(flow, 4));
  return [
    `Air at the end of pull ${band.pull}: ${typed} kg/s; ${ends[0]} and ${ends[1]} for swallowing exponents 0 and 0.5.`,
  ];
}

function loopLines({ loop }: RunReport): string[] {
  const rating = `pump free-flow rating ${decimals(loop.pump_free_flow_rating_L_min, 1)} L/min`;
  const { coldest_coolant_degC: coldest, hottest_coolant_degC: hottest } = loop;
  if (coldest === undefined || hottest === undefined) return [`Loop: ${rating}.`];
  const coolant = `Coolant between ${decimals(coldest, 1)} and ${decimals(hottest, 1)} degC.`;
  const { flow_at_end_of_first_pull_L_min: flow, coolant_rise_through_core_K: rise } = loop;
  if (flow === undefined || rise === undefined) return [`Loop: ${rating}. ${coolant}`];
  return [
    `Loop flow ${decimals(flow, 1)} L/min at the end of pull 1, ${rating}; coolant rise through the core ${decimals(rise, 1)} K.`,
    coolant,
  ];
}

function energyLines({ energy_kJ, energy_inside_kJ, energy_worst_step_gap }: RunReport): string[] {
  const { stored, ...terms } = energy_kJ;
  const inside = energy_inside_kJ;
  const rows = Object.entries(terms).map(([key, value]) => [decimals(value, 1), ENERGY_LABELS[key]]);
  rows.push([decimals(stored, 1), 'stored: the sum of these']);
  return [
    'Energy into metal, coolant and charge air, kJ:',
    ...indented(aligned(rows, [1])),
    `Inside: ${decimals(inside.air_to_core, 1)} kJ from charge air to core, ${decimals(inside.casing_to_core, 1)} from casing to core, ${decimals(inside.casing_to_plenum, 1)} from casing to plenum.`,
    `Worst gap of any step ${energy_worst_step_gap.toExponential(1)} of the heat moved.`,
  ];
}

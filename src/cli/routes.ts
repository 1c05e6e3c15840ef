import {
  decimals,
  explainRoutes,
  FILE_WORDING,
  type RouteComparison,
  type RouteFigures,
  studyRoutes,
  type TurnLine,
  WHY_NO_ANSWER,
} from '../sim/index.ts';
import { aligned, indented } from './aligned.ts';
import { celsius } from './celsius.ts';
import { csvOf } from './csv.ts';
import { EXIT } from './exit-codes.ts';
import { hasPartLoad, noAnswer } from './no-answer.ts';
import { onAllCores } from './on-all-cores.ts';
import { type FormOptions, printAnswer } from './print-answer.ts';
import { readConfig } from './read-scenario.ts';
import { signed } from './signed.ts';

export interface RoutesCommandOptions extends FormOptions {
  readonly variant?: string;
}

/** Compares the routes of the recirculated air, before the core and behind it, and says where they turn. */
export async function routes(file: string, options: RoutesCommandOptions): Promise<number> {
  const config = readConfig(file, options.variant);
  if (typeof config === 'number') return config;
  const study = await onAllCores(studyRoutes(config));
  const { comparison, turns } = study;
  if (comparison === undefined) {
    return noAnswer(WHY_NO_ANSWER.noPartLoad, hasPartLoad(config));
  }
  printAnswer(options, {
    json: () => study,
    csv: () => asCsv(comparison),
    text: () => [...comparisonLines(comparison), '', ...turnLines(turns)],
  });
  return EXIT.done;
}

const ROWS: readonly (readonly [string, string, (figures: RouteFigures) => string])[] = [
  ['compressor inlet', 'degC', ({ compressorInlet }) => celsius(compressorInlet)],
  ['discharge', 'degC', ({ discharge }) => celsius(discharge)],
  ['casing', 'degC', ({ casing }) => celsius(casing)],
  ['core outlet', 'degC', ({ coreOutlet }) => celsius(coreOutlet)],
  ['charge', 'degC', ({ charge }) => celsius(charge)],
  ['recirculated over engine air', '-', ({ recirculation }) => recirculation.toFixed(2)],
  ['power into the gas', 'W', ({ gasPower }) => decimals(gasPower, 0)],
  ['heat into the core', 'W', ({ heatToCore }) => decimals(heatToCore, 0)],
  ['coolant into the core', 'degC', ({ coolantIntoCore }) => celsius(coolantIntoCore)],
  ['peak of the pull that follows', 'degC', ({ pullPeak }) => celsius(pullPeak)],
];

function comparisonLines(comparison: RouteComparison): string[] {
  const { phase, lasted, before, after } = comparison;
  const table = ROWS.map(([name, unit, show]) => [`${name}, ${unit}`, show(before), show(after)]);
  return [
    `Recirculated air, at the end of ${phase} (${lasted.toFixed(0)} s):`,
    ...indented(aligned([['', 'before core', 'after core'], ...table])),
    '',
    ...explainRoutes(comparison, FILE_WORDING),
  ];
}

function turnLines(turns: readonly TurnLine[]): string[] {
  const rows = turns.map(({ name, kind, points, turns: at }) => {
    const times = kind === 'factor' ? 'x' : '';
    const cells = points.map(
      (point) => `${times}${point.value}${asideOf(name, point)} ${signed(point.change.charge, 2)}`,
    );
    const turn = at.length === 0 ? '' : `; turns at ${at.map((value) => `${times}${value.toFixed(2)}`).join(' and ')}`;
    return [name, `${cells.join('   ')}${turn}`];
  });
  return [
    'Charge behind the core less before it, K, as one input moves and the rest stays:',
    ...indented(aligned(rows, [0, 1])),
  ];
}

/** Beside an input that sets the recirculated air or the core's effectiveness, what it comes to. */
function asideOf(name: TurnLine['name'], { recirculation, coreEffectiveness }: TurnLine['points'][number]): string {
  if (name === 'bypass drop') return ` (r ${recirculation.toFixed(2)})`;
  return name === 'core conductance' ? ` (effectiveness ${coreEffectiveness.toFixed(2)})` : '';
}

function asCsv({ before, after }: RouteComparison): string {
  const head = [
    'route',
    'compressor inlet [K]',
    'discharge [K]',
    'casing [K]',
    'core outlet [K]',
    'charge [K]',
    'recirculation [-]',
    'gas power [W]',
    'heat into the core [W]',
    'coolant into the core [K]',
    'peak of the pull that follows [K]',
  ];
  const rows = [before, after].map((figures) => [
    figures.route,
    figures.compressorInlet,
    figures.discharge,
    figures.casing,
    figures.coreOutlet,
    figures.charge,
    figures.recirculation,
    figures.gasPower,
    figures.heatToCore,
    figures.coolantIntoCore,
    figures.pullPeak,
  ]);
  return csvOf(head, rows);
}

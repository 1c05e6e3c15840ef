import {
  type Config,
  type CoreDesignStudy,
  type CoreMap,
  type CoreMapPoint,
  decimals,
  FILE_WORDING,
  listed,
  type SizeChange,
} from '../sim/index.ts';
import { aligned, indented } from './aligned.ts';
import { celsius } from './celsius.ts';
import { signed } from './signed.ts';
import { underlined } from './underlined.ts';

const millimetres = (metres: number): string => (1e3 * metres).toFixed(2);
const percent = (share: number): string => `${signed(100 * share, 2)} %`;
const times = (ratio: number): string => `x${ratio.toFixed(3)}`;

type Row = readonly [name: string, value: string];

/** A core at the end of the first pull, as a person reads it. */
export function designAsText(config: Config, { design, changes }: CoreDesignStudy): string[] {
  const { geometry, air, coolant } = design;
  const { shape, metal } = geometry;
  return [
    ...underlined(config.name),
    `At the end of pull 1: air ${design.airFlow.toFixed(4)} kg/s from ${celsius(design.airIn)} to ${celsius(design.airOut)} degC, coolant ${FILE_WORDING.flow(design.coolantFlow)}.`,
    '',
    ...table('Sizes', [
      ['layers of coolant, of fins', `${shape.coolantLayers}, ${shape.finLayers}`],
      ['stack height', `${millimetres(geometry.stackHeight)} mm`],
      ['face', `${(1e4 * geometry.air.faceArea).toFixed(1)} cm2`],
      ['air: free area over face', geometry.air.areaRatio.toFixed(3)],
      ['air: hydraulic diameter', `${millimetres(geometry.air.hydraulicDiameter)} mm`],
      ['air: surface, of it fins', `${geometry.air.area.toFixed(3)}, ${geometry.air.finArea.toFixed(3)} m2`],
      ['coolant: free area of a pass', `${(1e4 * geometry.coolant.flowArea).toFixed(2)} cm2`],
      ['coolant: hydraulic diameter', `${millimetres(geometry.coolant.hydraulicDiameter)} mm`],
      ['coolant: surface', `${geometry.coolant.area.toFixed(3)} m2`],
      [
        'coolant: in tubes, in all',
        `${(1e3 * geometry.coolant.tubeVolume).toFixed(2)}, ${(1e3 * geometry.coolant.volume).toFixed(2)} L`,
      ],
      ['mass of tubes, of fins', `${metal.tubeMass.toFixed(2)}, ${metal.finMass.toFixed(2)} kg`],
      [
        'heat capacity of that metal',
        `${(metal.heatCapacity / 1e3).toFixed(2)} kJ/K; headers and end plates are not in it`,
      ],
    ]),
    '',
    ...table('Air side', [
      ['Reynolds number', air.reynoldsNumber.toFixed(0)],
      ['film coefficient', `${air.heatTransferCoefficient.toFixed(0)} W/(m2 K)`],
      ['fin efficiency, of the surface', `${air.finEfficiency.toFixed(3)}, ${air.surfaceEfficiency.toFixed(3)}`],
      ['conductance', `${design.airConductance.toFixed(0)} W/K${scaled(design.factors.airConductance)}`],
      ['drop', `${(design.airDrop / 1e3).toFixed(3)} kPa${scaled(design.factors.airDrop)}`],
      ['  entry', `${air.drop.entrance.toFixed(0)} Pa`],
      ['  friction', `${air.drop.friction.toFixed(0)} Pa`],
      ['  slowing down as it cools', `${decimals(air.drop.acceleration, 0)} Pa`],
      ['  exit', `${air.drop.exit.toFixed(0)} Pa`],
    ]),
    '',
    ...table('Coolant side', [
      ['velocity in the tubes', `${coolant.velocity.toFixed(3)} m/s`],
      ['Reynolds number', `${coolant.reynoldsNumber.toFixed(0)}, ${coolant.regime}`],
      ['film coefficient', `${coolant.heatTransferCoefficient.toFixed(0)} W/(m2 K)`],
      [
        'conductance',
        `${design.coolantConductance.toFixed(0)} W/K, wall in it${scaled(design.factors.coolantConductance)}`,
      ],
      [
        'drop',
        `${(coolant.drop.total / 1e3).toFixed(3)} kPa${config.core.coolantDrop.kind === 'power' ? '; core.coolantDropFactor stands in its place' : ''}`,
      ],
      ['  ports', `${coolant.drop.ports.toFixed(0)} Pa`],
      ['  headers', `${coolant.drop.headers.toFixed(0)} Pa`],
      ['  tubes', `${(coolant.drop.tubes.friction + coolant.drop.tubes.ends).toFixed(0)} Pa`],
    ]),
    '',
    `Both sides in series ${design.conductance.toFixed(0)} W/K${design.effectiveness === undefined ? '' : `, effectiveness ${design.effectiveness.toFixed(3)} once settled`}.`,
    ...design.marks.map((mark) => `Mark: ${mark}`),
    '',
    ...changes.flatMap(changeLines),
    '',
    ...COMMON_PRACTICE,
  ];
}

const scaled = (factor: number): string => (factor === 1 ? '' : ` (${factor.toFixed(3)} times the measures, as typed)`);

const table = (title: string, rows: readonly Row[]): string[] => [title, ...indented(aligned(rows, [0, 1]))];

function changeLines({ pull, ...change }: SizeChange): string[] {
  const { measure, factor, slope } = change;
  const rule = measure === 'width' ? `${factor}^(1 - n), n = ${slope.toFixed(3)}` : `x${factor}`;
  const lines = [
    `${measure === 'width' ? 'Wider' : 'Deeper'} by ${factor} at the same flows: air conductance ${times(change.airConductance)} (${rule} gives ${times(change.airConductanceByRule)}), both sides in series ${times(change.conductance)}, core pressure drop ${times(change.airDrop)}, of friction alone ${times(change.airDropOfFriction)}; the difference is entry, exit and the slowing down.`,
  ];
  if (pull === undefined) return lines;
  const peak = `${signed(pull.peak, 2)} K`;
  return [
    ...lines,
    `  In the first pull: charge peak ${peak}, air mass ${percent(pull.airFlow)}, drive power ${percent(pull.drivePower)}.`,
  ];
}

/** What the trade says, beside what the model says; nothing here is computed. */
const COMMON_PRACTICE = [
  'Common practice, no published source: rollers repeat to 1 to 2 %, so a smaller change of air mass does not show on them.',
  'Common practice, no published source: a deep core needs its fin density chosen for heat and for flow; --map shows both.',
];

const COLUMNS: readonly (readonly [string, string, (point: CoreMapPoint) => string])[] = [
  ['depth', 'mm', ({ depth }) => (1e3 * depth).toFixed(0)],
  ['width', '-', ({ width }) => times(width)],
  ['fins', 'per inch', ({ finPitch }) => (0.0254 / finPitch).toFixed(1)],
  ['peak', 'degC', ({ peak }) => celsius(peak)],
  ['core drop', 'kPa', ({ airDrop }) => (airDrop / 1e3).toFixed(2)],
  ['drive', 'kW', ({ drivePower }) => (drivePower / 1e3).toFixed(2)],
  ['air', 'kg/s', ({ airFlow }) => airFlow.toFixed(4)],
  ['', '', ({ verdict }) => (verdict === 'good' ? '' : verdict)],
];

const MEASURES = { finPitch: 'fin density', depth: 'depth', width: 'width' } as const;

/** The map as a table, and the optimum for each goal. */
export function mapAsText({ points, optima }: CoreMap): string[] {
  const cells = [
    COLUMNS.map(([heading]) => heading),
    COLUMNS.map(([, unit]) => unit),
    ...points.map((point) => COLUMNS.map(([, , show]) => show(point))),
  ];
  return [
    'First pull with other fins, depths and widths, flows and pressures at lift:',
    ...aligned(cells, []),
    '',
    ...optima.map(({ goal, point, atEdgeOf }) => {
      const { finPitch, depth, width } = points[point];
      const where = listed(atEdgeOf.map((measure) => MEASURES[measure]));
      const edge = where === '' ? '' : `; at the edge of the map in ${where}, so it may lie beyond`;
      return `For ${goal}: ${(0.0254 / finPitch).toFixed(1)} fins per inch, ${(1e3 * depth).toFixed(0)} mm deep, width ${times(width)}${edge}.`;
    }),
  ];
}

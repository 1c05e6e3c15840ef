import type { CoreDesignStudy, SizeChange } from '../../sim/index.ts';
import { fixed, joined, length, pressure } from '../format.ts';
import type { UnitChoice } from '../state/display.ts';
import { area, change, conductance, mass, percent, times, volume } from './shown.ts';

type Design = CoreDesignStudy['design'];

/** One line of what follows from measures. */
interface FollowRow {
  readonly name: string;
  readonly value: string;
  /** belongs to the line above: a part of it */
  readonly isPart?: true;
}

interface FollowSection {
  readonly title: string;
  readonly rows: readonly FollowRow[];
}

const part = (name: string, value: string): FollowRow => ({ name, value, isPart: true });

/** How much a typed figure makes of what the measures give. */
const typed = (factor: number): string => (factor === 1 ? '' : `, typed: ${times(factor)}`);

/** What a core by its measures comes to, at the flows of the first pull's end. */
export function followSections(design: Design, units: UnitChoice): FollowSection[] {
  const { geometry, air, coolant, factors } = design;
  const { metal } = geometry;
  const { drop } = coolant;
  return [
    {
      title: 'Air side',
      rows: [
        { name: `Conductance UA${typed(factors.airConductance)}`, value: conductance(design.airConductance) },
        { name: 'Fin efficiency', value: fixed(air.finEfficiency, 2) },
        { name: 'Reynolds number', value: fixed(air.reynoldsNumber, 0) },
        { name: `Pressure drop${typed(factors.airDrop)}`, value: pressure(design.airDrop, units) },
        part('entry', pressure(air.drop.entrance, units)),
        part('friction', pressure(air.drop.friction, units)),
        part('slowing down as it cools', pressure(air.drop.acceleration, units)),
        part('exit', pressure(air.drop.exit, units)),
        { name: 'Face', value: area(geometry.air.faceArea) },
        { name: 'Free for the air', value: area(geometry.air.freeArea) },
        { name: 'Surface', value: area(geometry.air.area) },
        part('of it fins', area(geometry.air.finArea)),
        { name: 'Hydraulic diameter', value: length(geometry.air.hydraulicDiameter, units) },
      ],
    },
    {
      title: 'Coolant side',
      rows: [
        {
          name: `Conductance UA, wall in it${typed(factors.coolantConductance)}`,
          value: conductance(design.coolantConductance),
        },
        { name: 'Speed in the tubes', value: joined({ value: fixed(coolant.velocity, 2), unit: 'm/s' }) },
        { name: 'Reynolds number', value: `${fixed(coolant.reynoldsNumber, 0)}, ${coolant.regime}` },
        { name: 'Pressure drop', value: pressure(drop.total, units) },
        part('ports', pressure(drop.ports, units)),
        part('headers', pressure(drop.headers, units)),
        part('tubes', pressure(drop.tubes.friction + drop.tubes.ends, units)),
        { name: 'Free for the coolant', value: area(geometry.coolant.flowArea) },
        { name: 'Surface', value: area(geometry.coolant.area) },
        { name: 'Hydraulic diameter', value: length(geometry.coolant.hydraulicDiameter, units) },
      ],
    },
    {
      title: 'Both sides, metal, coolant',
      rows: [
        { name: 'UA of both in series', value: conductance(design.conductance) },
        ...(design.effectiveness === undefined
          ? []
          : [{ name: 'Effectiveness, settled', value: fixed(design.effectiveness, 2) }]),
        { name: 'Tubes', value: mass(metal.tubeMass) },
        { name: 'Fins', value: mass(metal.finMass) },
        { name: 'Heat capacity of both', value: joined({ value: fixed(metal.heatCapacity / 1000, 2), unit: 'kJ/K' }) },
        { name: 'Coolant in the tubes', value: volume(geometry.coolant.tubeVolume) },
        { name: 'with both headers', value: volume(geometry.coolant.volume) },
      ],
    },
  ];
}

/** At which flows: the end of the first pull. */
export const atFlows = ({ airFlow, coolantFlow }: Design, coolantShown: (flow: number) => string): string =>
  `At the end of the first pull: air ${joined({ value: fixed(airFlow, 4), unit: 'kg/s' })}, coolant ${coolantShown(coolantFlow)}.`;

/** What a larger core does, one line of a table with a column for each measure. */
interface ChangeRow {
  readonly name: string;
  readonly values: readonly string[];
}

const ABSENT = '–';

/** Cores with one measure larger beside the core as it is. */
export function changeRows(changes: readonly SizeChange[], units: UnitChoice): ChangeRow[] {
  const row = (name: string, read: (change: SizeChange) => string): ChangeRow => ({ name, values: changes.map(read) });
  return [
    row('Charge peak', ({ pull }) => (pull === undefined ? ABSENT : change(pull.peak, units))),
    row('Air mass', ({ pull }) => (pull === undefined ? ABSENT : percent(pull.airFlow))),
    row('Drive power', ({ pull }) => (pull === undefined ? ABSENT : percent(pull.drivePower))),
    row('UA air side', (each) => times(each.airConductance)),
    row('UA coolant side', (each) => times(each.coolantConductance)),
    row('UA both', (each) => times(each.conductance)),
    row('Core pressure drop', (each) => times(each.airDrop)),
  ];
}

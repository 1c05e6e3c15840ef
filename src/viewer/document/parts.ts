import { INPUT_PARTS, type InputPart } from '../state/display.ts';

/** A part of the car as the form shows it. */
export interface PartSpec {
  readonly part: InputPart;
  readonly name: string;
  /** groups of the file that belong to it, the first of them the part itself */
  readonly groups: readonly string[];
  /** keys shown at once, the first the one whose value stands for the part; the others are behind "more" */
  readonly main: readonly string[];
}

const SPECS: Record<InputPart, Omit<PartSpec, 'part'>> = {
  core: { name: 'Core', groups: ['core', 'core.test', 'coreGeometry'], main: ['core.airConductance'] },
  pump: {
    name: 'Pump',
    groups: ['pump', 'secondPump'],
    main: ['pump.freeFlow', 'pump.shutOffPressure', 'pump.electricalPower'],
  },
  lines: { name: 'Loop, lines and ports', groups: ['lines', 'loop'], main: ['lines.bore'] },
  exchanger: {
    name: 'Front exchanger',
    groups: ['exchanger', 'exchanger.test', 'secondExchanger', 'secondExchanger.test', 'heatSink'],
    main: ['exchanger.faceArea', 'exchanger.airConductance', 'exchanger.coolantConductance'],
  },
  tank: {
    name: 'Tank and coolant',
    groups: ['reservoir', 'coolant'],
    main: ['reservoir.coolantVolume', 'reservoir.iceMass', 'coolant.glycolByVolume'],
  },
  compressor: {
    name: 'Compressor',
    groups: ['compressor', 'bypass', 'casing'],
    main: ['compressor.sweptVolume', 'compressor.driveRatio', 'compressor.quotedEfficiency'],
  },
  air: {
    name: 'Air and engine',
    groups: ['ambient', 'room', 'intake', 'engine', 'plenum'],
    main: [
      'ambient.temperature',
      'ambient.pressure',
      'ambient.altitude',
      'ambient.relativeHumidity',
      'engine.displacement',
    ],
  },
  pulls: { name: 'Pulls', groups: ['cycle', 'chargeTable'], main: [] },
  sensor: {
    name: 'Sensor, start, solver',
    groups: ['sensor', 'start', 'numerics'],
    main: ['sensor.timeConstantMoving', 'sensor.timeConstantStill'],
  },
};

export const PARTS: readonly PartSpec[] = INPUT_PARTS.map((part) => ({ part, ...SPECS[part] }));

/** Groups whose keys stand outside the nine parts: above them, or below. */
export const OTHER_GROUPS = ['', 'limit', 'variants', 'upgrades'] as const;

/** The part that a path of the file belongs to; undefined for limit, name, notes, variants and upgrades. */
export function partOf(path: string): InputPart | undefined {
  const [group] = path.split('.');
  return PARTS.find(({ groups }) => groups.includes(group))?.part;
}

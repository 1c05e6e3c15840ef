import type { Group } from '../table.ts';
import { COMMON_PRACTICE, NO_PUBLISHED_FIGURE } from './sources.ts';

const LOUVRED = 'needed with louvred fins';
const STRIPS = 'needed with offset strips';
const PORTS = 'needed with multi-port tubes';
const BY_POINT = 'no measured point';
const TURBULATED = `turbulated tubes only: ${NO_PUBLISHED_FIGURE}`;

// Two lines a parameter: the numbers, then the words.
// biome-ignore format: a table is read by rows
export const CORE_GEOMETRY = {
  coreGeometry: {
    width: { label: 'core width', unit: 'mm', min: 20, max: 2000, usual: [60, 900],
      meaning: 'along the coolant, finned, between the headers' },
    height: { label: 'core height', unit: 'mm', min: 10, max: 1000, usual: [30, 600],
      meaning: 'across the stack of tubes and fins; fin layers are counted from it' },
    depth: { label: 'core depth', unit: 'mm', min: 5, max: 400, usual: [15, 200],
      meaning: 'along the air, finned' },
    fins: { label: 'kind of fins', choices: ['plain', 'louvred', 'offset strip'],
      meaning: 'what stands between the tubes' },
    finPitch: { label: 'fin pitch', unit: 'mm/fin', min: 0.4, max: 12, usual: [0.7, 5],
      meaning: 'one fin to the next, spacing and thickness together; or fins per inch: "14 fpi"' },
    finHeight: { label: 'fin height', unit: 'mm', min: 1, max: 40, usual: [2.5, 20],
      meaning: 'between the plates or tubes that a fin touches' },
    finThickness: { label: 'fin thickness', unit: 'mm', min: 0.02, max: 1, usual: [0.05, 0.4], default: 0.1,
      meaning: 'of the sheet', source: COMMON_PRACTICE },
    louvrePitch: { label: 'louvre pitch', unit: 'mm', min: 0.3, max: 10, usual: [0.5, 4], absent: LOUVRED,
      meaning: 'one louvre to the next, along the air' },
    louvreLength: { label: 'louvre length', unit: 'mm', min: 0.5, max: 40, usual: [2, 19], absent: LOUVRED,
      meaning: 'of the cut, across the air' },
    louvreAngle: { label: 'louvre angle', unit: 'deg', min: 2, max: 60, usual: [8, 40], absent: LOUVRED,
      meaning: 'of a louvre against the air' },
    stripLength: { label: 'strip length', unit: 'mm', min: 0.5, max: 100, usual: [1, 15], absent: STRIPS,
      meaning: 'of one strip, along the air' },
    tubes: { label: 'kind of tubes', choices: ['plain', 'turbulated', 'multi-port'],
      meaning: 'what the coolant meets inside a tube or bar layer' },
    tubeHeight: { label: 'tube height', unit: 'mm', min: 0.8, max: 20, usual: [1.2, 10],
      meaning: 'outside, across the stack' },
    tubeWall: { label: 'tube wall', unit: 'mm', min: 0.1, max: 3, usual: [0.2, 1.2], default: 0.4,
      meaning: 'thickness of the sheet between coolant and fins', source: COMMON_PRACTICE },
    ports: { label: 'ports of a tube', unit: '-', min: 1, max: 200, whole: true, absent: PORTS,
      meaning: 'channels side by side in one tube' },
    webThickness: { label: 'web thickness', unit: 'mm', min: 0.1, max: 3, usual: [0.2, 1.2], absent: 'tubeWall',
      meaning: 'of the walls between the ports' },
    turbulatorHeat: { label: 'turbulator heat factor', unit: '-', min: 1, max: 20, usual: [1, 8], default: 2.5,
      meaning: 'film coefficient over that of the plain tube, at turbulatorAtReynolds', source: TURBULATED },
    turbulatorFriction: { label: 'turbulator friction factor', unit: '-', min: 1, max: 60, usual: [1, 20], default: 4,
      meaning: 'friction over that of the plain tube, at any flow', source: TURBULATED },
    turbulatorExponent: { label: 'turbulator exponent', unit: '-', min: 0, max: 1, default: 0.6,
      meaning: 'film coefficient goes with coolant flow to this power', source: `turbulated tubes only: ${COMMON_PRACTICE}` },
    turbulatorAtReynolds: { label: 'Reynolds number of the turbulator factor', unit: '-', min: 20, max: 20000, usual: [50, 5000], default: 500,
      meaning: 'at which turbulatorHeat holds, on the hydraulic diameter of the plain tube', source: 'middle of what flat tubes of a charge-air loop see' },
    coolantLayers: { label: 'coolant layers', unit: '-', min: 1, max: 80, whole: true,
      meaning: 'layers of tubes across the stack' },
    rows: { label: 'tubes of one layer', unit: '-', min: 1, max: 20, whole: true, default: 1,
      meaning: 'one behind the other along the air; a tube with a wall down its middle counts as two', source: 'one tube as deep as the core' },
    portsAt: { label: 'place of the ports', choices: ['same end', 'opposite ends'], default: 'same end',
      meaning: 'inlet and outlet at the same end of the stack (U) or at opposite ends (Z)', source: COMMON_PRACTICE },
    sheets: { label: 'groups of coolant layers', unit: '-', min: 1, max: 5, whole: true, default: 1,
      meaning: 'neighbouring layers that share one part of the coolant, as the headers split it; 1 = every layer gets the same', source: 'even flow: every group costs a grid of cells' },
    portBore: { label: 'bore of the core ports', unit: 'mm', min: 4, max: 80, usual: [8, 40], trap: 'fitting size',
      meaning: 'inside diameter where the coolant enters and leaves the headers' },
    headerVolume: { label: 'volume of one header', unit: 'L', min: 0.005, max: 10, usual: [0.02, 3],
      meaning: 'coolant inside one of the two headers; its flow area is this over the height' },
    alloy: { label: 'alloy', choices: ['3003 brazed', '3003 hard', '6061 annealed', '6061-T6', '1100', 'copper', 'brass'], default: '3003 brazed',
      meaning: 'of tubes and fins', source: 'most brazed cores: common practice' },
  },
  /** keys of the group core that calibrate a geometry */
  measured: {
    measuredHeat: { label: 'measured heat of the core', unit: 'kW', min: 0.05, max: 500, usual: [0.5, 150], absent: BY_POINT,
      meaning: 'steady heat at the measured flows and inlets; scales the air side of coreGeometry' },
    measuredAirFlow: { label: 'air flow of the measured heat', unit: 'kg/s', min: 0.005, max: 3, usual: [0.02, 1.5], absent: BY_POINT,
      meaning: 'through the core' },
    measuredAirInlet: { label: 'air inlet of the measured heat', unit: 'degC', min: -40, max: 350, usual: [20, 250], absent: BY_POINT,
      meaning: 'before the core' },
    measuredCoolantFlow: { label: 'coolant flow of the measured heat', unit: 'L/min', min: 0.5, max: 400, usual: [3, 150], absent: BY_POINT,
      meaning: 'through the core, of the coolant of this file' },
    measuredCoolantInlet: { label: 'coolant inlet of the measured heat', unit: 'degC', min: -40, max: 120, usual: [-10, 100], absent: BY_POINT,
      meaning: 'before the core' },
  },
} as const satisfies Record<string, Group>;

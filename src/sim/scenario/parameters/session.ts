import { PHASE_KINDS } from '../config.ts';
import type { Group } from '../table.ts';
import { COMMON_PRACTICE } from './sources.ts';

// Two lines a parameter: the numbers, then the words.
// biome-ignore format: a table is read by rows
export const SESSION = {
  sensor: {
    timeConstantMoving: { label: 'sensor time constant in moving air', unit: 's', min: 0.05, max: 1000, usual: [0.3, 30], default: 3,
      typical: 'typical are 2 to 5 s in moving air',
      meaning: 'at atFlow; goes with flow to the power -0.5', source: `2 to 5 s: ${COMMON_PRACTICE}` },
    atFlow: { label: 'flow of the sensor time constant', unit: 'kg/s', min: 0.001, max: 3, default: 0.2,
      meaning: 'air flow at which timeConstantMoving holds', source: 'a 2 L engine under boost' },
    timeConstantStill: { label: 'sensor time constant in still air', unit: 's', min: 0.05, max: 1000, usual: [1, 60], default: 9,
      typical: 'typical are 8 to 15 s in still air',
      meaning: 'the most it rises to at low flow', source: `8 to 15 s: ${COMMON_PRACTICE}; one data sheet says below 15 s in oil` },
    airShare: { label: 'share of air in the sensor reading', unit: 'share', min: 0, max: 1, usual: [0.5, 1], default: 1,
      meaning: 'the rest follows the plenum metal that holds the sensor', source: 'a plain lag' },
  },
  start: {
    coolant: { label: 'coolant at the start', unit: 'degC', min: -50, max: 150, usual: [-40, 100], absent: 'ambient.temperature',
      meaning: 'everywhere in the loop' },
    metal: { label: 'metal at the start', unit: 'degC', min: -50, max: 150, usual: [-40, 120], absent: 'start.coolant',
      meaning: 'core, exchanger and line walls' },
    casing: { label: 'casing at the start', unit: 'degC', min: -50, max: 250, usual: [-40, 150], absent: 'ambient.temperature',
      meaning: 'compressor casing' },
    plenum: { label: 'plenum at the start', unit: 'degC', min: -50, max: 250, usual: [-40, 130], absent: 'ambient.temperature',
      meaning: 'plenum metal' },
    sensor: { label: 'sensor at the start', unit: 'degC', min: -50, max: 250, usual: [-40, 130], absent: 'start.plenum',
      meaning: 'what the sensor shows at first' },
  },
  limit: {
    chargeTemperature: { label: 'limit of the charge temperature', unit: 'degC', min: -40, max: 250, usual: [0, 120],
      meaning: 'true charge temperature that a pull must stay at or under' },
  },
  numerics: {
    tolerance: { label: 'tolerance of a step', unit: 'K', min: 1e-6, max: 5, usual: [1e-5, 0.5], default: 0.1,
      meaning: 'largest error of one step in any cell', source: 'own measurement: pull peaks within 0.02 K of the converged ones' },
    longestStepInPull: { label: 'longest step in a pull', unit: 's', min: 0.001, max: 60, default: 1,
      meaning: 'also the widest gap between recorded instants of a pull', source: 'own choice: a 12 s pull has a dozen points and more' },
    longestStep: { label: 'longest step elsewhere', unit: 's', min: 0.001, max: 600, default: 10,
      meaning: 'also the widest gap between recorded instants', source: 'own choice' },
  },
  phase: {
    name: { label: 'name of the phase', text: true, absent: 'the kind of the phase',
      meaning: 'as results name it' },
    kind: { label: 'kind of the phase', choices: PHASE_KINDS,
      meaning: 'pull: wide open, bypass closed. hot soak: engine off. The others: part load, bypass open' },
    duration: { label: 'duration of the phase', unit: 's', min: 0.1, max: 172800, usual: [1, 7200],
      meaning: 'pulls 3 to 60 s, rests 60 to 900 s are typical', whenMissing: 'A phase of no length computes nothing.' },
    engineSpeed: { label: 'engine speed', unit: 'rpm', min: 0, max: 20000, usual: [0, 12000], ramp: true, absent: '0 in a hot soak; needed elsewhere',
      meaning: 'one number, or [at the start, at the end]' },
    manifoldPressure: { label: 'manifold pressure', unit: 'kPa abs', min: 10, max: 120, usual: [20, 105], ramp: true, absent: 'not used in a pull or a hot soak; needed elsewhere',
      meaning: 'at part load, absolute; under boost it follows from compressor and engine' },
    exchangerAirSpeed: { label: 'air speed at the exchanger', unit: 'm/s', min: 0, max: 100, usual: [0, 40], ramp: true, absent: '0 in a hot soak; needed elsewhere',
      meaning: 'at its face, not road speed: 20 to 35 % of road speed, 3 to 8 m/s from a fan before the car, less through a stack' },
    bayAboveAmbient: { label: 'bay air above outside', unit: 'K', min: -20, max: 150, usual: [0, 80], default: 25,
      meaning: 'air in the engine bay', source: '10 to 60 K: common practice, and one paper' },
    pump: { label: 'pump', choices: ['on', 'off'], absent: 'on; must be said in a hot soak',
      meaning: 'off stands for a voltage ratio of 0' },
    pumpVoltageRatio: { label: 'pump voltage ratio', unit: '-', min: 0, max: 2, usual: [0.5, 1.3], absent: '1 with the pump on',
      meaning: 'voltage at the pump over its rated voltage' },
    engineMetal: { label: 'engine metal', unit: 'degC', min: -50, max: 200, usual: [-40, 130], default: 90,
      meaning: 'temperature of the metal that the plenum is bolted to', source: 'engine at running temperature: common practice' },
    oil: { label: 'compressor oil', unit: 'degC', min: -50, max: 200, usual: [-40, 150], default: 90,
      meaning: 'temperature of the oil that the casing meets', source: 'engine at running temperature: common practice' },
  },
  repetition: {
    repeat: { label: 'number of repetitions', unit: '-', min: 1, max: 500, whole: true,
      meaning: 'how often its phases run one after the other' },
  },
  variant: {
    name: { label: 'name of the variant', text: true,
      meaning: 'as answers name it' },
    basedOn: { label: 'variant it is based on', text: true, absent: 'the file itself',
      meaning: 'its changes are made first' },
  },
} as const satisfies Record<string, Group>;

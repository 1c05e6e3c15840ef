import type { Config } from '../../src/sim/scenario/config.ts';
import type { JsonValue } from '../../src/sim/scenario/issue.ts';
import { parseScenario } from '../../src/sim/scenario/parse.ts';
import { toConfig } from '../../src/sim/scenario/to-config.ts';
import { shippedDocument } from './shipped.ts';

/** Paths of the file with their new values; `undefined` takes the key out. */
export type Edits = Readonly<Record<string, JsonValue | undefined>>;

/** A scenario file as an object that a test may change. */
// biome-ignore lint/suspicious/noExplicitAny: any key of the file, and any mistake in it
export type LooseDocument = any;

/**
 * The shipped default car on grids of a few cells, through every kind of phase in about a minute: a run takes
 * milliseconds. No variants, no upgrades.
 */
export function shortDocument(edits: Edits = {}): LooseDocument {
  const {
    variants: _,
    upgrades: ____,
    $schema: __,
    notes: ___,
    ...car
  } = structuredClone(shippedDocument('rolling-road-estate')) as LooseDocument;
  for (const part of [car.core, car.exchanger]) Object.assign(part, { cellsAlongAir: 6, cellsAlongCoolant: 4 });
  const bay = { bayAboveAmbient: 25 };
  car.cycle = [
    { kind: 'idle', duration: 15, engineSpeed: 1200, manifoldPressure: 38, exchangerAirSpeed: 2.5, ...bay },
    {
      repeat: 2,
      phases: [
        { kind: 'pull', duration: 6, engineSpeed: [2500, 6600], exchangerAirSpeed: 2.5, ...bay },
        { kind: 'cruise', duration: 12, engineSpeed: 2600, manifoldPressure: 55, exchangerAirSpeed: 5, ...bay },
      ],
    },
    { kind: 'hot soak', duration: 20, pump: 'off', bayAboveAmbient: 40 },
  ];
  for (const [path, value] of Object.entries(edits)) edit(car, path, value);
  return car;
}

/** Nine upgrades of that car, the last of which it has already. */
export const NINE_UPGRADES = [
  { 'core.airConductance': 585 },
  { 'core.coolantConductance': 3582 },
  { 'core.airDrop': 6 },
  { 'lines.bore': 22 },
  { 'pump.freeFlow': 60 },
  { 'exchanger.faceArea': 0.18 },
  { 'reservoir.coolantVolume': 12.3 },
  { 'intake.pickUp': 2 },
  { 'pump.shutOffPressure': 28 },
].map((changes) => ({ name: Object.keys(changes)[0], changes }));

/** Sets the value at a path, groups on the way made where the file has none. */
export function edit(document: LooseDocument, path: string, value: JsonValue | undefined): void {
  const steps = path.split('.');
  const last = steps.pop() ?? '';
  let place = document;
  for (const step of steps) {
    place[step] ??= {};
    place = place[step];
  }
  if (value === undefined) delete place[last];
  else place[last] = value;
}

/** Edits that leave the short session an idle phase alone. */
export const WITHOUT_PULL: Edits = { cycle: [shortDocument().cycle[0]] };

/** The shipped default car with so many pulls: long enough to be cancelled. No variants. */
export function longDocument(pulls: number): LooseDocument {
  const car: LooseDocument = { ...structuredClone(shippedDocument('rolling-road-estate')), variants: [] };
  car.cycle[1].repeat = pulls;
  return car;
}

export function shortConfig(edits: Edits = {}): Config {
  const { scenario, issues } = parseScenario(JSON.stringify(shortDocument(edits)));
  if (scenario === undefined) throw new Error(issues.map(({ path, message }) => `${path}: ${message}`).join('\n'));
  return toConfig(scenario);
}

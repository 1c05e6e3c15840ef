import { parseScenario } from '../../../src/sim/scenario/parse.ts';
import { toConfig } from '../../../src/sim/scenario/to-config.ts';
import { type Edits, estateWith } from './estate.ts';

/** A core by its measures, invented: 16 turbulated tubes, louvred fins at 14 to the inch. */
export const MEASURES = {
  width: 300,
  height: 180,
  depth: 80,
  fins: 'louvred',
  finPitch: '14 fpi',
  finHeight: 8,
  louvrePitch: 1.4,
  louvreLength: 6.8,
  louvreAngle: 27,
  tubes: 'turbulated',
  tubeHeight: 3,
  coolantLayers: 16,
  portBore: 19,
  headerVolume: 0.15,
} as const;

/**
 * Edits that give the estate this core: measures changed or, with undefined, left out; keys beside them in the core.
 */
export function withMeasures(
  changes: Readonly<Record<string, unknown>> = {},
  core: Readonly<Record<string, unknown>> = {},
): Edits {
  return { core, coreGeometry: { ...MEASURES, ...changes } };
}

export function measuredConfig(edits: Edits) {
  const { scenario, issues } = parseScenario(estateWith(edits));
  if (scenario === undefined) throw new Error(JSON.stringify(issues));
  return toConfig(scenario);
}

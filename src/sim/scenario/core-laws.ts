import type { AirFlow } from '../correlations/core-air-side.ts';
import { type CoolantFlow, coolantFilm, coolantSplit } from '../correlations/core-coolant-side.ts';
import { accelerationOf, airPoint, coolantPoint, standingConductance } from '../correlations/core-curves.ts';
import { coreGeometry } from '../correlations/core-geometry.ts';
import { layerGroups } from '../correlations/distribution-weights.ts';
import { sampleCurve } from '../kernels/log-table.ts';
import type { CoreConfig, CoreGeometryConfig, CoreLayout } from './config/exchangers.ts';
import { calibrationMarks, rangeMarks } from './core-marks.ts';
import { ofAllCores } from './laws.ts';

/** What a geometry gives the model. */
export type CoreLaws = Pick<
  CoreConfig,
  | 'airConductance'
  | 'coolantConductance'
  | 'airDrop'
  | 'coolantDrop'
  | 'metalHeatCapacity'
  | 'coolantVolume'
  | 'geometry'
  | 'marks'
>;

/** Between the flows at which they are worked out the laws are met to about this share: far below what they claim. */
const TABLE_SHARE = 3e-4;

export const airFlowOf = ({ air }: CoreGeometryConfig, massFlow: number): AirFlow => ({ massFlow, ...air });
export const coolantFlowOf = ({ coolant }: CoreGeometryConfig, volumeFlow: number): CoolantFlow => ({
  volumeFlow,
  ...coolant,
});

/**
 * The laws of a core from its measures: both films, drops, metal and coolant, sampled over the flows that the scenario
 * can reach, with what measured points make of them.
 *
 * Properties are those at the geometry's own two temperatures. Where the opening leaves only a share of the face to the
 * air, the core acts as one as much narrower.
 *
 * @param geometry - a core whose parts have room for one another
 * @returns laws of the core and the marks that belong to them [SI]
 * @throws {OutOfRangeError} when a part has no room or the headers allow no steady split
 */
export function coreLaws(geometry: CoreGeometryConfig): CoreLaws {
  const { factors, exposedShare, coolant, coolantDropFactor } = geometry;
  const core = coreGeometry(geometry.shape);
  const airSamples = sampleCurve(
    (flow) => airPoint(core, airFlowOf(geometry, flow / exposedShare)),
    ({ conductance, dropTimesDensity }) => [conductance, dropTimesDensity],
    geometry.airFlows,
    TABLE_SHARE,
  );
  const coolantSamples = sampleCurve(
    (flow) => coolantPoint(core, coolantFlowOf(geometry, flow), geometry.arrangement),
    ({ conductance, drop }) => [conductance, drop.total],
    geometry.coolantFlows,
    TABLE_SHARE,
  );
  const [airFlows, air] = [airSamples.map(({ x }) => x), airSamples.map(({ found }) => found)];
  const [coolantFlows, coolants] = [coolantSamples.map(({ x }) => x), coolantSamples.map(({ found }) => found)];
  const onAir = factors.airConductance * exposedShare;
  const onCoolant = factors.coolantConductance * exposedShare;
  return {
    airConductance: {
      kind: 'table',
      flow: airFlows,
      value: air.map(({ conductance }) => onAir * conductance),
      floor: 0,
    },
    coolantConductance: {
      kind: 'table',
      flow: coolantFlows.map((flow) => flow * coolant.density),
      value: coolants.map(({ conductance }) => onCoolant * conductance),
      floor: onCoolant * standingConductance(core, coolantFlowOf(geometry, 1)),
    },
    airDrop: {
      kind: 'table',
      flow: airFlows,
      dropTimesDensity: air.map(({ dropTimesDensity }) => factors.airDrop * dropTimesDensity),
      acceleration: accelerationOf(core) / exposedShare ** 2,
    },
    coolantDrop:
      coolantDropFactor === undefined
        ? { kind: 'table', flow: coolantFlows, drop: coolants.map(({ drop }) => drop.total) }
        : { kind: 'power', factor: coolantDropFactor },
    metalHeatCapacity: factors.metalHeatCapacity * core.metal.heatCapacity,
    coolantVolume: factors.coolantVolume * core.coolant.volume,
    geometry,
    marks: [
      ...rangeMarks(
        'Air side of the core',
        air.map(({ film }) => film.range),
      ),
      ...rangeMarks(
        'Coolant side of the core',
        coolants.map(({ film }) => film.range),
      ),
      ...calibrationMarks(factors),
    ],
  };
}

/** The loop runs at about this share of the highest flow; the split over the layers hangs little on it. Own choice. */
const SPLIT_AT = 0.5;

/**
 * Groups of layers with their shares of all layers and of the coolant.
 *
 * @param geometry - a core whose parts have room for one another
 * @returns the groups from the inlet port on; a share of coolant at or below 0 says that layers run backwards [-]
 * @throws {OutOfRangeError} when the headers allow no steady split
 */
export function sheetsOf(geometry: CoreGeometryConfig): CoreLayout['sheets'] {
  const { shape, sheets, arrangement, coolantFlows } = geometry;
  if (sheets === 1) return [{ layers: 1, flow: 1 }];
  const core = coreGeometry(shape);
  const flow = coolantFlowOf(geometry, SPLIT_AT * coolantFlows[1]);
  const { shares } = coolantSplit(core, flow, coolantFilm(core, flow), arrangement);
  return layerGroups(shares, sheets).map(({ layers, relativeFlow }) => {
    const share = layers / shape.coolantLayers;
    return { layers: share, flow: share * relativeFlow };
  });
}

/** A core with its laws and groups of layers from its measures; layers full of air stay so. */
export function withLaws(core: CoreConfig, geometry: CoreGeometryConfig): CoreConfig {
  const layout = { ...core.layout, sheets: sheetsOf(geometry) };
  const wet = { sideBySide: layout.wetShare, inSeries: 1 };
  return { ...core, ...ofAllCores(ofAllCores(coreLaws(geometry), layout), wet), layout };
}

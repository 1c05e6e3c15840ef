import { requirePositive } from '../errors.ts';
import type { CoreGeometry } from './core-geometry.ts';
import { nusseltDevelopingGap, nusseltDevelopingPort } from './developing-nusselt.ts';
import { finEfficiency } from './fin-efficiency.ts';
import { type LayerSplit, splitOverLayers } from './header-distribution.ts';
import { developingRectangle, frictionDeveloping, frictionLaminarRectangle } from './laminar-ducts.ts';
import { joinedMark, markOf, type RangeMark } from './range-mark.ts';
import { type DuctFlow, type FlowRegime, smoothDuct } from './turbulent-ducts.ts';

/** Coolant through the core: m3/s and its properties at the mean temperature, SI. */
export interface CoolantFlow {
  readonly volumeFlow: number;
  readonly density: number;
  readonly heatCapacity: number;
  readonly viscosity: number;
  readonly conductivity: number;
}

/** Film of the coolant in the tubes; SI. */
export interface CoolantFilm {
  /** m/s in the tubes */
  readonly velocity: number;
  /** on the hydraulic diameter */
  readonly reynoldsNumber: number;
  readonly regime: FlowRegime;
  readonly nusseltNumber: number;
  readonly heatTransferCoefficient: number;
  /** Fanning, a mean over one pass with the growing profile in it */
  readonly friction: number;
  /** film coefficient x area, webs with their efficiency; W/K */
  readonly conductance: number;
  readonly range: RangeMark;
}

/** Developing friction of a flat passage: K and C of parallel plates for every gap, [1] of frictionDeveloping. */
const PLATES_ENTRY = { extraHead: 0.674, constant: 0.000029 };

/**
 * Film coefficient, friction and conductance of the coolant side of a core.
 *
 * Plain flat tubes: developing laminar flow between plates (nusseltDevelopingGap) up to Re 2300, ports as rectangles
 * (nusseltDevelopingPort), Gnielinski and Konakov from 4000, a straight line between. The flow starts afresh in every
 * pass. Turbulated tubes: the plain tube at a stated Reynolds number times a stated factor, from there with a stated
 * exponent (0.6 is common practice, no published source); they are marked unless the factor is 1.
 *
 * Range: that of the law used, marked; flow above 0. The factor of the wall's viscosity is left out.
 *
 * @param geometry - of the core [SI]
 * @param flow - volume flow and properties of the coolant [SI]
 * @returns film and conductance, with the mark of the laws used [SI]
 * @throws {OutOfRangeError} when the flow or a property is not above 0
 *
 * @example
 * see tests/sim/correlations/worked-core.test.ts
 *
 * [1] VDI Heat Atlas, 2nd ed., Springer, 2010, sections G1 and G2.
 */
export function coolantFilm(geometry: CoreGeometry, flow: CoolantFlow): CoolantFilm {
  const { coolant, shape } = geometry;
  requirePositive('coolant flow in m3/s', flow.volumeFlow);
  const velocity = flow.volumeFlow / coolant.flowArea;
  const Re = (flow.density * velocity * coolant.hydraulicDiameter) / flow.viscosity;
  const Pr = (flow.viscosity * flow.heatCapacity) / flow.conductivity;
  const law = lawOf(geometry, Re, Pr);
  const heatTransferCoefficient = (law.nusseltNumber * flow.conductivity) / coolant.hydraulicDiameter;
  const { tubes } = shape;
  const webEfficiency =
    tubes.kind === 'multi-port' && tubes.ports > 1
      ? finEfficiency({
          heatTransferCoefficient,
          conductivity: shape.alloy.conductivity,
          thickness: tubes.webThickness,
          halfLength: coolant.gap / 2,
          stripLength: shape.length,
        })
      : 1;
  const wetted = coolant.area - coolant.webArea * (1 - webEfficiency);
  return {
    velocity,
    reynoldsNumber: Re,
    ...law,
    heatTransferCoefficient,
    conductance: heatTransferCoefficient * wetted,
  };
}

function lawOf(geometry: CoreGeometry, Re: number, Pr: number): DuctFlow {
  const { tubes } = geometry.shape;
  const smooth = smoothLaw(geometry, Re, Pr);
  if (tubes.kind !== 'turbulated') return smooth;
  const reference = smoothLaw(geometry, tubes.atReynolds, Pr);
  const factor = tubes.heatTransferFactor * (Re / tubes.atReynolds) ** tubes.exponent;
  // The only factor that has a published formula is 1, the plain tube.
  const guess = markOf([['turbulators over plain tube, no published law [-]', tubes.heatTransferFactor, 1, 1]]);
  return {
    ...smooth,
    nusseltNumber: reference.nusseltNumber * factor,
    friction: smooth.friction * tubes.frictionFactor,
    range: joinedMark([smooth.range, guess]),
  };
}

function smoothLaw(geometry: CoreGeometry, Re: number, Pr: number): DuctFlow {
  const { coolant, shape } = geometry;
  const long = shape.length / coolant.hydraulicDiameter;
  const { aspect } = coolant;
  if (shape.tubes.kind === 'multi-port') {
    const duct = developingRectangle(aspect);
    return smoothDuct(Re, Pr, 1 / long, (at) => ({
      Nu: nusseltDevelopingPort(aspect, long / (at * Pr), Pr),
      f: frictionDeveloping(long / at, duct) / at,
    }));
  }
  const duct = { ...PLATES_ENTRY, developed: frictionLaminarRectangle(aspect) };
  return smoothDuct(Re, Pr, 1 / long, (at) => ({
    Nu: nusseltDevelopingGap((at * Pr) / long, Pr),
    f: frictionDeveloping(long / at, duct) / at,
  }));
}

/** Pa. */
export interface CoolantPressureDrop {
  /** into the inlet header and out of the outlet header */
  readonly ports: number;
  /** what the headers take beyond an even split; below 0 where they give */
  readonly headers: number;
  /** friction along the tubes, and entry and exit at their ends, over all passes */
  readonly tubes: { readonly friction: number; readonly ends: number };
  readonly total: number;
}

/** Loss coefficients: a sharp entrance 0.5 and a free exit 1, F. M. White, Fluid Mechanics, 2003, chapter 6. */
const ENTRY_LOSS = 0.5;
const EXIT_LOSS = 1;

/**
 * Pressure drop of the coolant through a core in three parts: ports, headers, tubes.
 *
 *     ports = (1 + 0.5) rho V^2/2 on the port;  tubes = 4 f passes L/Dh rho v^2/2 + (0.5 + 1) passes rho v^2/2
 *
 * Range: as coolantFilm. The headers are those of splitOverLayers; with several passes they are left out, since their
 * size per pass is not known, and the turn between passes is in the ends.
 *
 * @param geometry - of the core [SI]
 * @param flow - volume flow and properties of the coolant [SI]
 * @param film - of coolantFilm at the same flow [SI]
 * @param arrangement - ports at the same end of the stack (U) or at opposite ends (Z) [-]
 * @returns the parts and their sum [Pa]
 * @throws {OutOfRangeError} when the flow or a property is not above 0
 *
 * @example
 * see tests/sim/correlations/worked-core.test.ts
 *
 * [1] W. M. Kays, A. L. London, Compact Heat Exchangers, 3rd ed., McGraw-Hill, 1984, chapter 2.
 */
export function coolantPressureDrop(
  geometry: CoreGeometry,
  flow: CoolantFlow,
  film: CoolantFilm,
  arrangement: 'U' | 'Z',
): CoolantPressureDrop {
  const { coolant, shape } = geometry;
  const head = (flow.density * film.velocity ** 2) / 2;
  const long = shape.length / coolant.hydraulicDiameter;
  const friction = 4 * film.friction * shape.passes * long * head;
  const ends = (ENTRY_LOSS + EXIT_LOSS) * shape.passes * head;
  const ports = ((ENTRY_LOSS + EXIT_LOSS) * flow.density * (flow.volumeFlow / coolant.portArea) ** 2) / 2;
  const headers = shape.passes > 1 ? 0 : coolantSplit(geometry, flow, film, arrangement).headerDrop;
  return { ports, headers, tubes: { friction, ends }, total: ports + headers + friction + ends };
}

/**
 * Split of the coolant over the layers of a core of one pass, from the momentum balance of its headers.
 *
 *     drop of a layer = 4 f L/Dh rho v^2/2, taken as linear in its flow, + (0.5 + 1) rho v^2/2
 *
 * Range: as splitOverLayers; one pass. Friction is taken at the mean flow of a layer.
 *
 * @param geometry - of the core [SI]
 * @param flow - volume flow and properties of the coolant [SI]
 * @param film - of coolantFilm at the same flow [SI]
 * @param arrangement - ports at the same end of the stack (U) or at opposite ends (Z) [-]
 * @returns shares of the layers from the inlet port on, and drops [-, Pa]
 * @throws {OutOfRangeError} when the flow or a property is not above 0, or the headers allow no steady split
 *
 * @example
 * see tests/sim/correlations/core-curves.test.ts
 *
 * [1] R. A. Bajura, E. H. Jones, Flow distribution manifolds, J. Fluids Eng. 98, 1976, 654-665.
 */
export function coolantSplit(
  geometry: CoreGeometry,
  flow: CoolantFlow,
  film: CoolantFilm,
  arrangement: 'U' | 'Z',
): LayerSplit {
  const { coolant, shape } = geometry;
  const head = (flow.density * film.velocity ** 2) / 2;
  const layerFlow = flow.volumeFlow / shape.coolantLayers;
  return splitOverLayers({
    arrangement,
    layers: shape.coolantLayers,
    totalFlow: flow.volumeFlow,
    density: flow.density,
    headerArea: coolant.headerArea,
    linear: (4 * film.friction * (shape.length / coolant.hydraulicDiameter) * head) / layerFlow,
    quadratic: ((ENTRY_LOSS + EXIT_LOSS) * head) / layerFlow ** 2,
  });
}

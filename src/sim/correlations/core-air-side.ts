import { requirePositive } from '../errors.ts';
import type { CoreGeometry } from './core-geometry.ts';
import { type CorePressureDrop, corePressureDrop, entranceLossOfCore, exitLossOfCore } from './core-losses.ts';
import { finEfficiency } from './fin-efficiency.ts';
import { frictionDeveloping, frictionLaminarRectangle, nusseltDevelopingRectangle } from './laminar-ducts.ts';
import { colburnLouvred, frictionLouvred } from './louvred-fin.ts';
import { colburnOffsetStrip, frictionOffsetStrip } from './offset-strip-fin.ts';
import { joinedMark, type RangeMark } from './range-mark.ts';
import { smoothDuct } from './turbulent-ducts.ts';

/** Air through the core: kg/s and its properties at the mean temperature, SI. */
export interface AirFlow {
  readonly massFlow: number;
  readonly heatCapacity: number;
  readonly viscosity: number;
  readonly conductivity: number;
}

/** Film of the air on tubes and fins; SI. */
export interface AirFilm {
  /** mass flow over free area */
  readonly massVelocity: number;
  /** on the length of the fin's law: hydraulic diameter, or louvre pitch */
  readonly reynoldsNumber: number;
  readonly heatTransferCoefficient: number;
  /** h/(G cp) Pr^(2/3) */
  readonly colburn: number;
  /** Fanning, a mean over the depth with the growing profile in it */
  readonly friction: number;
  readonly finEfficiency: number;
  /** of tubes and fins together */
  readonly surfaceEfficiency: number;
  /** surface efficiency x h x area, W/K */
  readonly conductance: number;
  readonly range: RangeMark;
}

/** Developing friction of plain fins: K of the round bore and C of the 1:2 duct for every fin, own choice. */
const PLAIN_FIN_ENTRY = { extraHead: 1.25, constant: 0.00021 };

/**
 * Film coefficient, friction and conductance of the air side of a core.
 *
 *     conductance = eta_o h A,  eta_o = 1 - (A_fin/A)(1 - eta),  fin half length = height/2 - t
 *
 * Plain fins: developing laminar flow in rectangles up to Re 2300 (nusseltDevelopingRectangle, frictionDeveloping),
 * Gnielinski and Konakov from 4000, a straight line between. Offset strips and louvres: their own laws at any Reynolds
 * number.
 *
 * Range: that of the law used, marked; flow above 0. Fluid properties are constant over the core; between 20 and 120
 * degC this is within the spread of the laws. Against Shah's constants of its own shape the developing friction of
 * plain fins is 2 % low to 4 % high in channels of 1:4, up to 7 % high in channels of 1:10.
 *
 * @param geometry - of the core [SI]
 * @param flow - mass flow and properties of the air [SI]
 * @returns film, fin efficiency and conductance, with the mark of the laws used [SI]
 * @throws {OutOfRangeError} when the flow or a property is not above 0
 *
 * @example
 * see tests/sim/correlations/worked-core.test.ts
 *
 * [1] W. M. Kays, A. L. London, Compact Heat Exchangers, 3rd ed., McGraw-Hill, 1984, chapter 2.
 */
export function airFilm(geometry: CoreGeometry, flow: AirFlow): AirFilm {
  const { air, shape } = geometry;
  requirePositive('air flow in kg/s', flow.massFlow);
  const massVelocity = flow.massFlow / air.freeArea;
  const Pr = (flow.viscosity * flow.heatCapacity) / flow.conductivity;
  const law = lawOf(geometry, massVelocity / flow.viscosity, Pr);
  const heatTransferCoefficient = law.colburn * massVelocity * flow.heatCapacity * Pr ** (-2 / 3);
  const efficiency = finEfficiency({
    heatTransferCoefficient,
    conductivity: shape.alloy.conductivity,
    thickness: shape.finThickness,
    halfLength: shape.finHeight / 2 - shape.finThickness,
    stripLength: shape.fins.kind === 'offset strip' ? shape.fins.stripLength : shape.depth,
  });
  const surfaceEfficiency = 1 - (air.finArea / air.area) * (1 - efficiency);
  return {
    ...law,
    massVelocity,
    heatTransferCoefficient,
    finEfficiency: efficiency,
    surfaceEfficiency,
    conductance: surfaceEfficiency * heatTransferCoefficient * air.area,
  };
}

type Law = Pick<AirFilm, 'reynoldsNumber' | 'colburn' | 'friction' | 'range'>;

/** `perMetre` is the Reynolds number of 1 m. */
function lawOf(geometry: CoreGeometry, perMetre: number, Pr: number): Law {
  const { air, shape } = geometry;
  const { fins, finThickness } = shape;
  if (fins.kind === 'offset strip') {
    const reynoldsNumber = perMetre * air.hydraulicDiameter;
    const ratios = {
      alpha: air.channelWidth / air.channelHeight,
      delta: finThickness / fins.stripLength,
      gamma: finThickness / air.channelWidth,
    };
    const j = colburnOffsetStrip(reynoldsNumber, ratios);
    const f = frictionOffsetStrip(reynoldsNumber, ratios);
    return { reynoldsNumber, colburn: j.value, friction: f.value, range: joinedMark([j.range, f.range]) };
  }
  if (fins.kind === 'louvred') {
    const reynoldsNumber = perMetre * fins.louvrePitch;
    const fin = {
      finPitch: shape.finPitch,
      finHeight: shape.finHeight,
      finThickness,
      depth: shape.depth,
      louvrePitch: fins.louvrePitch,
      louvreLength: fins.louvreLength,
      louvreAngle: (fins.louvreAngle * 180) / Math.PI,
      tubeHeight: shape.tubeHeight,
    };
    const j = colburnLouvred(reynoldsNumber, fin);
    const f = frictionLouvred(reynoldsNumber, fin);
    return { reynoldsNumber, colburn: j.value, friction: f.value, range: joinedMark([j.range, f.range]) };
  }
  return plainLaw(geometry, perMetre * air.hydraulicDiameter, Pr);
}

function plainLaw(geometry: CoreGeometry, Re: number, Pr: number): Law {
  const { air, shape } = geometry;
  const long = shape.depth / air.hydraulicDiameter;
  const sides = [air.channelWidth, air.channelHeight];
  const aspect = Math.min(...sides) / Math.max(...sides);
  const duct = { ...PLAIN_FIN_ENTRY, developed: frictionLaminarRectangle(aspect) };
  const { nusseltNumber, friction, range } = smoothDuct(Re, Pr, 1 / long, (at) => ({
    Nu: nusseltDevelopingRectangle(aspect, long / (at * Pr), Pr),
    f: frictionDeveloping(long / at, duct) / at,
  }));
  return { reynoldsNumber: Re, colburn: nusseltNumber / (Re * Math.cbrt(Pr)), friction, range };
}

/**
 * Pressure drop of the air through a core: entry, acceleration, friction, exit.
 *
 * corePressureDrop with the losses of a flat profile: the fins are interrupted, or the friction already holds the
 * growing profile.
 *
 * Range: as corePressureDrop. Tanks and pipes before and after the core are not in it.
 *
 * @param geometry - of the core [SI]
 * @param film - of airFilm at the same flow [SI]
 * @param densityIn - before the core [kg/m3]
 * @param densityOut - after the core [kg/m3]
 * @returns the four parts and their sum [Pa]
 * @throws {OutOfRangeError} when a density is not above 0
 *
 * @example
 * see tests/sim/correlations/worked-core.test.ts
 *
 * [1] W. M. Kays, A. L. London, Compact Heat Exchangers, 3rd ed., McGraw-Hill, 1984, equation 2-26.
 */
export function airPressureDrop(
  geometry: CoreGeometry,
  film: AirFilm,
  densityIn: number,
  densityOut: number,
): CorePressureDrop {
  const { area, freeArea, areaRatio } = geometry.air;
  return corePressureDrop({
    massVelocity: film.massVelocity,
    densityIn,
    densityOut,
    areaRatio,
    friction: film.friction,
    wettedOverFree: area / freeArea,
    entranceLoss: entranceLossOfCore(areaRatio, 1),
    exitLoss: exitLossOfCore(areaRatio, 1),
  });
}

import { requireWithin } from '../errors.ts';
import { findRoot } from '../kernels/root-finding.ts';
import {
  waterConductivity,
  waterDensity,
  waterHeatCapacity,
  waterSaturationPressure,
  waterSaturationTemperature,
  waterViscosity,
} from './water.ts';

/** A coolant of one concentration. Temperatures in K, pressures absolute in Pa. */
export interface Coolant {
  /** kg of glycol per kg of coolant */
  readonly massFraction: number;
  /** kg/m3 */
  density(temperature: number): number;
  /** J/(kg K) */
  heatCapacity(temperature: number): number;
  /** Pa s */
  viscosity(temperature: number): number;
  /** W/(m K) */
  conductivity(temperature: number): number;
  /** K, first ice */
  readonly freezingPoint: number;
  /** K at an absolute pressure in Pa */
  boilingPoint(pressure: number): number;
}

/** kg/m3 of the pure liquids at 20 degC: CRC Handbook of Chemistry and Physics; IAPWS SR6-08(2011) */
const GLYCOL_DENSITY = 1113.52;
const WATER_DENSITY = 998.207;
/** kg/mol, C2H6O2 and H2O */
const GLYCOL_MOLAR_MASS = 0.062068;
const WATER_MOLAR_MASS = 0.018015;
/** mass fraction at which the published fit ends */
const LARGEST_MASS_FRACTION = 0.6;

/** Largest volume share of ethylene glycol before mixing: 60 % by mass, where the published fit ends. */
export const LARGEST_GLYCOL_BY_VOLUME =
  (LARGEST_MASS_FRACTION * WATER_DENSITY) /
  (LARGEST_MASS_FRACTION * WATER_DENSITY + (1 - LARGEST_MASS_FRACTION) * GLYCOL_DENSITY);

/**
 * Volume share below which the fit is led over into the equations of water. Without it the properties would jump by up
 * to 1.8 % (viscosity) between no glycol and a drop of it. Own choice: half of the weakest mix in use.
 */
const PURE_FIT_FROM = 0.05;

/** Ethylene glycol and water, [1]: rows are powers of T - 304.878 K, columns powers of mass fraction - 0.308462. */
const BASE_TEMPERATURE = 304.878;
const BASE_MASS_FRACTION = 0.308462;
const DENSITY = [
  [1034, 131.1, 0.749, -106.2, -96.23, 489.1],
  [-0.4781, -0.6876, 0.7855, 1.229, -7.211],
  [-0.002692, 0.004805, -0.003995, -0.01153],
  [4.725e-6, 1.69e-6, 4.982e-5],
];
const HEAT_CAPACITY = [
  [3737, -1799, -993.3, 2610, 1537, -16180],
  [2.93, 10.46, 3.516, -1.189, -42.72],
  [-0.004675, -0.04147, 0.05109, -0.1643],
  [-1.389e-5, 1.847e-5, -0.0007138],
];
const CONDUCTIVITY = [
  [0.472, -0.4286, 0.1747, 0.03017, -0.1322, 0.2678],
  [0.0008903, -0.001473, 0.0006814, -0.002412, 0.002555],
  [-1.058e-6, 1.059e-5, -3.612e-5, 4.004e-5],
  [-2.789e-9, -1.142e-8, 2.365e-8],
];
/** ln of the viscosity in mPa s */
const LOG_VISCOSITY = [
  [0.4705, 2.471, 0.03328, 1.659, 3.089, -18.65],
  [-0.0255, -0.01171, 0.01086, 0.003157, 0.01831],
  [0.0001782, 0.0001052, 0.0001051, 0.0004063],
  [-7.669e-7, -1.634e-6, -6.475e-6],
];
/** degC, powers of mass fraction only: the rows of temperature move it by 0.002 K at most */
const FREEZING = [-15.25, -80.8, -133.4, -72.93, 100.6, 11.4];

type Property = (temperature: number) => number;

/**
 * Properties of water with ethylene glycol.
 *
 *     x = v 1113.52 / (v 1113.52 + (1 - v) 998.207)
 *     property = sum c[i][j] (T - 304.878)^i (x - 0.308462)^j, viscosity exp of it    [1]
 *     boiling: x_w p_w(T) + x_g p_g(T) = p, mole fractions, ideal mixture             [3], [4]
 *
 * Range: 0 to 57.35 % by volume (60 % by mass); from the freezing point to 100 degC, water from 0 to 110 degC. On to
 * 110 degC all four run on without a turn, but no published figure backs them there. The temperature is not checked.
 * Without glycol the equations are those of water [2]; up to 5 % by volume the fit is led over into them, from there it
 * is the pure fit. Against the ASHRAE tables (2001) of 10 to 50 % by volume the fit differs by 0.5 % rms in density,
 * 1.2 % in heat capacity, 1.7 % in conductivity and 5.5 % in viscosity (at worst 17 %). Freezing is the first ice, not
 * the burst point. Boiling is good to about 1.5 K.
 *
 * @param glycolByVolume - volume of ethylene glycol over both volumes before mixing, at 20 degC [-]
 * @returns the coolant of that concentration
 * @throws {OutOfRangeError} when glycolByVolume is not within 0 to LARGEST_GLYCOL_BY_VOLUME
 *
 * @example
 * createCoolant(0.5).viscosity(313.15) // 0.002258 Pa s
 *
 * [1] A. Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIF/IIR, Paris, 2010.
 * [2] IAPWS SR6-08(2011), Properties of Liquid Water at 0.1 MPa.
 * [3] IAPWS R7-97(2012), Industrial Formulation 1997, region 4.
 * [4] Perry's Chemical Engineers' Handbook, 8th ed., 2008, table 2-8 (vapour pressure of ethylene glycol).
 */
export function createCoolant(glycolByVolume: number): Coolant {
  requireWithin('glycol by volume', glycolByVolume, 0, LARGEST_GLYCOL_BY_VOLUME);
  const glycolMass = glycolByVolume * GLYCOL_DENSITY;
  const massFraction = glycolMass / (glycolMass + (1 - glycolByVolume) * WATER_DENSITY);

  const density = cubic(DENSITY, massFraction);
  const heatCapacity = cubic(HEAT_CAPACITY, massFraction);
  const conductivity = cubic(CONDUCTIVITY, massFraction);
  const viscosity = exponentialCubic(LOG_VISCOSITY, massFraction);
  const freezing = 273.15 + polynomial(FREEZING, massFraction);
  const boilingPoint = boilingPointOf(massFraction);
  if (glycolByVolume >= PURE_FIT_FROM) {
    return { massFraction, density, heatCapacity, viscosity, conductivity, freezingPoint: freezing, boilingPoint };
  }

  const share = waterShare(glycolByVolume);
  return {
    massFraction,
    density: ledIntoWater(density, cubic(DENSITY, 0), waterDensity, share),
    heatCapacity: ledIntoWater(heatCapacity, cubic(HEAT_CAPACITY, 0), waterHeatCapacity, share),
    viscosity: ledIntoWater(viscosity, exponentialCubic(LOG_VISCOSITY, 0), waterViscosity, share),
    conductivity: ledIntoWater(conductivity, cubic(CONDUCTIVITY, 0), waterConductivity, share),
    freezingPoint: freezing - share * polynomial(FREEZING, 0),
    boilingPoint,
  };
}

/** Share of water's correction: 1 without glycol, 0 from PURE_FIT_FROM on, with no slope at either end. */
function waterShare(glycolByVolume: number): number {
  const s = glycolByVolume / PURE_FIT_FROM;
  return (1 - s) ** 2 * (1 + 2 * s);
}

/** The fit times the ratio of water to the fit without glycol, as far as `share` says. */
function ledIntoWater(mixture: Property, mixtureWithoutGlycol: Property, water: Property, share: number): Property {
  if (share === 1) return water;
  return (T) => mixture(T) * (1 + share * (water(T) / mixtureWithoutGlycol(T) - 1));
}

/** One row of the fit at one mass fraction. */
function polynomial(row: readonly number[], massFraction: number): number {
  return row.reduceRight((sum, coefficient) => sum * (massFraction - BASE_MASS_FRACTION) + coefficient, 0);
}

function cubic(rows: readonly (readonly number[])[], massFraction: number): Property {
  const [c0, c1, c2, c3] = rows.map((row) => polynomial(row, massFraction));
  return (T) => {
    const t = T - BASE_TEMPERATURE;
    return c0 + t * (c1 + t * (c2 + t * c3));
  };
}

function exponentialCubic(rows: readonly (readonly number[])[], massFraction: number): Property {
  const logarithm = cubic(rows, massFraction);
  return (T) => 1e-3 * Math.exp(logarithm(T));
}

/** Pa, [4] of createCoolant */
function glycolVapourPressure(T: number): number {
  return Math.exp(84.09 - 10411 / T - 8.1976 * Math.log(T) + 1.6536e-18 * T ** 6);
}

function boilingPointOf(massFraction: number): (pressure: number) => number {
  const glycolMoles = massFraction / GLYCOL_MOLAR_MASS;
  const waterMoles = (1 - massFraction) / WATER_MOLAR_MASS;
  const glycolShare = glycolMoles / (glycolMoles + waterMoles);
  const waterPart = 1 - glycolShare;
  return (pressure) => {
    const excess = (T: number) =>
      waterPart * waterSaturationPressure(T) + glycolShare * glycolVapourPressure(T) - pressure;
    // Glycol boils later than water, so water alone would boil sooner and water's own part later.
    const low = waterSaturationTemperature(pressure);
    if (glycolShare === 0) return low;
    return findRoot(excess, low, waterSaturationTemperature(pressure / waterPart), 1e-9);
  };
}

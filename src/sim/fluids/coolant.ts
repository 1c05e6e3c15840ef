import { requireWithin } from '../errors.ts';
import { findRoot } from '../kernels/root-finding.ts';
import { GLYCOLS, type GlycolFit, type GlycolKind } from './glycol-fits.ts';
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
  /** Pa, of an ideal mixture */
  vapourPressure(temperature: number): number;
}

/** kg/m3 at 20 degC: IAPWS SR6-08(2011) */
const WATER_DENSITY = 998.207;
/** kg/mol, H2O */
const WATER_MOLAR_MASS = 0.018015;
/** mass fraction at which both published fits end */
const LARGEST_MASS_FRACTION = 0.6;

/**
 * Largest volume share of a glycol before mixing: 60 % by mass, where the published fits end.
 *
 * @param kind - which glycol
 * @returns volume of glycol over both volumes before mixing, at 20 degC [-]
 *
 * @example
 * largestGlycolByVolume('propylene') // 0.5910
 */
export function largestGlycolByVolume(kind: GlycolKind): number {
  const water = LARGEST_MASS_FRACTION * WATER_DENSITY;
  return water / (water + (1 - LARGEST_MASS_FRACTION) * GLYCOLS[kind].density);
}

/**
 * Volume share below which the fit is led over into the equations of water. Without it the properties would jump by up
 * to 1.8 % (viscosity) between no glycol and a drop of it. Own choice: half of the weakest mix in use.
 */
const PURE_FIT_FROM = 0.05;

type Property = (temperature: number) => number;

/**
 * Properties of water with ethylene or propylene glycol.
 *
 *     x = v rho_g / (v rho_g + (1 - v) 998.207),  rho_g = 1113.52 ethylene, 1036.12 propylene
 *     property = sum c[i][j] (T - T0)^i (x - x0)^j, viscosity exp of it               [1]
 *     boiling: x_w p_w(T) + x_g p_g(T) = p, mole fractions, ideal mixture             [3], [4]
 *
 * Range: 0 to 60 % by mass, which is 57.35 % by volume of ethylene and 59.10 % of propylene glycol; from the freezing
 * point to 100 degC, water from 0 to 110 degC. On to 110 degC all four run on without a turn, but no published figure
 * backs them there. The temperature is not checked.
 * Without glycol the equations are those of water [2]; up to 5 % by volume the fit is led over into them, from there it
 * is the pure fit. Against the ASHRAE tables (2001) of 10 to 50 % by volume the fits of ethylene and propylene differ
 * by 0.5 and 0.4 % rms in density, 1.2 and 0.2 % in heat capacity, 1.7 and 1.6 % in conductivity, 5.5 and 3.9 % in
 * viscosity (both at worst 17 %). Freezing is the first ice, not the burst point. Boiling is good to about 1.5 K.
 *
 * @param glycolByVolume - volume of glycol over both volumes before mixing, at 20 degC [-]
 * @param kind - which glycol
 * @returns the coolant of that concentration
 * @throws {OutOfRangeError} when glycolByVolume is not within 0 to largestGlycolByVolume(kind)
 *
 * @example
 * createCoolant(0.5).viscosity(313.15) // 0.002258 Pa s
 * createCoolant(0.5, 'propylene').viscosity(313.15) // 0.003000 Pa s
 *
 * [1] A. Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIF/IIR, Paris, 2010.
 * [2] IAPWS SR6-08(2011), Properties of Liquid Water at 0.1 MPa.
 * [3] IAPWS R7-97(2012), Industrial Formulation 1997, region 4.
 * [4] Perry's Chemical Engineers' Handbook, 8th ed., 2008, table 2-8 (vapour pressure of the glycols).
 */
export function createCoolant(glycolByVolume: number, kind: GlycolKind = 'ethylene'): Coolant {
  const glycol = GLYCOLS[kind];
  requireWithin(`${kind} glycol by volume`, glycolByVolume, 0, largestGlycolByVolume(kind));
  const glycolMass = glycolByVolume * glycol.density;
  const massFraction = glycolMass / (glycolMass + (1 - glycolByVolume) * WATER_DENSITY);

  const mix = fitAt(glycol, massFraction);
  const freezingPoint = freezingPointOf(massFraction, kind);
  const vapourPressure = vapourPressureOf(glycol, massFraction);
  const boilingPoint = boilingPointOf(vapourPressure, glycol, massFraction);
  if (glycolByVolume >= PURE_FIT_FROM) return { massFraction, ...mix, freezingPoint, boilingPoint, vapourPressure };

  const dry = fitAt(glycol, 0);
  const share = waterShare(glycolByVolume);
  return {
    massFraction,
    density: ledIntoWater(mix.density, dry.density, waterDensity, share),
    heatCapacity: ledIntoWater(mix.heatCapacity, dry.heatCapacity, waterHeatCapacity, share),
    viscosity: ledIntoWater(mix.viscosity, dry.viscosity, waterViscosity, share),
    conductivity: ledIntoWater(mix.conductivity, dry.conductivity, waterConductivity, share),
    freezingPoint,
    boilingPoint,
    vapourPressure,
  };
}

/**
 * First ice of water with ethylene or propylene glycol [K]; below 5 % by volume led over into the 0 degC of water.
 *
 * @param massFraction - kg of glycol per kg of coolant, 0 to 0.6
 * @param kind - which glycol
 * @returns freezing point [K]
 *
 * @example
 * freezingPointOf(0.5269, 'ethylene') // 235.2
 *
 * [1] A. Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIF/IIR, Paris, 2010.
 */
export function freezingPointOf(massFraction: number, kind: GlycolKind): number {
  const { freezing, baseMassFraction, density } = GLYCOLS[kind];
  const volume = massFraction / density;
  const glycolByVolume = volume / (volume + (1 - massFraction) / WATER_DENSITY);
  const share = glycolByVolume < PURE_FIT_FROM ? waterShare(glycolByVolume) : 0;
  return (
    273.15 + polynomial(freezing, massFraction - baseMassFraction) - share * polynomial(freezing, -baseMassFraction)
  );
}

/** The fit collapsed to one mass fraction. */
function fitAt(
  glycol: GlycolFit,
  massFraction: number,
): Omit<Coolant, 'massFraction' | 'freezingPoint' | 'boilingPoint' | 'vapourPressure'> {
  const x = massFraction - glycol.baseMassFraction;
  const logViscosity = cubic(glycol.logViscosity, x, glycol.baseTemperature);
  return {
    density: cubic(glycol.densityFit, x, glycol.baseTemperature),
    heatCapacity: cubic(glycol.heatCapacity, x, glycol.baseTemperature),
    viscosity: (T) => 1e-3 * Math.exp(logViscosity(T)),
    conductivity: cubic(glycol.conductivity, x, glycol.baseTemperature),
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

/** One row of the fit at one mass fraction, x from its base. */
function polynomial(row: readonly number[], x: number): number {
  return row.reduceRight((sum, coefficient) => sum * x + coefficient, 0);
}

function cubic(rows: readonly (readonly number[])[], x: number, baseTemperature: number): Property {
  const [c0, c1, c2, c3] = rows.map((row) => polynomial(row, x));
  return (T) => {
    const t = T - baseTemperature;
    return c0 + t * (c1 + t * (c2 + t * c3));
  };
}

function waterMoleShare({ molarMass }: GlycolFit, massFraction: number): number {
  const glycolMoles = massFraction / molarMass;
  const waterMoles = (1 - massFraction) / WATER_MOLAR_MASS;
  return waterMoles / (glycolMoles + waterMoles);
}

function vapourPressureOf(glycol: GlycolFit, massFraction: number): (temperature: number) => number {
  const water = waterMoleShare(glycol, massFraction);
  return (T) => water * waterSaturationPressure(T) + (massFraction === 0 ? 0 : (1 - water) * glycol.vapourPressure(T));
}

function boilingPointOf(
  vapourPressure: (temperature: number) => number,
  glycol: GlycolFit,
  massFraction: number,
): (pressure: number) => number {
  const water = waterMoleShare(glycol, massFraction);
  return (pressure) => {
    // Glycol boils later than water, so water alone would boil sooner and water's own part later.
    const low = waterSaturationTemperature(pressure);
    if (massFraction === 0) return low;
    return findRoot((T) => vapourPressure(T) - pressure, low, waterSaturationTemperature(pressure / water), 1e-9);
  };
}

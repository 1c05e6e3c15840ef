/**
 * The two glycols: molar mass, density and vapour pressure of the pure liquid, and the fit of their mixtures with
 * water.
 *
 *     f(T, x) = sum over i, j of c[i][j] (T - baseTemperature)^i (x - baseMassFraction)^j
 *
 * Rows are powers of temperature, columns powers of mass fraction; the viscosity is exp(f) in mPa s. Range: 0 to 60 %
 * by mass, first ice to 100 degC. [1] for the fits, [2] for the vapour pressures, [3] for the densities.
 *
 * [1] A. Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIF/IIR, Paris, 2010.
 * [2] Perry's Chemical Engineers' Handbook, 8th ed., 2008, table 2-8; from -13 degC (ethylene), -60 degC (propylene).
 * [3] CRC Handbook of Chemistry and Physics, physical constants of organic compounds.
 */

export type GlycolKind = 'ethylene' | 'propylene';

export interface GlycolFit {
  /** kg/m3 of the pure liquid at 20 degC, [3] */
  readonly density: number;
  /** kg/mol */
  readonly molarMass: number;
  /** Pa at T in K, [2] */
  vapourPressure(temperature: number): number;
  /** K */
  readonly baseTemperature: number;
  /** kg of glycol per kg of mixture */
  readonly baseMassFraction: number;
  /** kg/m3 */
  readonly densityFit: readonly (readonly number[])[];
  /** J/(kg K) */
  readonly heatCapacity: readonly (readonly number[])[];
  /** W/(m K) */
  readonly conductivity: readonly (readonly number[])[];
  /** ln of the viscosity in mPa s */
  readonly logViscosity: readonly (readonly number[])[];
  /** degC, powers of mass fraction only: the rows of temperature move it by 0.016 K at most */
  readonly freezing: readonly number[];
}

export const GLYCOLS: Readonly<Record<GlycolKind, GlycolFit>> = {
  ethylene: {
    density: 1113.52,
    molarMass: 0.062068,
    vapourPressure: (T) => Math.exp(84.09 - 10411 / T - 8.1976 * Math.log(T) + 1.6536e-18 * T ** 6),
    baseTemperature: 304.878,
    baseMassFraction: 0.308462,
    densityFit: [
      [1034, 131.1, 0.749, -106.2, -96.23, 489.1],
      [-0.4781, -0.6876, 0.7855, 1.229, -7.211],
      [-0.002692, 0.004805, -0.003995, -0.01153],
      [4.725e-6, 1.69e-6, 4.982e-5],
    ],
    heatCapacity: [
      [3737, -1799, -993.3, 2610, 1537, -16180],
      [2.93, 10.46, 3.516, -1.189, -42.72],
      [-0.004675, -0.04147, 0.05109, -0.1643],
      [-1.389e-5, 1.847e-5, -0.0007138],
    ],
    conductivity: [
      [0.472, -0.4286, 0.1747, 0.03017, -0.1322, 0.2678],
      [0.0008903, -0.001473, 0.0006814, -0.002412, 0.002555],
      [-1.058e-6, 1.059e-5, -3.612e-5, 4.004e-5],
      [-2.789e-9, -1.142e-8, 2.365e-8],
    ],
    logViscosity: [
      [0.4705, 2.471, 0.03328, 1.659, 3.089, -18.65],
      [-0.0255, -0.01171, 0.01086, 0.003157, 0.01831],
      [0.0001782, 0.0001052, 0.0001051, 0.0004063],
      [-7.669e-7, -1.634e-6, -6.475e-6],
    ],
    freezing: [-15.25, -80.8, -133.4, -72.93, 100.6, 11.4],
  },
  propylene: {
    density: 1036.12,
    molarMass: 0.07609,
    vapourPressure: (T) => Math.exp(212.8 - 15420 / T - 28.109 * Math.log(T) + 2.1564e-5 * T ** 2),
    baseTemperature: 305.8583,
    baseMassFraction: 0.307031,
    densityFit: [
      [1018, 76.04, -24.98, -155, -113.1, 234.2],
      [-0.5406, -0.945, 0.27, 2.829, -2.221],
      [-0.002666, 0.005541, -0.004018, -0.007175],
      [1.347e-5, -1.343e-5, 3.376e-5],
    ],
    heatCapacity: [
      [3882, -1304, -1598, 353.9, 5000, -4959],
      [2.699, 5.07, 0.9534, 31.02, -71.35],
      [-0.001659, -0.004752, 0.1167, -0.295],
      [-1.032e-5, 0.0001522, -0.000487],
    ],
    conductivity: [
      [0.4513, -0.4795, 0.2076, -0.09083, -0.05952, 0.2104],
      [0.0007955, -0.001678, 0.001563, -0.002518, -0.003605],
      [3.482e-8, 8.941e-6, -4.615e-5, 6.543e-5],
      [-5.966e-9, 1.493e-8, 9.897e-8],
    ],
    logViscosity: [
      [0.6837, 3.328, 0.5453, -3.9, -1.587, 35.64],
      [-0.03045, -0.03984, -0.00086, 0.1054, 0.04475],
      [0.0002525, 0.0004332, -0.0001593, -0.001589],
      [-1.399e-6, -1.86e-6, -4.465e-7],
    ],
    freezing: [-13.25, -66.31, -109.4, -228.3, -340.9, 146.5],
  },
};

/**
 * Liquid water at 0.1 MPa and its saturation line. T in K, p in Pa absolute, SI out.
 *
 * Range: 273.15 to 383.15 K for the liquid; the pressure of a coolant loop, to 0.3 MPa, moves no property by more than
 * 0.02 %. 273.15 to 647.1 K for saturation.
 *
 * [1] IAPWS SR6-08(2011), Revised Supplementary Release on Properties of Liquid Water at 0.1 MPa.
 * [2] IAPWS R7-97(2012), Industrial Formulation 1997, region 4, equations 29 to 31, table 34.
 */

/** J/(kg K), of [1] */
const GAS_CONSTANT = 461.51805;

/** kg/m3, [1] */
export function waterDensity(T: number): number {
  const a = 10 / (593 - T);
  const b = 10 / (T - 232);
  const a2 = a * a;
  const a4 = a2 * a2;
  const sumA = a4 * (6744.58446 + a * (-222521.604 + a2 * (100231247 + a * (-1635521180 + a * 8322996580))));
  const sumB =
    b *
    (0.00578545292 +
      b * (-0.0153195665 + b * (0.0311337859 + b * (-0.0423546241 + b * (0.0338713507 + b * -0.0119946761)))));
  return 1e5 / (10 * GAS_CONSTANT * (0.0193763157 + sumA + sumB));
}

/** J/(kg K), [1] */
export function waterHeatCapacity(T: number): number {
  const tau = T / 10;
  const a = 10 / (593 - T);
  const b = 10 / (T - 232);
  const a2 = a * a;
  const a6 = a2 * a2 * a2;
  const b2 = b * b;
  // n (n + 1) of the exponents 4, 5, 7 and m (m + 1) of 2, 3, 4, 5.
  const sumA = a6 * (20 * -166147.0539 + a * (30 * 2708781.64 + a2 * (56 * -155719154.4)));
  const sumB =
    b2 * b2 * (6 * -0.8237426256 + b * (12 * 1.908956353 + b * (20 * -2.017597384 + b * (30 * 0.8546361348))));
  return -GAS_CONSTANT * (-8.983025854 + tau * (sumA + sumB));
}

/** Pa s, [1] */
export function waterViscosity(T: number): number {
  // The exponents -1.9, -7.7, -19.6 and -40 are whole powers of one tenth root: a third of the time of four powers.
  const u = (T / 300) ** -0.1;
  const u4 = u * u * u * u;
  const u8 = u4 * u4;
  const u16 = u8 * u8;
  const u64 = u16 * u16 * u16 * u16;
  const u128 = u64 * u64;
  const u19 = u16 * u * u * u;
  const u77 = u64 * u8 * u4 * u;
  const u196 = u128 * u64 * u4;
  const u400 = u128 * u128 * u128 * u16;
  return 1e-6 * (280.68 * u19 + 511.45 * u77 + 61.131 * u196 + 0.45903 * u400);
}

/** W/(m K), [1] */
export function waterConductivity(T: number): number {
  const t = T / 300;
  return 1.663 * t ** -1.15 - 1.7781 * t ** -3.4 + 1.1567 * t ** -6 - 0.432115 * t ** -7.6;
}

/** Pa at T, [2] */
export function waterSaturationPressure(T: number): number {
  const theta = T - 0.23855557567849 / (T - 650.17534844798);
  const A = (theta + 1167.0521452767) * theta - 724213.16703206;
  const B = (-17.073846940092 * theta + 12020.82470247) * theta - 3232555.0322333;
  const C = (14.91510861353 * theta - 4823.2657361591) * theta + 405113.40542057;
  return 1e6 * ((2 * C) / (-B + Math.sqrt(B * B - 4 * A * C))) ** 4;
}

/** K at p, [2] */
export function waterSaturationTemperature(pressure: number): number {
  const beta = Math.sqrt(Math.sqrt(pressure / 1e6));
  const E = (beta - 17.073846940092) * beta + 14.91510861353;
  const F = (1167.0521452767 * beta + 12020.82470247) * beta - 4823.2657361591;
  const G = (-724213.16703206 * beta - 3232555.0322333) * beta + 405113.40542057;
  const D = (2 * G) / (-F - Math.sqrt(F * F - 4 * E * G));
  const sum = 650.17534844798 + D;
  return (sum - Math.sqrt(sum * sum - 4 * (-0.23855557567849 + 650.17534844798 * D))) / 2;
}

import { describe, expect, test } from 'vitest';
import { OutOfRangeError } from '../../../src/sim/errors.ts';
import { type Coolant, createCoolant, largestGlycolByVolume } from '../../../src/sim/fluids/coolant.ts';

type PropertyName = 'density' | 'heatCapacity' | 'conductivity' | 'viscosity';
const PROPERTY_NAMES: readonly PropertyName[] = ['density', 'heatCapacity', 'conductivity', 'viscosity'];

/** The mixing rule the other way round, written here again: densities of the pure liquids at 20 degC, kg/m3. */
function volumeShareOf(massFraction: number, glycolDensity = 1113.52): number {
  const glycol = massFraction / glycolDensity;
  return glycol / (glycol + (1 - massFraction) / 998.20655);
}

function relativeError(value: number, expected: number): number {
  return Math.abs(value / expected - 1);
}

/**
 * [K, value] of liquid water at 0.1 MPa: IAPWS SR6-08(2011), computed in 30-digit arithmetic and equal to the open
 * library iapws 1.5.3; the full equation IAPWS-95 lies within 1.4e-4 of them up to 0.2 MPa.
 */
const WATER: Record<PropertyName, readonly (readonly [number, number])[]> = {
  density: [
    [273.15, 999.84238],
    [283.15, 999.70186],
    [293.15, 998.20655],
    [313.15, 992.21576],
    [333.15, 983.19525],
    [353.15, 971.78979],
    [373.15, 958.34838],
    [383.15, 950.92701],
  ],
  heatCapacity: [
    [273.15, 4219.3183],
    [283.15, 4195.1423],
    [293.15, 4184.1891],
    [313.15, 4179.3563],
    [333.15, 4184.8978],
    [353.15, 4196.8597],
    [373.15, 4215.5673],
    [383.15, 4228.6548],
  ],
  conductivity: [
    [273.15, 0.55564768],
    [283.15, 0.57878726],
    [293.15, 0.59800465],
    [313.15, 0.62847972],
    [333.15, 0.65101554],
    [353.15, 0.66698891],
    [373.15, 0.67722924],
    [383.15, 0.68043915],
  ],
  viscosity: [
    [273.15, 0.0017917824],
    [283.15, 0.0013059017],
    [293.15, 0.0010015673],
    [313.15, 0.00065273347],
    [333.15, 0.00046603929],
    [353.15, 0.00035404611],
    [373.15, 0.00028158106],
    [383.15, 0.00025459103],
  ],
};

/**
 * [mass fraction, K, value] of ethylene glycol and water: A. Melinder, Properties of Secondary Working Fluids, IIF/IIR
 * 2010, computed in 30-digit arithmetic from the two-dimensional fit and equal to the open library CoolProp 8.0.0.
 */
const MIXTURE: Record<PropertyName, readonly (readonly [number, number, number])[]> = {
  density: [
    [0.1, 273.15, 1013.6178],
    [0.1, 293.15, 1010.5789],
    [0.1, 333.15, 995.23199],
    [0.1, 373.15, 969.61847],
    [0.2, 273.15, 1029.0646],
    [0.2, 293.15, 1024.1038],
    [0.2, 333.15, 1006.2064],
    [0.2, 373.15, 979.31528],
    [0.3, 263.15, 1047.4946],
    [0.3, 283.15, 1041.8127],
    [0.3, 333.15, 1017.4621],
    [0.3, 373.15, 989.4127],
    [0.4, 253.15, 1066.6731],
    [0.4, 283.15, 1056.3875],
    [0.4, 333.15, 1029.1096],
    [0.4, 373.15, 1000.4539],
    [0.5, 243.15, 1085.0822],
    [0.5, 273.15, 1074.6236],
    [0.5, 313.15, 1053.4408],
    [0.5, 373.15, 1011.5201],
    [0.6, 233.15, 1102.0749],
    [0.6, 263.15, 1092.3961],
    [0.6, 313.15, 1064.6221],
    [0.6, 373.15, 1020.8169],
  ],
  heatCapacity: [
    [0.1, 273.15, 4037.3635],
    [0.1, 293.15, 4045.8587],
    [0.1, 333.15, 4083.0546],
    [0.1, 373.15, 4131.5878],
    [0.2, 273.15, 3860.8368],
    [0.2, 293.15, 3896.1986],
    [0.2, 333.15, 3969.328],
    [0.2, 373.15, 4037.8921],
    [0.3, 263.15, 3627.072],
    [0.3, 283.15, 3688.5101],
    [0.3, 333.15, 3828.7203],
    [0.3, 373.15, 3921.5383],
    [0.4, 253.15, 3344.2502],
    [0.4, 283.15, 3477.3133],
    [0.4, 333.15, 3669.6949],
    [0.4, 373.15, 3789.2951],
    [0.5, 243.15, 3027.0459],
    [0.5, 273.15, 3202.8765],
    [0.5, 313.15, 3412.7172],
    [0.5, 373.15, 3646.2634],
    [0.6, 233.15, 2684.384],
    [0.6, 263.15, 2898.23],
    [0.6, 313.15, 3217.7686],
    [0.6, 373.15, 3476.4597],
  ],
  conductivity: [
    [0.1, 273.15, 0.523282],
    [0.1, 293.15, 0.55289148],
    [0.1, 333.15, 0.5996127],
    [0.1, 373.15, 0.62986849],
    [0.2, 273.15, 0.48414166],
    [0.2, 293.15, 0.50766483],
    [0.2, 333.15, 0.54831925],
    [0.2, 373.15, 0.58004402],
    [0.3, 263.15, 0.43615935],
    [0.3, 283.15, 0.45550752],
    [0.3, 333.15, 0.5001835],
    [0.3, 373.15, 0.53105878],
    [0.4, 253.15, 0.39449717],
    [0.4, 283.15, 0.41761083],
    [0.4, 333.15, 0.45534856],
    [0.4, 373.15, 0.48326136],
    [0.5, 243.15, 0.35885596],
    [0.5, 273.15, 0.37681612],
    [0.5, 313.15, 0.40153753],
    [0.5, 373.15, 0.43707453],
    [0.6, 233.15, 0.32927073],
    [0.6, 263.15, 0.34254217],
    [0.6, 313.15, 0.3661959],
    [0.6, 373.15, 0.39331656],
  ],
  viscosity: [
    [0.1, 273.15, 0.0023448913],
    [0.1, 293.15, 0.0012745215],
    [0.1, 333.15, 0.00056337927],
    [0.1, 373.15, 0.00033981978],
    [0.2, 273.15, 0.0031775936],
    [0.2, 293.15, 0.0016624198],
    [0.2, 333.15, 0.00069687965],
    [0.2, 373.15, 0.00041675688],
    [0.3, 263.15, 0.0065077129],
    [0.3, 283.15, 0.0029829957],
    [0.3, 333.15, 0.00086604483],
    [0.3, 373.15, 0.00049766394],
    [0.4, 253.15, 0.015000683],
    [0.4, 283.15, 0.0039465097],
    [0.4, 333.15, 0.0010821234],
    [0.4, 373.15, 0.00058439741],
    [0.5, 243.15, 0.041773601],
    [0.5, 273.15, 0.0079297715],
    [0.5, 313.15, 0.0021032803],
    [0.5, 373.15, 0.00068999137],
    [0.6, 233.15, 0.15520861],
    [0.6, 263.15, 0.018250226],
    [0.6, 313.15, 0.0027254729],
    [0.6, 373.15, 0.00082911054],
  ],
};

/** The same source and check, propylene glycol and water. */
const PROPYLENE_MIXTURE: Record<PropertyName, readonly (readonly [number, number, number])[]> = {
  density: [
    [0.1, 273.15, 1009.3093],
    [0.1, 313.15, 999.41986],
    [0.1, 373.15, 965.50188],
    [0.2, 273.15, 1020.0811],
    [0.2, 313.15, 1006.3685],
    [0.2, 373.15, 969.86459],
    [0.3, 263.15, 1034.277],
    [0.3, 313.15, 1013.4323],
    [0.3, 373.15, 973.41852],
    [0.4, 253.15, 1049.6926],
    [0.4, 293.15, 1032.2727],
    [0.4, 373.15, 976.62113],
    [0.5, 243.15, 1064.0959],
    [0.5, 293.15, 1039.0606],
    [0.5, 373.15, 979.28001],
    [0.6, 233.15, 1074.6083],
    [0.6, 283.15, 1049.7468],
    [0.6, 373.15, 980.83389],
  ],
  heatCapacity: [
    [0.1, 273.15, 4059.0369],
    [0.1, 313.15, 4101.1132],
    [0.1, 373.15, 4190.1404],
    [0.2, 273.15, 3935.9295],
    [0.2, 313.15, 4019.0284],
    [0.2, 373.15, 4138.8784],
    [0.3, 263.15, 3775.2753],
    [0.3, 313.15, 3910.4194],
    [0.3, 373.15, 4059.5009],
    [0.4, 253.15, 3575.3718],
    [0.4, 293.15, 3706.7226],
    [0.4, 373.15, 3956.6573],
    [0.5, 243.15, 3336.8096],
    [0.5, 293.15, 3530.1949],
    [0.5, 373.15, 3835.892],
    [0.6, 233.15, 3069.6591],
    [0.6, 283.15, 3295.0417],
    [0.6, 373.15, 3697.6943],
  ],
  conductivity: [
    [0.1, 273.15, 0.51548647],
    [0.1, 313.15, 0.56878843],
    [0.1, 373.15, 0.62128207],
    [0.2, 273.15, 0.47112225],
    [0.2, 313.15, 0.512276],
    [0.2, 373.15, 0.56320476],
    [0.3, 263.15, 0.42061719],
    [0.3, 313.15, 0.46056484],
    [0.3, 373.15, 0.50702556],
    [0.4, 253.15, 0.37613071],
    [0.4, 293.15, 0.40026183],
    [0.4, 373.15, 0.45344664],
    [0.5, 243.15, 0.33590643],
    [0.5, 293.15, 0.35946364],
    [0.5, 373.15, 0.40242736],
    [0.6, 233.15, 0.30019215],
    [0.6, 283.15, 0.31855867],
    [0.6, 373.15, 0.35343676],
  ],
  viscosity: [
    [0.1, 273.15, 0.0027445519],
    [0.1, 313.15, 0.00088379873],
    [0.1, 373.15, 0.00034566723],
    [0.2, 273.15, 0.0043124308],
    [0.2, 313.15, 0.0011693042],
    [0.2, 373.15, 0.00042044095],
    [0.3, 263.15, 0.012327009],
    [0.3, 313.15, 0.0015731253],
    [0.3, 373.15, 0.00051549403],
    [0.4, 253.15, 0.045947602],
    [0.4, 293.15, 0.0043837803],
    [0.4, 373.15, 0.00062846293],
    [0.5, 243.15, 0.21244821],
    [0.5, 293.15, 0.0063936094],
    [0.5, 373.15, 0.00075182581],
    [0.6, 233.15, 1.1056072],
    [0.6, 283.15, 0.015711535],
    [0.6, 373.15, 0.00090935413],
  ],
};

/** Worst difference between that fit and the handbook, as above. */
const PROPYLENE_HANDBOOK_SPREAD: Record<PropertyName, number> = {
  density: 0.0065,
  heatCapacity: 0.0035,
  conductivity: 0.0525,
  viscosity: 0.17,
};

/** At 50 % by volume, 0 to 100 degC in steps of 20: ASHRAE Handbook: Fundamentals (2001), propylene glycol tables. */
const PROPYLENE_HANDBOOK_AT_50: Record<PropertyName, readonly number[]> = {
  density: [1052.71, 1042.87, 1030.98, 1017.04, 1001.05, 983],
  heatCapacity: [3455, 3532, 3609, 3686, 3763, 3841],
  conductivity: [0.349, 0.362, 0.372, 0.378, 0.382, 0.382],
  viscosity: [0.0184, 0.00665, 0.00311, 0.00175, 0.00112, 0.00079],
};

/** Worst difference between the fit and the handbook over 10 to 50 % by volume and -30 to 100 degC. */
const HANDBOOK_SPREAD: Record<PropertyName, number> = {
  density: 0.0092,
  heatCapacity: 0.041,
  conductivity: 0.059,
  viscosity: 0.17,
};

/** At 50 % by volume, 0 to 100 degC in steps of 20: ASHRAE Handbook: Fundamentals (2001), ethylene glycol tables. */
const HANDBOOK_AT_50: Record<PropertyName, readonly number[]> = {
  density: [1081.08, 1073.35, 1063.66, 1052.04, 1038.46, 1022.95],
  heatCapacity: [3203, 3281, 3358, 3435, 3512, 3590],
  conductivity: [0.364, 0.38, 0.394, 0.404, 0.411, 0.416],
  viscosity: [0.00809, 0.00394, 0.00226, 0.00143, 0.00098, 0.0007],
};

describe('water', () => {
  const water = createCoolant(0);

  test.each(PROPERTY_NAMES)('%s is that of the release', (name) => {
    for (const [T, expected] of WATER[name])
      expect(relativeError(water[name](T), expected), `${T} K`).toBeLessThan(1e-7);
  });

  test('viscosity and conductivity at 25 degC are the two check values printed in IAPWS SR6-08(2011)', () => {
    expect(relativeError(water.viscosity(298.15), 0.889996774e-3)).toBeLessThan(2e-9);
    expect(relativeError(water.conductivity(298.15), 0.606502308)).toBeLessThan(2e-9);
  });

  test('freezes at 0 degC and boils where IAPWS-IF97 says', () => {
    expect(water.freezingPoint).toBeCloseTo(273.15, 9);
    // [Pa, K] IAPWS R7-97(2012), region 4, computed in 30-digit arithmetic; equal to the open library iapws 1.5.3
    for (const [pressure, expected] of [
      [100000, 372.755919],
      [101325.0, 373.1243],
      [150000, 384.500049],
      [190000, 391.747484],
      [250000, 400.563629],
    ]) {
      expect(relativeError(water.boilingPoint(pressure), expected), `${pressure} Pa`).toBeLessThan(1e-8);
    }
  });
});

describe('ethylene glycol and water', () => {
  test.each(PROPERTY_NAMES)('%s collapsed to one concentration is the two-dimensional fit', (name) => {
    for (const [massFraction, T, expected] of MIXTURE[name]) {
      const value = createCoolant(volumeShareOf(massFraction))[name](T);
      // CoolProp rounds one constant of the viscosity: 3e-7
      expect(relativeError(value, expected), `${massFraction} at ${T} K`).toBeLessThan(
        name === 'viscosity' ? 1e-6 : 2e-7,
      );
    }
  });

  test.each(PROPERTY_NAMES)('%s at 50 %% by volume is near the handbook table', (name) => {
    const coolant = createCoolant(0.5);
    HANDBOOK_AT_50[name].forEach((expected, k) => {
      expect(relativeError(coolant[name](273.15 + 20 * k), expected)).toBeLessThan(HANDBOOK_SPREAD[name]);
    });
  });

  test('volumes before mixing become mass fractions', () => {
    // pure densities of the CRC Handbook and IAPWS SR6-08; a 60 % mix would be 62.6 % by mass, past the fit
    for (const [volume, mass] of [
      [0.1, 0.11027812],
      [0.3, 0.32344676],
      [0.5, 0.52730312],
      [0.55, 0.57688329],
    ]) {
      expect(relativeError(createCoolant(volume).massFraction, mass)).toBeLessThan(1e-6);
    }
  });

  test('first ice is where the fit puts it', () => {
    // [mass fraction, K] Melinder 2010, equal to CoolProp 8.0.0
    for (const [massFraction, expected] of [
      [0.1, 269.79281],
      [0.15, 267.70651],
      [0.2, 265.20122],
      [0.25, 262.18353],
      [0.3, 258.57422],
      [0.35, 254.30863],
      [0.4, 249.33714],
      [0.45, 243.62556],
      [0.5, 237.15558],
      [0.55, 229.92518],
      [0.6, 221.94908],
    ]) {
      expect(createCoolant(volumeShareOf(massFraction)).freezingPoint, `${massFraction}`).toBeCloseTo(expected, 3);
    }
  });

  test('first ice is near the handbook table', () => {
    // [mass fraction, degC] ASHRAE Handbook: Fundamentals (2001); the fit is up to 2.2 K lower at 50 %
    for (const [massFraction, expected] of [
      [0.1, -3.2],
      [0.2, -7.8],
      [0.3, -14.1],
      [0.4, -22.3],
      [0.5, -33.8],
    ]) {
      const degC = createCoolant(volumeShareOf(massFraction)).freezingPoint - 273.15;
      expect(Math.abs(degC - expected)).toBeLessThan(2.25);
    }
  });

  test('boils as the ideal mixture of its parts', () => {
    // [volume share, Pa, K] IAPWS-IF97 and Perry's Handbook (2008), table 2-8, solved in 30-digit arithmetic
    for (const [volume, pressure, expected] of [
      [0.3, 100000, 376.343],
      [0.3, 101325, 376.719],
      [0.3, 150000, 388.333],
      [0.3, 200000, 397.3834],
      [0.3, 240000, 403.3718],
      [0.5, 100000, 380.5692],
      [0.5, 101325, 380.9541],
      [0.5, 150000, 392.846],
      [0.5, 200000, 402.1158],
      [0.5, 240000, 408.2506],
    ]) {
      expect(relativeError(createCoolant(volume).boilingPoint(pressure), expected)).toBeLessThan(1e-6);
    }
  });

  test('keeps its order up to 110 degC, past the end of the fit', () => {
    for (const [kind, volume] of [0, 0.02, 0.1, 0.3, 0.5, 1].flatMap((share) =>
      (['ethylene', 'propylene'] as const).map((kind) => [kind, Math.min(share, largestGlycolByVolume(kind))] as const),
    )) {
      const coolant = createCoolant(volume, kind);
      for (let T = 333.15; T < 383; T++) {
        expect(coolant.viscosity(T + 1), `${volume} at ${T} K`).toBeLessThan(coolant.viscosity(T));
        expect(coolant.viscosity(T + 1)).toBeGreaterThan(0);
        expect(coolant.density(T + 1)).toBeLessThan(coolant.density(T));
        expect(coolant.heatCapacity(T + 1)).toBeGreaterThan(coolant.heatCapacity(T));
        expect(coolant.conductivity(T + 1)).toBeGreaterThan(coolant.conductivity(T));
      }
    }
  });
});

describe('propylene glycol and water', () => {
  const propylene = (volume: number) => createCoolant(volume, 'propylene');
  const atMass = (massFraction: number) => propylene(volumeShareOf(massFraction, 1036.12));

  test.each(PROPERTY_NAMES)('%s collapsed to one concentration is the two-dimensional fit', (name) => {
    for (const [massFraction, T, expected] of PROPYLENE_MIXTURE[name]) {
      const tolerance = name === 'viscosity' ? 1e-6 : 2e-7;
      expect(relativeError(atMass(massFraction)[name](T), expected), `${massFraction} at ${T} K`).toBeLessThan(
        tolerance,
      );
    }
  });

  test.each(PROPERTY_NAMES)('%s at 50 %% by volume is near the handbook table', (name) => {
    // The handbook counts volumes of the finished mix: 50 % of it is 50.1 % by mass.
    const coolant = atMass(0.501);
    PROPYLENE_HANDBOOK_AT_50[name].forEach((expected, k) => {
      const error = relativeError(coolant[name](273.15 + 20 * k), expected);
      expect(error, `${20 * k} degC`).toBeLessThan(PROPYLENE_HANDBOOK_SPREAD[name]);
    });
  });

  test('volumes before mixing become mass fractions', () => {
    // pure densities of the CRC Handbook and IAPWS SR6-08
    for (const [volume, mass] of [
      [0.1, 0.10340541],
      [0.3, 0.30788627],
      [0.5, 0.50931843],
      [0.55, 0.55920808],
    ]) {
      expect(relativeError(propylene(volume).massFraction, mass)).toBeLessThan(1e-6);
    }
  });

  test('first ice is where the fit puts it, and near two handbooks', () => {
    // [mass fraction, K] Melinder 2010, equal to CoolProp 8.0.0
    for (const [massFraction, expected] of [
      [0.1, 270.28301],
      [0.15, 268.27781],
      [0.2, 265.97711],
      [0.25, 263.36455],
      [0.3, 260.3609],
      [0.35, 256.82948],
      [0.4, 252.58175],
      [0.45, 247.38274],
      [0.5, 240.95653],
      [0.55, 232.99182],
      [0.6, 223.14735],
    ]) {
      expect(atMass(massFraction).freezingPoint, `${massFraction}`).toBeCloseTo(expected, 3);
    }
    // [mass fraction, degC] ASHRAE Handbook: Fundamentals (2001)
    for (const [massFraction, expected] of [
      [0.1, -3.3],
      [0.2, -7.1],
      [0.3, -12.7],
      [0.4, -21.1],
      [0.5, -33.5],
    ]) {
      expect(Math.abs(atMass(massFraction).freezingPoint - 273.15 - expected)).toBeLessThan(1.4);
    }
    // [volume share, degC] Lange's Handbook of Chemistry, 15th ed., 1999
    for (const [volume, expected] of [
      [0.1, -2.2],
      [0.2, -6.7],
      [0.3, -12.8],
      [0.4, -20.6],
      [0.5, -33.3],
    ]) {
      expect(Math.abs(propylene(volume).freezingPoint - 273.15 - expected)).toBeLessThan(0.87);
    }
  });

  test('boils as the ideal mixture of its parts', () => {
    // [volume share, Pa, K] IAPWS-IF97 and Perry's Handbook (2008), table 2-8, solved in 30-digit arithmetic
    for (const [volume, pressure, expected] of [
      [0.3, 100000.0, 375.4867],
      [0.3, 101325, 375.8608],
      [0.3, 150000.0, 387.4136],
      [0.3, 200000.0, 396.4151],
      [0.3, 240000.0, 402.3706],
      [0.5, 100000.0, 378.7851],
      [0.5, 101325, 379.1659],
      [0.5, 150000.0, 390.9301],
      [0.5, 200000.0, 400.0982],
      [0.5, 240000.0, 406.1647],
    ]) {
      expect(relativeError(propylene(volume).boilingPoint(pressure), expected)).toBeLessThan(1e-6);
    }
  });

  test('without glycol is water, whichever glycol is not in it', () => {
    expect(propylene(0).freezingPoint).toBeCloseTo(273.15, 9);
    for (const [T, expected] of WATER.viscosity) {
      expect(relativeError(propylene(0).viscosity(T), expected)).toBeLessThan(1e-7);
    }
  });
});

describe.each(['ethylene', 'propylene'] as const)('between water and the weakest mix of %s glycol', (kind) => {
  /** Without ice in any of them; a difference of neighbours is the slope. */
  const STEP = 0.0005;
  const weak = Array.from({ length: 201 }, (_, k) => createCoolant(k * STEP, kind));
  const atTemperatures = [273.15, 293.15, 313.15, 333.15, 353.15, 373.15];
  const curves: readonly (readonly [string, (coolant: Coolant) => number])[] = [
    ['freezing point', (coolant) => coolant.freezingPoint],
    ...PROPERTY_NAMES.flatMap((name) =>
      atTemperatures.map((T) => [`${name} at ${T} K`, (coolant: Coolant) => coolant[name](T)] as const),
    ),
  ];

  test.each(curves)('%s has no step and no turning point', (_, quantity) => {
    const values = weak.map(quantity);
    const slopes = values.slice(1).map((value, k) => (value - values[k]) / STEP);
    const rising = Math.sign(slopes[slopes.length - 1]);
    const whole = Math.abs(values[values.length - 1] - values[0]) / (STEP * slopes.length);
    for (let k = 0; k < slopes.length; k++) {
      expect(Math.sign(slopes[k]), `at ${k * STEP}`).toBe(rising);
      // A step of 1 % of the whole change would be a slope of twice the mean from one point to the next.
      if (k > 0) expect(Math.abs(slopes[k] - slopes[k - 1]), `at ${k * STEP}`).toBeLessThan(0.2 * whole);
    }
  });
});

test('refuses a mix that the fit does not reach', () => {
  expect(() => createCoolant(0.6)).toThrow(OutOfRangeError);
  expect(() => createCoolant(0.6)).toThrow('glycol by volume is 0.6; expected 0 to 0.57');
  expect(() => createCoolant(-0.01)).toThrow(OutOfRangeError);
  expect(() => createCoolant(Number.NaN)).toThrow(OutOfRangeError);
  expect(createCoolant(largestGlycolByVolume('ethylene')).massFraction).toBeCloseTo(0.6, 12);
  expect(() => createCoolant(0.6, 'propylene')).toThrow('propylene glycol by volume is 0.6; expected 0 to 0.59');
  expect(createCoolant(largestGlycolByVolume('propylene'), 'propylene').massFraction).toBeCloseTo(0.6, 12);
});

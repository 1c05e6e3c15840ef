import { describe, expect, test } from 'vitest';
import { humidityRatio } from '../../../src/sim/fluids/moist-air.ts';
import { condensationOn } from '../../support/humid-cell.ts';

function relativeError(value: number, expected: number): number {
  return Math.abs(value / expected - 1);
}

/** Charge air of 30 degC and 60 % outside, at 200 kPa over metal of 10 degC. */
const CELL = {
  dryAirFlow: 0.1,
  humidityRatio: 0.0160435,
  metalTemperature: 283.15,
  pressure: 200000,
  transferUnits: 1,
};

describe('one cell', () => {
  test('without end sheds all that the metal does not let pass', () => {
    // ASHRAE Handbook: Fundamentals (2017), chapter 1: w from 0.0160435 to 0.00384291, 2477.2 kJ/kg at 10 degC
    // (IAPWS-95): 1.22005 g/s and 3022.32 W
    const { condensate, latentHeat, humidityRatio: w } = condensationOn({ ...CELL, transferUnits: 40 });
    expect(relativeError(w, 0.00384291)).toBeLessThan(2e-3);
    expect(relativeError(condensate, 0.00122005)).toBeLessThan(1e-3);
    expect(relativeError(latentHeat, 3022.32)).toBeLessThan(1e-3);
  });

  test('of few transfer units sheds 7 % more than heat transfer alone would', () => {
    // slope at 0: excess x N/Le^(2/3), 0.9^(-2/3) = 1.07277; excess 0.0160435 - 0.00384291
    const transferUnits = 1e-4;
    const { condensate } = condensationOn({ ...CELL, transferUnits });
    expect(relativeError(condensate, 0.1 * (0.0160435 - 0.00384291) * 1.07277 * transferUnits)).toBeLessThan(1e-3);
  });

  test('is dry where the metal is above the dew point, just so', () => {
    // dew point of this air at 200 kPa: 306.13 K (same handbook, IAPWS-IF97)
    expect(condensationOn({ ...CELL, metalTemperature: 306.2 })).toEqual({
      humidityRatio: CELL.humidityRatio,
      condensate: 0,
      latentHeat: 0,
    });
    expect(condensationOn({ ...CELL, metalTemperature: 306.05 }).condensate).toBeGreaterThan(0);
  });

  test('cut into pieces is the same cell', () => {
    let w = CELL.humidityRatio;
    let condensate = 0;
    for (let k = 0; k < 8; k++) {
      const piece = condensationOn({ ...CELL, humidityRatio: w, transferUnits: 1 / 8 });
      w = piece.humidityRatio;
      condensate += piece.condensate;
    }
    expect(relativeError(condensate, condensationOn(CELL).condensate)).toBeLessThan(1e-12);
  });
});

/**
 * Counterflow coil of many cells, marched from the air inlet with the water's outlet guessed; the metal of each cell
 * takes sensible and latent heat and gives them to the water.
 */
function coil(waterOutlet: number, humidity: number) {
  const cells = 400;
  const conductance = 9495.5 / cells;
  const water = 3.78 * 4186;
  const dryAir = 2.646;
  const airRate = dryAir * 1021.6;
  let air = 299.817;
  let w = humidity;
  let coolant = waterOutlet;
  let heat = 0;
  for (let k = 0; k < cells; k++) {
    const at = (metalTemperature: number) => {
      const wet = condensationOn({
        dryAirFlow: dryAir,
        humidityRatio: w,
        metalTemperature,
        pressure: 101325,
        transferUnits: conductance / airRate,
      });
      const sensible = airRate * (air - metalTemperature) * -Math.expm1(-conductance / airRate);
      return { wet, sensible, surplus: sensible + wet.latentHeat - conductance * (metalTemperature - coolant) };
    };
    let low = coolant;
    let high = air;
    for (let round = 0; round < 40; round++) {
      const middle = (low + high) / 2;
      if (at(middle).surplus > 0) low = middle;
      else high = middle;
    }
    const { wet, sensible } = at((low + high) / 2);
    air -= sensible / airRate;
    w = wet.humidityRatio;
    coolant -= (sensible + wet.latentHeat) / water;
    heat += sensible + wet.latentHeat;
  }
  return { waterInlet: coolant, air, w, heat };
}

/** The water's outlet with which it enters at 5.556 degC. */
function solvedCoil(humidity: number) {
  let low = 278.706;
  let high = 299;
  for (let round = 0; round < 50; round++) {
    const middle = (low + high) / 2;
    if (coil(middle, humidity).waterInlet < 278.706) low = middle;
    else high = middle;
  }
  return { waterOutlet: (low + high) / 2, ...coil((low + high) / 2, humidity) };
}

describe('a whole cooling coil, 9495.5 W/K on either side', () => {
  // J. W. Mitchell, J. E. Braun, Principles of Heating, Ventilation, and Air Conditioning in Buildings, Wiley, 2012,
  // supplement 2, example SM-2-1: water 3.780 kg/s at 5.556 degC, air 2.646 kg/s at 26.667 degC, counterflow. The book
  // takes one straight line of saturated enthalpy for the whole coil: 1 K and 8 %. Local balances written a second
  // time, in another language with films in place of exponentials, give 80.87 kW and 14.565 degC, and 80.38 kW at Lewis
  // number 1.
  test('wet, at 0.01765 kg/kg, is the worked example', () => {
    const { waterOutlet, air, w, heat } = solvedCoil(0.01765);
    expect(Math.abs(waterOutlet - 273.15 - 11.0678)).toBeLessThan(1);
    expect(Math.abs(air - 273.15 - 13.5805)).toBeLessThan(1);
    expect(relativeError(heat, 87200)).toBeLessThan(0.08);
    expect(relativeError(heat, 80870)).toBeLessThan(2e-3);
    expect(Math.abs(air - 273.15 - 14.565)).toBeLessThan(0.02);
    // wet to the end: the air leaves all but saturated
    expect(w / humidityRatio(air, 101325, 1)).toBeGreaterThan(0.9);
  });

  test('dry is the exact counterflow', () => {
    // eff 0.7988 of C_min 2703 W/K over 21.111 K: 45.58 kW (cp 4199), within the water's 4186
    const { heat, air } = solvedCoil(0.0035383);
    expect(relativeError(heat, 45580)).toBeLessThan(1e-3);
    expect(Math.abs(air - 273.15 - 9.8)).toBeLessThan(0.02);
  });
});

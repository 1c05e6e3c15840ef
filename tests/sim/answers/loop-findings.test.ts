import { describe, expect, it } from 'vitest';
import type { FindingKind } from '../../../src/sim/answers/finding.ts';
import { findings } from '../../../src/sim/answers/findings.ts';
import { heatWhileWaiting } from '../../../src/sim/answers/waiting-heat.ts';
import { simulate } from '../../../src/sim/simulate.ts';
import { type Edits, shortConfig } from '../../support/short-session.ts';

function found(kind: FindingKind, edits: Edits) {
  const config = shortConfig(edits);
  return findings(config, simulate(config)).find((finding) => finding.kind === kind);
}

describe('a pump inlet', () => {
  // Water of 95 degC has a vapour pressure of 84.6 kPa (saturation tables). At 99.5 kPa a level 0.2 m over the pump
  // leaves 99.5 + 1.9 - 84.6 = 16.8 kPa, less 0.3 m of line: above the 10 kPa that are needed; a level 1 m below the pump
  // leaves half of that.
  const hot = { 'coolant.glycolByVolume': 0, 'start.coolant': 95, 'ambient.temperature': 45 };

  it('too near the vapour pressure is named with both pressures', () => {
    expect(found('pump may cavitate', hot)).toBeUndefined();
    const low = found('pump may cavitate', { ...hot, 'reservoir.heightAbovePump': -1 });
    expect(low).toMatchObject({ rank: 'check', place: 'pump' });
    expect(low?.text).toMatch(
      /At the pump inlet the coolant of 9\d\.\d degC is [45]\.\d kPa above its vapour pressure; the pump needs 10\.0 kPa above it/,
    );
    // A metre of it is 9.4 kPa: 3 m below the pump leave 16.8 - 30 kPa.
    const lower = found('pump may cavitate', { ...hot, 'reservoir.heightAbovePump': -3 });
    expect(lower?.text).toMatch(/ is 1\d\.\d kPa below its vapour pressure; the pump needs 10\.0 kPa above it\./);
  });
});

describe('pumps side by side', () => {
  const pair = (shutOff: number): Edits => ({
    loop: [['pump', 'secondPump'], 'core', 'exchanger', 'reservoir'],
    secondPump: { shutOffPressure: shutOff, freeFlow: 26, electricalPower: 20 },
    'lines.afterSecondPump': [],
    'lines.afterPump': [],
    'lines.afterWays': { length: 1.4 },
  });

  it('of which one is too weak to open', () => {
    expect(found('pump held shut', pair(28))).toBeUndefined();
    expect(found('pump held shut', pair(5))?.text).toMatch(/^The second pump cannot open against the one beside it/);
  });
});

describe('a measured flow', () => {
  it('near the curves is a note, far from them something to check, with both figures', () => {
    const near = found('measured flow differs', { 'pump.measuredFlow': 13 });
    expect(near).toMatchObject({ rank: 'note', place: 'loop' });
    const far = found('measured flow differs', { 'pump.measuredFlow': 8 });
    expect(far).toMatchObject({ rank: 'check' });
    expect(far?.text).toMatch(
      /^8\.0 L\/min was measured; by the curves it would be 13\.\d L\/min\..* air, a kinked line/,
    );
    expect(found('measured flow differs', {})).toBeUndefined();
  });
});

describe('the level of the tank', () => {
  // Water grows by 1000/999.10 x ... : 999.10 kg/m3 at 15 degC, 971.79 at 80 degC (IAPWS): 2.81 % of what warms so far.
  const hot: Edits = {
    'coolant.glycolByVolume': 0,
    'start.coolant': 15,
    'start.metal': 80,
    'ambient.temperature': 80,
    'reservoir.coolantVolume': 10,
    'reservoir.gain': 100,
    cycle: [{ kind: 'hot soak', duration: 7200, pump: 'on', bayAboveAmbient: 0 }],
  };

  it('rises by what the coolant grows, and runs over where there is no room', () => {
    const config = shortConfig(hot);
    const litres = 10 + 0.8 + 1.2 + 1000 * (Math.PI / 4) * 0.0165 ** 2 * 5.5;
    const grown = (litres * (999.1 / 971.79 - 1)).toFixed(2);
    expect(config.reservoir).not.toHaveProperty('vesselVolume');
    expect(found('tank level', hot)).toBeUndefined();
    const roomy = found('tank level', { ...hot, 'reservoir.vesselVolume': 12 });
    expect(roomy).toMatchObject({ rank: 'note', place: 'tank' });
    expect(roomy?.text).toContain(`grows by ${grown} L`);
    expect(roomy?.text).toContain(`${(2 - Number(grown)).toFixed(2)} L of room is left`);
    const full = found('tank level', { ...hot, 'reservoir.vesselVolume': 10.1 });
    expect(full).toMatchObject({ rank: 'check' });
    expect(full?.text).toContain(`${(Number(grown) - 0.1).toFixed(2)} L goes out of the overflow`);
  });
});

describe('heat while waiting', () => {
  const waiting: Edits = {
    cycle: [
      {
        kind: 'idle',
        duration: 400,
        engineSpeed: 1200,
        manifoldPressure: 38,
        exchangerAirSpeed: 2.5,
        bayAboveAmbient: 25,
      },
      { kind: 'pull', duration: 6, engineSpeed: [2500, 6600], exchangerAirSpeed: 2.5, bayAboveAmbient: 25 },
      { kind: 'hot soak', duration: 300, pump: 'off', bayAboveAmbient: 40 },
    ],
  };

  it('by the pump is its power times the time it runs, and none of it falls into a pull', () => {
    const config = shortConfig(waiting);
    const heat = heatWhileWaiting(config, simulate(config, { interval: 0.5 }));
    expect(heat?.duration).toBeCloseTo(700, 6);
    // 50 W, 0.9 of it into the coolant, 400 s
    expect(heat?.pump).toBeCloseTo(50 * 0.9 * 400, 3);
    expect(heat?.heatSink).toBe(0);
  });

  it('of all names together is what the run itself booked, where nothing but waiting is run', () => {
    const config = shortConfig({ cycle: [(waiting.cycle as [never])[0]] });
    const series = simulate(config, { interval: 0.5 });
    const heat = heatWhileWaiting(config, series);
    const { terms } = series.energy;
    expect(heat?.lines).toBeCloseTo(terms.lines, -1);
    expect(heat?.reservoir).toBeCloseTo(terms.reservoir, -1);
    expect((heat?.exchanger ?? 0) / terms.exchanger).toBeCloseTo(1, 3);
    expect(heat?.asIce).toBeGreaterThanOrEqual(0);
  });

  it('is said of a tank of ice, in kilograms, and of no other', () => {
    expect(found('heat while waiting', waiting)).toBeUndefined();
    const iced = found('heat while waiting', { ...waiting, 'reservoir.iceMass': 5, 'start.coolant': 2 });
    expect(iced?.text).toMatch(/^In 700 s of waiting .* 18 kJ from the pump, .* kg of ice\.$/);
    // What is named is what melts: 334 kJ a kilogram (ASHRAE Handbook: Fundamentals, 2017, chapter 19, ice).
    const named = [...(iced?.text ?? '').matchAll(/(-?\d+) kJ/g)].reduce(
      (sum, [, kilojoules]) => sum + Number(kilojoules),
      0,
    );
    const melted = Number(/melts ([\d.]+) kg/.exec(iced?.text ?? '')?.[1]);
    expect(Math.abs(named / 334 - melted)).toBeLessThan(0.06);
  });

  it('without any line comes through none', () => {
    const places = ['Pump', 'Core', 'Exchanger', 'Reservoir'];
    const bolted = Object.fromEntries(places.map((place) => [`lines.after${place}`, []]));
    const iced = found('heat while waiting', { ...waiting, ...bolted, 'reservoir.iceMass': 5, 'start.coolant': 2 });
    expect(iced?.text).toMatch(/ 18 kJ from the pump, 0 kJ through the lines, .* kg of ice\.$/);
    expect(iced?.text).not.toContain('NaN');
  });
});

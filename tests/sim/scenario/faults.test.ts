import { describe, expect, it } from 'vitest';
import type { ColumnName } from '../../../src/sim/results/time-series.ts';
import type { Config } from '../../../src/sim/scenario/config.ts';
import { parseScenario } from '../../../src/sim/scenario/parse.ts';
import { simulate } from '../../../src/sim/simulate.ts';
import { type Edits, shortConfig, shortDocument } from '../../support/short-session.ts';

const { core, exchanger, reservoir } = shortDocument();
/** The air at the exchanger in a pull, as the session has it [m/s]. */
const PULL = 'cycle.1.phases.0';

const SHOWN: readonly ColumnName[] = [
  'chargeTemperature',
  'reservoirTemperature',
  'coolantFlow',
  'coreMetalMean',
  'exchangerMetalMean',
  'manifoldPressure',
];

/** Both runs to nine digits. */
function expectSameRun(fault: Edits, byHand: Edits): void {
  const [a, b] = [fault, byHand].map((edits) => simulate(shortConfig(edits)));
  expect(b.rowCount).toBe(a.rowCount);
  for (const name of SHOWN) {
    for (let row = 0; row < a.rowCount; row++) {
      const [one, other] = [a, b].map(({ columns }) => columns[name][row]);
      expect(Math.abs(one - other), `${name} ${row}`).toBeLessThanOrEqual(1e-9 * other);
    }
  }
}

/** And that the fault does something. */
function expectToMatter(fault: Edits): void {
  const [with_, without] = [fault, {}].map((edits) => simulate(shortConfig(edits)));
  const peak = ({ columns }: typeof with_) => Math.max(...columns.chargeTemperature);
  expect(Math.abs(peak(with_) - peak(without))).toBeGreaterThan(0.05);
}

describe('a fault is the same car with its values typed by hand', () => {
  // Three layers in ten full of air: they leak past; seven tenths of metal and coolant, and each law at seven tenths of
  // its flow, with seven tenths of the conductance; the coolant's drop 0.7^-1.8 = 1.9004 times.
  it('air in the core', () => {
    const fault = { 'core.airLockedShare': 0.3 };
    const times = (key: string, factor: number) => ({ [`core.${key}`]: factor * core[key] });
    expectSameRun(fault, {
      'core.leakPast': 0.3,
      ...times('airConductance', 0.7),
      ...times('airConductanceAtFlow', 0.7),
      ...times('coolantConductance', 0.7),
      ...times('coolantConductanceAtFlow', 0.7),
      ...times('metalHeatCapacity', 0.7),
      ...times('coolantVolume', 0.7),
      ...times('airDropAtFlow', 0.7),
      ...times('coolantDropFactor', 1 / 0.7 ** 1.8),
    });
    expectToMatter(fault);
  });

  it('air in the core on top of a leak: the wet layers and the leak share what is left', () => {
    // 1 - 0.9 x 0.7
    const both = shortConfig({ 'core.airLockedShare': 0.3, 'core.leakPast': 0.1 });
    expect(both.core.leakPast).toBeCloseTo(0.37, 12);
  });

  it('a blocked share of the exchanger', () => {
    const fault = { 'exchanger.blockedShare': 0.4 };
    expectSameRun(fault, {
      'exchanger.faceArea': 0.6 * exchanger.faceArea,
      'exchanger.airConductance': 0.6 * exchanger.airConductance,
      'exchanger.airConductanceAtFlow': 0.6 * exchanger.airConductanceAtFlow,
    });
    expectToMatter(fault);
  });

  it('coolant that is missing', () => {
    const fault = { 'reservoir.missingCoolant': 1.5 };
    expectSameRun(fault, { 'reservoir.coolantVolume': reservoir.coolantVolume - 1.5 });
    expectToMatter(fault);
  });
});

describe('air at the exchanger', () => {
  const speedOf = (edits: Edits): Config['cycle']['block'][number]['exchangerAir']['speed'] =>
    shortConfig({ [`${PULL}.exchangerAirSpeed`]: undefined, ...edits }).cycle.block[0].exchangerAir.speed;

  it('by road speed is that share of it which reaches the face', () => {
    // 36 and 108 km/h are 10 and 30 m/s.
    const { from, to } = speedOf({ [`${PULL}.roadSpeed`]: [36, 108], 'exchanger.ramShare': 0.3 });
    expect(from).toBeCloseTo(3, 12);
    expect(to).toBeCloseTo(9, 12);
  });

  it('by a fan is its volume over the clear face', () => {
    // 1800 m3/h = 0.5 m3/s through 0.1 m2, and through three quarters of it.
    const fan = { [`${PULL}.fanFlow`]: 1800, 'exchanger.faceArea': 0.1 };
    expect(speedOf(fan).from).toBeCloseTo(5, 12);
    expect(speedOf({ ...fan, 'exchanger.blockedShare': 0.25 }).to).toBeCloseTo(5 / 0.75, 12);
  });

  it('at a second exchanger is by its own share and its own face', () => {
    // 36 km/h is 10 m/s; 1800 m3/h = 0.5 m3/s through three quarters of 0.2 m2.
    const second = { ...exchanger, faceArea: 0.2, ramShare: 0.1, blockedShare: 0.25 };
    const car = {
      [`${PULL}.exchangerAirSpeed`]: undefined,
      secondExchanger: second,
      'lines.afterSecondExchanger': [],
      loop: ['pump', 'core', 'exchanger', 'secondExchanger', 'reservoir'],
      'exchanger.ramShare': 0.3,
    };
    const speedsOf = (edits: Edits): number[] => {
      const phase = shortConfig({ ...car, ...edits }).cycle.block[0];
      return [phase.exchangerAir.speed.from, phase.secondExchangerAir.speed.from];
    };
    const [first, secondByRoad] = speedsOf({ [`${PULL}.roadSpeed`]: 36 });
    expect(first).toBeCloseTo(3, 12);
    expect(secondByRoad).toBeCloseTo(1, 12);
    expect(speedsOf({ [`${PULL}.fanFlow`]: 1800 })[1]).toBeCloseTo(0.5 / 0.15, 12);
    expect(speedsOf({ [`${PULL}.exchangerAirSpeed`]: 6 })).toEqual([6, 6]);
    expect(speedsOf({ [`${PULL}.roadSpeed`]: 36, [`${PULL}.secondExchangerAirSpeed`]: 4 })[1]).toBe(4);
  });

  it('makes the same run whichever way it is said', () => {
    const bare = { [`${PULL}.exchangerAirSpeed`]: undefined };
    const typed = { [`${PULL}.exchangerAirSpeed`]: 6 };
    // 6 m/s = 0.25 x 86.4 km/h; 6 m/s x 0.11 m2 = 0.66 m3/s = 2376 m3/h.
    expect(exchanger.faceArea).toBe(0.11);
    expectSameRun({ ...bare, [`${PULL}.roadSpeed`]: 86.4, 'exchanger.ramShare': 0.25 }, typed);
    expectSameRun({ ...bare, [`${PULL}.fanFlow`]: 2376 }, typed);
  });
});

describe('a core by its measures', () => {
  it('is worked out for the flow of both pumps', () => {
    const measures = {
      width: 200,
      height: 63,
      depth: 120,
      fins: 'louvred',
      finPitch: '14 fpi',
      finHeight: 8,
      finThickness: 0.1,
      louvrePitch: 1.4,
      louvreLength: 6.6,
      louvreAngle: 27,
      tubes: 'turbulated',
      tubeHeight: 3,
      tubeWall: 0.4,
      coolantLayers: 5,
      portBore: 19,
      headerVolume: 0.1,
      alloy: '3003 brazed',
    };
    const highest = (edits: Edits) =>
      shortConfig({ core: { toBay: 1 }, coreGeometry: measures, ...edits }).core.geometry?.coolantFlows[1] ??
      Number.NaN;
    const second = {
      loop: [['pump', 'secondPump'], 'core', 'exchanger', 'reservoir'],
      secondPump: { shutOffPressure: 28, freeFlow: 13, electricalPower: 50 },
      'lines.afterSecondPump': [],
    };
    // 26 L/min, and 39 with the second beside it.
    expect(highest(second) / highest({})).toBeCloseTo(1.5, 9);
  });
});

describe('the air of a second exchanger', () => {
  const issuesOf = (edits: Edits) => parseScenario(JSON.stringify(shortDocument(edits))).issues;

  it('is warned of where there is none, and asked for where it is the only one', () => {
    const ignored = issuesOf({ [`${PULL}.secondExchangerAirSpeed`]: 4 });
    expect(ignored).toContainEqual(
      expect.objectContaining({ severity: 'warning', path: `${PULL}.secondExchangerAirSpeed` }),
    );
    const { cycle } = shortDocument();
    for (const phase of [cycle[0], ...cycle[1].phases]) delete phase.exchangerAirSpeed;
    const alone = issuesOf({
      cycle,
      exchanger: undefined,
      'lines.afterExchanger': undefined,
      secondExchanger: exchanger,
      'lines.afterSecondExchanger': [],
      loop: ['pump', 'core', 'secondExchanger', 'reservoir'],
    });
    expect(alone).toContainEqual(
      expect.objectContaining({ severity: 'error', path: `${PULL}.secondExchangerAirSpeed` }),
    );
  });
});

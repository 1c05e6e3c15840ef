import { describe, expect, it } from 'vitest';
import type { Edits } from '../../support/short-session.ts';
import { type BadInput, changed, judge, parsed } from './judge.ts';

const EXCHANGER = {
  faceArea: 0.11,
  airConductance: 380,
  airConductanceAtFlow: 0.62,
  coolantConductance: 1800,
  coolantConductanceAtFlow: 0.3,
  metalHeatCapacity: 2.4,
  coolantVolume: 1.2,
  coolantDropFactor: 18,
};
const PUMP = { shutOffPressure: 28, freeFlow: 26, electricalPower: 50 };
const SINK = {
  curve: [
    { coolant: 5, heat: 0 },
    { coolant: 30, heat: 1000 },
  ],
};
const SECOND: Edits = { secondExchanger: EXCHANGER, 'lines.afterSecondExchanger': [] };
const FULL: Edits = {
  ...SECOND,
  secondPump: PUMP,
  'lines.afterSecondPump': [],
  heatSink: SINK,
  'lines.afterHeatSink': [],
};

describe('the order of the loop', () => {
  const BAD: readonly BadInput[] = [
    {
      what: 'that is no list',
      edits: { loop: 'pump, core' },
      path: 'loop',
      message: 'The loop is "pump, core"; expected parts in flow order',
    },
    {
      what: 'with a part that is nearly one',
      edits: { loop: ['pmup', 'core', 'exchanger', 'reservoir'] },
      path: 'loop.0',
      message: '"pmup" is no part of a loop. Did you mean "pump"?',
    },
    {
      what: 'with a part that is none',
      edits: { loop: ['pump', 'core', 'turbocharger wheel', 'exchanger', 'reservoir'] },
      path: 'loop.2',
      message: '"turbocharger wheel" is no part of a loop. The parts are pump, core, exchanger, reservoir,',
    },
    {
      what: 'with a number',
      edits: { loop: ['pump', 7, 'core', 'exchanger', 'reservoir'] },
      path: 'loop.1',
      message: '7 is no part of a loop.',
    },
    {
      what: 'with a part twice',
      edits: { loop: ['pump', 'core', 'exchanger', 'reservoir', 'core'] },
      path: 'loop',
      message: 'The charge-air core stands 2 times in the loop.',
    },
    {
      what: 'that names a part without its group',
      edits: { loop: ['pump', 'core', 'exchanger', 'secondExchanger', 'reservoir'], 'lines.afterSecondExchanger': [] },
      path: 'loop',
      message: 'The loop names the second exchanger, but the group secondExchanger is missing.',
    },
    {
      what: 'that leaves out a part that is there',
      edits: { loop: ['pump', 'core', 'reservoir'], 'lines.afterExchanger': undefined },
      path: 'loop',
      message: 'The loop does not say where the front exchanger stands: the coolant would never reach it.',
    },
    {
      what: 'that was never typed, with a part beyond the usual ones',
      edits: { heatSink: SINK },
      path: 'loop',
      message: 'The loop does not say where the extra heat sink stands',
    },
    {
      what: 'without the core',
      edits: { loop: ['pump', 'exchanger', 'reservoir'] },
      path: 'loop',
      message: 'The loop does not say where the charge-air core stands',
    },
    {
      what: 'with the core in a way',
      edits: { loop: ['pump', [['core'], ['exchanger']], 'reservoir'] },
      path: 'loop',
      message: 'The charge-air core stands in one of two ways beside each other; all coolant must come through it.',
    },
    {
      what: 'with the reservoir in a way',
      edits: { loop: ['pump', 'core', ['exchanger', 'reservoir']] },
      path: 'loop',
      message: 'The tank stands in one of two ways beside each other',
    },
    {
      what: 'with an empty way',
      edits: { loop: ['pump', 'core', [['exchanger'], []], 'reservoir'] },
      path: 'loop.2.1',
      message: 'A way of the loop has no part: all coolant would go there.',
    },
    {
      what: 'with three ways',
      edits: {
        ...FULL,
        loop: ['pump', 'core', ['exchanger', 'secondExchanger', 'heatSink'], 'secondPump', 'reservoir'],
      },
      path: 'loop.2',
      message: 'Ways beside each other come as a list of two; found 3.',
    },
    {
      what: 'with one way',
      edits: { loop: ['pump', 'core', ['exchanger'], 'reservoir'] },
      path: 'loop.2',
      message: 'Ways beside each other come as a list of two; found 1.',
    },
    {
      what: 'without the line after a part',
      edits: {
        ...SECOND,
        'lines.afterSecondExchanger': undefined,
        loop: ['pump', 'core', 'exchanger', 'secondExchanger', 'reservoir'],
      },
      path: 'lines.afterSecondExchanger',
      message:
        'Segments of afterSecondExchanger are missing: no way on from the second exchanger. [] bolts it to the next part.',
    },
    {
      what: 'without the line after the pump',
      edits: { 'lines.afterPump': undefined },
      path: 'lines.afterPump',
      message: 'Segments of afterPump are missing: no way on from the pump.',
    },
    {
      what: 'with a line left over',
      edits: { 'lines.afterHeatSink': { length: 1 } },
      path: 'lines.afterHeatSink',
      message: 'There is no extra heat sink in the loop for this line to leave.',
    },
    {
      what: 'with a line after ways that are not there',
      edits: { 'lines.afterWays': { length: 1 } },
      path: 'lines.afterWays',
      message: 'There are no two ways in the loop for this line to leave.',
    },
    {
      what: 'with a line after second ways that are not there',
      edits: {
        ...SECOND,
        loop: ['pump', 'core', ['exchanger', 'secondExchanger'], 'reservoir'],
        'lines.afterSecondWays': [],
      },
      path: 'lines.afterSecondWays',
      message: 'There are no second two ways in the loop for this line to leave.',
    },
    {
      what: 'that divides three times',
      edits: {
        ...FULL,
        loop: [
          ['pump', 'secondPump'],
          'core',
          ['exchanger', 'secondExchanger'],
          ['heatSink', 'exchanger'],
          'reservoir',
        ],
      },
      path: 'loop',
      message: 'The loop divides 3 times; up to two pairs of ways are computed.',
    },
  ];
  it.each(BAD)('$what', (bad) => judge('rolling-road-estate', bad));

  it('of every part, with two pairs of ways, is no issue', () => {
    const loop = [['pump', 'secondPump'], 'core', 'heatSink', [['exchanger'], 'secondExchanger'], 'reservoir'];
    const edits = { ...FULL, loop, 'lines.afterWays': { length: 0.5 }, 'lines.afterSecondWays': [] };
    expect(parsed(changed('rolling-road-estate', edits)).issues).toEqual([]);
  });

  it('may start anywhere: it is a ring', () => {
    const loop = ['exchanger', 'reservoir', 'pump', 'core'];
    expect(parsed(changed('rolling-road-estate', { loop })).issues).toEqual([]);
  });
});

describe('keys of a phase that say the same thing', () => {
  const PULL = 'cycle.1.phases.0';
  const BAD: readonly BadInput[] = [
    {
      what: 'air speed and road speed',
      edits: { [`${PULL}.roadSpeed`]: 100 },
      path: `${PULL}.roadSpeed`,
      message: 'The air at the front exchanger is given 2 times: by exchangerAirSpeed and roadSpeed. Keep one.',
    },
    {
      what: 'air speed, road speed and fan',
      edits: { [`${PULL}.roadSpeed`]: 100, [`${PULL}.fanFlow`]: 2000 },
      path: `${PULL}.roadSpeed`,
      message:
        'The air at the front exchanger is given 3 times: by exchangerAirSpeed, roadSpeed and fanFlow. Keep one.',
    },
    {
      what: 'road speed and fan',
      edits: { [`${PULL}.exchangerAirSpeed`]: undefined, [`${PULL}.roadSpeed`]: 100, [`${PULL}.fanFlow`]: 2000 },
      path: `${PULL}.fanFlow`,
      message: 'by roadSpeed and fanFlow. Keep one.',
    },
    {
      what: 'battery voltage and ratio',
      edits: { 'pump.ratedVoltage': 12, [`${PULL}.supplyVoltage`]: 13.8, [`${PULL}.pumpVoltageRatio`]: 1.1 },
      path: `${PULL}.supplyVoltage`,
      message: 'The voltage of the pump is given twice: 13.8 V at the battery and a ratio of 1.1. Keep one.',
    },
    {
      what: 'battery voltage to a pump without a rating',
      edits: { [`${PULL}.supplyVoltage`]: 13.8 },
      path: 'pump.ratedVoltage',
      message: 'A phase gives the voltage of the battery, 13.8 V: it takes the rated voltage of the pump',
    },
    {
      what: 'battery voltage to a second pump without a rating',
      edits: {
        loop: ['pump', 'secondPump', 'core', 'exchanger', 'reservoir'],
        secondPump: PUMP,
        'lines.afterSecondPump': [],
        'pump.ratedVoltage': 12,
        [`${PULL}.supplyVoltage`]: 13.8,
      },
      path: 'secondPump.ratedVoltage',
      message: 'it takes the rated voltage of the second pump to make anything of it.',
    },
  ];
  it.each(BAD)('$what', (bad) => judge('rolling-road-estate', bad));
});

describe('values of the loop that do not go together', () => {
  const BAD: readonly BadInput[] = [
    {
      what: 'a measured flow above the free flow',
      edits: { 'pump.measuredFlow': 27 },
      path: 'pump.measuredFlow',
      message: '27 L/min was measured, but the pump gives 26 L/min without any resistance. Check the meter',
    },
    {
      what: 'a measured flow above the free flow at its voltage',
      edits: { 'pump.measuredFlow': 21, 'pump.measuredFlowVoltage': 0.8 },
      path: 'pump.measuredFlow',
      message: '21 L/min was measured, but the pump gives 20.8 L/min',
    },
    {
      // 25 L/min and 5 kPa after 20 and 15: 2 kPa per L/min, so no pressure at 27.5 L/min.
      what: 'a measured flow beyond the end of a curve run on',
      edits: {
        'pump.shutOffPressure': undefined,
        'pump.freeFlow': undefined,
        'pump.curve': [
          { flow: 0, pressure: 30 },
          { flow: 20, pressure: 15 },
          { flow: 25, pressure: 5 },
        ],
        'pump.measuredFlow': 28,
      },
      path: 'pump.measuredFlow',
      message: '28 L/min was measured, but the pump gives 27.5 L/min',
    },
    {
      what: 'a measured flow beside a curve without points',
      edits: {
        'pump.shutOffPressure': undefined,
        'pump.freeFlow': undefined,
        'pump.curve': [],
        'pump.measuredFlow': 10,
      },
      path: 'pump.curve',
      message: '2',
    },
    {
      what: 'a sink whose temperatures fall',
      edits: sinkOf([5, 4], [0, 100]),
      path: 'heatSink.curve.1',
      message: 'Temperatures of the heat sink must rise: 4 degC comes after 5 degC.',
    },
    {
      what: 'a sink that draws less from warmer coolant',
      edits: sinkOf([5, 30, 40], [0, 900, 800]),
      path: 'heatSink.curve.2',
      message: 'A sink draws no less heat from warmer coolant: 800 W comes after 900 W.',
    },
    {
      what: 'ice in layers',
      edits: { 'reservoir.layers': 4, 'reservoir.iceMass': 1, 'start.coolant': 2, 'start.metal': 2 },
      path: 'reservoir.layers',
      message: 'A tank with ice is taken as stirred: 1 kg of ice and 4 layers do not go together.',
      fix: 1,
    },
    {
      what: 'more coolant missing than there was',
      edits: { 'reservoir.missingCoolant': 2.28 },
      path: 'reservoir.missingCoolant',
      message: 'The tank holds 2.3 L: with 2.28 L missing the pump draws air.',
    },
  ];
  it.each(BAD)('$what', (bad) => judge('rolling-road-estate', bad));
});

/** A sink in the loop with this curve; degC, W. */
function sinkOf(temperatures: readonly number[], heats: readonly number[]): Edits {
  return {
    loop: ['pump', 'core', 'heatSink', 'exchanger', 'reservoir'],
    'lines.afterHeatSink': [],
    heatSink: { curve: temperatures.map((coolant, k) => ({ coolant, heat: heats[k] })) },
  };
}

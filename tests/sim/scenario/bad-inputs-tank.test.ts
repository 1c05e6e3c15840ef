import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../../src/sim/scenario/parse.ts';
import { toConfig } from '../../../src/sim/scenario/to-config.ts';
import { simulate } from '../../../src/sim/simulate.ts';
import type { Edits } from '../../support/short-session.ts';
import { shortDocument } from '../../support/short-session.ts';
import { type BadInput, changed, judge, parsed } from './judge.ts';

const ICED: Edits = { 'reservoir.coolantVolume': 12, 'reservoir.iceMass': 8 };

describe('a tank of ice', () => {
  const BAD: readonly BadInput[] = [
    {
      // 12 + 14/0.917 = 27.27 L; 8 L hold 7.336 kg.
      what: 'without room for it',
      edits: { ...ICED, 'reservoir.iceMass': 14, 'reservoir.vesselVolume': 20 },
      path: 'reservoir.vesselVolume',
      message:
        '12 L of coolant and 14 kg of ice need 27.27 L (ice 0.917 kg/L): 7.267 L more than the 20 L that the vessel holds.',
      fix: 7.3,
    },
    {
      what: 'without room for the coolant alone',
      edits: { ...ICED, 'reservoir.vesselVolume': 10 },
      path: 'reservoir.vesselVolume',
      message: '12 L of coolant and 8 kg of ice need 20.72 L (ice 0.917 kg/L): 10.72 L more than the 10 L',
    },
    {
      what: 'without ice, and without room',
      edits: { ...ICED, 'reservoir.iceMass': 0, 'reservoir.vesselVolume': 10 },
      path: 'reservoir.vesselVolume',
      message: '12 L of coolant do not fit: 2 L more than the 10 L that the vessel holds.',
      fix: 10,
    },
    {
      // Water at 15 degC: 999.1 kg/m3, 4188.5 J/(kg K). 12 L: 3.76 kg; core 1.8 L, 6 m of 25 mm bore 2.945 L: 5.25 kg.
      what: 'with coolant as warm as the day',
      edits: { ...ICED, 'start.coolant': 25 },
      severity: 'warning',
      path: 'start.coolant',
      message:
        '12 L in the tank at 25 degC would melt 3.8 of the 8 kg of ice before anything happens, the 16.75 L of the whole loop 5.3 kg. Start at 0 to 3 degC?',
      fix: 2,
    },
    {
      // Two passes with 2 L where the coolant turns round: 18.75 L, 0.3137 kg each.
      what: 'with warm coolant in a turn header as well',
      edits: { ...ICED, 'start.coolant': 25, 'core.passes': 2, 'core.cellsAlongAir': 6, 'core.turnVolume': 2 },
      severity: 'warning',
      path: 'start.coolant',
      message: 'the 18.75 L of the whole loop 5.9 kg.',
      fix: 2,
    },
    {
      what: 'whose start is left to the day',
      edits: { ...ICED, 'start.coolant': undefined },
      severity: 'warning',
      path: 'start.coolant',
      message: '12 L in the tank at 36 degC would melt 5.4 of the 8 kg of ice',
      fix: 2,
    },
    {
      what: 'with a tank warmer than the rest of the loop',
      edits: { ...ICED, 'start.coolant': 2, 'start.reservoir': 25 },
      severity: 'warning',
      path: 'start.reservoir',
      // As above, and the 4.75 L outside the tank at 2 degC: 0.12 kg more, 3.88.
      message:
        '12 L in the tank at 25 degC would melt 3.8 of the 8 kg of ice before anything happens, the 16.75 L of the whole loop 3.9 kg.',
      fix: 2,
    },
    {
      what: 'that all melts at once',
      edits: { ...ICED, 'start.coolant': 40 },
      severity: 'warning',
      path: 'start.coolant',
      // 0.3137 kg/L at 25 degC: 8.4 kg in the whole loop, of 8.
      message: 'would melt 6 of the 8 kg of ice before anything happens, the 16.75 L of the whole loop 8 kg.',
      fix: 2,
    },
    {
      what: 'in a loop without a tank',
      edits: { reservoir: undefined, 'coolant.iceMass': 8 },
      path: 'coolant.iceMass',
      message: 'Ice needs a tank: give it as reservoir.iceMass, in the coolant of the tank, or take it out.',
    },
    {
      what: 'without coolant round the ice',
      edits: { 'reservoir.coolantVolume': undefined },
      path: 'reservoir.coolantVolume',
      message: 'No coolant there: nothing to carry the heat.',
    },
  ];
  it.each(BAD)('$what', (bad) => judge('quarter-mile-saloon', bad));

  it('with room and cold coolant is no issue', () => {
    const edits = { ...ICED, 'reservoir.vesselVolume': 21, 'start.coolant': 3 };
    expect(parsed(changed('quarter-mile-saloon', edits)).issues).toEqual([]);
  });
});

describe('a mix that freezes', () => {
  const PATH = 'coolant.glycolByVolume';
  const ACCEPTED = 'Accepted as typed: the run stops where coolant freezes.';
  const BAD: readonly BadInput[] = [
    {
      what: 'blocks until it is accepted',
      edits: { 'coolant.glycolByVolume': 0, 'ambient.temperature': -8 },
      path: PATH,
      message: 'To run it all the same, set coolant.freezingAccepted to "yes".',
      fix: 30,
    },
    {
      what: 'is a warning once it is accepted',
      edits: { 'coolant.glycolByVolume': 0, 'ambient.temperature': -8, 'coolant.freezingAccepted': 'yes' },
      severity: 'warning',
      path: PATH,
      message: ACCEPTED,
      fix: 30,
    },
    {
      what: 'in one phase alone',
      edits: { 'coolant.glycolByVolume': 10, 'cycle.0.outsideTemperature': [20, -12] },
      path: PATH,
      message: 'the air outside in the phase "warm-up idle" is -12 degC. Pump, core and front exchanger can split.',
      fix: 35,
    },
    {
      what: 'beyond what any mix can do',
      edits: { 'coolant.glycolByVolume': 50, 'cycle.0.outsideTemperature': -50 },
      path: PATH,
      message: 'Pump, core and front exchanger can split. To run it all the same',
    },
  ];
  it.each(BAD)('$what', (bad) => judge('rolling-road-estate', bad));

  it('and is accepted runs until it freezes', () => {
    const document = shortDocument({
      'coolant.glycolByVolume': 0,
      'coolant.freezingAccepted': 'yes',
      'start.coolant': 1,
      'start.metal': 1,
      'ambient.temperature': -30,
      'cycle.0.bayAboveAmbient': 0,
    });
    const { scenario } = parseScenario(JSON.stringify(document));
    if (scenario === undefined) throw new Error('refused');
    expect(simulate(toConfig(scenario)).outcome).toMatchObject({
      kind: 'stopped',
      reason: expect.arrayContaining([expect.stringMatching(/^coolant freezes /)]),
    });
  });
});

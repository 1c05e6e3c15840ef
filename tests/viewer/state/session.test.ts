import { readFileSync } from 'node:fs';
import { beforeEach, describe, expect, it } from 'vitest';
import { FILE_WORDING, operatingPoint } from '../../../src/sim/index.ts';
import { asFile, type Car, NO_RUN } from '../../../src/viewer/state/cars.ts';
import { Session } from '../../../src/viewer/state/session.ts';

// Values of the demo car stand in scenarios/rolling-road-estate.json: core.airConductance 390, pump.freeFlow 26.
const ESTATE = readFileSync(new URL('../../../scenarios/rolling-road-estate.json', import.meta.url), 'utf8');
const AIR = 'core.airConductance';
const PULL = { kind: 'pull', engineSpeed: [2500, 6600], exchangerAirSpeed: 2.5 };

let session: Session;
const core = () => session.inHand.value?.scenario.values.core.airConductance;
const undoLabels = () => session.undoSteps.value.map(({ label }) => label);

beforeEach(() => {
  session = new Session();
  expect(session.open(ESTATE)).toEqual([]);
});

describe('a change', () => {
  it('makes After and leaves Before as it was opened', () => {
    const before = session.before.value;
    session.change({ [AIR]: 468 }, 'core air conductance');
    expect(session.after.value?.scenario.values.core.airConductance).toBe(468);
    expect(session.before.value).toBe(before);
    expect(session.inHand.value).toBe(session.after.value);
    expect(session.changes.value).toEqual([AIR]);
  });

  it('is typed with a unit as in a file', () => {
    session.change({ 'ambient.temperature': '95 degF' }, 'outside air temperature');
    expect(session.after.value?.config.ambient.temperature).toBeCloseTo(308.15, 9);
    expect(session.after.value?.document.ambient).toMatchObject({ temperature: '95 degF' });
  });

  it('takes After away when the value returns to that of Before', () => {
    session.change({ [AIR]: 468 }, 'core air conductance');
    session.change({ [AIR]: 390 }, 'core air conductance');
    expect(session.after.value).toBeUndefined();
    expect(undoLabels()).toHaveLength(2);
  });

  it('that changes nothing leaves no undo step', () => {
    session.change({ [AIR]: 390 }, 'core air conductance');
    expect(session.after.value).toBeUndefined();
    expect(undoLabels()).toEqual([]);
  });

  it('gives After its name while it is one thing, and a count of all that differs beyond', () => {
    session.preview({ [AIR]: 468 }, 'core air conductance 468 W/K');
    expect(session.after.value?.label).toBe('core air conductance 468 W/K');
    session.commit('core air conductance');
    session.change({ 'pump.freeFlow': 60, 'pump.shutOffPressure': 62 }, 'pump');
    expect(session.after.value?.label).toBe('3 changes');
    session.putBack(['pump.freeFlow', 'pump.shutOffPressure'], 'pump');
    expect(session.after.value?.label).toBe('1 change');
  });

  it('may be one that a variant of the file does not fit', () => {
    // "stock, rest 240 s" changes the second phase of the block, which is gone here.
    expect(session.change({ 'cycle.1.phases': [{ ...PULL, duration: 20 }] }, 'no rest')).toEqual([]);
    expect(session.after.value?.config.cycle.block).toHaveLength(1);
  });

  it('of undefined takes a key out of the file, and its default holds', () => {
    session.change({ 'pump.shareIntoCoolant': 0.5 }, 'share');
    session.change({ 'pump.shareIntoCoolant': undefined }, 'share');
    // 0.9 is the default of the parameter table, and the value typed in the file.
    expect(session.after.value?.config.pump.shareIntoCoolant).toBe(0.9);
    expect(session.changes.value).toEqual(['pump.shareIntoCoolant']);
  });
});

describe('a gesture', () => {
  it('of many previews is one undo step', () => {
    for (const value of [400, 420, 468]) session.preview({ [AIR]: value }, 'core');
    expect(session.isDragging.value).toBe(true);
    expect(undoLabels()).toEqual([]);
    session.commit('core: air conductance');
    expect(session.isDragging.value).toBe(false);
    expect(undoLabels()).toEqual(['core: air conductance']);
    session.undo();
    expect(core()).toBe(390);
    expect(session.after.value).toBeUndefined();
  });

  it('given up leaves the cars as they were when it began', () => {
    session.change({ [AIR]: 468 }, 'first');
    const after = session.after.value;
    session.preview({ [AIR]: 500 }, 'second');
    session.abandon();
    expect(session.after.value).toBe(after);
    expect(session.isDragging.value).toBe(false);
    expect(undoLabels()).toEqual(['first']);
  });

  it('is given up by undo, which then goes no further back', () => {
    session.change({ [AIR]: 468 }, 'first');
    session.preview({ [AIR]: 500 }, 'second');
    session.undo();
    expect(core()).toBe(468);
    expect(undoLabels()).toEqual(['first']);
  });

  it('cut short by a variant is undone with it', () => {
    session.preview({ [AIR]: 500 }, 'drag');
    session.tryVariant('bigger core');
    session.undo();
    expect(session.after.value).toBeUndefined();
  });
});

describe('undo and redo', () => {
  it('walk back and forth over all steps, with their labels', () => {
    session.change({ [AIR]: 468 }, 'one');
    session.change({ 'pump.freeFlow': 60 }, 'two');
    session.undo();
    expect(session.redoSteps.value.map(({ label }) => label)).toEqual(['two']);
    session.undo();
    expect(session.after.value).toBeUndefined();
    session.redo();
    session.redo();
    expect(core()).toBe(468);
    expect(session.inHand.value?.scenario.values.pump.freeFlow).toBe(60);
    expect(undoLabels()).toEqual(['one', 'two']);
    expect(session.redoSteps.value).toEqual([]);
  });

  it('a new change forgets what could be redone', () => {
    session.change({ [AIR]: 468 }, 'one');
    session.undo();
    session.change({ [AIR]: 500 }, 'other');
    expect(session.redoSteps.value).toEqual([]);
  });

  it('reach back over New', () => {
    session.clear();
    expect(session.inHand.value).toBeUndefined();
    session.undo();
    expect(core()).toBe(390);
  });
});

describe('the limit', () => {
  const limits = () =>
    [session.before.value, session.after.value].map((car) => car?.scenario.values.limit.chargeTemperature);

  it('of a lone car makes no After, and is undone in one step', () => {
    for (const value of [57, 56, 55]) session.preview({ 'limit.chargeTemperature': value }, 'limit');
    session.commit('limit');
    expect(limits()).toEqual([55, undefined]);
    expect(undoLabels()).toEqual(['limit']);
    session.undo();
    expect(limits()).toEqual([58, undefined]);
  });

  it('crosses both cars, and differs in none', () => {
    session.change({ [AIR]: 468 }, 'core');
    session.change({ 'limit.chargeTemperature': 50 }, 'limit');
    expect(limits()).toEqual([50, 50]);
    expect(session.changes.value).toEqual([AIR]);
  });

  it('that cannot be read is a draft', () => {
    session.change({ 'limit.chargeTemperature': 'x' }, 'limit');
    expect(limits()).toEqual([58, undefined]);
    expect(session.draft.value?.path).toBe('limit.chargeTemperature');
  });
});

describe('a text that cannot be read', () => {
  it('becomes a draft with the issues of the parser and leaves the cars alone', () => {
    const before = session.before.value;
    const issues = session.change({ [AIR]: '58,5o' }, 'core air conductance');
    expect(issues.map(({ path }) => path)).toEqual([AIR]);
    expect(session.draft.value).toMatchObject({ path: AIR, text: '58,5o', issues });
    expect(session.before.value).toBe(before);
    expect(session.after.value).toBeUndefined();
    expect(undoLabels()).toEqual([]);
  });

  it('keeps the text of the box where that is not what would stand in the file', () => {
    session.change({ 'ambient.temperature': '900 degF' }, 'outside air', { path: 'ambient.temperature', text: '900' });
    expect(session.draft.value?.text).toBe('900');
  });

  it('stays while another box is used, and goes with a value that can be read', () => {
    session.change({ [AIR]: 'x' }, 'core');
    session.change({ 'pump.freeFlow': 60 }, 'pump');
    expect(session.draft.value?.path).toBe(AIR);
    session.change({ 'lines.bore': 'y' }, 'lines');
    expect(session.drafts.value.map(({ path }) => path)).toEqual([AIR, 'lines.bore']);
    session.change({ [AIR]: 468 }, 'core');
    expect(session.drafts.value.map(({ path }) => path)).toEqual(['lines.bore']);
    session.dropDraft('lines.bore');
    expect(session.draft.value).toBeUndefined();
  });

  it('a missing value that must be there is one', () => {
    const issues = session.change({ [AIR]: undefined }, 'core');
    expect(issues[0].message).toMatch(/^Core air conductance is missing/);
    expect(session.draft.value).toMatchObject({ path: AIR, text: '' });
  });
});

describe('put back', () => {
  it('gives one path the value of Before and keeps the others', () => {
    session.change({ [AIR]: 468, 'pump.freeFlow': 60 }, 'both');
    session.putBack([AIR], 'core air conductance');
    expect(session.changes.value).toEqual(['pump.freeFlow']);
    expect(undoLabels().at(-1)).toBe('put back core air conductance');
  });

  it('of the last change takes After away', () => {
    session.change({ [AIR]: 468 }, 'core');
    session.putBack([AIR], 'core');
    expect(session.after.value).toBeUndefined();
  });

  it('takes out what Before does not have', () => {
    session.change({ 'numerics.tolerance': 0.05, 'numerics.longestStep': 2 }, 'numerics');
    expect(session.changes.value).toEqual(['numerics.tolerance', 'numerics.longestStep']);
    session.putBack(['numerics.tolerance'], 'tolerance');
    expect(session.changes.value).toEqual(['numerics.longestStep']);
    session.putBack(['numerics.longestStep'], 'longest step');
    expect(session.after.value).toBeUndefined();
  });

  it('gives a list its length back', () => {
    const segment = { length: 1 };
    session.change({ 'lines.afterPump': [segment, segment] }, 'a segment more');
    session.putBack(session.changes.value, 'lines');
    expect(session.after.value).toBeUndefined();
  });
});

describe('variants', () => {
  it('make After, once more from Before each time', () => {
    session.change({ 'pump.freeFlow': 60 }, 'pump');
    session.tryVariant('bigger core');
    expect(session.after.value?.label).toBe('bigger core');
    expect(session.changes.value.every((path) => path.startsWith('core.'))).toBe(true);
    expect(undoLabels()).toEqual(['pump', 'bigger core']);
  });

  it('can be added from After, and tried afterwards', () => {
    session.change({ [AIR]: 468, 'lines.afterPump': [{ length: 1 }, { length: 2 }] }, 'mine');
    expect(session.addVariant('mine')).toEqual([]);
    session.putBack(session.changes.value, 'all');
    expect(session.after.value).toBeUndefined();
    session.tryVariant('mine');
    expect(core()).toBe(468);
    expect(session.inHand.value?.scenario.values.lines.afterPump?.map(({ length }) => length)).toEqual([1, 2]);
  });

  it('cannot take keys out of a file, and say so', () => {
    const own = session.before.value?.document.variants;
    expect(own).toContainEqual(expect.objectContaining({ name: 'bigger core' }));
    session.change({ 'pump.shareIntoCoolant': undefined }, 'share');
    expect(session.addVariant('mine')[0].path).toBe('pump.shareIntoCoolant');
    expect(session.before.value?.document.variants).toBe(own);
  });
});

describe('keep as Before', () => {
  it('takes the upgrades of the file along as far as all of them fit', () => {
    const own = session.before.value?.document.upgrades;
    expect(own).toHaveLength(5);
    session.change({ [AIR]: 468 }, 'core');
    expect(session.after.value?.document).not.toHaveProperty('upgrades');
    session.keepAsBefore();
    expect(session.before.value?.document.upgrades).toEqual(own);
  });

  it('makes After the Before, with its results', () => {
    session.change({ [AIR]: 468 }, 'core');
    const after = session.after.value;
    if (after === undefined) throw new Error('no After');
    const run = { ...NO_RUN, kind: 'solved' as const, duration: 1116, of: after };
    session.afterRun.value = run;
    session.keepAsBefore();
    expect(session.before.value).toMatchObject({ label: 'core', config: after.config });
    expect(session.beforeRun.value).toEqual({ ...run, of: session.before.value });
    expect(session.after.value).toBeUndefined();
    session.undo();
    expect(session.after.value).toBe(after);
  });

  it('keeps the variants of the file', () => {
    session.tryVariant('bigger core');
    session.keepAsBefore();
    session.tryVariant('stock + pump only');
    expect(session.inHand.value?.scenario.values).toMatchObject({
      core: { airConductance: 585 },
      pump: { freeFlow: 60 },
    });
  });

  it('goes without them where they do not fit the car any more', () => {
    session.change({ 'cycle.1.phases': [{ ...PULL, duration: 20 }] }, 'no rest');
    session.keepAsBefore();
    expect(session.before.value?.scenario.values.variants).toBeUndefined();
  });
});

describe('files', () => {
  it('with errors change nothing', () => {
    const before = session.before.value;
    expect(session.open('{').length).toBeGreaterThan(0);
    expect(session.before.value).toBe(before);
  });

  it('come back as they were stored, without an undo step', () => {
    session.change({ [AIR]: 468 }, 'core');
    const { before, after } = session;
    const restored = new Session();
    if (before.value === undefined || after.value === undefined) throw new Error('no cars');
    restored.restore(before.value, after.value);
    expect(restored.changes.value).toEqual([AIR]);
    expect(restored.undoSteps.value).toEqual([]);
  });

  it('take another name without a change of the car', () => {
    session.describe({ name: 'Mine' });
    expect(session.after.value).toBeUndefined();
    expect(session.before.value?.scenario.values.name).toBe('Mine');
    session.undo();
    expect(session.before.value?.scenario.values.name).toBe('Rolling-road estate');
  });
});

describe('what both cars are asked', () => {
  const DAY = 'ambient.temperature';

  it('goes from After to Before in one step, the rest of After stays its own', () => {
    session.tryVariant('bigger core');
    session.change({ [DAY]: 35 }, 'day');
    expect(session.alsoBefore([DAY], 'both')).toEqual([]);
    expect(session.before.value?.scenario.values.ambient.temperature).toBe(35);
    expect(session.before.value?.document.variants).toBeDefined();
    expect(session.changes.value).toContain(AIR);
    expect(session.changes.value).not.toContain(DAY);
    session.undo();
    expect(session.before.value?.scenario.values.ambient.temperature).toBe(27);
    expect(session.after.value?.scenario.values.ambient.temperature).toBe(35);
  });

  it('leaves one car where nothing else differs', () => {
    session.change({ [DAY]: 35 }, 'day');
    session.alsoBefore([DAY], 'both');
    expect(session.after.value).toBeUndefined();
    expect(session.before.value?.scenario.values.ambient.temperature).toBe(35);
  });
});

describe('a flow that was measured', () => {
  const FLOW = 'pump.measuredFlow';
  const PUMP = { 'pump.freeFlow': 52, 'pump.shutOffPressure': 56 };
  /** L/min */
  const flowOf = (car: Car | undefined): number => 60000 * ((car && operatingPoint(car.config)?.flow) ?? Number.NaN);
  const opened = (document: object | undefined): Car | undefined => {
    const other = new Session();
    expect(other.open(JSON.stringify(document))).toEqual([]);
    return other.before.value;
  };
  const inHand = (): Car => session.inHand.value as Car;

  beforeEach(() => {
    const car = JSON.parse(ESTATE);
    session = new Session();
    expect(session.open(JSON.stringify({ ...car, pump: { ...car.pump, measuredFlow: 10 } }))).toEqual([]);
  });

  it('is what Before has, and moves in After with the pump: as much as the same resistances let it', () => {
    session.change(PUMP, 'pump');
    expect(flowOf(session.before.value)).toBeCloseTo(10, 6);
    // Twice the flow figure and twice the pressure of the pump: more than 10, and short of twice.
    expect(flowOf(session.after.value)).toBeGreaterThan(13);
    expect(flowOf(session.after.value)).toBeLessThan(20);
    const flow = flowOf(session.after.value);
    session.keepAsBefore();
    expect(flowOf(session.before.value)).toBe(flow);
    session.describe({ name: 'Kept' });
    expect(flowOf(session.before.value)).toBe(flow);
  });

  it('lets After have a pump that could not make it', () => {
    expect(session.change({ 'pump.freeFlow': 9 }, 'pump')).toEqual([]);
    expect(flowOf(session.after.value)).toBeLessThan(9);
  });

  it('that After is given is met there, and kept from then on', () => {
    session.change(PUMP, 'pump');
    session.change({ [FLOW]: 12 }, 'measured');
    expect(flowOf(session.after.value)).toBeCloseTo(12, 6);
    session.change({ 'pump.freeFlow': 26, 'pump.shutOffPressure': 28 }, 'pump');
    expect(flowOf(session.after.value)).toBeLessThan(11);
    session.putBack([FLOW], 'measured');
    expect(flowOf(session.inHand.value)).toBeCloseTo(10, 6);
  });

  it('taken out leaves the curves', () => {
    session.change({ [FLOW]: undefined }, 'not measured');
    const car = JSON.parse(ESTATE);
    expect(flowOf(session.after.value)).toBe(flowOf(opened(car)));
  });

  it('stands in a saved file as what the meter would read, so that the file means the same car', () => {
    expect(asFile(inHand())).toEqual({ document: inHand().document });
    session.change(PUMP, 'pump');
    const { document, note } = asFile(inHand());
    expect(document.pump).toMatchObject({ freeFlow: 52, shutOffPressure: 56 });
    expect((document.pump as { measuredFlow: number }).measuredFlow).toBeCloseTo(flowOf(session.after.value), 5);
    expect(note?.(FILE_WORDING.flow)).toContain('in the place of 10.0 L/min');
    const again = opened(document);
    expect(flowOf(again)).toBeCloseTo(flowOf(session.after.value), 5);
    const resistances = [again, inHand()].map((car) => car && operatingPoint(car.config)?.measured?.resistanceFactor);
    expect((resistances[0] ?? 0) / (resistances[1] ?? 1)).toBeCloseTo(1, 6);
  });

  it('of which no change of the loop is made stands in a saved file as typed', () => {
    session.change({ [AIR]: 468 }, 'core');
    expect(asFile(inHand())).toEqual({ document: inHand().document });
  });

  it('stays out of a variant where it is that of Before, and is what the meter would read where not', () => {
    session.change(PUMP, 'pump');
    const flow = flowOf(session.after.value);
    expect(session.addVariant('pump')).toEqual([]);
    const variantOf = (car: Car | undefined) => car?.scenario.values.variants?.at(-1)?.changes ?? {};
    expect(variantOf(session.before.value)).toEqual(PUMP);
    session.tryVariant('pump');
    expect(flowOf(session.after.value)).toBeCloseTo(flow, 9);

    session.change({ [FLOW]: 12 }, 'measured');
    session.change({ 'pump.shutOffPressure': 80 }, 'pump');
    const own = flowOf(session.after.value);
    expect(own).toBeGreaterThan(13);
    expect(session.addVariant('own')).toEqual([]);
    expect(variantOf(session.before.value)).toHaveProperty([FLOW], expect.closeTo(own, 5));
    session.tryVariant('own');
    expect(flowOf(session.after.value)).toBeCloseTo(own, 5);
  });
});

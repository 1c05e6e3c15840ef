import { beforeEach, describe, expect, it } from 'vitest';
import type { JsonObject } from '../../../src/sim/index.ts';
import { exampleMeasures, isExample, measurePaths, measureSections } from '../../../src/viewer/designer/measures.ts';
import { choiceChanges } from '../../../src/viewer/document/choices.ts';
import { corePresets, hasCore, sizeBetween, sizeChanges } from '../../../src/viewer/document/core-changes.ts';
import { proposals } from '../../../src/viewer/document/proposals.ts';
import { DEMO_SCENARIOS } from '../../../src/viewer/files/demo-scenarios.ts';
import type { Car } from '../../../src/viewer/state/cars.ts';
import { Session } from '../../../src/viewer/state/session.ts';
import { shippedDocument } from '../../support/shipped.ts';

let session: Session;
const car = (): Car => {
  const { value } = session.inHand;
  if (value === undefined) throw new Error('no car');
  return value;
};
const geometry = () => {
  const { coreGeometry } = car().scenario.values;
  if (coreGeometry === undefined) throw new Error('no measures');
  return coreGeometry;
};
const shown = () => measureSections(geometry()).flatMap(({ paths }) => paths);

beforeEach(() => {
  session = new Session();
  session.open(JSON.stringify(shippedDocument('rolling-road-estate')));
});

describe('measures put in', () => {
  it.each(DEMO_SCENARIOS.map(({ name, text }) => [name, text] as const))('make a car of %s in one step', (_, text) => {
    session.open(text);
    const steps = session.undoSteps.value.length;
    const before = car();
    expect(session.change(exampleMeasures(before.document), 'measures')).toEqual([]);
    expect(geometry().depth).toBe(120);
    expect(isExample(car().document)).toBe(true);
    expect(session.undoSteps.value).toHaveLength(steps + 1);
    session.undo();
    expect(session.inHand.value).toBe(before);
  });

  it('keep what is not the core itself: its bay, its seal, its passes with tubes for each', () => {
    session.change({ 'core.toBay': 2, 'core.leakPast': 0.1, 'core.passes': 2 }, 'others');
    session.change(exampleMeasures(car().document), 'measures');
    expect(car().document.core).toEqual({ toBay: 2, leakPast: 0.1, passes: 2 });
    expect(geometry().rows).toBe(2);
  });

  it('are the user own as soon as one is typed over', () => {
    session.change(exampleMeasures(car().document), 'measures');
    session.change({ 'coreGeometry.depth': 90 }, 'depth');
    expect(isExample(car().document)).toBe(false);
  });
});

describe('measures in the form', () => {
  const choose = (part: 'fins' | 'tubes', kind: string) => {
    const path = `coreGeometry.${part}`;
    const changes = choiceChanges(car().document, path, kind);
    const issues = session.change(changes, part, { path, text: kind });
    const missing = issues.filter(({ found }) => found === 'nothing').map(({ path: key }) => key);
    const known = proposals(car(), changes, {});
    if (missing.length > 0)
      session.change({ ...changes, ...Object.fromEntries(missing.map((key) => [key, known[key]])) }, part, {
        path,
        text: kind,
      });
    return missing;
  };
  beforeEach(() => {
    session.change(exampleMeasures(car().document), 'measures');
  });

  it('are those of louvred fins and turbulated tubes, no others', () => {
    expect(shown()).toContain('coreGeometry.louvreAngle');
    expect(shown()).toContain('coreGeometry.turbulatorHeat');
    for (const key of ['stripLength', 'ports', 'webThickness']) expect(shown()).not.toContain(`coreGeometry.${key}`);
  });

  it.each([
    ['fins', 'offset strip', ['coreGeometry.stripLength'], 'coreGeometry.louvrePitch'],
    ['fins', 'plain', [], 'coreGeometry.louvrePitch'],
    ['tubes', 'multi-port', ['coreGeometry.ports'], 'coreGeometry.turbulatorHeat'],
    ['tubes', 'plain', [], 'coreGeometry.turbulatorHeat'],
  ] as const)('%s %s asks for %j, with a value to begin with, and %s is gone', (part, kind, needed, gone) => {
    expect(choose(part, kind)).toEqual(needed);
    expect(geometry()[part]).toBe(kind);
    for (const key of needed) expect(shown()).toContain(key);
    expect(shown()).not.toContain(gone);
    expect(session.drafts.value).toEqual([]);
  });

  it('are all keys of the table, taken over the kinds', () => {
    const seen = new Set(shown());
    choose('fins', 'offset strip');
    choose('tubes', 'multi-port');
    for (const key of shown()) seen.add(key);
    expect([...seen].sort()).toEqual(measurePaths().sort());
  });
});

describe('the size of a core by its measures', () => {
  beforeEach(() => {
    session.change(exampleMeasures(car().document), 'measures');
    session.keepAsBefore();
  });
  const beforeCar = () => session.before.value?.scenario as Car['scenario'];

  it('is its width and depth, and no figure that follows is typed', () => {
    session.change(sizeChanges(beforeCar(), { width: 1.2, depth: 1.5 }), 'size');
    expect(session.changes.value).toEqual(['coreGeometry.width', 'coreGeometry.depth']);
    expect([geometry().width, geometry().depth]).toEqual([240, 180]);
    expect(sizeBetween(beforeCar(), car().scenario)).toEqual({ width: 1.2, depth: 1.5 });
    session.change(sizeChanges(beforeCar(), { width: 1, depth: 1 }), 'size');
    expect(session.after.value).toBeUndefined();
  });

  it('is none beside a core by test points, were it of the same figures', () => {
    const points = new Session();
    const { variants: _, upgrades: __, ...document } = shippedDocument('rolling-road-estate');
    const { core } = car().scenario.values;
    const figures = Object.keys(document.core as JsonObject).map((key) => [key, core[key as keyof typeof core]]);
    points.open(JSON.stringify({ ...document, core: Object.fromEntries(figures) }));
    expect(sizeBetween(beforeCar(), points.before.value?.scenario as Car['scenario'])).toBeUndefined();
  });
});

describe('cores to start from', () => {
  it('take the measures away with them', () => {
    const own = car().document;
    const [stock, oneRow] = corePresets(own);
    session.change(exampleMeasures(own), 'measures');
    expect(hasCore(car().document, stock)).toBe(false);
    const { name: _own, ...ownCore } = stock;
    session.change(ownCore, 'stock core');
    expect(session.after.value).toBeUndefined();
    session.change(exampleMeasures(own), 'measures');
    const { name: _, ...core } = oneRow;
    expect(session.change(core, 'one row wider')).toEqual([]);
    expect((car().document as JsonObject).coreGeometry).toBeUndefined();
    expect(hasCore(car().document, oneRow)).toBe(true);
  });
});

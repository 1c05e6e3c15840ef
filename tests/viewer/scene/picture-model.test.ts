import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { PhaseSpan, TimeSeries } from '../../../src/sim/index.ts';
import type { PageProps } from '../../../src/viewer/page.tsx';
import { cellToPixel } from '../../../src/viewer/scene/picking.ts';
import { PictureModel } from '../../../src/viewer/scene/picture-model.ts';
import { NO_RUN } from '../../../src/viewer/state/cars.ts';
import { Clock } from '../../../src/viewer/state/clock.ts';
import { Display } from '../../../src/viewer/state/display.ts';
import { Session } from '../../../src/viewer/state/session.ts';
import { DEGREES, fieldOf } from './fields.ts';

const text = readFileSync(new URL('../../../scenarios/rolling-road-estate.json', import.meta.url), 'utf8');
const [NX, NY] = [4, 6];

/** Ten seconds, 30 degC and a degree a second, 2 more a cell along the air, all else alike. */
function series(): TimeSeries {
  const time = Float64Array.from([0, 10]);
  const field = fieldOf(2, NX, NY, (row, i) => 30 + 10 * row + 2 * i);
  const phase = { kind: 'idle', start: 0, end: 10, firstRow: 0, lastRow: 1 } as PhaseSpan;
  const columns = { time, chargeTemperature: Float64Array.from([300, 310]) };
  const core = { nx: NX, ny: NY, metal: field, coolant: field, air: field };
  return { columns, rowCount: 2, core, phases: [phase] } as unknown as TimeSeries;
}

function picture() {
  const [session, clock, display] = [new Session(), new Clock(), new Display()];
  session.open(text);
  session.beforeRun.value = { ...NO_RUN, kind: 'solved', series: series() };
  const model = new PictureModel({ session, clock, display } as unknown as PageProps);
  model.size.value = { width: 674, height: 382 };
  return { session, clock, display, model };
}

const TONES = { ink: [0, 0, 0], paper: [255, 255, 255], neutral: [1, 2, 3] } as const;

describe('the picture at a time', () => {
  it('looks values up between recorded rows', () => {
    const { model, clock } = picture();
    clock.pinned.value = 5;
    const [car] = model.cars.value;
    expect(model.valueOf(car, 'chargeTemperature')).toBeCloseTo(305, 9);
    expect(model.temperatureAt(car, { i: 3, j: 0 })).toBeCloseTo(41 + DEGREES, 4);
    expect(model.temperatureAt(car, { i: NX, j: 0 })).toBeUndefined();
  });

  it('has nothing to show where the run is not solved', () => {
    const { model, clock } = picture();
    clock.pinned.value = 11;
    const [car] = model.cars.value;
    expect(model.valueOf(car, 'chargeTemperature')).toBeUndefined();
    expect(model.temperatureAt(car, { i: 0, j: 0 })).toBeUndefined();
    const layout = model.layout.value;
    if (layout === undefined) throw new Error('no layout');
    const [{ colours }] = model.frame(layout, 1, TONES).blocks;
    expect([...colours.slice(0, 4)]).toEqual([1, 2, 3, 255]);
    clock.pinned.value = 10;
    expect([...model.frame(layout, 1, TONES).blocks[0].colours.slice(0, 3)]).not.toEqual([1, 2, 3]);
  });

  it('leaves those strips neutral that the shown field does not belong to', () => {
    const { model, display } = picture();
    const part = () => {
      const layout = model.layout.value;
      return layout && model.frame(layout, 1, TONES).blocks[0].neutralPart;
    };
    expect(part()).toBeUndefined();
    display.colourBy.value = 'coolant';
    expect(part()).toBe('fin');
    display.colourBy.value = 'air';
    expect(part()).toBe('tube');
  });
});

describe('the blocks', () => {
  it('have the cells of the run that is shown', () => {
    const block = picture().model.layout.value?.blocks[0].block;
    expect([block?.nx, block?.ny]).toEqual([NX, NY]);
  });

  it('are built again only when something of them changes', () => {
    const { model, clock, display, session } = picture();
    const block = () => model.layout.value?.blocks[0].block;
    const first = block();
    clock.pinned.value = 3;
    display.camera.value = 'above';
    session.change({ 'reservoir.coolantVolume': 5 }, 'tank');
    expect(block()).toBe(first);
    display.show.value = 'apart';
    expect(block()).not.toBe(first);
  });

  it('stand alone, and side by side once there is an After', () => {
    const { model, session } = picture();
    expect(model.layout.value?.blocks.map(({ role }) => role)).toEqual(['before']);
    session.tryVariant('bigger core');
    expect(model.layout.value?.blocks.map(({ role }) => role)).toEqual(['before', 'after']);
    expect(model.inHand?.role).toBe('after');
  });
});

describe('reading a cell', () => {
  it('follows the pointer over either block', () => {
    const { model, session } = picture();
    session.tryVariant('bigger core');
    const placed = model.layout.value?.blocks[1];
    if (placed === undefined) throw new Error('no After');
    model.reading.value = { by: 'pointer', at: cellToPixel(placed.block, placed.projection, { i: 2, j: 1 }) };
    expect(model.read.value?.placed.role).toBe('after');
    expect(model.read.value?.cell).toEqual({ i: 2, j: 1 });
    model.reading.value = { by: 'pointer', at: [1, 1] };
    expect(model.read.value).toBeUndefined();
  });

  it('keeps inside a core with fewer cells', () => {
    const { model } = picture();
    model.reading.value = { by: 'keys', role: 'before', cell: { i: 40, j: 40 } };
    expect(model.read.value?.cell).toEqual({ i: NX - 1, j: NY - 1 });
  });
});

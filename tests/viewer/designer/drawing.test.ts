import { describe, expect, it } from 'vitest';
import { depthView, faceView, PAPER_WIDTH, pitchView } from '../../../src/viewer/designer/drawing.ts';
import { shippedConfig } from '../../support/shipped.ts';

const { geometry } = shippedConfig('rolling-road-estate', 'core by its measures, 120 mm deep').core;
if (geometry === undefined) throw new Error('no measures');
// Measures of the file: 200 x 63 x 120 mm, 5 tubes of 3 mm with 0.4 mm walls, 6 fin layers of 8 mm, 14 fins an inch,
// louvres every 1.4 mm, 6.6 mm long.
const { shape } = geometry;

/** Start and end of every line of a path of the form "Mx yLx yMx y..." */
const linesOf = (path: string) =>
  [...path.matchAll(/M([\d.]+) ([\d.]+)(?:L([\d.]+) ([\d.]+)|v([\d.]+))/g)].map(([, x, y, , toY, down]) => ({
    x: Number(x),
    length: down === undefined ? Math.abs(Number(toY) - Number(y)) : Number(down),
  }));

describe('one pitch, drawn to scale', () => {
  const view = pitchView(shape);
  const [upper, lower] = view.metal;

  it('has tubes 3 mm and fins 8 mm high at one scale, walls 0.4 mm', () => {
    const gap = lower.y - upper.y - upper.height;
    expect(gap / upper.height).toBeCloseTo(8 / 3, 9);
    expect((upper.height - view.coolant[0].height) / 2 / upper.height).toBeCloseTo(0.4 / 3, 9);
  });

  it('has the pitch of 14 fins an inch at the same scale, and its dimension line is that long', () => {
    const pitch = view.dimensions.find(({ direction }) => direction === 'across');
    expect(pitch && (pitch.to - pitch.from) / upper.height).toBeCloseTo(25.4 / 14 / 3, 9);
    expect(pitch?.measure).toBeCloseTo(0.0254 / 14, 12);
    expect(view.lineWidth / upper.height).toBeCloseTo(0.1 / 3, 9);
  });

  it('follows a change of the pitch', () => {
    const wider = pitchView({ ...shape, finPitch: 2 * shape.finPitch });
    const across = (of: typeof view) => {
      const found = of.dimensions.find(({ direction }) => direction === 'across');
      return found === undefined ? Number.NaN : (found.to - found.from) / of.scale;
    };
    expect(across(wider) / across(view)).toBeCloseTo(2, 9);
  });
});

describe('the core along the air', () => {
  it('is 120 to 14 as it is deep and high, with 85 louvres of 6.6 mm', () => {
    const view = depthView(shape);
    const [across, up] = view.dimensions;
    expect((across.to - across.from) / (up.to - up.from)).toBeCloseTo(120 / 14, 9);
    const louvres = linesOf(view.lines);
    expect(louvres).toHaveLength(85);
    expect(louvres[0].length / (up.to - up.from)).toBeCloseTo(6.6 / 14, 9);
    expect((louvres[84].x - louvres[0].x) / (across.to - across.from)).toBeCloseTo((84 * 1.4) / 120, 9);
  });

  it('has strips from edge to edge, 12 of 10 mm with 11 cuts, and plain fins none', () => {
    const strips = depthView({ ...shape, fins: { kind: 'offset strip', stripLength: 0.01 } });
    expect(linesOf(strips.lines)).toHaveLength(11);
    expect(depthView({ ...shape, fins: { kind: 'plain' } }).lines).toBe('');
  });

  it('has the ports of two tubes in each of the two layers: 2 x 2 x 10, webs between them', () => {
    const tubes = { kind: 'multi-port', ports: 10, webThickness: 0.0005 } as const;
    const view = depthView({ ...shape, rows: 2, tubes });
    expect(view.coolant).toHaveLength(40);
    // 60 mm less two walls of 0.4 and nine webs of 0.5 mm, over ten ports: 5.47 mm.
    expect(view.coolant[0].width / view.scale).toBeCloseTo(5.47e-3, 9);
  });
});

describe('the face', () => {
  it('has five tubes and six fin layers in 63 mm of 200 mm width, fins outside', () => {
    const view = faceView(shape);
    expect(view.metal).toHaveLength(5);
    const [across, up] = view.dimensions;
    expect((across.to - across.from) / (up.to - up.from)).toBeCloseTo(200 / 63, 9);
    expect((view.metal[0].y - up.from) / view.scale).toBeCloseTo(0.008, 9);
    // 110.2 pitches in 200 mm, six layers.
    expect(linesOf(view.lines)).toHaveLength(6 * 110);
  });

  it('has tubes outside where there is a fin layer fewer', () => {
    const view = faceView({ ...shape, finLayers: 4 });
    expect(view.metal[0].y).toBe(view.dimensions[1].from);
  });

  it('leaves out fins that would run into each other', () => {
    expect(faceView({ ...shape, length: 0.6 }).lines).toBe('');
  });
});

describe('the paper', () => {
  it.each([0.02, 0.12, 0.4])('holds a core %f m deep', (depth) => {
    for (const view of [pitchView, depthView, faceView].map((draw) => draw({ ...shape, depth, length: depth }))) {
      for (const { x, y, width, height } of view.metal) {
        expect(x + width).toBeLessThanOrEqual(PAPER_WIDTH);
        expect(y + height).toBeLessThanOrEqual(view.height);
      }
    }
  });
});

import { describe, expect, it } from 'vitest';
import { buildBlock } from '../../../src/viewer/scene/block.ts';
import type { FootOrder } from '../../../src/viewer/scene/foot.ts';
import type { Outline, Rectangle } from '../../../src/viewer/scene/free-place.ts';
import { type Layout, layOut } from '../../../src/viewer/scene/layout.ts';
import type { CarRole } from '../../../src/viewer/state/cars.ts';

const CORES = {
  stock: { depth: 0.4, height: 0.45, tubeCount: 8 },
  bigger: { depth: 0.52, height: 0.652, tubeCount: 12 },
  smaller: { depth: 0.3, height: 0.3, tubeCount: 5 },
};
type Core = keyof typeof CORES;
const PAIRS: readonly (readonly Core[])[] = [['stock'], ['stock', 'bigger'], ['stock', 'stock'], ['bigger', 'smaller']];
const SHOWS = ['whole', 'cut', 'apart'] as const;
const CAMERAS = ['corner', 'above', 'air side'] as const;

function layoutOf(
  width: number,
  height: number,
  cores: readonly Core[],
  show: (typeof SHOWS)[number],
  camera: (typeof CAMERAS)[number],
  air: {
    readonly isTakenBehind?: boolean;
    readonly isTakenBefore?: boolean;
    readonly leaksPast?: boolean;
    readonly foot?: FootOrder;
  } = {},
): Layout {
  const roles: readonly CarRole[] = ['before', 'after'];
  const { leaksPast = false, ...taken } = air;
  const blocks = cores.map((core, k) => ({
    role: roles[k],
    leaksPast,
    block: buildBlock(CORES[core], 12, 8, { show, hasCellLines: false, apart: 0.8 }),
  }));
  return layOut({ width, height, camera, blocks, ...taken });
}

const combinations = PAIRS.flatMap((cores) =>
  SHOWS.flatMap((show) => CAMERAS.map((camera) => ({ cores, show, camera }))),
);

/** Whether a point lies in a convex outline, by the sign of every side: slow and plain. */
function isInside(outline: Outline, x: number, y: number): boolean {
  const signs = outline.map(([x1, y1], k) => {
    const [x2, y2] = outline[(k + 1) % outline.length];
    return Math.sign((x2 - x1) * (y - y1) - (y2 - y1) * (x - x1));
  });
  return signs.every((sign) => sign > 0) || signs.every((sign) => sign < 0);
}

function meets(a: Rectangle, b: Rectangle): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

function pointsOf({ x, y, width, height }: Rectangle): [number, number][] {
  const shares = [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1];
  return shares.flatMap((a) => shares.map((b): [number, number] => [x + a * width, y + b * height]));
}

describe.each([
  { name: 'a wide screen', width: 955, height: 560 },
  { name: 'a screen of 1440 by 900', width: 674, height: 382 },
  { name: 'a screen of 1024 by 768', width: 412, height: 310 },
  { name: 'a phone', width: 390, height: 380 },
  { name: 'the narrowest column', width: 324, height: 266 },
])('the picture on $name', ({ width, height }) => {
  it.each(combinations)('keeps everything apart and inside: $cores, $show, $camera', ({ cores, show, camera }) => {
    const layout = layoutOf(width, height, cores, show, camera);
    const nodes = Object.values(layout.nodes);
    const shown = layout.labels.filter(({ isFree }) => isFree);
    for (const { x, y, width: w, height: h } of [...nodes, ...shown, ...layout.blocks.map(({ bounds }) => bounds)]) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(y).toBeGreaterThanOrEqual(0);
      expect(x + w).toBeLessThanOrEqual(width);
      expect(y + h).toBeLessThanOrEqual(height);
    }
    nodes.forEach((node, k) => {
      for (const other of nodes.slice(k + 1)) expect(meets(node, other)).toBe(false);
    });
    shown.forEach((label, k) => {
      for (const other of [...shown.slice(k + 1), ...nodes]) expect(meets(label, other)).toBe(false);
      for (const outline of layout.blocks.flatMap(({ outlines }) => outlines)) {
        expect(pointsOf(label).some(([x, y]) => isInside(outline, x, y))).toBe(false);
      }
    });
  });

  it.each(combinations)('leads air from behind the core to the compressor: $cores, $show, $camera', (each) => {
    const air = { isTakenBehind: true, isTakenBefore: false, leaksPast: true };
    const { pipes, nodes, blocks, labels } = layoutOf(width, height, each.cores, each.show, each.camera, air);
    const way = pipes.bypassBehind;
    const { compressor, pump } = nodes;
    for (const [x, y] of [...way, ...blocks.flatMap(({ past }) => past)]) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(y).toBeGreaterThanOrEqual(0);
      expect(x).toBeLessThanOrEqual(width);
      expect(y).toBeLessThanOrEqual(height);
    }
    const inHand = blocks[blocks.length - 1];
    expect(way[0]).toEqual(inHand.charge[0].tip);
    const [x, y] = way[way.length - 1];
    expect(x).toBeGreaterThanOrEqual(compressor.x);
    expect(x).toBeLessThanOrEqual(compressor.x + compressor.width);
    expect(y).toBeGreaterThanOrEqual(compressor.y);
    expect(y).toBeLessThanOrEqual(compressor.y + compressor.height);
    // It comes down beside the block and beside the pump, not through them.
    expect(way[1][0]).toBeLessThan(inHand.bounds.x);
    for (const [at] of way.slice(3)) expect(at).toBeLessThan(pump.x);
    for (const { past, airIn, charge } of blocks) {
      expect(past[0]).toEqual(airIn[0].tail);
      expect(past[past.length - 1]).toEqual(charge[0].tip);
    }
    const shown = labels.filter(({ isFree }) => isFree);
    shown.forEach((label, k) => {
      for (const other of [...shown.slice(k + 1), ...Object.values(nodes)]) expect(meets(label, other)).toBe(false);
    });
  });

  it('always has room for the charge temperatures where the core is seen whole or cut from its corner', () => {
    for (const cores of PAIRS) {
      for (const show of ['whole', 'cut'] as const) {
        const { labels } = layoutOf(width, height, cores, show, 'corner');
        const charges = labels.filter(({ name }) => name === 'charge');
        expect(charges.map(({ isFree }) => isFree)).toEqual(cores.map(() => true));
      }
    }
  });
});

describe('two cars', () => {
  const { blocks, nodes, pipes } = layoutOf(674, 382, ['stock', 'bigger'], 'cut', 'corner');

  it('stand at one scale, Before at the left', () => {
    expect(blocks.map(({ role }) => role)).toEqual(['before', 'after']);
    expect(blocks[0].projection.scale).toBe(blocks[1].projection.scale);
    expect(blocks[0].bounds.x + blocks[0].bounds.width).toBeLessThan(blocks[1].bounds.x);
  });

  it('differ in size as their cores do', () => {
    const { scale } = blocks[0].projection;
    // Seen from the corner a stack rises by the cosine of the tilt, 0.56.
    const rise = blocks[1].bounds.height - blocks[0].bounds.height;
    const stack = (CORES.bigger.height - CORES.stock.height) * Math.cos(0.56);
    const depth = (CORES.bigger.depth - CORES.stock.depth) * Math.sin(0.56) * Math.cos(0.62);
    expect(rise / scale).toBeCloseTo(stack + depth, 9);
  });

  it.each<FootOrder>([
    ['tank', 'exchanger', 'pump'],
    ['pump', 'exchanger', 'tank'],
    ['exchanger', 'pump', 'tank'],
    ['pump', 'tank'],
  ])('leads from box to box in the order of the loop: %s, %s, %s', (...foot) => {
    for (const [width, height] of [
      [674, 382],
      [324, 266],
    ]) {
      const { nodes, pipes } = layoutOf(width, height, ['stock'], 'cut', 'corner', { foot });
      const boxes = foot.flatMap((name) => nodes[name] ?? []);
      expect(boxes).toHaveLength(foot.length);
      expect(Object.keys(nodes)).toHaveLength(foot.length + 1);
      const all = [...boxes, nodes.compressor];
      all.forEach((box, k) => {
        expect(box.x + box.width).toBeLessThanOrEqual(width);
        for (const other of all.slice(k + 1)) expect(meets(box, other)).toBe(false);
      });
      const isOver = ({ x, width: wide }: Rectangle, at: number) => at > x && at < x + wide;
      expect(isOver(boxes[0], pipes.outOfCore[pipes.outOfCore.length - 1][0])).toBe(true);
      expect(isOver(boxes[boxes.length - 1], pipes.intoCore[0][0])).toBe(true);
      const onward = [pipes.firstOn, pipes.ontoLast].filter((points) => points.length > 0);
      expect(onward.map(([from, to]) => [from[0], to[0]])).toEqual(
        boxes.slice(1).map(({ x, width: wide }, k) => [boxes[k].x, x + wide]),
      );
    }
  });

  it('without an exchanger the core leads to the tank, and the tank to the pump', () => {
    const { nodes, pipes } = layoutOf(674, 382, ['stock'], 'cut', 'corner', { foot: ['tank', 'pump'] });
    const end = pipes.outOfCore[pipes.outOfCore.length - 1];
    expect(nodes.exchanger).toBeUndefined();
    expect(end[0]).toBeGreaterThan(nodes.tank.x);
    expect(end[0]).toBeLessThan(nodes.tank.x + nodes.tank.width);
    expect(end[1]).toBe(nodes.tank.y);
    expect(pipes.firstOn).toEqual([]);
    expect(pipes.ontoLast[0][0]).toBe(nodes.tank.x);
    expect(pipes.ontoLast[1][0]).toBe(nodes.pump.x + nodes.pump.width);
  });

  it('have the loop at the one in hand: pump to core to exchanger to tank to pump', () => {
    const [into] = pipes.intoCore;
    const out = pipes.outOfCore[pipes.outOfCore.length - 1];
    const isOver = ({ x, width }: Rectangle, at: number) => at > x && at < x + width;
    expect(isOver(nodes.pump, into[0])).toBe(true);
    expect(nodes.exchanger && isOver(nodes.exchanger, out[0])).toBe(true);
    expect(isOver(blocks[1].bounds, into[0])).toBe(true);
    expect(pipes.firstOn[0][0]).toBeGreaterThan(pipes.firstOn[1][0]);
    expect(pipes.ontoLast[0][0]).toBeGreaterThan(pipes.ontoLast[1][0]);
  });

  it('has every label in sight on a screen of 1440 by 900, whole or cut', () => {
    for (const { cores, show, camera } of combinations) {
      if (show === 'apart') continue;
      const { labels } = layoutOf(674, 382, cores, show, camera);
      expect(labels.filter(({ isFree }) => !isFree).map(({ name }) => [cores, show, camera, name])).toEqual([]);
    }
  });
});

describe('air behind and past the core', () => {
  it('is not drawn where none is taken there', () => {
    const { pipes, blocks, labels } = layoutOf(674, 382, ['stock'], 'cut', 'corner');
    expect(pipes.bypassBehind).toEqual([]);
    expect(blocks[0].past).toEqual([]);
    expect(labels.map(({ name }) => name)).not.toContain('pastCore');
    expect(labels.map(({ name }) => name)).toContain('bypass');
  });

  it('is named where a car stands alone on a wide screen', () => {
    const air = { isTakenBehind: true, isTakenBefore: false, leaksPast: true };
    const { labels } = layoutOf(674, 382, ['stock'], 'cut', 'corner', air);
    const seen = labels.filter(({ isFree }) => isFree).map(({ name }) => name);
    expect(seen).toContain('bypassBehind');
    expect(seen).toContain('pastCore');
    expect(labels.map(({ name }) => name)).not.toContain('bypass');
  });
});

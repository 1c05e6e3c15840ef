import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LoopItem, LoopPart } from '../../../src/sim/scenario/config/loop.ts';
import { layOutLoop } from '../../../src/viewer/loop/scheme.ts';

interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const meets = (a: Rectangle, b: Rectangle): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

const OTHERS: readonly LoopPart[] = ['pump', 'exchanger', 'secondPump', 'secondExchanger', 'heatSink'];

/** Every legal loop: core and reservoir by themselves, up to two pairs of ways, the reservoir last. */
const legalLoop: fc.Arbitrary<LoopItem[]> = fc
  .tuple(
    fc.shuffledSubarray([...OTHERS], { minLength: 1 }),
    fc.array(fc.constantFrom(1, 2), { minLength: 8, maxLength: 8 }),
    fc.array(fc.boolean(), { minLength: 8, maxLength: 8 }),
    fc.nat(5),
  )
  .map(([parts, lengths, arePairs, coreAt]) => {
    const items: LoopItem[] = [];
    const left = [...parts];
    let pairs = 0;
    while (left.length > 0) {
      const [a, b] = [lengths[items.length], lengths[7 - items.length]];
      if (arePairs[items.length] && pairs < 2 && left.length >= a + b) {
        items.push([left.splice(0, a), left.splice(0, b)]);
        pairs++;
      } else items.push(left.splice(0, 1)[0]);
    }
    return [...items.toSpliced(Math.min(coreAt, items.length), 0, 'core'), 'reservoir'];
  });

describe('the drawing of a loop', () => {
  it.each([296, 336, 366, 700, 1000, 1248])(
    '%i px: boxes and words apart, all of it inside, in flow order',
    (width) => {
      fc.assert(
        fc.property(legalLoop, fc.boolean(), (loop, hasValve) => {
          const { boxes, lines, ways, width: drawn, height } = layOutLoop(loop, width, hasValve);
          expect(drawn).toBeLessThanOrEqual(width);
          const labels = [...lines, ...ways].map(({ label }) => label);
          for (const { x, y, width: w, height: h } of [...boxes, ...labels]) {
            expect(x).toBeGreaterThanOrEqual(0);
            expect(y).toBeGreaterThanOrEqual(0);
            expect(x + w).toBeLessThanOrEqual(drawn);
            expect(y + h).toBeLessThanOrEqual(height);
          }
          for (const [x, y] of [...lines, ...ways].flatMap(({ points }) => points)) {
            expect(Math.min(x, y, drawn - x, height - y)).toBeGreaterThanOrEqual(0);
          }
          const all = [...boxes, ...labels];
          all.forEach((one, k) => {
            for (const other of all.slice(k + 1)) expect(meets(one, other)).toBe(false);
          });
          const parts = loop.flatMap((item) => (typeof item === 'string' ? [item] : item.flat()));
          expect(boxes.map(({ part }) => part)).toEqual(['reservoir', ...parts.slice(0, -1)]);
          const pairs = loop.filter((item) => typeof item !== 'string').length;
          expect(lines).toHaveLength(parts.length + pairs);
          expect(ways).toHaveLength(2 * pairs);
        }),
      );
    },
  );

  it('is closed: each line begins at its part, and the last one ends at the first box', () => {
    for (const width of [336, 1248]) {
      const { boxes, lines } = layOutLoop(['pump', 'core', 'exchanger', 'reservoir'], width, false);
      lines.forEach(({ after, points }, k) => {
        const [from, to] = [boxes[k], boxes[(k + 1) % boxes.length]];
        expect(after).toBe(from.part);
        const touches = ({ x, y, width: w, height: h }: Rectangle, [px, py]: readonly [number, number]) =>
          px >= x && px <= x + w && py >= y && py <= y + h;
        expect(touches(from, points[0])).toBe(true);
        expect(touches(to, points[points.length - 1])).toBe(true);
      });
    }
  });

  it('marks the way past both exchangers where a valve has one, and only there', () => {
    const loop: LoopItem[] = ['pump', 'core', [['exchanger'], ['secondExchanger']], 'reservoir'];
    const past = (hasValve: boolean) =>
      layOutLoop(loop, 1248, hasValve).boxes.flatMap(({ part, pastIt }) => (pastIt ? [part] : []));
    expect(past(true)).toEqual(['exchanger', 'secondExchanger']);
    expect(past(false)).toEqual([]);
  });

  it('goes down a column where a row has no room', () => {
    expect(layOutLoop(['pump', 'core', 'reservoir'], 1000, false).isUpright).toBe(false);
    expect(layOutLoop(['pump', 'core', 'reservoir'], 366, false).isUpright).toBe(true);
  });
});

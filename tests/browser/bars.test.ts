import type { Locator, Page } from 'playwright';
import { describe, expect } from 'vitest';
import { openDemo, tryVariant } from './acts.ts';
import { it } from './fixture.ts';

const barsOn = (page: Page): Locator => page.locator('.band .bars-drawing');

/** Of the digits of a peak, whose box has room above and below them [px]. */
const DIGIT_HEIGHT = 10;

it('a number inside a bar of After does not reach over its sides', async ({ firstVisit }) => {
  const page = await firstVisit({ viewport: { width: 1280, height: 900 } });
  await tryVariant(page, 'bigger core');
  const bars = barsOn(page);
  await expect.poll(() => bars.locator('text.inside').count()).toBe(8);
  const sides = (of: string) =>
    bars.locator(of).evaluateAll((all) =>
      all.map((each) => {
        const { left, right } = each.getBoundingClientRect();
        return [left, right];
      }),
    );
  const boxes = await sides('.pull-bar.after');
  const numbers = await sides('text.inside');
  numbers.forEach(([left, right], k) => {
    expect(left).toBeGreaterThanOrEqual(boxes[k][0]);
    expect(right).toBeLessThanOrEqual(boxes[k][1]);
  });
});

describe.each([1280, 390])('the bars of the pulls at %i px', (width) => {
  it.for(['Quarter-mile saloon', 'Session coupe', 'Ridge roadster'])(
    'no line runs through a number: %s',
    async (car, { firstVisit }) => {
      const page = await firstVisit({ viewport: { width, height: 900 } });
      await openDemo(page, car);
      const bars = barsOn(page);
      const lines = await bars
        .locator('line.limit, line.outside')
        .evaluateAll((all) => all.map((line) => Number(line.getAttribute('y1'))));
      const peaks = await bars.evaluate((drawing) => {
        const cursor = drawing.querySelector('line.cursor');
        return [...drawing.querySelectorAll('text.peak')].map((peak) => ({
          foot: Number(peak.getAttribute('y')),
          isAboveCursor: cursor !== null && cursor.compareDocumentPosition(peak) === Node.DOCUMENT_POSITION_FOLLOWING,
          paintOrder: getComputedStyle(peak).paintOrder,
        }));
      });
      expect(peaks.length).toBeGreaterThan(0);
      for (const { foot, isAboveCursor, paintOrder } of peaks) {
        for (const line of lines) expect(foot - DIGIT_HEIGHT > line || foot < line).toBe(true);
        expect([isAboveCursor, paintOrder]).toEqual([true, 'stroke']);
      }
    },
  );

  it('stand on a round number that is said where iced water keeps peaks below outside air', async ({ firstVisit }) => {
    const page = await firstVisit({ viewport: { width, height: 900 } });
    await openDemo(page, 'Quarter-mile saloon');
    const bars = barsOn(page);
    // Outside air is 36 degC in its file.
    const legend = page.getByText('Bars stand on 20\u00a0°C, below the outside air of 36\u00a0°C (dashed).');
    expect(await legend.count()).toBe(1);
    const [floor, ...others] = await bars.locator('line.floor, line.outside').all();
    expect(others).toHaveLength(1);
    const foot = await bars.getByText('20', { exact: true }).getAttribute('y');
    expect(Number(foot)).toBeCloseTo(Number(await floor.getAttribute('y1')) + 4, 0);
  });
});

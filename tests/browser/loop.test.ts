import type { Page } from 'playwright';
import { describe, expect } from 'vitest';
import { operatingPoint } from '../../src/sim/index.ts';
import { shippedConfig, shippedDocument } from '../support/shipped.ts';
import { openFile, pageWidth, plain, solved, texts, tryVariant, undo, violations } from './acts.ts';
import { it } from './fixture.ts';

async function openLoop(page: Page): Promise<void> {
  await page.locator('.loop-open:visible').click();
  await page.locator('.loop-scheme svg').waitFor();
}

const panelOf = (page: Page) => page.getByRole('region', { name: /^Coolant loop/ });
const perMinute = (flow: number) => `${(6e4 * flow).toFixed(1)} L/min`;

describe('the coolant loop', () => {
  const point = operatingPoint(shippedConfig('rolling-road-estate'));
  if (point === undefined) throw new Error('no pump on');

  it('has the numbers of the library', async ({ firstVisit }) => {
    const page = await firstVisit();
    await openLoop(page);
    const panel = panelOf(page);
    const words = plain(await panel.innerText());
    expect(words).toContain(`Real flow ${perMinute(point.flow)} at ${(point.pressure / 1e3).toFixed(1)} kPa`);
    expect(words).toContain(`Free flow on the label ${perMinute(point.rating)}`);
    const losses = await texts(panel.locator('.loop-losses li'));
    expect(losses).toHaveLength(point.losses.length);
    point.losses.forEach(({ pressure }, k) => {
      const share = `${((100 * pressure) / point.pressure).toFixed(0)} %`;
      expect(losses[k]).toContain(`${(pressure / 1e3).toFixed(2)} kPa`);
      expect(losses[k]).toContain(share);
    });
    const steps = await texts(panel.locator('.loop-steps tbody tr'));
    point.steps.forEach(({ flow }, k) => {
      expect(steps[k]).toContain(perMinute(flow));
    });
  });

  it('is a list in flow order for who cannot see it', async ({ firstVisit }) => {
    const page = await firstVisit();
    await openLoop(page);
    const items = (await page.getByRole('list', { name: 'The loop in flow order' }).getByRole('listitem').all()).map(
      (item) => item.textContent(),
    );
    const words = (await Promise.all(items)).map(plain);
    expect(words.map((text) => text.split(':')[0])).toEqual(['Tank', 'Pump', 'Core', 'Front exchanger']);
    expect(words[1]).toContain('then 1.4 m of line, 16.5 mm inside');
  });

  it('divides for a second exchanger beside the first, and comes back in one step', async ({ firstVisit }) => {
    const page = await firstVisit();
    await openLoop(page);
    const panel = panelOf(page);
    await page.locator('summary.line', { hasText: 'Loop, lines and ports' }).click();
    const second = page.getByRole('combobox', { name: 'Second exchanger' });
    expect(await second.inputValue()).toBe('none');
    await second.selectOption('side by side');
    await panel.getByText('Second exchanger').first().waitFor();
    const curves = panel.locator('.loop-curves figure.after');
    expect(await panel.locator('.loop-curves figure').count()).toBe(1);
    expect(plain(await curves.innerText())).toContain(`Before: real flow ${perMinute(point.flow)}`);
    expect(plain(await curves.innerText())).not.toContain(`Real flow ${perMinute(point.flow)}`);
    expect(await curves.locator('svg .pump').count()).toBe(2);
    const shares = await panel.locator('.loop-scheme text.share').allTextContents();
    expect(shares.map(plain)).toEqual(['50 %', '50 %']);
    expect(plain(await page.locator('.notice').innerText())).toContain('starts as a copy of the first');
    await page.locator('.picture-node', { hasText: /2 exch/ }).waitFor();
    await page.locator('summary.line', { hasText: 'Front exchanger' }).click();
    const areas = page.getByRole('textbox', { name: /^Face area/ });
    await expect.poll(() => areas.count()).toBe(2);
    await undo(page).click();
    await curves.waitFor({ state: 'detached' });
    expect(await panel.locator('.loop-scheme text.share').count()).toBe(0);
    expect(await page.locator('.answer .after').count()).toBe(0);
  });

  it('is drawn once where Before and After have the same', async ({ firstVisit }) => {
    const page = await firstVisit();
    await openLoop(page);
    await tryVariant(page, 'bigger core');
    const curves = panelOf(page).locator('.loop-curves figure');
    await curves.getByText('Before and After have the same pump and loop.').waitFor();
    expect(await curves.count()).toBe(1);
    expect(await curves.locator('svg .pump').count()).toBe(1);
    expect(plain(await curves.innerText())).toContain(`Real flow ${perMinute(point.flow)}`);
    expect(await curves.locator('table').count()).toBe(1);
  });

  it('is opened and closed by keys, and gives the focus back', async ({ firstVisit }) => {
    const page = await firstVisit();
    await openLoop(page);
    const panel = panelOf(page);
    await panel.getByRole('button', { name: 'Close' }).focus();
    await page.keyboard.press('Escape');
    expect(await panel.count()).toBe(0);
    expect(plain(await page.evaluate(() => document.activeElement?.textContent ?? ''))).toContain('Coolant loop');
  });
});

describe.each(['light', 'dark'] as const)('the coolant loop in the %s theme', (colorScheme) => {
  it.for([
    [1440, 900, undefined],
    [1024, 768, 'quarter-mile-saloon'],
    [390, 844, undefined],
  ] as const)(
    'axe finds nothing at %i x %i, and nothing reaches over the edge',
    async ([width, height, file], { firstVisit }) => {
      const page = await firstVisit({ viewport: { width, height }, colorScheme });
      if (file !== undefined) {
        await openFile(page, shippedDocument(file));
        await solved(page);
      }
      await openLoop(page);
      expect(await violations(page, '.loop')).toEqual([]);
      expect(await pageWidth(page)).toBeLessThanOrEqual(width);
      const over = await page
        .locator('.loop-scheme svg text')
        .evaluateAll(
          (words, right) =>
            words.filter((text) => text.getBoundingClientRect().right > right).map(({ textContent }) => textContent),
          width,
        );
      expect(over).toEqual([]);
    },
  );
});

import type { Page } from 'playwright';
import { describe, expect } from 'vitest';
import { focused, openMenu, solved } from './acts.ts';
import { it } from './fixture.ts';

const PHONE = { width: 390, height: 844 };
const DESK = { width: 1280, height: 800 };

const press = (page: Page, panel: string) => page.locator(`.${panel}-open:visible`).press('Enter');
const topOf = async (page: Page, panel: string) => (await page.locator(`.fold-out.${panel}`).boundingBox())?.y ?? NaN;

async function clear(page: Page): Promise<void> {
  await openMenu(page);
  await page.getByRole('button', { name: 'New', exact: true }).press('Enter');
  await page.getByText('No run yet').first().waitFor();
}

describe.each([
  ['a phone', PHONE],
  ['a desk', DESK],
])('on %s', (_, viewport) => {
  it('a panel that is opened behind another comes into sight, stays there as it grows, and Escape closes it', async ({
    firstVisit,
  }) => {
    const page = await firstVisit({ viewport });
    await press(page, 'routes');
    await page.locator('.routes-words p').first().waitFor();
    expect(await topOf(page, 'routes')).toBeLessThan(viewport.height / 2);
    expect(await topOf(page, 'routes')).toBeGreaterThanOrEqual(0);
    await press(page, 'questions');
    await expect.poll(() => topOf(page, 'questions')).toBeLessThan(viewport.height / 2);
    expect(await topOf(page, 'questions')).toBeGreaterThanOrEqual(0);
    await page.keyboard.press('Escape');
    await page.locator('.fold-out.questions').waitFor({ state: 'detached' });
  });

  it('the empty page shows every demo car, in the letter too, and what was pressed leaves the focus with the answer', async ({
    firstVisit,
  }) => {
    const page = await firstVisit({ viewport });
    await clear(page);
    const cutOff = () =>
      page.locator('.answer.empty > section').evaluateAll((all) => all.filter((e) => e.scrollHeight > e.clientHeight));
    expect(await cutOff()).toEqual([]);
    await expect.poll(async () => (await focused(page))?.name).toBe('Answer');
    await page.getByRole('link', { name: 'Letter' }).click();
    await page.locator('.letter .answer.empty').waitFor();
    expect(await cutOff()).toEqual([]);
    await page.getByRole('link', { name: 'Workbench' }).click();
    await page.getByRole('button', { name: 'Ridge roadster' }).press('Enter');
    await solved(page);
    await expect.poll(async () => (await focused(page))?.name).toBe('Answer');
  });
});

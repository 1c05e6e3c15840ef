import type { Page } from 'playwright';
import { describe, expect } from 'vitest';
import { clickOnceThere, pageWidth, plain, solved, undo, violations } from './acts.ts';
import type { VisitorOptions } from './browser.ts';
import { it as onPage } from './fixture.ts';

const answer = async (page: Page) => plain(await page.locator('.letter-answer').innerText());
const counts = (page: Page) => page.locator('.letter-counts .figure').allTextContents();
const whole = (page: Page) => page.getByText('are being worked out').waitFor({ state: 'detached' });

const it = onPage
  /** a visitor who has opened the letter of the default car from the workbench */
  .extend('atLetter', ({ firstVisit }) => async (options?: VisitorOptions): Promise<Page> => {
    const page = await firstVisit(options);
    await page.getByRole('link', { name: 'Letter' }).click();
    await page.locator('.letter-answer').waitFor();
    return page;
  });

describe('the letter', () => {
  it('opens by a word in the bar, is still there after a reload, and goes back to the same workbench', async ({
    atLetter,
  }) => {
    const page = await atLetter();
    expect(await answer(page)).toBe('No. It goes over 58.0 °C in its first pull, by 5.5 K.');
    await page.getByRole('textbox', { name: 'From' }).fill('Sample shop');
    await page.getByRole('textbox', { name: 'From' }).press('Tab');
    await page.reload();
    await page.locator('.letter-answer').waitFor();
    expect(await page.getByRole('textbox', { name: 'From' }).inputValue()).toBe('Sample shop');
    expect(await undo(page).isDisabled()).toBe(true);
    await page.getByRole('link', { name: 'Workbench' }).click();
    await solved(page);
    expect(await page.locator('.letter').count()).toBe(0);
  });

  it('answers for the day that is typed in the sentence, and undo takes it back in one step', async ({ atLetter }) => {
    const page = await atLetter();
    const day = page.getByRole('textbox', { name: 'Outside air temperature' });
    await day.fill('14 degF');
    await day.press('Enter');
    await expect.poll(() => answer(page)).toMatch(/^Yes\. It stays under 58\.0 °C in all 8/);
    expect(await counts(page)).toEqual(['0', '8']);
    await undo(page).click();
    await expect.poll(() => answer(page)).toMatch(/^No\. It goes over/);
    expect(await day.inputValue()).toBe('27');
  });

  it('keeps a text that is no number in its place with what is wrong below the sentence', async ({ atLetter }) => {
    const page = await atLetter();
    const rest = page.getByRole('textbox', { name: 'Rest between pulls' });
    await rest.fill('9o');
    await rest.press('Tab');
    await page.getByText('The run still uses 90').waitFor();
    expect(await rest.inputValue()).toBe('9o');
    expect(await rest.getAttribute('aria-invalid')).toBe('true');
    expect(await answer(page)).toMatch(/^No\. It goes over/);
    await page.getByRole('button', { name: /^Keep 90/ }).click();
    expect(await rest.inputValue()).toBe('90');
  });

  it('says a plain No to a change that does nothing, with both counts', async ({ atLetter }) => {
    const page = await atLetter();
    await page.getByRole('combobox', { name: 'Change that is asked about' }).selectOption('stock + 10 L tank only');
    await expect
      .poll(() => answer(page))
      .toMatch(/^No\. With “stock \+ 10 L tank only” pull 1 is 0\.3 K cooler, not enough/);
    expect(await counts(page)).toEqual(['0', '0']);
  });

  it('keeps the letter from before the change while a long run is under way, and says so', async ({ atLetter }) => {
    const page = await atLetter();
    const pulls = page.getByRole('textbox', { name: 'Number of pulls' });
    await pulls.fill('400');
    await pulls.press('Enter');
    await page.getByText('The letter below is from before the change').waitFor();
    expect(await answer(page)).toMatch(/^No\. It goes over/);
    await page.emulateMedia({ media: 'print' });
    expect(await page.getByText('The letter below is from before the change').isVisible()).toBe(true);
    await page.emulateMedia({ media: 'screen' });
    await clickOnceThere(page, '.letter-state', 'Cancel');
    await page.getByText('You cancelled the run').waitFor();
    await undo(page).click();
    await page.getByText('You cancelled the run').waitFor({ state: 'detached' });
    expect(await counts(page)).toEqual(['0']);
  });

  it('asks both cars the same once it is told to', async ({ atLetter }) => {
    const page = await atLetter();
    await page.getByRole('combobox', { name: 'Change that is asked about' }).selectOption('bigger core');
    const day = page.getByRole('textbox', { name: 'Outside air temperature' });
    await day.fill('35');
    await day.press('Enter');
    await page.getByText('Before and after are not asked the same').waitFor();
    await page.getByRole('button', { name: 'Ask both as After' }).click();
    await page.getByText('Before and after are not asked the same').waitFor({ state: 'detached' });
    await expect.poll(() => answer(page)).toMatch(/^In part\. With “bigger core” it makes 1 of 8/);
  });
});

describe('on paper', () => {
  it.for(['light', 'dark'] as const)(
    'takes two to four pages, cautions and inputs on them, in the %s theme',
    async (colorScheme, { atLetter }) => {
      const page = await atLetter({ colorScheme });
      await page.getByRole('combobox', { name: 'Change that is asked about' }).selectOption('bigger core');
      await expect.poll(() => answer(page)).toMatch(/^Yes/);
      await whole(page);
      const file = (await page.pdf({ format: 'A4', printBackground: true })).toString('latin1');
      const pages = file.match(/\/Type\s*\/Page\b/g)?.length ?? 0;
      expect(pages).toBeGreaterThanOrEqual(2);
      expect(pages).toBeLessThanOrEqual(4);
      await page.emulateMedia({ media: 'print' });
      expect(await page.getByRole('link', { name: 'Workbench' }).isVisible()).toBe(false);
      expect(await page.getByText('Pressure-test the core before fitting').isVisible()).toBe(true);
      expect(plain(await page.locator('.letter-inputs').innerText())).toContain(
        'Core air conductance 390 W/K to 585 W/K',
      );
      const ink = await page.locator('.letter-answer').evaluate((text) => getComputedStyle(text).color);
      expect(ink).toBe('rgb(0, 0, 0)');
    },
  );
});

describe.each(['light', 'dark'] as const)('in the %s theme', (colorScheme) => {
  it.for([1280, 390])('axe finds nothing at a width of %i, nothing scrolls sideways', async (width, { newPage }) => {
    const page = await newPage({ viewport: { width, height: 844 }, colorScheme });
    await page.goto('/#letter');
    await page.locator('.letter-answer').waitFor();
    await whole(page);
    expect(await violations(page)).toEqual([]);
    expect(await pageWidth(page)).toBe(width);
  });
});

it('by the keyboard the question comes behind bar and head, in the order of its words', async ({ atLetter }) => {
  const page = await atLetter();
  await page.getByRole('button', { name: 'Print' }).focus();
  const names: string[] = [];
  for (let k = 0; k < 6; k++) {
    await page.keyboard.press('Tab');
    names.push(await page.evaluate(() => (document.activeElement as HTMLInputElement).labels?.[0]?.textContent ?? ''));
  }
  expect(names).toEqual([
    'Change that is asked about',
    'Limit of the charge temperature',
    'Number of pulls',
    'Length of a pull',
    'Rest between pulls',
    'Outside air temperature',
  ]);
});

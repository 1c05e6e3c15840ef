import type { Page } from 'playwright';
import { describe, expect } from 'vitest';
import { studyCoreDesign } from '../../src/sim/answers/core-designer.ts';
import { studyCoreMap } from '../../src/sim/answers/core-map.ts';
import { conduct } from '../../src/sim/answers/study.ts';
import { shippedConfig } from '../support/shipped.ts';
import {
  afterSolved,
  clickOnceThere,
  focused,
  openInputs,
  plain,
  reach,
  solved,
  texts,
  undo,
  violations,
} from './acts.ts';
import type { VisitorOptions } from './browser.ts';
import { it as onPage } from './fixture.ts';

const config = shippedConfig('rolling-road-estate', 'core by its measures, 120 mm deep');
const study = conduct(studyCoreDesign(config));
const map = conduct(studyCoreMap(config));
if (study === undefined || map === undefined) throw new Error('no design');
const { design, changes } = study;

const it = onPage
  /** the demo car, its core replaced by the invented one, in the designer */
  .extend('designer', ({ firstVisit }) => async (options?: VisitorOptions): Promise<Page> => {
    const page = await firstVisit(options);
    await openInputs(page);
    await title(page).click();
    await page.getByRole('button', { name: 'Start from an invented core' }).click();
    await page.locator('.core-follow:not(.late)').waitFor();
    return page;
  });

const title = (page: Page) => page.locator('summary', { hasText: /^Core by its measures/ });
const openMap = async (page: Page) => {
  await page.locator('summary', { hasText: 'Map of fin density, depth and width' }).click();
  await page.locator('.map-grid').waitFor();
};
const cell = (page: Page, fins: number, depth: number) =>
  page.getByRole('button', { name: new RegExp(`^${fins} fins per inch, ${depth}\\smm deep`) });
const celsius = (kelvin: number) => (kelvin - 273.15).toFixed(1);
const minus = (text: string) => text.replace('-', '−');

describe('a core by its measures', () => {
  it('is put in with one step, says that it is invented, and goes with one', async ({ designer }) => {
    const page = await designer();
    await page.getByText('Invented measures: no such core was built or tested.').waitFor();
    await afterSolved(page);
    // What was pressed is gone: its title has the focus.
    const onTitle = () =>
      page.evaluate(() => `${document.activeElement?.tagName} ${document.activeElement?.textContent}`);
    await expect.poll(onTitle).toContain('SUMMARY Core by its measures');
    await page.locator('summary', { hasText: /^Measures/ }).click();
    await page.getByRole('textbox', { name: 'Core depth' }).fill('90');
    await page.keyboard.press('Tab');
    await page.getByRole('img', { name: /^Along the air, to scale. 90\smm deep/ }).waitFor();
    expect(await page.getByText('Invented measures').count()).toBe(0);
    await undo(page).click();
    await undo(page).click();
    await page.getByRole('button', { name: 'Start from an invented core' }).waitFor();
    expect(await page.locator('.answer .after').count()).toBe(0);
  });

  it('comes to the numbers of the library', async ({ designer }) => {
    const page = await designer();
    const rows = await page.locator('.core-follow dl > div').allInnerTexts();
    const shown = rows.map((row) => row.split('\n').map(plain).join(': '));
    const kilopascals = (pascal: number) => minus(`${(pascal / 1000).toFixed(2)} kPa`);
    for (const line of [
      `Conductance UA: ${design.airConductance.toFixed(0)} W/K`,
      `Conductance UA, wall in it: ${design.coolantConductance.toFixed(0)} W/K`,
      `UA of both in series: ${design.conductance.toFixed(0)} W/K`,
      `Pressure drop: ${kilopascals(design.airDrop)}`,
      `slowing down as it cools: ${kilopascals(design.air.drop.acceleration)}`,
      `Pressure drop: ${kilopascals(design.coolant.drop.total)}`,
      `ports: ${kilopascals(design.coolant.drop.ports)}`,
      `Fins: ${design.geometry.metal.finMass.toFixed(2)} kg`,
      `with both headers: ${(1000 * design.geometry.coolant.volume).toFixed(2)} L`,
    ])
      expect(shown).toContain(line);
    const marks = await texts(page.locator('.core-follow .marks li'));
    expect(marks).toEqual(design.marks.map((mark) => mark.replace('+-', '±')));
    const peaks = await texts(page.locator('.sizes tbody tr').first().locator('td'));
    expect(peaks).toEqual(changes.map(({ pull }) => minus(`${(pull?.peak ?? 0).toFixed(2)} K`)));
  });

  it('grows by a row with one click, and by the sliders against a Before with measures', async ({ designer }) => {
    const page = await designer();
    await afterSolved(page);
    await page.getByRole('button', { name: 'Keep as Before' }).click();
    // There are two: this one and that of a core by test points, which comes before it.
    await page.locator('.designer').getByRole('button', { name: 'One row wider' }).click();
    await expect.poll(() => page.getByRole('textbox', { name: 'Width ×' }).inputValue()).toBe('1.09');
    await page.getByRole('img', { name: /^Face, to scale. 218\smm wide/ }).waitFor();
    await page.locator('.designer').getByRole('button', { name: 'One row wider' }).click();
    await page.getByRole('textbox', { name: 'Depth ×' }).fill('1.5');
    await page.keyboard.press('Enter');
    await page.getByRole('img', { name: /^Along the air, to scale. 180\smm deep/ }).waitFor();
    // 200 mm x 1.09 x 1.09: a depth moves no width, though the factor is shown with two digits.
    await page.locator('summary', { hasText: /^Measures/ }).click();
    expect(await page.getByRole('textbox', { name: 'Core width' }).inputValue()).toBe('237.62');
    expect(await page.getByRole('textbox', { name: 'Fin pitch' }).inputValue()).toBe('1.8143');
    expect(await page.locator('.inputs .message:not(.doubt)').count()).toBe(0);
  });

  it('takes other fins with a strip length to begin with', async ({ designer }) => {
    const page = await designer();
    await page.locator('summary', { hasText: /^Measures/ }).click();
    await page.getByRole('combobox', { name: 'Kind of fins' }).selectOption('offset strip');
    await page.getByRole('button', { name: /: strip length$/ }).click();
    await page.getByRole('textbox', { name: 'Strip length' }).waitFor();
    expect(await page.getByRole('textbox', { name: 'Louvre pitch' }).count()).toBe(0);
    await page.getByText(/^strips 3.2\smm long$/).waitFor();
  });
});

describe('the map of cores', () => {
  it('has the peaks of the library in its cells, and what else may be shown', async ({ designer }) => {
    const page = await designer();
    await openMap(page);
    const fins = (pitch: number) => Math.round(0.0254 / pitch);
    const widthChoice = page.getByRole('combobox', { name: 'Cells at width' });
    for (const { finPitch, depth, width, peak, verdict } of map.points) {
      if ((await widthChoice.inputValue()) !== String(width)) await widthChoice.selectOption(String(width));
      const label = await cell(page, fins(finPitch), Math.round(1000 * depth)).getAttribute('aria-label');
      expect(plain(label)).toContain(`charge peak ${celsius(peak)} °C${verdict === 'good' ? '' : `, ${verdict}`}`);
    }
    await widthChoice.selectOption('1');
    await page.getByRole('combobox', { name: 'Cells show' }).selectOption('core pressure drop');
    const airDrop = map.points.find(({ width }) => width === 1)?.airDrop ?? 0;
    await expect
      .poll(async () => plain(await cell(page, 4, 60).innerText()))
      .toBe(`${(airDrop / 1000).toFixed(2)} open`);
    expect(await page.locator('.optima li').count()).toBe(map.optima.length);
  });

  it('makes a cell After with one click, keeps still, and Undo takes it back', async ({ designer }) => {
    const page = await designer();
    await openMap(page);
    const depths = () => texts(page.locator('.map-grid thead th'));
    const before = await depths();
    expect(before).toHaveLength(5);
    await cell(page, 20, 150).click();
    const point = map.points.find(
      (each) => Math.abs(0.0254 / each.finPitch - 20) < 0.1 && each.depth > 0.14 && each.width === 1,
    );
    await expect
      .poll(async () => plain(await page.locator('.answer').first().innerText()))
      .toContain(`peaks at ${celsius(point?.peak ?? 0)} °C`);
    expect(await cell(page, 20, 150).getAttribute('aria-pressed')).toBe('true');
    expect(await page.locator('.map-grid .own').count()).toBe(1);
    await solved(page);
    // The map stays round the core that it was drawn for, and nothing has to be worked out anew.
    expect(await page.locator('.core-map .study-state').innerText()).toBe('');
    expect(await depths()).toEqual(before);
    expect(plain(await undo(page).innerText())).toContain('20 fins per inch');
    await undo(page).click();
    await expect.poll(() => cell(page, 14, 120).getAttribute('aria-pressed')).toBe('true');
  });

  it('makes a wider core After too, and is drawn again round it', async ({ designer }) => {
    const page = await designer();
    await openMap(page);
    const widthChoice = page.getByRole('combobox', { name: 'Cells at width' });
    await widthChoice.selectOption('1.25');
    await cell(page, 16, 120).click();
    const point = map.points.find(
      (each) =>
        Math.abs(0.0254 / each.finPitch - 16) < 0.1 && Math.abs(each.depth - 0.12) < 1e-6 && each.width === 1.25,
    );
    await expect
      .poll(async () => plain(await page.locator('.answer').first().innerText()))
      .toContain(`peaks at ${celsius(point?.peak ?? 0)} °C`);
    expect(plain(await undo(page).innerText())).toContain('16 fins per inch');
    await expect.poll(() => widthChoice.inputValue()).toBe('1');
    await expect.poll(() => cell(page, 16, 120).getAttribute('aria-pressed')).toBe('true');
  });

  it('is cancelled and asked for again', async ({ designer }) => {
    const page = await designer();
    const cancelling = clickOnceThere(page, '.core-map', 'Cancel');
    await page.locator('summary', { hasText: 'Map of fin density, depth and width' }).click();
    await cancelling;
    const panel = page.locator('.core-map');
    await panel.getByText('Cancelled.').waitFor();
    expect(await page.locator('.map-grid').count()).toBe(0);
    await panel.getByRole('button', { name: 'Work it out' }).click();
    await page.locator('.map-grid').waitFor();
  });
});

it('the designer works by keys alone', async ({ byKeys: page }) => {
  const name = async () => (await focused(page))?.name;
  await reach(page, 'Core by its measures');
  await page.keyboard.press('Enter');
  await reach(page, 'Start from an invented core');
  await page.keyboard.press('Enter');
  await page.locator('.core-follow:not(.late)').waitFor();
  await reach(page, 'Map of fin density, depth and width');
  await page.keyboard.press('Enter');
  await page.locator('.map-grid').waitFor();
  // One stop for the whole map: the car's own cell. Arrows go from there.
  await reach(page, '14 fins per inch, 120 mm deep');
  for (const key of ['ArrowDown', 'ArrowRight', 'ArrowRight']) await page.keyboard.press(key);
  expect(await name()).toMatch(/^16 fins per inch, 150 mm deep/);
  await page.keyboard.press('Enter');
  await expect.poll(name).toMatch(/^16 fins per inch, 150 mm deep.*this car$/);
  expect(plain(await undo(page).innerText())).toContain('16 fins per inch');
  await page.keyboard.press('Tab');
  expect(await name()).not.toMatch(/fins per inch/);
});

// Contrast hangs on the theme, what reaches over an edge on the width: each of both is looked at, not every pair.
describe('the designer', () => {
  it.for([
    [1440, 900, 'light'],
    [1024, 768, 'dark'],
    [390, 844, 'light'],
  ] as const)(
    'axe finds nothing at %i x %i, %s, and nothing reaches over the edge',
    async ([width, height, colorScheme], { designer }) => {
      const page = await designer({ viewport: { width, height }, colorScheme });
      await openMap(page);
      await page.locator('summary', { hasText: /^Measures/ }).click();
      expect(await violations(page)).toEqual([]);
      await page.locator('.map-grid').scrollIntoViewIfNeeded();
      expect(await violations(page)).toEqual([]);
      const over = await page.locator('.designer').evaluate((part) => {
        const { right } = part.getBoundingClientRect();
        const parts = [...part.querySelectorAll('*')];
        return parts
          .filter((each) => each.closest('.spoken') === null && each.getBoundingClientRect().right > right + 0.5)
          .map(({ outerHTML }) => outerHTML.slice(0, 120));
      });
      expect(over).toEqual([]);
      // What is written in a cell stays in it.
      const cut = await page
        .locator('.map-grid .cell')
        .evaluateAll((cells) => cells.filter(({ scrollWidth, clientWidth }) => scrollWidth > clientWidth).length);
      expect(cut).toBe(0);
    },
  );
});

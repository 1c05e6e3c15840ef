import type { Page } from 'playwright';
import { describe, expect } from 'vitest';
import { applyChanges, fromSi, simulate, summarisePulls, toConfig } from '../../src/sim/index.ts';
import { shippedConfig, shippedScenario } from '../support/shipped.ts';
import {
  cells,
  clickOnceThere,
  openDemo,
  openQuestion,
  pageWidth,
  plain,
  solved,
  texts,
  tryVariant,
  violations,
  workOut,
} from './acts.ts';
import { it } from './fixture.ts';

const CAR = 'rolling-road-estate';

const type = (page: Page, box: string | RegExp, text: string): Promise<void> =>
  page.getByRole('textbox', { name: box }).fill(text);

async function answered(page: Page): Promise<string> {
  await workOut(page);
  return plain(await page.locator('.question-answer .question-words').innerText());
}

const rowsOf = (page: Page): Promise<string[]> => texts(page.locator('.question-answer tbody tr'));

const curveRows = (page: Page) =>
  page.getByRole('region', { name: 'Pulls by the temperature outside' }).locator('tbody tr').count();

describe('questions about the car on the rollers', () => {
  it('the gauge agrees with readings of the model itself, a comma in them, and shows no miss', async ({
    firstVisit,
  }) => {
    const config = shippedConfig(CAR);
    const pulls = summarisePulls(simulate(config), config.limit.chargeTemperature);
    const page = await firstVisit();
    await openQuestion(page, 'Gauge');
    expect(await page.getByRole('button', { name: 'Work it out' }).isDisabled()).toBe(true);
    for (const pull of [1, 2, 3]) {
      const read = fromSi(pulls[pull - 1].atEnd.indicatedTemperature, 'degC')
        .toFixed(1)
        .replace('.', ',');
      await type(page, `Pull ${pull}`, read);
    }
    expect(await answered(page)).toContain('They agree within what the gauge can show');
    const misses = await page.locator('.gauge-figure .gauge-dot').count();
    expect(misses).toBe(3);
    for (const row of (await rowsOf(page)).slice(0, 3)) expect(row).toMatch(/ [+-]?0\.[01] [+-]?0\.[01]$/);
  });

  it('the gauge takes a reading with a unit of its own, and says which text is none', async ({ firstVisit }) => {
    const page = await firstVisit();
    await openQuestion(page, 'Gauge');
    await type(page, 'Pull 1', '140 F');
    await type(page, 'Pull 2', 'warm');
    expect(plain(await page.locator('.question [role=status]').innerText())).toBe(
      'Pull 2: expected a number, −50 to 200 °C.',
    );
    await type(page, 'Pull 2', '');
    expect(await answered(page)).toContain('At the end of one pull');
    // 140 degF are 60 degC.
    expect((await rowsOf(page))[0]).toMatch(/^1 60\.0 /);
  });

  it('the gauge has a box for every pull, by keys too, and takes one that is not the first', async ({ firstVisit }) => {
    const config = shippedConfig(CAR);
    const pulls = summarisePulls(simulate(config), config.limit.chargeTemperature);
    const page = await firstVisit();
    await openQuestion(page, 'Gauge');
    await expect.poll(() => page.getByRole('textbox', { name: /^Pull \d+/ }).count()).toBe(pulls.length);
    await page.getByRole('textbox', { name: 'Pull 1' }).focus();
    for (let k = 1; k < 4; k++) await page.keyboard.press('Tab');
    await page.keyboard.type(fromSi(pulls[3].atEnd.indicatedTemperature, 'degC').toFixed(1));
    expect(await answered(page)).toContain('At the end of one pull');
    expect((await rowsOf(page))[0]).toMatch(/^4 /);
  });

  it('the gauge folds the boxes of pulls past the twelfth, and keeps what is typed there', async ({ firstVisit }) => {
    const page = await firstVisit();
    await openDemo(page, 'Session coupe');
    await openQuestion(page, 'Gauge');
    const boxes = page.getByRole('textbox', { name: /^Pull \d+/ });
    const later = page.locator('summary', { hasText: 'Pulls 13 to 48' });
    await later.focus();
    expect(await boxes.count()).toBe(12);
    await page.keyboard.press('Enter');
    await expect.poll(() => boxes.count()).toBe(48);
    for (let k = 0; k < 3; k++) await page.keyboard.press('Tab');
    // The second key follows the first before the page has had a frame.
    await page.getByRole('textbox', { name: 'Pull 15' }).evaluate(async (box: HTMLInputElement) => {
      for (const text of ['5', '5O']) {
        box.value = text;
        box.dispatchEvent(new InputEvent('input', { bubbles: true }));
        await Promise.resolve();
      }
    });
    await later.click();
    expect(plain(await page.locator('.question [role=status]').innerText())).toMatch(/^Pull 15: expected a number/);
    await later.click();
    expect(await page.getByRole('textbox', { name: 'Pull 15' }).inputValue()).toBe('5O');
  });

  it('readings of the gauge stand on the bars as soon as they are typed, until they are cleared', async ({
    firstVisit,
  }) => {
    const config = shippedConfig(CAR);
    const [first] = summarisePulls(simulate(config), config.limit.chargeTemperature);
    const miss = fromSi(first.atEnd.indicatedTemperature, 'degC') - 60;
    const page = await firstVisit();
    const band = page.getByRole('region', { name: 'Pulls and time' });
    const dots = band.locator('.gauge-dot');
    const legend = band.getByText(/^Dot: gauge at the end of the pull, tick: model as a gauge reads it/);
    expect(await legend.count()).toBe(0);
    await openQuestion(page, 'Gauge');
    await type(page, 'Pull 1', '60');
    await type(page, 'Pull 2', '50');
    await expect.poll(() => dots.count()).toBe(2);
    expect(await band.locator('.model-tick').count()).toBe(2);
    expect(await band.locator('.miss').first().textContent()).toBe(
      miss > 0 ? `+${miss.toFixed(1)}` : `−${Math.abs(miss).toFixed(1)}`,
    );
    expect(await legend.isVisible()).toBe(true);
    expect(plain(await band.locator('p.spoken').innerText())).toContain('Gauge readings are shown at 2 pulls');
    // The dot of 50 degC stands as high as 50 on the axis (a text stands on its foot, 4 px below), in the middle of pull 2.
    const place = (text: string, attribute: string) =>
      band.locator('.bars-drawing text').getByText(text, { exact: true }).getAttribute(attribute);
    expect(Number(await dots.nth(1).getAttribute('cy'))).toBeCloseTo(Number(await place('50', 'y')) - 4, 0);
    expect(Math.abs(Number(await dots.nth(1).getAttribute('cx')) - Number(await place('Pull 2', 'x')))).toBeLessThan(2);

    await page.getByRole('radio', { name: 'Triage', exact: true }).check();
    expect(await dots.count()).toBe(2);
    await page.getByRole('button', { name: /More answers/ }).click();
    expect(await dots.count()).toBe(2);
    await page.reload();
    await solved(page);
    await expect.poll(() => dots.count()).toBe(2);
    await tryVariant(page, 'bigger core');
    await band.getByText(/tick: After as a gauge reads it/).waitFor();
    expect(await dots.count()).toBe(2);
    await band.getByRole('button', { name: 'Table' }).click();
    expect(plain(await band.locator('thead').innerText())).toMatch(
      /gauge at the end, °C miss \(After less gauge\), K$/,
    );
    expect(plain(await band.locator('tbody tr').nth(1).innerText())).toMatch(/ 50\.0 [−+]?\d+\.\d$/);
    await band.getByRole('button', { name: 'Table' }).click();

    await openQuestion(page, 'Gauge');
    const box = page.getByRole('textbox', { name: 'Pull 1' });
    await expect.poll(() => box.inputValue()).toBe('60');
    await page.getByRole('button', { name: 'Clear readings' }).click();
    await expect.poll(() => dots.count()).toBe(0);
    await expect.poll(() => box.inputValue()).toBe('');
    await page.getByRole('button', { name: 'Undo: clear readings' }).click();
    await expect.poll(() => dots.count()).toBe(2);
    await expect.poll(() => box.inputValue()).toBe('60');
    await openDemo(page, 'Session coupe');
    await expect.poll(() => dots.count()).toBe(0);
  });

  it('triage names the air lock that was planted', async ({ firstVisit }) => {
    const locked = applyChanges(shippedScenario(CAR), 'air lock', { 'core.airLockedShare': 0.5 }).scenario;
    if (locked === undefined) throw new Error('refused');
    const { columns, phases } = simulate(toConfig(locked));
    const pull = phases.findIndex(({ kind }) => kind === 'pull');
    const [before, lift] = [phases[pull - 1].lastRow, phases[pull].lastRow];
    const rise = columns.coolantOutOfCore[before] - columns.coolantIntoCore[before];
    const approach = columns.indicatedTemperature[lift] - columns.coolantIntoCore[lift];
    const page = await firstVisit();
    await openQuestion(page, 'Triage');
    await type(page, /^Coolant rise/, rise.toFixed(2));
    await type(page, /^Charge less/, approach.toFixed(1));
    expect(await answered(page)).toContain('This looks most like 50 % of the core full of air.');
    const [measured, first, ...others] = await rowsOf(page);
    expect(measured).toContain(approach.toFixed(1));
    expect(first).toMatch(new RegExp(`^1\\. 50 % of the core full of air 0\\.0 .* ${approach.toFixed(1)}$`));
    expect(await page.locator('.question-answer tbody th').nth(1).innerText()).toContain('50\u00a0%');
    // The picture has a mark for each cause and the number of each row, alone or with its neighbours.
    const figure = page.locator('.triage-figure');
    expect(await figure.getByRole('img', { name: /the table beside it has the numbers$/ }).isVisible()).toBe(true);
    expect(await figure.locator('.cause-mark').count()).toBe(1 + others.length);
    const numbers = (await figure.locator('.number').allTextContents()).flatMap((text) => text.split(', ').map(Number));
    expect(numbers.toSorted((a, b) => a - b)).toEqual([first, ...others].map((row) => Number.parseInt(row, 10)));
    expect(plain(await page.locator('.question').innerText())).toContain('Never open a hot pressure cap.');
  });

  it('cars side by side: no pull as it stands, eight with the bigger core', async ({ firstVisit }) => {
    const page = await firstVisit();
    await openQuestion(page, 'Compare');
    await page.getByRole('checkbox', { name: 'one row wider' }).uncheck();
    await page.getByRole('checkbox', { name: 'bigger core', exact: true }).check();
    await answered(page);
    const rows = await rowsOf(page);
    expect(rows[0]).toBe('Pulls to the limit 0 8 (+8)');
    expect(rows).toContain('core air conductance, W/K 390 585');
    // Two traces of the charge, and one of the difference.
    const points = await page
      .locator('.compare-figure polyline')
      .evaluateAll((lines) => lines.map((line) => line.getAttribute('points')?.split(' ').length ?? 0));
    expect(points).toHaveLength(3);
    for (const count of points) expect(count).toBeLessThanOrEqual(400);
    // The same car has the same line in both pictures, in the list of names and in the tables.
    const other = await page.locator('.compare-figure polyline').last().getAttribute('class');
    expect(await page.locator('.compare-figure polyline').nth(1).getAttribute('class')).toBe(other);
    expect(await page.locator('.line-names li:last-child line').getAttribute('class')).toBe(other);
    expect(await page.locator('.answer-table').first().locator('thead th:last-child line').getAttribute('class')).toBe(
      other,
    );
  });

  it('a hotter day gives no more pulls', async ({ firstVisit }) => {
    const page = await firstVisit();
    await tryVariant(page, 'bigger core');
    await openQuestion(page, 'Another day');
    await type(page, 'Outside', '45');
    const words = await answered(page);
    expect(words).toMatch(/^45\.0 °C outside/);
    const [typed, , day] = await rowsOf(page);
    const counts = (row: string): number[] => [...row.matchAll(/(\d+) of 8/g)].map(([, made]) => Number(made));
    expect(counts(typed)[1]).toBe(8);
    expect(counts(day)).toHaveLength(3);
    counts(day).forEach((made, k) => {
      expect(made).toBeLessThanOrEqual(counts(typed)[k]);
    });
    expect(counts(day)[1]).toBeLessThan(8);
    expect(await page.locator('.day-figure circle.point').count()).toBe(await curveRows(page));
    const hottest = Number(/Hottest day with 8 pulls made: (-?[\d.]+) °C/.exec(words)?.[1]);
    expect(hottest).toBeGreaterThan(27);
    expect(hottest).toBeLessThan(45);
  });

  it('what to measure tells how far it is, stops when told, and ranks', async ({ firstVisit }) => {
    const page = await firstVisit();
    await openQuestion(page, 'What to measure');
    await page.getByRole('spinbutton', { name: 'Runs' }).fill('4000');
    await page.getByRole('button', { name: 'Work it out' }).click();
    await page.getByText(/^\d+ of \d+ runs so far\.$/).waitFor();
    await clickOnceThere(page, '.question', 'Cancel');
    await page.getByText('Cancelled.').waitFor();
    await page.getByRole('spinbutton', { name: 'Runs' }).fill('16');
    expect(await answered(page)).toContain('16 runs with every input uncertain at once');
    const shares = (await rowsOf(page)).map((row) => Number(/ (\d+\.\d) \d+\.\d \d+\.\d /.exec(row)?.[1]));
    expect(shares.length).toBeGreaterThan(5);
    expect(shares).toEqual(shares.toSorted((a, b) => b - a));
    expect(await page.locator('.share-figure .model-bar').count()).toBe(shares.length);
  });

  it('what to measure ranks the own list: one narrowed, one left out, one added', async ({ firstVisit }) => {
    const page = await firstVisit();
    await openQuestion(page, 'What to measure');
    const list = page.locator('.ranges summary');
    const runs = page.getByRole('spinbutton', { name: 'Runs' });
    const status = page.locator('.question-ask > [role=status]');
    expect(plain(await list.innerText())).toBe('Varied: 8 inputs, each over its usual range');
    await list.press('Enter');

    await type(page, 'Core conductance, air side, low', '99 %');
    await type(page, 'Core conductance, air side, high', '1,01');
    await page.getByRole('checkbox', { name: 'Swallowing exponent' }).uncheck();
    expect(await runs.getAttribute('min')).toBe('9');
    await page.getByRole('combobox', { name: 'Add an input' }).selectOption({ label: 'Core pressure drop' });
    await page.getByRole('button', { name: 'Add', exact: true }).click();
    expect(await runs.getAttribute('min')).toBe('10');
    expect(plain(await list.innerText())).toBe('Varied: 8 inputs, 2 of them over a typed range; 1 left out');

    // The focus is in the first box of what was added.
    const added = page.getByRole('textbox', { name: 'Core pressure drop, low' });
    await added.and(page.locator(':focus')).waitFor();
    await page.keyboard.type('a lot');
    expect(plain(await status.innerText())).toBe('Core pressure drop, low: expected a number, 0 to 60 kPa.');
    expect(await page.getByRole('button', { name: 'Work it out' }).isDisabled()).toBe(true);
    await added.fill('1 psi');
    await list.press('Enter');
    await runs.fill('16');
    await answered(page);
    // 1 psi is 6.895 kPa; the file has 9, and a tenth more is 9.9.
    const ranges = Object.fromEntries(
      (await cells(page.locator('.question-answer tbody tr'))).map((row) => [row[0], row[4]]),
    );
    expect(ranges).toEqual({
      'core conductance, air side': '×0.99 to ×1.01',
      'core conductance, coolant side': '×0.85 to ×1.15',
      'pump free flow': '×0.9 to ×1.1',
      'pump shut-off pressure': '×0.9 to ×1.1',
      'air speed at the front exchanger': '×0.75 to ×1.25',
      'compressor idle power': '×0.5 to ×2',
      'outside temperature': '−3 to +3 K',
      'core pressure drop': '6.895 to 9.9 kPa',
    });
    // What was known to one per cent is no longer the first to measure.
    expect((await rowsOf(page))[0]).not.toMatch(/^core conductance, air side/);

    await list.press('Enter');
    await page.getByRole('button', { name: 'Back to the usual ranges' }).press('Enter');
    expect(plain(await list.innerText())).toBe('Varied: 8 inputs, each over its usual range');
    expect(plain(await status.innerText())).toContain('as it was');
    expect(await page.getByRole('textbox', { name: 'Core conductance, air side, low' }).inputValue()).toBe('0.85');
  });

  it('what to measure drops a range with the part that it was of, and says so', async ({ firstVisit }) => {
    const page = await firstVisit();
    await openQuestion(page, 'What to measure');
    await page.locator('.ranges summary').press('Enter');
    await type(page, 'Air speed at the front exchanger, low', '0.9');
    await page.locator('summary.line', { hasText: 'Front exchanger' }).click();
    await page.getByRole('button', { name: 'Take it out of the loop' }).click();
    await page.getByText('Not in this car, and left off the list: air speed at the front exchanger.').waitFor();
    expect(plain(await page.locator('.ranges summary').innerText())).toBe(
      'Varied: 7 inputs, each over its usual range',
    );
  });
});

// Contrast hangs on the theme, what reaches over an edge on the width: each of both is looked at, not every pair.
describe('the questions', () => {
  it.for([
    [1280, 'light'],
    [360, 'dark'],
  ] as const)(
    'axe finds nothing at %i px, %s, and nothing reaches over the edge',
    async ([width, colorScheme], { firstVisit }) => {
      const page = await firstVisit({ viewport: { width, height: 844 }, colorScheme });
      const asked: readonly (readonly [string, Readonly<Record<string, string>>])[] = [
        ['Gauge', { 'Pull 1': '60' }],
        ['Triage', { 'Coolant rise': '1', 'Charge less': '40' }],
        ['Compare', {}],
        ['Another day', { Outside: '35' }],
        ['What to measure', {}],
      ];
      for (const [name, boxes] of asked) {
        await openQuestion(page, name);
        for (const [box, text] of Object.entries(boxes)) await type(page, new RegExp(`^${box}`), text);
        await answered(page);
        for (const fold of await page.locator('.question summary').all()) await fold.click();
        expect(await violations(page, '.question'), name).toEqual([]);
        expect(await pageWidth(page)).toBeLessThanOrEqual(width);
      }
    },
  );
});

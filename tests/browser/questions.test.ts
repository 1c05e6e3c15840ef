import type { Page } from 'playwright';
import { describe, expect } from 'vitest';
import { conduct } from '../../src/sim/answers/study.ts';
import { studyGrid } from '../../src/sim/answers/sweep.ts';
import { studyStore } from '../../src/sim/answers/tank-size.ts';
import { shippedConfig, shippedScenario } from '../support/shipped.ts';
import { NINE_UPGRADES, shortDocument } from '../support/short-session.ts';
import {
  cells,
  clickOnceThere,
  openFile,
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

async function ask(page: Page, question: string): Promise<void> {
  await openQuestion(page, question);
  await workOut(page);
}

const rowsOf = (page: Page, table: string) => cells(page.getByRole('region', { name: table }).locator('tbody tr'));
/** Unfolds the tables of every figure. */
async function unfold(page: Page): Promise<void> {
  for (const line of await page.locator('.question-answer summary').all()) await line.click();
}
const celsius = (kelvin: number) => `${(kelvin - 273.15).toFixed(1)} °C`;

describe('more answers', () => {
  it('has the tank of the library, point for point', async ({ firstVisit }) => {
    const page = await firstVisit();
    await ask(page, 'Tank');
    const study = conduct(studyStore(shippedConfig('rolling-road-estate'), 'tank', 8));
    const rows = await cells(page.locator('.question-answer tbody tr'));
    expect(rows.map((row) => row.slice(1))).toEqual(
      study.points.map(({ count, firstPeak, lastPeak }) => [
        `${count} of 8`,
        celsius(firstPeak),
        Number.isFinite(lastPeak) ? celsius(lastPeak) : 'not run',
      ]),
    );
  });

  it('weighs the upgrades of the demo car: the bigger core alone makes all pulls', async ({ firstVisit }) => {
    const page = await firstVisit();
    await ask(page, 'Upgrades');
    expect((await texts(page.locator('.question-words p'))).slice(0, 2)).toEqual([
      'Cheapest way to all 8 pulls, for 1680 and 11 h: bigger core.',
      expect.stringMatching(/^Best order: bigger core; /),
    ]);
    const short = await rowsOf(page, 'One on top of the other, in the best order');
    expect(short[1]).toEqual(['bigger core', 'better', '8 of 8', '54.7', '−8.7', '1680', '11']);
    await unfold(page);
    // Peaks of the reference runs (tests/scenarios/reference-runs.json): stock car 63.5, bigger core 54.7 degC.
    const alone = await rowsOf(page, 'Each alone, on the car as it is');
    expect(alone.map(([name]) => name)[0]).toBe('as it is');
    expect(alone[0].slice(1, 5)).toEqual(['–', '0 of 8', '1', '63.5']);
    expect(alone[1].slice(0, 5)).toEqual(['bigger core', 'better', '8 of 8', '8', '54.7']);
    expect(alone).toHaveLength(6);
    const inOrder = await rowsOf(page, 'In the order of the file');
    expect(inOrder[5].slice(0, 2)).toEqual(['10 L tank', 'worse']);
    expect(await rowsOf(page, 'The cheapest way')).toEqual([
      ['0', '0', '0', 'the car as it is'],
      ['1 to 8', '1680', '11', 'bigger core'],
    ]);
    const answer = plain(await page.locator('.question-answer').innerText());
    expect(answer).toContain('bigger core: 8 pulls under the limit instead of 0.');
    expect(answer).toContain('Best order: bigger core; ');
    expect(answer).not.toMatch(/undefined|NaN|Infinity/);
    expect(await page.getByRole('img', { name: /^Deciding peak with each upgrade/ }).isVisible()).toBe(true);
    expect(await violations(page, '.questions')).toEqual([]);
  });

  it('refuses a number of pulls that is no whole number or out of range, and says what it takes', async ({
    firstVisit,
  }) => {
    const page = await firstVisit();
    await openQuestion(page, 'Tank');
    const box = page.getByLabel('Pulls wanted');
    const button = page.getByRole('button', { name: 'Work it out' });
    for (const text of ['501', '2.5', '']) {
      await box.fill(text);
      await page.getByText('Pulls wanted: expected a whole number, 1 to 500.', { exact: true }).waitFor();
      expect(await box.inputValue()).toBe(text);
      expect(await box.getAttribute('aria-invalid')).toBe('true');
      expect(await button.isDisabled()).toBe(true);
    }
    await box.fill('100');
    await page.locator('.whole-box input[aria-invalid="false"]').waitFor();
    expect(await button.isDisabled()).toBe(false);
  });

  it('hears a cancel, and may be asked again', async ({ firstVisit }) => {
    const page = await firstVisit();
    await openQuestion(page, 'Upgrades');
    let started = 0;
    page.on('worker', () => started++);
    const cancelling = clickOnceThere(page, '.question', 'Cancel');
    await page.getByRole('button', { name: 'Work it out' }).click();
    await cancelling;
    await page.getByText('Cancelled.', { exact: true }).waitFor();
    expect(await page.locator('.question-answer').count()).toBe(0);
    // The button that was pressed still has the focus.
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Work it out');
    // A worker that does not hear a cancel is ended and another one started; these hear it between short runs.
    await page.waitForTimeout(500);
    expect(started).toBe(0);
    await page.getByRole('checkbox', { name: 'Best order and cheapest way' }).uncheck();
    await ask(page, 'Upgrades');
    await unfold(page);
    expect((await rowsOf(page, 'Each alone, on the car as it is'))[1][2]).toBe('8 of 8');
    expect(await page.getByRole('region', { name: 'The cheapest way' }).count()).toBe(0);
  });

  it('takes the upgrades of the opened file for a changed car', async ({ firstVisit }) => {
    const page = await firstVisit();
    await tryVariant(page, 'bigger core');
    await ask(page, 'Upgrades');
    await unfold(page);
    const alone = await rowsOf(page, 'Each alone, on the car as it is');
    expect(alone[0][2]).toBe('8 of 8');
    expect(alone[1][0]).toBe('22 mm lines and ports');
    const answer = plain(await page.locator('.question-answer').innerText());
    expect(answer).toContain('Already fitted to this car, and so not weighed: bigger core.');
    expect(answer).toContain('made on the changed car');
  });

  it('orders eight upgrades beside one that is fitted already', async ({ firstVisit }) => {
    const page = await firstVisit();
    const nine = shortDocument({ name: 'Nine steps', upgrades: NINE_UPGRADES });
    await openFile(page, nine);
    await solved(page);
    await ask(page, 'Upgrades');
    const answer = plain(await page.locator('.question-answer').innerText());
    expect(answer).toContain('Already fitted to this car, and so not weighed: pump.shutOffPressure.');
    expect(answer).toMatch(/Best order: (\w+\.\w+; ){7}\w+\.\w+\./);
  });

  it('says how to list upgrades where a file has none', async ({ firstVisit }) => {
    const page = await firstVisit();
    await openFile(page, shortDocument());
    await solved(page);
    await openQuestion(page, 'Upgrades');
    expect(plain(await page.locator('.question').innerText())).toContain('The file lists no upgrades');
    expect(await page.locator('.question pre').innerText()).toContain('"changes"');
    expect(await page.getByRole('button', { name: 'Work it out' }).isDisabled()).toBe(true);
  });

  it('goes through one number of the car, then two, as the library does', async ({ firstVisit }) => {
    const page = await firstVisit();
    await openQuestion(page, 'Change a number');
    await page.getByRole('textbox', { name: /^from/ }).fill('400');
    await page.getByRole('textbox', { name: /^to / }).fill('600');
    const [first, second] = [0, 1].map((place) => page.getByRole('group', { name: /number$/ }).nth(place));
    await first.getByRole('combobox', { name: /^at/ }).selectOption('3');
    await workOut(page);
    const scenario = shippedScenario('rolling-road-estate');
    const axis = { path: 'core.airConductance', values: [400, 500, 600] };
    const rows = await rowsOf(page, 'By core air conductance, W/K');
    expect(rows.map(([value, pulls, hottest]) => [value, pulls, hottest])).toEqual(
      conduct(studyGrid(scenario, [axis])).map(({ changes, pulls, hottest_peak_degC }) => [
        String(changes[axis.path]),
        String(pulls),
        hottest_peak_degC?.toFixed(1),
      ]),
    );
    expect(await page.locator('.chart circle').count()).toBe(3);

    await second.getByRole('combobox', { name: /^And/ }).selectOption('pump.freeFlow');
    await second.getByRole('combobox', { name: /^at/ }).selectOption('3');
    expect(await page.getByRole('status').filter({ hasText: 'as it was' }).count()).toBe(1);
    await workOut(page);
    const other = { path: 'pump.freeFlow', values: [18.2, 26, 33.8] };
    const expected = conduct(studyGrid(scenario, [axis, other])).map(({ pulls }) => String(pulls));
    expect(await texts(page.locator('.sweep-grid tbody td'))).toEqual(expected);
    expect(await violations(page, '.questions')).toEqual([]);
  });

  it('tells of rest and core drop on a narrow, dark screen', async ({ firstVisit }) => {
    const page = await firstVisit({ viewport: { width: 360, height: 780 }, colorScheme: 'dark' });
    await ask(page, 'Rest');
    expect(plain(await page.locator('.question-words').innerText())).toContain('of where that pull began');
    expect(await rowsOf(page, 'Pulls by rest')).toContainEqual(['90.0 s', '0 of 8', 'as in the cycle']);
    expect(await page.locator('.rest-figure circle').count()).toBe(14);
    expect(await violations(page, '.questions')).toEqual([]);
    await ask(page, 'Core pressure drop');
    const [drop] = await rowsOf(page, 'At the end of pull 1');
    expect([drop[0], drop[2], drop[4]]).toEqual(['Core pressure drop, kPa', '0.00', '0.00']);
    expect(await violations(page, '.questions')).toEqual([]);
    expect(await pageWidth(page)).toBe(360);
  });
});

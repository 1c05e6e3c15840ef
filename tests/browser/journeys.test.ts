import { readFileSync } from 'node:fs';
import { describe, expect } from 'vitest';
import { studyHottestDay } from '../../src/sim/answers/other-day.ts';
import { reportRun } from '../../src/sim/answers/run-report.ts';
import { conduct } from '../../src/sim/answers/study.ts';
import { parseScenario } from '../../src/sim/scenario/parse.ts';
import { simulate } from '../../src/sim/simulate.ts';
import { shippedConfig, shippedDocument } from '../support/shipped.ts';
import { longDocument } from '../support/short-session.ts';
import {
  afterSolved,
  answer,
  atRest,
  chooseFile,
  clickOnceThere,
  figures,
  openFile,
  plain,
  tryVariant,
  undo,
} from './acts.ts';
import { it } from './fixture.ts';

describe('first visit', () => {
  it('opens with the default car solved, without a click, and nothing goes wrong', async ({ firstVisit }) => {
    const page = await firstVisit();
    expect(await figures(page)).toEqual(['0']);
    expect(await answer(page)).toContain('Breaks the limit 8.9 s into pull 1 and peaks at 63.5 °C, 5.5 K over');
    await atRest(page);
  });

  it.for([
    ['stock car', undefined],
    ['bigger core', 'bigger core'],
    ['stock + 10 L tank only', 'stock + 10 L tank only'],
  ] as const)('%s: the page says what the command line says, digit for digit', async ([, variant], { firstVisit }) => {
    const page = await firstVisit();
    if (variant !== undefined) await tryVariant(page, variant);
    const config = shippedConfig('rolling-road-estate', variant);
    const report = reportRun(config, simulate(config));
    const shown = await figures(page);
    expect(shown[shown.length - 1]).toBe(String(report.pulls_to_limit.count));
    await page.getByRole('region', { name: 'Pulls and time' }).getByRole('button', { name: 'Table' }).click();
    const table = plain(await page.getByRole('region', { name: 'Pulls and time' }).innerText());
    for (const { peak_degC } of report.pulls) expect(table).toContain(peak_degC.toFixed(1));
  });
});

describe('editing', () => {
  it('shares what takes many runs among the cores, and says the hottest day beside the count', async ({
    firstVisit,
  }) => {
    const page = await firstVisit();
    const { scenario } = parseScenario(JSON.stringify(shippedDocument('rolling-road-estate')));
    if (scenario === undefined) throw new Error('refused');
    const hottest = conduct(studyHottestDay(scenario, 8));
    if (hottest.kind !== 'found') throw new Error(hottest.kind);
    const said = `${(hottest.temperature - 273.15).toFixed(1)} °C outside`;
    await expect.poll(() => answer(page)).toContain(`All 8 up to ${said}`);
    // One to solve, one to study, and a helper for every further core.
    const cores = await page.evaluate(() => navigator.hardwareConcurrency);
    await expect.poll(() => page.workers().length).toBe(2 + Math.min(cores, 8) - 1);
    await page.getByRole('link', { name: 'Letter' }).click();
    const letter = async () => plain(await page.locator('.letter').innerText());
    await expect.poll(letter).toContain(`Hottest day with 8 pulls made: ${said}`);
  });

  it('makes After of a change, undoes and redoes it, and has it still after a reload', async ({ firstVisit }) => {
    const page = await firstVisit();
    await page.getByRole('button', { name: 'Bigger core' }).click();
    await afterSolved(page);
    await expect.poll(() => figures(page)).toEqual(['0', '8']);
    await undo(page).click();
    await expect.poll(() => figures(page)).toEqual(['0']);
    await page.getByRole('button', { name: /^Redo/ }).click();
    await expect.poll(() => figures(page)).toEqual(['0', '8']);
    await page.reload();
    await expect.poll(() => figures(page)).toEqual(['0', '8']);
  });

  it('keeps a text that is no number in its box, says why, and goes on with the last good value', async ({
    firstVisit,
  }) => {
    const page = await firstVisit();
    const box = page.getByRole('textbox', { name: 'Core air conductance' });
    await box.fill('58,5o');
    await box.press('Tab');
    await expect
      .poll(async () => plain(await page.getByRole('complementary', { name: 'Inputs' }).innerText()))
      .toContain('58,5o');
    expect(await box.inputValue()).toBe('58,5o');
    expect(await figures(page)).toEqual(['0']);
    expect(await answer(page)).toContain('last good value');
    await box.fill('585');
    await box.press('Tab');
    await afterSolved(page);
  });

  it('takes typed units and a decimal comma, and shows other units without touching what is stored', async ({
    firstVisit,
  }) => {
    const page = await firstVisit();
    const limit = page.getByRole('textbox', { name: 'Limit of the charge temperature' });
    await limit.fill('140 degF');
    await limit.press('Tab');
    await expect.poll(async () => answer(page)).toContain('60.0 °C');
    await page.getByRole('combobox', { name: 'Units' }).selectOption('US');
    await expect.poll(async () => answer(page)).toContain('140.0 °F');
    await expect
      .poll(async () => plain(await page.getByRole('region', { name: 'Plots' }).innerText()))
      .toMatch(/gpm|psi/);
    await page.getByRole('combobox', { name: 'Units' }).selectOption('Metric');
    await limit.fill('58,5');
    await limit.press('Tab');
    await expect.poll(async () => answer(page)).toContain('58.5 °C');
  });
});

describe('files', () => {
  it('shows what is wrong with a broken file, by path, and keeps the car', async ({ firstVisit }) => {
    const page = await firstVisit();
    const broken = structuredClone(shippedDocument('rolling-road-estate')) as { core: { airConductance: unknown } };
    broken.core.airConductance = 'wide';
    await chooseFile(page, 'broken.json', broken, () => page.getByRole('button', { name: 'Open file' }).click());
    const dialog = page.getByRole('dialog');
    await dialog.waitFor();
    expect(plain(await dialog.innerText())).toContain('core.airConductance');
    await page.keyboard.press('Escape');
    expect(await figures(page)).toEqual(['0']);
  });

  it('saves a scenario that opens again as it was', async ({ firstVisit }) => {
    const page = await firstVisit();
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save file' }).click();
    const path = await (await download).path();
    expect(JSON.parse(readFileSync(path, 'utf8'))).toEqual(shippedDocument('rolling-road-estate'));
  });

  it('exports the series as CSV whose hottest charge is the peak on screen', async ({ firstVisit }) => {
    const page = await firstVisit();
    await page.getByRole('button', { name: 'Export' }).click();
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'stock car' }).click();
    const text = readFileSync(await (await download).path(), 'utf8').replace(/^\ufeff/, '');
    const [head, ...rows] = text.trim().split('\r\n');
    const column = head.split(',').findIndex((name) => name.startsWith('chargeTemperature'));
    const hottest = Math.max(...rows.map((row) => Number(row.split(',')[column])));
    expect(hottest.toFixed(1)).toBe('66.8');
  });
});

describe('long runs', () => {
  it('can be cancelled, says what is known, and can be finished', async ({ firstVisit }) => {
    const page = await firstVisit();
    // Once its first pull is over: what is known then is said below.
    const cancelling = clickOnceThere(page, '.answer', 'Cancel', /of \d+ so far/);
    await openFile(page, longDocument(200));
    await cancelling;
    await page.getByRole('button', { name: 'Finish the run' }).waitFor();
    expect(await answer(page)).toMatch(/of \d+ solved/);
    expect(await answer(page)).toMatch(/Pull 1 is over the limit: the count stands\. Pulls \d+ to 200 are not known/);
    await page.getByRole('button', { name: 'Finish the run' }).click();
    await expect.poll(async () => answer(page), { timeout: 60_000 }).toContain('of 200 pulls');
  });
});

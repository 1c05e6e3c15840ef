import { readFileSync } from 'node:fs';
import type { Page } from 'playwright';
import { describe, expect } from 'vitest';
import { coreField } from '../../src/sim/results/field.ts';
import { simulate } from '../../src/sim/simulate.ts';
import { shippedConfig, shippedDocument } from '../support/shipped.ts';
import { longDocument } from '../support/short-session.ts';
import {
  afterSolved,
  answer,
  chooseFile,
  figures,
  focused,
  plain,
  reach as reachStop,
  type Stop,
  solved,
} from './acts.ts';
import { it } from './fixture.ts';

/** Goes by Tab to the stop whose name begins so, and looks for its ring. */
async function reach(page: Page, name: string): Promise<void> {
  expect((await reachStop(page, name)).hasRing, `ring at ${name}`).toBe(true);
}

async function press(page: Page, ...keys: string[]): Promise<void> {
  for (const key of keys) await page.keyboard.press(key);
}

const clock = (page: Page) => page.locator('.band-clock b').innerText();

describe('by keyboard alone', () => {
  it('a visitor comes from the first answer to another one', async ({ byKeys: page }) => {
    expect(await figures(page)).toEqual(['0']);
    await reach(page, 'Bigger core');
    await press(page, 'Enter');
    await expect.poll(() => figures(page)).toEqual(['0', '8']);
  });

  it('every stop has a name and a ring to be seen', async ({ byKeys: page }) => {
    const first = await focusedAfterTab(page);
    const stops = [first];
    for (let k = 0; k < 200; k++) {
      const stop = await focusedAfterTab(page);
      if (stop === undefined || stop.name === first?.name) break;
      stops.push(stop);
    }
    expect(stops.length).toBeGreaterThan(30);
    expect(stops.filter((stop) => stop === undefined || stop.name === '' || !stop.hasRing)).toEqual([]);
  });

  it('a value is typed, undone, done again, and still there after a reload, with the way back', async ({
    byKeys: page,
  }) => {
    await reach(page, 'Core air conductance');
    await press(page, 'Control+a');
    await page.keyboard.type('585');
    await press(page, 'Tab');
    await afterSolved(page);
    await press(page, 'Control+z');
    await expect.poll(() => figures(page)).toHaveLength(1);
    await press(page, 'Control+y');
    await expect.poll(() => figures(page)).toHaveLength(2);
    // There is one step: the button that goes it hands the focus to the other.
    await page.getByRole('button', { name: 'Undo' }).focus();
    await press(page, 'Enter');
    await expect.poll(async () => (await focused(page))?.name).toMatch(/^Redo: /);
    await press(page, 'Enter');
    await expect.poll(async () => (await focused(page))?.name).toMatch(/^Undo: /);
    await solved(page);
    const said = await answer(page);
    await page.reload();
    await expect.poll(() => answer(page)).toContain(said.slice(said.indexOf('After:'), said.indexOf('After:') + 20));
    expect(await page.getByRole('textbox', { name: 'Core air conductance' }).inputValue()).toBe('585');
    await press(page, 'Control+z');
    await expect.poll(() => figures(page)).toHaveLength(1);
  });

  it('a button that goes away when it is pressed leaves the focus beside it', async ({ byKeys: page }) => {
    const box = page.getByRole('textbox', { name: 'Core air conductance' });
    const pressed = async (name: RegExp) => {
      await page.getByRole('button', { name }).focus();
      await press(page, 'Enter');
    };
    const stop = async () => (await focused(page))?.name;
    await box.fill('585');
    await press(page, 'Tab');
    await pressed(/^Add these changes/);
    await expect.poll(stop).toBe('Name of the variant');
    await pressed(/^Leave it$/);
    await expect.poll(stop).toMatch(/^Variants/);
    await pressed(/^Put back/);
    await expect.poll(stop).toBe('Core air conductance');
  });

  it('a file is opened; a broken one says why and leads back to where one was', async ({ byKeys: page }) => {
    await reach(page, 'Open file');
    const broken = { ...shippedDocument('rolling-road-estate'), pump: { freeFlow: 'much' } };
    await chooseFile(page, 'broken.json', broken, () => page.keyboard.press('Enter'));
    const dialog = page.getByRole('dialog');
    await dialog.waitFor();
    expect(plain(await dialog.innerText())).toContain('pump.freeFlow');
    expect((await focused(page))?.hasRing).toBe(true);
    await press(page, 'Escape');
    await dialog.waitFor({ state: 'detached' });
    expect((await focused(page))?.name).toBe('Open file');
    expect(await figures(page)).toEqual(['0']);

    const other = { ...shippedDocument('ridge-roadster'), name: 'Another car' };
    await chooseFile(page, 'other.json', other, () => page.keyboard.press('Enter'));
    await expect.poll(async () => answer(page)).toContain('of 4 pulls');
    expect(await page.getByRole('combobox', { name: 'Scenario' }).inputValue()).toBe('Another car');
  });

  it('a long run is cancelled and taken up again', async ({ byKeys: page }) => {
    // Much for the worker and little for the page: keys lead to Cancel long before the run is over.
    const long = longDocument(100);
    Object.assign(long.exchanger, { cellsAlongAir: 150, cellsAlongCoolant: 150 });
    await reach(page, 'Open file');
    await chooseFile(page, 'long.json', long, () => page.keyboard.press('Enter'));
    await page.getByRole('button', { name: 'Cancel' }).waitFor();
    await reach(page, 'Cancel');
    await press(page, 'Enter');
    await page.getByRole('button', { name: 'Finish the run' }).waitFor();
    expect(await answer(page)).toMatch(/You cancelled at [\d:]+\. .* to 100 are not known\./);
    await reach(page, 'Finish the run');
    await press(page, 'Enter');
    await page.getByText('Solving: ').waitFor();
  });

  it('a unit is changed', async ({ byKeys: page }) => {
    await reach(page, 'Units');
    await press(page, 'ArrowDown');
    await expect.poll(async () => answer(page)).toContain('136.4 °F');
  });

  it('the run is played, stopped, scrubbed and jumped through', async ({ byKeys: page }) => {
    // Pull 1 ends after 300 s of warm-up and 12 s of pull; a rest of 90 s and a pull of 12 s lead to the next end.
    expect(await clock(page)).toBe('5:12.0');
    await press(page, 'Space');
    await expect.poll(() => clock(page)).not.toBe('5:12.0');
    await press(page, 'Space');
    const stopped = await clock(page);
    await page.waitForTimeout(400);
    expect(await clock(page)).toBe(stopped);

    await reach(page, 'Time of the run');
    await press(page, 'Home');
    expect(await clock(page)).toBe('0:00.0');
    await press(page, 'PageDown');
    expect(await clock(page)).toBe('5:12.0');
    await press(page, 'ArrowRight');
    expect(await clock(page)).toBe('5:12.1');
    await press(page, 'Shift+ArrowRight');
    expect(await clock(page)).toBe('5:13.1');
    await press(page, 'PageUp', 'PageDown');
    expect(await clock(page)).toBe('6:54.0');
    await press(page, 'End');
    expect(await clock(page)).toBe('18:36.0');
    await reach(page, 'Previous pull');
    await press(page, 'Enter');
    // The last pull ends 90 s before the end of the run.
    expect(await clock(page)).toBe('17:06.0');
  });

  it('a cell of the core is read, and it is the number of the run', async ({ byKeys: page }) => {
    const series = simulate(shippedConfig('rolling-road-estate'), { fields: true });
    const endOfPull = series.phases.find(({ kind }) => kind === 'pull')?.lastRow ?? Number.NaN;
    if (series.core === undefined) throw new Error('nothing recorded');
    const metal = coreField(series.core, 'metal');
    await reach(page, 'Cells of the core');
    for (const keys of [['Home', 'PageDown'], ['End'], ['PageUp'], ['ArrowLeft', 'ArrowDown', 'ArrowDown']]) {
      await press(page, ...keys);
      const said = plain(await page.locator('.picture [role="status"]').last().textContent());
      const [, i, nx, j, ny, value] =
        /along the air (\d+) of (\d+), along the coolant (\d+) of (\d+): metal ([\d.]+) °C/.exec(said) ?? [];
      expect([Number(nx), Number(ny)]).toEqual([series.core.nx, series.core.ny]);
      expect(value).toBe((metal.get(endOfPull, Number(i) - 1, Number(j) - 1) - 273.15).toFixed(1));
    }
  });

  it('the car is saved, and its table and picture are exported', async ({ byKeys: page }) => {
    await reach(page, 'Save file');
    const saved = page.waitForEvent('download');
    await press(page, 'Enter');
    expect(JSON.parse(readFileSync(await (await saved).path(), 'utf8'))).toEqual(
      shippedDocument('rolling-road-estate'),
    );
    await reach(page, 'Export');
    await press(page, 'Enter');
    await reach(page, 'stock car');
    const table = page.waitForEvent('download');
    await press(page, 'Enter');
    expect((await table).suggestedFilename()).toBe('rolling-road-estate-stock-car.csv');
    await reach(page, 'Core and loop');
    const picture = page.waitForEvent('download');
    await press(page, 'Enter');
    expect((await picture).suggestedFilename()).toBe('rolling-road-estate-core-and-loop.png');
    await press(page, 'Escape');
    expect((await focused(page))?.name).toBe('Export');
  });
});

async function focusedAfterTab(page: Page): Promise<Stop | undefined> {
  await page.keyboard.press('Tab');
  return focused(page);
}

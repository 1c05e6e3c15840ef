import type { Page } from 'playwright';
import { describe, expect } from 'vitest';
import { explainRoutes } from '../../src/sim/answers/route-sentence.ts';
import { studyRoutes } from '../../src/sim/answers/route-turns.ts';
import { conduct } from '../../src/sim/answers/study.ts';
import { shippedConfig, shippedDocument } from '../support/shipped.ts';
import { afterSolved, cells, openFile, pageWidth, plain, SCREENS, solved, texts, undo, violations } from './acts.ts';
import type { VisitorOptions } from './browser.ts';
import { it as onPage } from './fixture.ts';

const it = onPage
  /** the wagon whose bypass the routes are of, solved */
  .extend('wagon', ({ firstVisit }) => async (options?: VisitorOptions): Promise<Page> => {
    const page = await firstVisit(options);
    await openFile(page, shippedDocument('motorway-wagon'));
    await solved(page);
    return page;
  });

const openRoutes = async (page: Page) => {
  await page.locator('.routes-open:visible').click();
  await page.locator('.routes-body').waitFor();
};
const routesText = async (page: Page) => plain(await page.getByRole('region', { name: /^Bypass routes/ }).innerText());

const celsius = (kelvin: number) => `${(kelvin - 273.15).toFixed(1)} °C`;
const watts = (power: number) => `${power.toFixed(0)} W`;
const signed = (text: string) => (text.startsWith('-') ? `−${text.slice(1)}` : `+${text}`);

describe('bypass routes', () => {
  const { comparison, turns } = conduct(studyRoutes(shippedConfig('motorway-wagon')));
  if (comparison === undefined) throw new Error('no comparison');

  it('are the numbers and sentences of the library, digit for digit', async ({ wagon }) => {
    const page = await wagon();
    await openRoutes(page);
    const { before, after } = comparison;
    const kelvins = (change: number) => signed(`${change.toFixed(1)} K`);
    expect(await cells(page.locator('.routes-compared tbody tr'))).toEqual([
      ...(
        [
          ['Compressor inlet', 'compressorInlet'],
          ['Discharge', 'discharge'],
          ['Casing', 'casing'],
          ['Core outlet', 'coreOutlet'],
          ['Charge', 'charge'],
        ] as const
      ).map(([name, key]) => [name, celsius(before[key]), celsius(after[key]), kelvins(after[key] - before[key])]),
      ['Recirculated over engine air, r', before.recirculation.toFixed(2), after.recirculation.toFixed(2), '0.00'],
      ...(
        [
          ['Power into the gas', 'gasPower'],
          ['Heat into the core', 'heatToCore'],
        ] as const
      ).map(([name, key]) => [name, watts(before[key]), watts(after[key]), signed(watts(after[key] - before[key]))]),
      [
        'Coolant into the core',
        celsius(before.coolantIntoCore),
        celsius(after.coolantIntoCore),
        kelvins(after.coolantIntoCore - before.coolantIntoCore),
      ],
      [
        'Peak of the pull that follows',
        celsius(before.pullPeak ?? 0),
        celsius(after.pullPeak ?? 0),
        kelvins((after.pullPeak ?? 0) - (before.pullPeak ?? 0)),
      ],
    ]);
    const wording = { difference: (kelvin: number) => `${kelvin.toFixed(1)} K`, power: watts };
    const sentences = await texts(page.locator('.routes-words p'));
    expect(sentences).toEqual(explainRoutes(comparison, wording));

    const tables = page.locator('.turns table');
    expect(await tables.count()).toBe(turns.length);
    for (const [k, { points, turns: at, kind }] of turns.entries()) {
      const changes = await texts(tables.nth(k).locator('.change'));
      expect(changes).toEqual(points.map(({ change }) => signed(`${change.charge.toFixed(2)} K`)));
      const words = plain(await tables.nth(k).innerText());
      for (const value of at) expect(words).toContain(`${kind === 'factor' ? '×' : ''}${value.toFixed(2)}`);
    }
  });

  it('make the other route After in one step, and keep up with the car', async ({ wagon }) => {
    const page = await wagon();
    await openRoutes(page);
    await page.getByRole('button', { name: 'Take air behind the core' }).click();
    await page.getByRole('heading', { name: 'Bypass routes: After, air behind the core' }).waitFor();
    await page.getByRole('button', { name: 'Take air before the core' }).waitFor();
    expect(await undo(page).innerText()).toContain('air behind the core');
    await undo(page).click();
    await page.getByRole('heading', { name: 'Bypass routes: stock car' }).waitFor();
    expect(await page.locator('.answer .after').count()).toBe(0);
  });

  it('are opened, cancelled, asked again and closed by keys, and give the focus back', async ({ wagon }) => {
    const page = await wagon();
    await page.locator('.routes-open:visible').focus();
    await page.keyboard.press('Enter');
    const panel = page.getByRole('region', { name: /^Bypass routes/ });
    await panel.getByRole('button', { name: 'Cancel' }).focus();
    await page.keyboard.press('Enter');
    await panel.getByText('Cancelled.').waitFor();
    await panel.getByRole('button', { name: 'Work it out' }).focus();
    await page.keyboard.press('Enter');
    await page.locator('.routes-body').waitFor();
    await panel.getByRole('button', { name: 'Take air behind the core' }).focus();
    await page.keyboard.press('Escape');
    expect(await panel.count()).toBe(0);
    expect(plain(await page.evaluate(() => document.activeElement?.textContent ?? ''))).toContain('Bypass routes');
  });

  it('say in one line that there is nothing to compare without part load', async ({ firstVisit }) => {
    const page = await firstVisit();
    const { variants: _, upgrades: __, ...wagonOnly } = shippedDocument('motorway-wagon');
    const pullOnly = (shippedDocument('motorway-wagon').cycle as { kind: string }[]).filter(
      ({ kind }) => kind === 'pull',
    );
    await openFile(page, { ...wagonOnly, name: 'Pulls only', cycle: pullOnly });
    await solved(page);
    await page.locator('.routes-open:visible').click();
    await page.locator('.routes-none').waitFor();
    expect(await routesText(page)).toContain('Nothing to compare: no part-load phase of this run came to its end.');
  });
});

describe.each(['light', 'dark'] as const)('bypass routes in the %s theme', (colorScheme) => {
  it.for(SCREENS)(
    'axe finds nothing at %i x %i, and nothing reaches over the edge',
    async ([width, height], { wagon }) => {
      const page = await wagon({ viewport: { width, height }, colorScheme });
      await openRoutes(page);
      expect(await violations(page)).toEqual([]);
      expect(await pageWidth(page)).toBeLessThanOrEqual(width);
      const over = await page
        .locator('.routes :is(table, p, button)')
        .evaluateAll(
          (parts, right) =>
            parts.filter((part) => part.getBoundingClientRect().right > right + 0.5).map(({ outerHTML }) => outerHTML),
          width,
        );
      expect(over).toEqual([]);
    },
  );
});

describe('the air path of the form', () => {
  it('takes another kind of compressor with the proposed values, and goes back in one step', async ({ wagon }) => {
    const page = await wagon();
    const inputs = page.getByRole('complementary', { name: 'Inputs' });
    await inputs.locator('summary.line', { hasText: 'Compressor' }).click();
    const kind = page.getByRole('combobox', { name: 'Compressor kind' });
    await kind.selectOption('centrifugal');
    await page.getByText('Outlet pressure of the known boost is missing.').waitFor();
    expect(await violations(page)).toEqual([]);
    expect(await page.locator('.answer .after').count()).toBe(0);
    await page.getByRole('button', { name: 'Use all of these' }).click();
    await afterSolved(page);
    await page.getByRole('textbox', { name: 'Outlet pressure of the known boost' }).waitFor();
    expect(await page.getByRole('textbox', { name: 'Swept volume' }).count()).toBe(0);
    // The quoted point, 1.65 times 101.325 kPa from 25 °C: (1.6481^(2/7) - 1) 298.15 K with 167 kPa is 45.8 K.
    expect(plain(await inputs.innerText())).toContain('Head at 9 300 rpm 45.8 K');
    await undo(page).click();
    await page.getByRole('textbox', { name: 'Swept volume' }).waitFor();
    expect(await kind.inputValue()).toBe('displacement');
    expect(await page.getByRole('textbox', { name: 'Swept volume' }).inputValue()).toBe('1.32');
  });

  it('has a table of spark and torque whose rows tell at each pull', async ({ wagon }) => {
    const page = await wagon();
    const inputs = page.getByRole('complementary', { name: 'Inputs' });
    await inputs.locator('summary.line', { hasText: 'Pulls' }).click();
    await page.getByText(/^Your table of spark and torque/).click();
    await inputs.getByText('It changes no spark and no fuel').waitFor();
    await page.getByRole('button', { name: /^Start a table/ }).click();
    const rows = page.getByRole('list', { name: 'Rows of the table of spark and torque' }).getByRole('listitem');
    expect(await rows.count()).toBe(2);
    await rows.nth(1).getByRole('textbox', { name: 'Change of spark advance' }).fill('-4');
    await page.keyboard.press('Tab');
    await page.getByRole('region', { name: 'Pulls and time' }).getByRole('button', { name: 'Table' }).click();
    // From 0 at 67 °C to -4 deg at 87 °C the peak of 72.0 °C takes -1.0 deg off.
    await expect
      .poll(async () => plain(await page.getByRole('region', { name: 'Pulls and time' }).innerText()))
      .toContain('−1.0 0.0');
    await rows.nth(0).getByRole('button', { name: 'Add a row beside it' }).click();
    await expect.poll(() => rows.count()).toBe(3);
    await rows.nth(1).getByRole('button', { name: 'Remove this row' }).click();
    await expect.poll(() => rows.count()).toBe(2);
    expect(await violations(page)).toEqual([]);
  });
});

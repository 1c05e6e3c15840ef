import type { Page } from 'playwright';
import { openVisit, solved } from './browser.ts';

/**
 * The pictures of the README, taken from the built page with the first demo car: `npm run pictures`. Writes into
 * scenarios/pictures; needs `npm run build` first.
 */
const FOLDER = new URL('../../scenarios/pictures/', import.meta.url).pathname;
/** Long enough for what moves to have come to rest [ms]. */
const AT_REST = 1500;

const visit = await openVisit();
const { page } = await visit.visitor({ viewport: { width: 1280, height: 860 }, colorScheme: 'light' });

async function take(name: string, place?: string): Promise<void> {
  await page.waitForTimeout(AT_REST);
  const path = `${FOLDER}${name}.png`;
  if (place === undefined) await page.screenshot({ path });
  else await page.locator(place).screenshot({ path });
}

async function open(name: string): Promise<void> {
  await page.getByRole('button', { name, exact: true }).first().click();
}

async function tryVariant(named: Page): Promise<void> {
  await named.locator('.variants select').first().selectOption('bigger core');
  await solved(named);
}

await page.goto(visit.address);
await solved(page);
await take('1-run');

await open('More answers');
await page.getByRole('radio', { name: 'Upgrades' }).check();
await page.getByRole('button', { name: 'Work it out' }).click();
await page.locator('.question-answer table').first().waitFor({ timeout: 120_000 });
await take('2-upgrades', '.fold-out.questions');
await open('Close');

await open('Coolant loop');
await take('3-loop', '.fold-out.loop');
await open('Close');

await tryVariant(page);
await take('4-bigger-core');

await page.goto(`${visit.address}#letter`);
await page.locator('.letter').first().waitFor();
await page.setViewportSize({ width: 1000, height: 1250 });
await take('5-letter');

await visit.close();

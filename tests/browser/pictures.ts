import { atRest, openQuestion, tryVariant, workOut } from './acts.ts';
import { openVisit } from './browser.ts';

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

await page.goto('/');
await atRest(page);
await take('1-run');

await openQuestion(page, 'Upgrades');
await workOut(page);
await take('2-upgrades', '.fold-out.questions');
await open('Close');

await open('Coolant loop');
await take('3-loop', '.fold-out.loop');
await open('Close');

await tryVariant(page, 'bigger core');
await atRest(page);
await take('4-bigger-core');

await page.goto('/#letter');
await page.locator('.letter').first().waitFor();
await page.setViewportSize({ width: 1000, height: 1250 });
await take('5-letter');

await visit.close();

import type { Page } from 'playwright';
import { describe, expect } from 'vitest';
import { ESTIMATE_CAUTION, findings, parseScenario, toConfig } from '../../src/sim/index.ts';
import { simulate } from '../../src/sim/simulate.ts';
import { onScreen, wordingIn } from '../../src/viewer/format.ts';
import { METRIC } from '../../src/viewer/state/display.ts';
import { shippedDocument } from '../support/shipped.ts';
import { openFile, pageWidth, plain, texts, violations } from './acts.ts';
import { it } from './fixture.ts';

/** The saloon with a narrow air port and a pump that rests in the lanes: more to tell than there is room for. */
function saloon() {
  const document = structuredClone(shippedDocument('quarter-mile-saloon')) as unknown as {
    name: string;
    core: object;
    cycle: [unknown, { phases: [unknown, object] }];
    variants?: unknown;
    upgrades?: unknown;
  };
  Object.assign(document.core, { airPortArea: 20 });
  Object.assign(document.cycle[1].phases[1], { pump: 'off' });
  delete document.variants;
  delete document.upgrades;
  return document;
}

/** What the library says of that car, as the page writes it. */
function expected(): string[] {
  const { scenario } = parseScenario(JSON.stringify(saloon()));
  if (scenario === undefined) throw new Error('no scenario');
  const config = toConfig(scenario);
  return findings(config, simulate(config), wordingIn(METRIC)).map(
    ({ rank, text }) => `${rank} ${plain(onScreen(text))}`,
  );
}

async function open(page: Page): Promise<void> {
  await page.goto('/');
  await page.locator('.findings').waitFor();
  await openFile(page, saloon());
  await page.locator('.findings details').waitFor();
}

const rows = async (page: Page, place: string): Promise<string[]> =>
  (await texts(page.locator(`.findings ${place} li`))).map((text) =>
    text.replace(/^\w+/, (rank) => rank.toLowerCase()),
  );

describe.each([
  [1440, 900, 'light'],
  [1440, 900, 'dark'],
  [390, 844, 'light'],
  [390, 844, 'dark'],
] as const)('what a run tells besides its answer, at %i x %i, %s', (width, height, colorScheme) => {
  it('is three rows on the screen, gravest first, and the rest behind a fold', async ({ newPage }) => {
    const all = expected();
    expect(all.length).toBeGreaterThanOrEqual(5);
    const page = await newPage({ viewport: { width, height }, colorScheme });
    await open(page);
    const region = page.getByRole('region', { name: 'Also in this run' });
    expect(plain(await region.innerText())).toContain(ESTIMATE_CAUTION);
    expect(await rows(page, 'div > ul')).toEqual(all.slice(0, 3));
    const seen = await page.locator('.findings div > ul').boundingBox();
    expect((seen?.y ?? height) + (seen?.height ?? height)).toBeLessThanOrEqual(height);
    const fold = page.getByText(`${all.length - 3} more`);
    expect(await page.locator('.findings details li').first().isVisible()).toBe(false);
    await fold.focus();
    await page.keyboard.press('Enter');
    expect(await page.locator('.findings details li').first().isVisible()).toBe(true);
    expect(await rows(page, 'details')).toEqual(all.slice(3));
    expect(await pageWidth(page)).toBe(width);
    expect(await violations(page)).toEqual([]);
  });
});

describe('cautions', () => {
  it.for([
    [
      'Tank and coolant',
      [
        'This mix begins to freeze at',
        'the coldest here is 2.0 °C',
        'ban glycol',
        'Never open the cap hot',
        'weakest part',
        'under driven wheels',
        'wiring',
        'drain the melt before the car moves',
        'splits the core',
      ],
    ],
    ['Core', ['risk of hydraulic lock', 'Stop when the level drops', 'rating on the air side and on the coolant side']],
    ['Pump', ['8 to 25 A', 'own relay, fuse and earth', 'local code']],
    ['Pulls', ['restraints', 'CO alarm', 'closed course only', 'local rules']],
  ])('stand where the part is chosen: %s', async ([part, words], { newPage }) => {
    const page = await newPage();
    await open(page);
    const details = page.locator('details.part', { has: page.locator('summary', { hasText: new RegExp(`${part}`) }) });
    const isOpen = await details.first().evaluate((element) => (element as HTMLDetailsElement).open);
    if (!isOpen) await details.first().locator('summary').first().click();
    const cautions = details.first().locator('.caution');
    await cautions.first().waitFor();
    const said = plain((await cautions.allInnerTexts()).join(' '));
    for (const word of words) expect(said).toContain(word);
  });
});

import { AxeBuilder } from '@axe-core/playwright';
import type { Locator, Page } from 'playwright';

/** What visitors look with, what they do on the page, what they wait for and what they read. */

/** Width and height of a desktop, a tablet and a phone [px]. */
export const SCREENS = [
  [1440, 900],
  [1024, 768],
  [390, 844],
] as const;

/** A text as it is read: spaces of all kinds alike. */
export const plain = (text: string | null): string =>
  (text ?? '').replaceAll('\u00a0', ' ').replace(/\s+/g, ' ').trim();

/** The texts of all that a locator finds, as they are read. */
export const texts = async (all: Locator): Promise<string[]> => (await all.allInnerTexts()).map(plain);

/** The same of rows of a table, cell by cell. */
export const cells = async (rows: Locator): Promise<string[][]> =>
  (await rows.allInnerTexts()).map((row) => row.split('\t').map(plain));

/** The large figures of the answer, Before first. */
export const figures = (page: Page): Promise<string[]> => page.locator('.answer .figure').allTextContents();

/** The answer in words. */
export const answer = async (page: Page): Promise<string> =>
  plain(await page.getByRole('region', { name: 'Answer', exact: true }).innerText());

/** What axe finds wrong on the page, or in a part of it. */
export async function violations(page: Page, within?: string): Promise<string[]> {
  const axe = new AxeBuilder({ page });
  if (within !== undefined) axe.include(within);
  return (await axe.analyze()).violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`);
}

/** How wide the page is, with what reaches over its edge [px]. */
export const pageWidth = (page: Page): Promise<number> => page.evaluate(() => document.documentElement.scrollWidth);

/** The button that takes back the last step. */
export const undo = (page: Page): Locator => page.getByRole('button', { name: /^Undo/ });

/** Waits until the car in hand is solved and its causes, not those of Before, are worked out. */
export async function solved(page: Page): Promise<void> {
  await page.locator('.causes:not(:has(.late)) ol li').first().waitFor({ state: 'attached' });
  await page.locator('.answer .figure').first().waitFor();
}

/** The same where a change makes After: waits for it first. */
export async function afterSolved(page: Page): Promise<void> {
  await page.locator('.answer .after .figure').waitFor();
  await solved(page);
}

/** Waits until the picture is drawn, with the graphics card or flat, and no further frame has been asked for. */
export async function drawn(page: Page, drawing: 'solid' | 'flat' = 'solid'): Promise<void> {
  await page.locator(`.picture canvas[data-drawing="${drawing}"]`).waitFor();
  await page.locator('.picture canvas').evaluate(async (canvas) => {
    for (let quiet = 0; quiet < 3; ) {
      const before = canvas.dataset.frames;
      await new Promise((resolve) => requestAnimationFrame(resolve));
      quiet = canvas.dataset.frames === before ? quiet + 1 : 0;
    }
  });
}

/** A car of the answer whose hottest day, the last that is worked out without being asked for, does not stand there yet. */
const WITHOUT_DAY = '.answer .car:not(:has(.hot-day:not(:empty), .tag > span:last-child:not(:empty)))';

/** Waits until nothing more comes by itself: all is worked out, and drawn. */
export async function atRest(page: Page, drawing: 'solid' | 'flat' = 'solid'): Promise<void> {
  await solved(page);
  await page.locator(WITHOUT_DAY).first().waitFor({ state: 'detached' });
  await drawn(page, drawing);
}

/** Opens the menu that holds the acts of the bar on a phone; elsewhere they stand there. */
export async function openMenu(page: Page): Promise<void> {
  const menu = page.getByRole('button', { name: 'Menu' });
  if (await menu.isVisible()) await menu.click();
}

/** Opens the inputs on a phone, where a button does; elsewhere they stand there. */
export async function openInputs(page: Page): Promise<void> {
  const change = page.getByRole('button', { name: 'Change a part' });
  if (await change.isVisible()) await change.click();
}

/** A stop of the Tab key: what it is called, and whether a ring is to be seen at it or at what stands for it. */
export interface Stop {
  readonly name: string;
  readonly hasRing: boolean;
}

/** What has the focus; undefined where nothing has. */
export function focused(page: Page): Promise<Stop | undefined> {
  return page.evaluate(() => {
    const element = document.activeElement;
    if (!(element instanceof HTMLElement) || element === document.body) return undefined;
    const labels = element instanceof HTMLInputElement || element instanceof HTMLSelectElement ? element.labels : null;
    const name = element.getAttribute('aria-label') ?? labels?.[0]?.textContent ?? element.textContent ?? '';
    const standIns = [element, element.nextElementSibling, element.closest('.box')];
    const hasRing = standIns.some((each) => {
      if (each === null) return false;
      const { outlineStyle, outlineWidth } = getComputedStyle(each);
      const { width, height } = each.getBoundingClientRect();
      return outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2 && width > 1 && height > 1;
    });
    return { name: name.replace(/\s+/g, ' ').trim(), hasRing };
  });
}

/** Goes by Tab to the stop whose name begins so. */
export async function reach(page: Page, name: string): Promise<Stop> {
  for (let k = 0; k < 150; k++) {
    await page.keyboard.press('Tab');
    const stop = await focused(page);
    if (stop?.name.startsWith(name)) return stop;
  }
  throw new Error(`no tab stop ${name}`);
}

/** Gives the page's file chooser a scenario, once `open` has asked for it. */
export async function chooseFile(page: Page, name: string, content: unknown, open: () => Promise<void>): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await open();
  await (await chooser).setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(content)) });
}

/** Opens a file beside the car on the page and waits until it is the car in hand, whose run may be under way. */
export async function openFile(page: Page, document: Readonly<Record<string, unknown>>): Promise<void> {
  await openMenu(page);
  await chooseFile(page, 'car.json', document, () => page.getByRole('button', { name: /^Open( file)?$/ }).click());
  // A file is read in its own time; until then everything on the page is of the car before.
  await undo(page)
    .and(page.getByTitle(`open ${document.name}`, { exact: true }))
    .waitFor();
}

/** Opens a demo car and waits until it is solved. */
export async function openDemo(page: Page, name: string): Promise<void> {
  await openMenu(page);
  await page.getByRole('combobox', { name: 'Scenario' }).selectOption(name);
  await solved(page);
}

/** Makes After a variant that the file lists, and waits until it is solved. */
export async function tryVariant(page: Page, name: string): Promise<void> {
  await page.getByRole('combobox', { name: 'Variants of the file' }).selectOption(name);
  await afterSolved(page);
}

/** Goes to one of the questions that take many runs. */
export async function openQuestion(page: Page, name: string): Promise<void> {
  if (!(await page.locator('.question-choice').isVisible())) await page.locator('.questions-open:visible').click();
  await page.getByRole('radio', { name, exact: true }).check();
}

/** Has the open question worked out and waits for the answer, not the one before. */
export async function workOut(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Work it out' }).click();
  await page.locator('.question-ask > [role=status]', { hasText: /^Done\.$/ }).waitFor();
}

/**
 * Clicks a button of this text in the very frame in which it comes, or in which such words stand beside it: work that
 * is short is over before a click from outside, and a button beside words that change never holds still for one.
 */
export const clickOnceThere = (page: Page, within: string, text: string, beside = /(?:)/): Promise<void> =>
  page.evaluate(
    ([place, wanted, words]) =>
      new Promise<void>((resolve) => {
        const look = () => {
          const part = document.querySelector(place);
          const button = [...(part?.querySelectorAll('button') ?? [])].find(
            ({ textContent }) => textContent === wanted,
          );
          if (button === undefined || !new RegExp(words).test(part?.textContent ?? '')) requestAnimationFrame(look);
          else {
            button.click();
            resolve();
          }
        };
        look();
      }),
    [within, text, beside.source],
  );

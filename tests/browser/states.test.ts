import type { Page } from 'playwright';
import { describe, expect } from 'vitest';
import { shippedDocument } from '../support/shipped.ts';
import { longDocument } from '../support/short-session.ts';
import {
  answer,
  atRest,
  clickOnceThere,
  drawn,
  figures,
  openFile,
  openInputs,
  pageWidth,
  SCREENS,
  tryVariant,
} from './acts.ts';
import { it } from './fixture.ts';

type Document = ReturnType<typeof shippedDocument>;

/** The default car so hot and with so little flow that its coolant boils: invented, and no car that anyone would build. */
function boiling(repeat: number): Document {
  const document = structuredClone(shippedDocument('rolling-road-estate')) as unknown as {
    [part: string]: { [key: string]: unknown };
  } & { cycle: [unknown, { repeat: number; phases: { duration: unknown }[] }] };
  document.ambient.temperature = 48;
  document.limit.chargeTemperature = 120;
  Object.assign(document.pump, { shutOffPressure: 0.5, freeFlow: 0.5 });
  document.reservoir.coolantVolume = 0.3;
  Object.assign(document.exchanger, { faceArea: 0.02, airConductance: 15 });
  document.cycle[1].repeat = repeat;
  document.cycle[1].phases[1].duration = 10;
  return { ...document, variants: [] } as unknown as Document;
}

/** Makes After a variant; on a phone the choice is behind a button, and its sheet over the answer. */
async function compare(page: Page, variant: string): Promise<void> {
  await openInputs(page);
  await tryVariant(page, variant);
  await atRest(page);
  const close = page.getByRole('button', { name: 'Close' });
  if (await close.isVisible()) await close.click();
}

const STATES: Readonly<Record<string, (page: Page) => Promise<void>>> = {
  'the first answer': atRest,
  'Before and After': (page) => compare(page, 'bigger core'),
  'no effect': (page) => compare(page, 'stock + 10 L tank only'),
  'a run that stopped': async (page) => {
    await openFile(page, boiling(40));
    await expect.poll(() => answer(page)).toContain('No answer: the run stopped');
  },
  'a run cancelled half way': async (page) => {
    const cancelling = clickOnceThere(page, '.answer', 'Cancel', /of \d+ so far/);
    await openFile(page, longDocument(400));
    await cancelling;
    await page.getByRole('button', { name: 'Finish the run' }).waitFor();
  },
};

/** Words that stand outside what holds them: their box in the answer, or in the picture. */
function cutOff(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const found: string[] = [];
    const range = document.createRange();
    const placeOf = (element: Element) => {
      range.selectNodeContents(element);
      return range.getBoundingClientRect();
    };
    const isSpoken = (element: Element) => element.closest('.spoken') !== null;
    for (const part of document.querySelectorAll('.answer > section')) {
      const box = part.getBoundingClientRect();
      if (box.height === 0) continue;
      const walker = document.createTreeWalker(part, NodeFilter.SHOW_TEXT);
      for (let text = walker.nextNode(); text !== null; text = walker.nextNode()) {
        const owner = text.parentElement;
        if (owner === null || isSpoken(owner) || getComputedStyle(owner).clipPath !== 'none') continue;
        range.selectNodeContents(text);
        const { bottom, right, width } = range.getBoundingClientRect();
        // A name that is too long ends in dots, and stands whole elsewhere.
        const hasDots = getComputedStyle(owner).textOverflow === 'ellipsis';
        if (width > 0 && (bottom > box.bottom + 0.5 || (right > box.right + 0.5 && !hasDots)))
          found.push(`answer: ${text.textContent}`);
      }
    }
    const nodes = [...document.querySelectorAll('.picture-node')];
    for (const node of nodes) {
      const box = node.getBoundingClientRect();
      // At the left of a box stands the stripe of its temperature, at the right its line.
      const from = box.left + Number.parseFloat(getComputedStyle(node).paddingLeft);
      for (const each of node.querySelectorAll('span, b')) {
        const { left, right, bottom } = placeOf(each);
        if (left < from || right > box.right - 2 || bottom > box.bottom) found.push(`box: ${each.textContent}`);
      }
    }
    for (const label of document.querySelectorAll('.picture-label')) {
      const room = label.getBoundingClientRect();
      const isOut = [...label.querySelectorAll('b')].some((each) => placeOf(each).bottom > room.bottom + 0.5);
      if (isOut) found.push(`label: ${label.textContent}`);
    }
    const words = [...document.querySelectorAll('.picture-label > *, .picture-title')].filter(
      (each) => !isSpoken(each),
    );
    const solid = [...nodes, ...words];
    for (const each of words) {
      const one = each.classList.contains('picture-title') ? each.getBoundingClientRect() : placeOf(each);
      for (const other of solid) {
        if (other === each || other.parentElement === each.parentElement) continue;
        const two = other.classList.contains('picture-node') ? other.getBoundingClientRect() : placeOf(other);
        const isOver = one.left < two.right && two.left < one.right && one.top < two.bottom && two.top < one.bottom;
        if (isOver) found.push(`${each.textContent} over ${other.textContent}`);
      }
    }
    return found;
  });
}

describe.each(SCREENS)('at %i x %i', (width, height) => {
  it.for(Object.keys(STATES))('nothing is cut off or covered: %s', async (state, { firstVisit }) => {
    const page = await firstVisit({ viewport: { width, height } });
    await STATES[state](page);
    await drawn(page);
    expect(await cutOff(page)).toEqual([]);
  });
});

it('nothing of the first answer is cut off on a small tablet', async ({ firstVisit }) => {
  const page = await firstVisit({ viewport: { width: 880, height: 1000 } });
  await expect.poll(() => answer(page)).toContain('outside');
  await atRest(page);
  expect(await cutOff(page)).toEqual([]);
});

it('every trace of both cars has room on a phone', async ({ firstVisit }) => {
  const page = await firstVisit({ viewport: { width: 390, height: 844 } });
  await compare(page, 'bigger core');
  const traces = page.locator('.trace-choice');
  await traces.locator('summary').click();
  const boxes = await traces.getByRole('checkbox').all();
  for (const box of boxes) await box.check();
  await expect.poll(() => page.locator('.strip .uplot').count()).toBe(boxes.length);
  expect(await pageWidth(page)).toBe(390);
  const heights = await page.locator('.strip .plot').evaluateAll((plots) => plots.map((plot) => plot.clientHeight));
  expect(Math.min(...heights)).toBeGreaterThanOrEqual(30);
});

describe('what the page says', () => {
  it('where repeated pulls end in boiling: that the run stops, after how many, and why', async ({ firstVisit }) => {
    const page = await firstVisit();
    await openFile(page, boiling(8));
    await expect.poll(() => figures(page)).toEqual(['8']);
    await expect
      .poll(() => answer(page))
      .toMatch(/Repeated on, the run stops after \d+ pulls, the last at [\d.]+ °C: coolant boils in the core/);
    expect(await answer(page)).not.toContain('Not settled');
  });

  it('when nothing is open: no core, no axis, no time', async ({ firstVisit }) => {
    const page = await firstVisit();
    await drawn(page);
    await page.getByRole('button', { name: 'New', exact: true }).click();
    await drawn(page);
    const isDrawn = await page.evaluate(() => {
      const canvas = document.querySelector('.picture canvas') as HTMLCanvasElement;
      const data = canvas.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height).data ?? [];
      return data.some((value) => value !== 0);
    });
    expect(isDrawn).toBe(false);
    expect(await page.locator('.band-clock').innerText()).toBe('');
  });

  it('when the graphics card is lost: above the picture, over none of its numbers', async ({ firstVisit }) => {
    const page = await firstVisit();
    await drawn(page);
    await page.evaluate(() => {
      const canvas = document.querySelector('.picture canvas') as unknown as {
        soakbenchPicture: { loseContext(): void };
      };
      canvas.soakbenchPicture.loseContext();
    });
    const message = page.locator('.picture-message');
    await message.waitFor();
    const [above, area] = await Promise.all([message.boundingBox(), page.locator('.picture-area').boundingBox()]);
    expect((above?.y ?? 0) + (above?.height ?? 0)).toBeLessThanOrEqual(area?.y ?? 0);
  });
});

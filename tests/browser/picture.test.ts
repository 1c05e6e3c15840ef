import type { Page } from 'playwright';
import { describe, expect } from 'vitest';
import { coreField, type FieldName } from '../../src/sim/results/field.ts';
import { simulate } from '../../src/sim/simulate.ts';
import { inferno } from '../support/inferno.ts';
import { shippedConfig } from '../support/shipped.ts';
import { afterSolved, atRest, drawn } from './acts.ts';
import { it as onPage } from './fixture.ts';

/** What the canvas on show offers to checks; see the picture's own description of it. */
interface Hook {
  readonly drawing: 'flat' | 'solid';
  readonly frames: number;
  cellToPixel(car: 'before' | 'after', i: number, j: number): readonly [number, number];
  pixelAt(x: number, y: number): readonly number[];
  gpu(): { geometries: number; textures: number; programs: number } | undefined;
  loseContext(): void;
  restoreContext(): void;
}

const it = onPage
  /** the page of the default car, all worked out and drawn with the graphics card, or without one */
  .extend('withPicture', ({ newPage }) => async (drawing: 'flat' | 'solid'): Promise<Page> => {
    const page = await newPage();
    if (drawing === 'flat') await withoutWebGl(page);
    await page.goto('/');
    await atRest(page, drawing);
    expect(await ask(page, (hook) => hook.drawing)).toBe(drawing);
    return page;
  });

/** Asks the canvas on show. The function runs in the page and must stand alone. */
function ask<Result>(page: Page, question: (hook: Hook) => Result): Promise<Result> {
  return page.evaluate(
    `(${question})(document.querySelector('.picture canvas:not([hidden])').soakbenchPicture)`,
  ) as Promise<Result>;
}

/** Near the four corners, clear of the outline, and two between: a mirrored or turned picture has other colours. */
const CELLS = [
  [3, 2],
  [3, 21],
  [44, 2],
  [44, 21],
  [30, 4],
  [12, 20],
] as const;
/** The fixed scale of each choice, degC: what the page promises. */
const SCALE = { metal: [25, 75], coolant: [25, 75], air: [25, 125] } as const;
/** The scale has 256 colours, and a pixel is the middle of one. */
const WITHIN = 8;

const config = shippedConfig('rolling-road-estate');
const series = simulate(config, { fields: true });
const endOfPull = series.phases.find(({ kind }) => kind === 'pull')?.lastRow ?? Number.NaN;

function expectedColour(name: FieldName, i: number, j: number): number[] {
  if (series.core === undefined) throw new Error('nothing recorded');
  const temperature = coreField(series.core, name).get(endOfPull, i, j) - 273.15;
  const [low, high] = SCALE[name];
  return inferno((temperature - low) / (high - low));
}

describe.each(['solid', 'flat'] as const)('the %s picture', (drawing) => {
  it.for(['Metal', 'Coolant', 'Air'] as const)(
    'shows the colour of known cells by %s, in the right places',
    async (choice, { withPicture }) => {
      const page = await withPicture(drawing);
      await page.getByRole('radio', { name: 'Whole', exact: true }).check({ force: true });
      await page.getByRole('radio', { name: choice, exact: true }).check({ force: true });
      await drawn(page, drawing);
      const name = choice.toLowerCase() as FieldName;
      for (const [i, j] of CELLS) {
        const pixel = await page.evaluate(
          ([along, across]) => {
            const canvas = document.querySelector('.picture canvas:not([hidden])') as unknown as {
              soakbenchPicture: Hook;
            };
            const [x, y] = canvas.soakbenchPicture.cellToPixel('before', along, across);
            return [...canvas.soakbenchPicture.pixelAt(x, y)];
          },
          [i, j] as const,
        );
        const expected = expectedColour(name, i, j);
        for (const k of [0, 1, 2]) {
          expect(
            Math.abs(pixel[k] - expected[k]),
            `${choice} cell ${i}, ${j}: ${pixel} for ${expected}`,
          ).toBeLessThanOrEqual(WITHIN);
        }
      }
    },
  );
});

describe('drawing', () => {
  it('happens only when something has changed', async ({ withPicture }) => {
    const page = await withPicture('solid');
    const before = await ask(page, (hook) => hook.frames);
    await page.waitForTimeout(2000);
    expect(await ask(page, (hook) => hook.frames)).toBe(before);
    await page.getByRole('radio', { name: 'Air', exact: true }).check({ force: true });
    await expect.poll(() => ask(page, (hook) => hook.frames)).toBeGreaterThan(before);
  });

  it('leaves nothing on the graphics card after fifty other cores', async ({ withPicture }) => {
    const page = await withPicture('solid');
    const width = page.getByRole('slider', { name: 'Width of the core, slider' });
    // Each is drawn before the next one comes.
    const set = (value: number) =>
      width.evaluate(async (input, wanted) => {
        const canvas = document.querySelector('.picture canvas') as HTMLCanvasElement;
        const { frames } = canvas.dataset;
        (input as HTMLInputElement).value = String(wanted);
        input.dispatchEvent(new Event('input', { bubbles: true }));
        input.dispatchEvent(new Event('change', { bubbles: true }));
        while (canvas.dataset.frames === frames) await new Promise((resolve) => requestAnimationFrame(resolve));
      }, value);
    await set(1.3);
    await afterSolved(page);
    await atRest(page);
    const before = await ask(page, (hook) => hook.gpu());
    for (let k = 0; k < 50; k++) await set(1.1 + 0.015 * k);
    await atRest(page);
    expect(await ask(page, (hook) => hook.gpu())).toEqual(before);
  });

  it('goes on flat when the graphics card is lost, with the same numbers, and comes back', async ({ withPicture }) => {
    const page = await withPicture('solid');
    const numbers = () => page.getByRole('region', { name: 'Parts of the loop' }).innerText();
    const before = await numbers();
    await ask(page, (hook) => hook.loseContext());
    await expect.poll(() => ask(page, (hook) => hook.drawing)).toBe('flat');
    expect(await numbers()).toBe(before);
    await page.evaluate(() => {
      const canvases = [...document.querySelectorAll('.picture canvas')] as unknown as { soakbenchPicture: Hook }[];
      for (const { soakbenchPicture } of canvases.slice(0, 1)) soakbenchPicture.restoreContext();
    });
    await expect.poll(() => ask(page, (hook) => hook.drawing)).toBe('solid');
  });
});

async function withoutWebGl(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const real = HTMLCanvasElement.prototype.getContext;
    HTMLCanvasElement.prototype.getContext = function (this: HTMLCanvasElement, kind: string, ...rest: unknown[]) {
      return kind.startsWith('webgl') ? null : (real as (...all: unknown[]) => unknown).call(this, kind, ...rest);
    } as typeof real;
  });
}

import type { Page } from 'playwright';
import { describe, expect } from 'vitest';
import { coreField } from '../../src/sim/results/field.ts';
import { simulate } from '../../src/sim/simulate.ts';
import { inferno } from '../support/inferno.ts';
import { shippedConfig } from '../support/shipped.ts';
import { afterSolved, atRest } from './acts.ts';
import { it } from './fixture.ts';

/** A picture as it is handed out: its size, the words written into it, and a way to its pixels. */
interface Exported {
  readonly width: number;
  readonly height: number;
  readonly words: readonly string[];
  pixelAt(x: number, y: number): Promise<number[]>;
}

/** Exports a picture, catches the PNG on its way to the downloads and reads it back in the page. */
async function exported(page: Page, name: string): Promise<Exported> {
  await page.getByRole('button', { name: 'Export' }).click();
  await page.evaluate(() => {
    const kept = window as unknown as { png?: Blob; words: string[] };
    kept.words = [];
    const make = URL.createObjectURL;
    URL.createObjectURL = (blob: Blob) => {
      kept.png = blob;
      return make(blob);
    };
    const write = CanvasRenderingContext2D.prototype.fillText;
    CanvasRenderingContext2D.prototype.fillText = function (text, ...place) {
      kept.words.push(text.replaceAll('\u00a0', ' ').trim());
      write.call(this, text, ...place);
    };
  });
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name, exact: true }).click();
  await download;
  const { width, height, words } = await page.evaluate(async () => {
    const kept = window as unknown as { png: Blob; words: string[]; picture: CanvasRenderingContext2D };
    const bitmap = await createImageBitmap(kept.png);
    const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
    const context = canvas.getContext('2d') as unknown as CanvasRenderingContext2D;
    context.drawImage(bitmap, 0, 0);
    kept.picture = context;
    return { width: bitmap.width, height: bitmap.height, words: kept.words };
  });
  return {
    width,
    height,
    words,
    pixelAt: (x, y) =>
      page.evaluate(
        ([left, top]) => {
          const { picture } = window as unknown as { picture: CanvasRenderingContext2D };
          return [...picture.getImageData(left, top, 1, 1).data].slice(0, 3);
        },
        [Math.round(x), Math.round(y)] as const,
      ),
  };
}

/** The scale has 256 colours, and a pixel is the middle of one. */
const near = (pixel: readonly number[], expected: readonly number[], within: number): void => {
  for (const k of [0, 1, 2]) {
    expect(Math.abs(pixel[k] - expected[k]), `${pixel} for ${expected}`).toBeLessThanOrEqual(within);
  }
};

/** The scale in the foot of the picture, in its own pixels: left end, length, and its middle line from below. */
const SCALE = { left: 32, length: 520, fromBelow: 58 };

describe('the picture of the core as PNG', () => {
  const series = simulate(shippedConfig('rolling-road-estate'), { fields: true });
  const endOfPull = series.phases.find(({ kind }) => kind === 'pull')?.lastRow ?? Number.NaN;

  it('has a known cell and both ends of the scale in their colours, at twice the size on screen', async ({
    firstVisit,
  }) => {
    const page = await firstVisit();
    await page.getByRole('radio', { name: 'Whole', exact: true }).check({ force: true });
    await atRest(page);
    const cells = [
      [3, 2],
      [44, 21],
      [30, 4],
    ] as const;
    const places = await page.evaluate((wanted) => {
      const canvas = document.querySelector('.picture canvas:not([hidden])') as HTMLCanvasElement & {
        soakbenchPicture: { cellToPixel(car: string, i: number, j: number): [number, number] };
      };
      const part = (canvas.closest('.picture') as HTMLElement).getBoundingClientRect();
      const { left, top } = canvas.getBoundingClientRect();
      return {
        width: part.width,
        cells: wanted.map(([i, j]) => {
          const [x, y] = canvas.soakbenchPicture.cellToPixel('before', i, j);
          // From the right lower corner of the part: what stands above it may grow.
          return [left + x - part.left, part.bottom - top - y] as const;
        }),
      };
    }, cells);
    const picture = await exported(page, 'Core and loop');
    expect(picture.width).toBe(Math.round(2 * places.width));
    if (series.core === undefined) throw new Error('nothing recorded');
    const metal = coreField(series.core, 'metal');
    // The foot is 60 px of the page high.
    for (const [k, [i, j]] of cells.entries()) {
      const [x, fromBelow] = places.cells[k];
      const pixel = await picture.pixelAt(2 * x, picture.height - 2 * (60 + fromBelow));
      near(pixel, inferno((metal.get(endOfPull, i, j) - 273.15 - 25) / 50), 8);
    }
    const y = picture.height - SCALE.fromBelow;
    near(await picture.pixelAt(SCALE.left + 1, y), inferno(0), 4);
    near(await picture.pixelAt(SCALE.left + SCALE.length / 2, y), inferno(0.5), 8);
    near(await picture.pixelAt(SCALE.left + SCALE.length - 2, y), inferno(1), 8);
  });

  it('says whose it is, when, what flows where, and what the colours mean', async ({ firstVisit }) => {
    const page = await firstVisit();
    await page.getByRole('button', { name: 'Bigger core' }).click();
    await afterSolved(page);
    await atRest(page);
    const { words } = await exported(page, 'Core and loop');
    for (const expected of [
      'Soakbench: Rolling-road estate',
      'Before: stock car. After: bigger core. Limit 58.0 °C. At 5:12.0, pull 1, 12.0 s in.',
      'coolant in',
      'coolant out',
      'air in',
      'charge',
      '63.5 °C',
      '50.1 °C',
      'Pump',
      '13.2 L/min',
      'Front exchanger',
      'shut',
      'Metal of the core, °C',
      '25',
      '75 °C',
    ]) {
      expect(words).toContain(expected);
    }
    expect(words.join('')).toContain('Before: stock car');
    expect(words.join('')).toContain('After: bigger core');
  });
});

describe.each([
  ['Plots', 'Coolant out of core'],
  ['Peak of each pull', 'Peak charge temperature of each pull, °C'],
])('the picture %s as PNG', (name, words) => {
  it('is more than paper, says whose it is, and keeps to the content policy', async ({ firstVisit }) => {
    const page = await firstVisit();
    await atRest(page);
    const picture = await exported(page, name);
    expect(picture.words).toContain('Soakbench: Rolling-road estate');
    expect(picture.words.join('|')).toContain(words);
    const colours = await page.evaluate(() => {
      const { picture } = window as unknown as { picture: CanvasRenderingContext2D };
      const { data } = picture.getImageData(0, 0, picture.canvas.width, picture.canvas.height);
      const found = new Set<string>();
      for (let k = 0; k < data.length; k += 4) found.add(`${data[k]},${data[k + 1]},${data[k + 2]}`);
      return found.size;
    });
    expect(colours).toBeGreaterThan(30);
  });
});

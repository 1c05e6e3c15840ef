import { atRest } from '../browser/acts.ts';
import { openVisit } from '../browser/browser.ts';

/**
 * How long the page takes: from navigation to the first answer, and from a slider's movement to the answer, bars,
 * curves and colours that belong to it. Milliseconds here and now, without a graphics card; compare runs of one
 * session only. Needs `npm run build` first.
 */
const VISITS = 5;
const MOVES = 40;

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1];

const visit = await openVisit();
const firstAnswers: number[] = [];
for (let k = 0; k < VISITS; k++) {
  const { page, context } = await visit.visitor();
  const began = performance.now();
  await page.goto('/');
  await page.locator('.answer .figure').first().waitFor();
  firstAnswers.push(performance.now() - began);
  await context.close();
}

const { page } = await visit.visitor();
// The loader that runs this file wraps named functions in a helper of its own, which the page does not have.
await page.addInitScript('globalThis.__name = (named) => named');
await page.goto('/');
await atRest(page);
const moves = await page.evaluate(async (count) => {
  const slider = document.querySelector<HTMLInputElement>('input[aria-label="Width of the core, slider"]');
  const canvas = () => document.querySelector<HTMLCanvasElement>('.picture canvas:not([hidden])');
  if (slider === null) throw new Error('no slider');
  const nextFrame = () => new Promise((resolve) => requestAnimationFrame(resolve));
  const times: number[] = [];
  for (let k = 0; k < count; k++) {
    const framesBefore = canvas()?.dataset.frames;
    const began = performance.now();
    slider.value = String(1.1 + 0.01 * k);
    slider.dispatchEvent(new Event('input', { bubbles: true }));
    const label = `core size ${Number(slider.value).toFixed(2)}`;
    for (;;) {
      await nextFrame();
      const after = document.querySelector('.answer .after')?.textContent ?? '';
      if (after.includes(label) && !after.includes('catching up') && canvas()?.dataset.frames !== framesBefore) break;
    }
    times.push(performance.now() - began);
  }
  slider.dispatchEvent(new Event('change', { bubbles: true }));
  return times;
}, MOVES);
await visit.close();

const show = (name: string, values: readonly number[]) =>
  console.log(
    `${name.padEnd(34)} median ${median(values).toFixed(0).padStart(5)} ms, ${Math.min(...values).toFixed(0)} to ${Math.max(...values).toFixed(0)}`,
  );
show('navigation to first answer', firstAnswers);
show('slider movement to redrawn page', moves);

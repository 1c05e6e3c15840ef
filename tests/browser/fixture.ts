import type { Page } from 'playwright';
import { expect, test } from 'vitest';
import { solved } from './acts.ts';
import { openVisit, type Visitor, type VisitorOptions } from './browser.ts';

/**
 * A test of the built page. Server and browser are opened once a file; every visitor is fresh and is sent away at the
 * end, whatever happens. A fault on a page fails its test.
 */
export const it = test
  // biome-ignore lint/correctness/noEmptyPattern: vitest reads off the pattern what a fixture needs
  .extend('visit', { scope: 'file' }, async ({}, { onCleanup }) => {
    const visit = await openVisit();
    onCleanup(() => visit.close());
    return visit;
  })
  /** the page of another visitor, who has not gone anywhere yet */
  .extend('newPage', async ({ visit }, { onCleanup }) => {
    const visitors: Visitor[] = [];
    onCleanup(async () => {
      // Taken out, since a cleanup that fails is called once more.
      const gone = visitors.splice(0);
      const faults = gone.flatMap((visitor) => visitor.faults);
      await Promise.all(gone.map(({ context }) => context.close()));
      expect(faults, 'faults on the page').toEqual([]);
    });
    return async (options?: VisitorOptions): Promise<Page> => {
      const visitor = await visit.visitor(options);
      visitors.push(visitor);
      return visitor.page;
    };
  })
  /** the page with the default car solved, for a visitor whose every use of a pointer is a fault */
  .extend('byKeys', async ({ newPage }): Promise<Page> => {
    const page = await newPage();
    await page.addInitScript(() => {
      for (const kind of ['pointerdown', 'mousedown', 'wheel', 'touchstart'])
        window.addEventListener(kind, () => console.error(`not by keyboard: ${kind}`), true);
    });
    await page.goto('/');
    await solved(page);
    return page;
  })
  /** the page of another visitor, with the default car solved */
  .extend('firstVisit', ({ newPage }) => async (options?: VisitorOptions): Promise<Page> => {
    const page = await newPage(options);
    await page.goto('/');
    await solved(page);
    return page;
  });

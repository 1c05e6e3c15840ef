import { AxeBuilder } from '@axe-core/playwright';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openVisit, solved, type Visit } from './browser.ts';

let visit: Visit;
beforeAll(async () => {
  visit = await openVisit();
});
afterAll(() => visit.close());

const SIZES = [
  [1440, 900],
  [1024, 768],
  [390, 844],
] as const;

describe.each(['light', 'dark'] as const)('in the %s theme', (colorScheme) => {
  it.each(SIZES)('axe finds nothing at %i x %i, first answer, compared, and empty', async (width, height) => {
    const { page, context } = await visit.visitor({ viewport: { width, height }, colorScheme });
    await page.goto(visit.address);
    await solved(page);
    const violations = async () =>
      (await new AxeBuilder({ page }).analyze()).violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`);
    expect(await violations()).toEqual([]);
    if (width >= 860) {
      await page.getByRole('button', { name: 'Bigger core' }).click();
      await page.locator('.answer .after .figure').waitFor();
      await solved(page);
      expect(await violations()).toEqual([]);
      await page.getByRole('button', { name: 'New', exact: true }).click();
      await page.getByText('No run yet').first().waitFor();
      expect(await violations()).toEqual([]);
    }
    await context.close();
  });
});

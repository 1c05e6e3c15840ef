import { describe, expect } from 'vitest';
import { afterSolved, violations } from './acts.ts';
import { it } from './fixture.ts';

const SIZES = [
  [1440, 900],
  [1024, 768],
  [390, 844],
] as const;

describe.each(['light', 'dark'] as const)('in the %s theme', (colorScheme) => {
  it.for(SIZES)(
    'axe finds nothing at %i x %i, first answer, compared, and empty',
    async ([width, height], { firstVisit }) => {
      const page = await firstVisit({ viewport: { width, height }, colorScheme });
      expect(await violations(page)).toEqual([]);
      if (width >= 860) {
        await page.getByRole('button', { name: 'Bigger core' }).click();
        await afterSolved(page);
        expect(await violations(page)).toEqual([]);
        await page.getByRole('button', { name: 'New', exact: true }).click();
        await page.getByText('No run yet').first().waitFor();
        expect(await violations(page)).toEqual([]);
      }
    },
  );
});

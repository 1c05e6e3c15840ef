import { describe, expect } from 'vitest';
import { afterSolved, SCREENS, violations } from './acts.ts';
import { it } from './fixture.ts';

describe.each(['light', 'dark'] as const)('in the %s theme', (colorScheme) => {
  it.for(SCREENS)(
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

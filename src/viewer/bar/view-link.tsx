import type { PageProps } from '../page.tsx';

/** Fragment of the address that stands for the letter: a reload and the browser's way back keep the view. */
export const LETTER_ADDRESS = '#letter';

/** The way from the workbench to the letter, and back. */
export function ViewLink({ display }: PageProps) {
  const isLetter = display.view.value === 'letter';
  return (
    <a class="view-link" href={isLetter ? '#' : LETTER_ADDRESS}>
      {isLetter ? 'Workbench' : 'Letter'}
    </a>
  );
}

import { useSignalEffect } from '@preact/signals';
import { Answer } from './answer/answer.tsx';
import { Bar } from './bar/bar.tsx';
import { Inputs } from './inputs/inputs.tsx';
import type { PageProps } from './page.tsx';
import { Plots } from './plots/plots.tsx';
import { Picture } from './scene/picture.tsx';
import { Band } from './time/band.tsx';

/** The whole page: one screen, read from the answer down. */
export function App(props: PageProps) {
  const { display } = props;
  useSignalEffect(() => {
    document.documentElement.dataset.theme = display.isDark.value ? 'dark' : 'light';
  });
  return (
    <>
      <Bar {...props} />
      <Answer {...props} />
      <Inputs {...props} />
      <Picture {...props} />
      <Plots {...props} />
      <Band {...props} />
    </>
  );
}

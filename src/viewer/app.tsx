import { useSignalEffect } from '@preact/signals';
import { Answer } from './answer/answer.tsx';
import { Causes } from './answer/causes.tsx';
import { Bar } from './bar/bar.tsx';
import { Dock } from './inputs/dock.tsx';
import { Inputs } from './inputs/inputs.tsx';
import type { PageProps } from './page.tsx';
import { Plots } from './plots/plots.tsx';
import { Picture } from './scene/picture.tsx';
import { Band } from './time/band.tsx';
import { PlayButton } from './time/play-button.tsx';

/** The whole page: one screen, read from the answer down. */
export function App(props: PageProps) {
  const { display } = props;
  useSignalEffect(() => {
    document.documentElement.dataset.theme = display.isDark.value ? 'dark' : 'light';
  });
  return (
    <>
      <Bar {...props} />
      <main>
        <Answer {...props} />
        <Inputs {...props} />
        <Picture {...props} />
        <Plots {...props} />
        <Band {...props} />
        <div class="causes-below">
          <Causes {...props} />
        </div>
      </main>
      <Dock {...props}>
        <PlayButton {...props} />
      </Dock>
    </>
  );
}

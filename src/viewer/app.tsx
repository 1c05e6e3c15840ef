import { useSignalEffect } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { Answer } from './answer/answer.tsx';
import { BesideCount } from './answer/beside-count.tsx';
import { Causes } from './answer/causes.tsx';
import { Cooling } from './answer/cooling.tsx';
import { Findings } from './answer/findings.tsx';
import { Bar } from './bar/bar.tsx';
import { registerPicture } from './files/export.ts';
import { pictureHead } from './files/picture-head.ts';
import { snapshot } from './files/snapshot.ts';
import { named, scaleOf } from './format.ts';
import { Dock } from './inputs/dock.tsx';
import { Inputs } from './inputs/inputs.tsx';
import { later } from './later.tsx';
import type { PageProps } from './page.tsx';
import { Plots } from './plots/plots.tsx';
import { Picture } from './scene/picture.tsx';
import { Band } from './time/band.tsx';
import { PlayButton } from './time/play-button.tsx';

const LetterPage = later(() => import('./letter/letter-page.tsx').then((module) => module.LetterPage));
const Routes = later(() => import('./routes/routes.tsx').then((module) => module.Routes));
const Loop = later(() => import('./loop/loop.tsx').then((module) => module.Loop));
const Questions = later(() => import('./questions/questions.tsx').then((module) => module.Questions));

/** Parts of the page that can be saved as pictures as they are: name, place, and what it does not say of itself. */
const PICTURES = [
  ['Plots', '.plots', ''],
  ['Peak of each pull', '.band', 'Peak charge temperature of each pull'],
] as const;

/** The whole page: the workbench, or the same state as a letter. */
export function App(props: PageProps) {
  const { display } = props;
  useFocusOnAnswer(props);
  useSignalEffect(() => {
    document.documentElement.dataset.theme = display.isDark.value ? 'dark' : 'light';
  });
  return (
    <>
      <Bar {...props} />
      {display.view.value === 'letter' ? <LetterPage {...props} /> : <Workbench {...props} />}
    </>
  );
}

/** Gives the answer the focus where another car takes away what was pressed for it: a demo car, New, Keep as Before. */
function useFocusOnAnswer({ session }: PageProps) {
  const before = session.before.value;
  const known = useRef(before);
  useEffect(() => {
    const isOther = known.current !== before;
    known.current = before;
    if (isOther && document.activeElement === document.body) document.querySelector<HTMLElement>('.answer')?.focus();
  }, [before]);
}

/** One screen, read from the answer down. */
function Workbench(props: PageProps) {
  const { display, session } = props;
  useEffect(() => {
    const offers = PICTURES.map(([name, place, what]) =>
      registerPicture(name, () => {
        const part = document.querySelector<HTMLElement>(place);
        if (part === null || session.before.value === undefined) throw new Error('nothing is open');
        const { unit } = scaleOf('degC', display.units.value);
        return snapshot(part, { head: [...pictureHead(props), ...(what === '' ? [] : [named(what, unit)])] });
      }),
    );
    return () => {
      for (const takeBack of offers) takeBack();
    };
  }, [session]);
  return (
    <>
      <main>
        <Answer {...props} />
        <Findings {...props} />
        {display.isRoutesOpen.value && <Routes {...props} />}
        {display.isLoopOpen.value && <Loop {...props} />}
        {display.isQuestionsOpen.value && <Questions {...props} />}
        <Inputs {...props} />
        <Picture {...props} />
        <Plots {...props} />
        <Band {...props} />
        <div class="causes-below">
          <BesideCount {...props} />
          <Cooling {...props} />
          <Causes {...props} />
        </div>
      </main>
      <Dock {...props}>
        <PlayButton {...props} />
      </Dock>
    </>
  );
}

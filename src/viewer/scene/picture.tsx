import './picture.css';
import { type Signal, useSignal } from '@preact/signals';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import { registerPicture } from '../files/export.ts';
import { pictureHead } from '../files/picture-head.ts';
import { snapshot } from '../files/snapshot.ts';
import type { PageProps } from '../page.tsx';
import { CellReader } from './cell-reader.tsx';
import { Key } from './key.tsx';
import { Overlay } from './overlay.tsx';
import { PictureModel } from './picture-model.ts';
import { Pipes } from './pipes.tsx';
import { ScaleBar } from './scale-bar.tsx';
import { scaleFoot } from './scale-foot.ts';
import { Stage } from './stage.ts';
import { Tools } from './tools.tsx';

/** The cores of both cars, coloured by their cells' temperatures, and the loop of the car in hand. */
export function Picture(props: PageProps) {
  // The parts of the page are handed in once and live as long as it does.
  const model = useMemo(() => new PictureModel(props), []);
  const isCardLost = useSignal(false);
  const part = useRef<HTMLElement>(null);
  useEffect(
    () =>
      registerPicture('Core and loop', () => {
        if (part.current === null || model.inHand === undefined) throw new Error('nothing is open');
        return snapshot(part.current, { head: pictureHead(props), foot: scaleFoot(model) });
      }),
    [model],
  );
  return (
    <section class="picture" ref={part} aria-label="Picture of the core and the coolant loop">
      <Tools display={props.display} />
      <div role="status">
        {isCardLost.value && (
          <p class="picture-message">
            The graphics card is lost: the picture is drawn without it until it is back. The numbers are the same.
          </p>
        )}
      </div>
      <ScaleBar model={model} />
      <Area model={model} isCardLost={isCardLost} />
      <Key model={model} />
    </section>
  );
}

function Area({ model, isCardLost }: { readonly model: PictureModel; readonly isCardLost: Signal<boolean> }) {
  const area = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const element = area.current;
    if (element === null || canvas.current === null) return undefined;
    const watcher = new ResizeObserver(() => {
      model.size.value = { width: element.clientWidth, height: element.clientHeight };
      // Nothing is drawn anew for paper, which may be wider than the screen.
      element.style.setProperty('--drawn-width', `${element.clientWidth}px`);
    });
    watcher.observe(element);
    const stage = new Stage(model, canvas.current, isCardLost);
    return () => {
      watcher.disconnect();
      stage.dispose();
    };
  }, [model, isCardLost]);
  return (
    <div
      class="picture-area"
      ref={area}
      onPointerMove={({ clientX, clientY, currentTarget }) => {
        const { left, top } = currentTarget.getBoundingClientRect();
        model.reading.value = { by: 'pointer', at: [clientX - left, clientY - top] };
      }}
      onPointerLeave={() => {
        if (model.reading.value?.by === 'pointer') model.reading.value = undefined;
      }}
    >
      {model.cars.value.length === 0 && (
        <p class="picture-empty">The core and its loop are drawn here after the first run.</p>
      )}
      <Pipes model={model} />
      <canvas ref={canvas} />
      <Overlay model={model} />
      <CellReader model={model} />
    </div>
  );
}

import './picture.css';
import { useSignal } from '@preact/signals';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import type { PageProps } from '../page.tsx';
import { CellReader } from './cell-reader.tsx';
import { Key } from './key.tsx';
import { Overlay } from './overlay.tsx';
import { PictureModel } from './picture-model.ts';
import { Pipes } from './pipes.tsx';
import { ScaleBar } from './scale-bar.tsx';
import { Stage } from './stage.ts';
import { Tools } from './tools.tsx';

/** The cores of both cars, coloured by their cells' temperatures, and the loop of the car in hand. */
export function Picture(props: PageProps) {
  // The parts of the page are handed in once and live as long as it does.
  const model = useMemo(() => new PictureModel(props), []);
  return (
    <section class="picture" aria-label="Picture of the core and the coolant loop">
      <Tools display={props.display} />
      <ScaleBar model={model} />
      <Area model={model} />
      <Key model={model} />
    </section>
  );
}

function Area({ model }: { readonly model: PictureModel }) {
  const area = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const isCardLost = useSignal(false);
  useEffect(() => {
    const element = area.current;
    if (element === null || canvas.current === null) return undefined;
    const watcher = new ResizeObserver(() => {
      model.size.value = { width: element.clientWidth, height: element.clientHeight };
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
      {isCardLost.value && (
        <p class="picture-message" role="status">
          The graphics card let go of the picture: it is drawn flat until the card is back. The numbers are not touched.
        </p>
      )}
    </div>
  );
}

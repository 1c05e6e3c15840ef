import { useSignal, useSignalEffect } from '@preact/signals';
import { useRef } from 'preact/hooks';
import type { PictureModel } from './picture-model.ts';
import { onScreen, type Vector } from './projection.ts';

const AXES: readonly (readonly [which: string, what: string, direction: Vector])[] = [
  ['along the', 'air', [0, 1, 0]],
  ['along the', 'coolant', [1, 0, 0]],
  ['across the', 'stack', [0, 0, 1]],
];

/** Which way is which in the picture, what a block's size means, and the way into the view settings. */
export function Key({ model }: { readonly model: PictureModel }) {
  if (model.layout.value === undefined) return null;
  return (
    <div class="picture-key">
      <ul>
        {AXES.map(([which, what, direction]) => (
          <li key={what}>
            <svg width="14" height="14" viewBox="-7 -7 14 14" aria-hidden="true">
              <path
                d="M-5.500 0H5M1.500 -3.500L5 0L1.500 3.500"
                transform={`rotate(${directionOf(model, direction)})`}
              />
            </svg>
            <span class="which">{which}</span> {what}
          </li>
        ))}
      </ul>
      <p title="Test points do not tell a core's size, so all are drawn with one length. A core with less pressure drop stands higher; one with more metal for its height goes deeper.">
        Size by metal and core pressure drop
      </p>
      <ViewSettings model={model} />
    </div>
  );
}

/** Which way a direction of the block points in the picture [deg]. */
function directionOf(model: PictureModel, direction: Vector): number | undefined {
  const view = model.layout.value?.blocks[0].projection.view;
  if (view === undefined) return undefined;
  const [x, y] = onScreen(view, direction);
  return (Math.atan2(y, x) * 180) / Math.PI;
}

function ViewSettings({ model }: { readonly model: PictureModel }) {
  const isOpen = useSignal(false);
  const place = useRef<HTMLDivElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  useSignalEffect(() => {
    if (!isOpen.value) return undefined;
    let close = () => {};
    let isOver = false;
    void import('../view-settings.ts').then(({ openViewSettings }) => {
      if (isOver || place.current === null) return;
      close = openViewSettings(place.current, model.props.display.drawing, () => {
        isOpen.value = false;
        button.current?.focus();
      });
    });
    return () => {
      isOver = true;
      close();
    };
  });
  return (
    <>
      <button
        type="button"
        class="link"
        ref={button}
        aria-expanded={isOpen.value}
        onClick={() => {
          isOpen.value = !isOpen.value;
        }}
        onKeyDown={({ key }) => {
          if (key === 'Escape') isOpen.value = false;
        }}
      >
        View settings
      </button>
      <div class="view-settings" ref={place} />
    </>
  );
}

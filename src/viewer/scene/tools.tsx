import type { Signal } from '@preact/signals';
import type { Camera, ColourBy, Display, ShowCore } from '../state/display.ts';

const COLOUR_BY: Readonly<Record<ColourBy, string>> = { metal: 'Metal', coolant: 'Coolant', air: 'Air' };
const SHOW: Readonly<Record<ShowCore, string>> = { whole: 'Whole', cut: 'Cut', apart: 'Apart' };
const CAMERA: Readonly<Record<Camera, string>> = { corner: 'Corner', above: 'Above', 'air side': 'Air side' };

/** What the picture shows and from where. */
export function Tools({ display }: { readonly display: Display }) {
  return (
    <div class="picture-tools">
      <Choice legend="Colour by" name="colour-by" names={COLOUR_BY} chosen={display.colourBy} />
      <Choice legend="Show" name="show-core" names={SHOW} chosen={display.show} />
      <label class="picture-view">
        <span>View</span>
        <select
          value={display.camera.value}
          onChange={({ currentTarget }) => {
            display.camera.value = currentTarget.value as Camera;
          }}
        >
          {Object.entries(CAMERA).map(([camera, name]) => (
            <option key={camera} value={camera}>
              {name}
            </option>
          ))}
        </select>
      </label>
    </div>
  );
}

interface ChoiceProps<Option extends string> {
  readonly legend: string;
  readonly name: string;
  readonly names: Readonly<Record<Option, string>>;
  readonly chosen: Signal<Option>;
}

function Choice<Option extends string>({ legend, name, names, chosen }: ChoiceProps<Option>) {
  return (
    <fieldset class="choice">
      <legend>{legend}</legend>
      {(Object.keys(names) as Option[]).map((option) => (
        <label key={option}>
          <input
            type="radio"
            name={name}
            value={option}
            checked={chosen.value === option}
            onChange={() => {
              chosen.value = option;
            }}
          />
          <span>{names[option]}</span>
        </label>
      ))}
    </fieldset>
  );
}

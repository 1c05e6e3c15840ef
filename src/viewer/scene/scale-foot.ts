import { cssColour } from '../colour-scale.ts';
import { ticksBetween } from '../figures/ticks.ts';
import type { Frame } from '../files/snapshot.ts';
import { fixed, NO_BREAK_SPACE, named, scaleOf } from '../format.ts';
import type { ColourBy } from '../state/display.ts';
import type { PictureModel } from './picture-model.ts';

/** Where the scale stands in the foot of a saved picture [pixels of the page]. */
const HEIGHT = 60;
const LEFT = 16;
const TOP = 24;
const LENGTH = 260;
const THICK = 14;
/** A number between the ends keeps this far from them: the right one carries the unit [pixels of the page]. */
const CLEAR = { left: 32, right: 54 };

const NAMES: Readonly<Record<ColourBy, string>> = {
  metal: 'Metal of the core',
  coolant: 'Coolant in the core',
  air: 'Air in the core',
};

/** The colour scale with its unit, for a picture that stands alone. Pipes and arrows have the same colours. */
export function scaleFoot(model: PictureModel): NonNullable<Frame['foot']> {
  const { low, high, colourAt } = model.scale.value;
  const { colourBy, units } = model.props.display;
  const { fromSi, unit } = scaleOf('degC', units.value);
  return {
    height: HEIGHT,
    paint: (pen, style) => {
      pen.textBaseline = 'alphabetic';
      pen.textAlign = 'left';
      pen.fillStyle = style.getPropertyValue('--ink');
      pen.font = `600 12px ${style.fontFamily}`;
      const name = named(NAMES[colourBy.value], unit);
      pen.fillText(name, LEFT, TOP - 7);
      const behind = LEFT + pen.measureText(name).width + 10;
      pen.font = `400 12px ${style.fontFamily}`;
      pen.fillStyle = style.getPropertyValue('--ink2');
      pen.fillText('Grey: outside the scale.', behind, TOP - 7);
      for (let x = 0; x < LENGTH; x++) {
        const colour = colourAt(low + ((high - low) * (x + 0.5)) / LENGTH);
        if (colour === undefined) continue;
        pen.fillStyle = cssColour(colour);
        pen.fillRect(LEFT + x, TOP, 1, THICK);
      }
      pen.strokeStyle = style.getPropertyValue('--ink');
      pen.lineWidth = 1;
      pen.strokeRect(LEFT - 0.5, TOP - 0.5, LENGTH + 1, THICK + 1);
      pen.fillStyle = style.getPropertyValue('--ink2');
      const [from, to] = [fromSi(low), fromSi(high)];
      const below = TOP + THICK + 15;
      pen.fillText(fixed(from, 0), LEFT, below);
      pen.textAlign = 'right';
      pen.fillText(`${fixed(to, 0)}${NO_BREAK_SPACE}${unit}`, LEFT + LENGTH, below);
      pen.textAlign = 'center';
      for (const tick of ticksBetween(from, to, units.value.temperature === 'degC' ? 10 : 20)) {
        const x = (LENGTH * (tick - from)) / (to - from);
        if (x > CLEAR.left && x < LENGTH - CLEAR.right) pen.fillText(fixed(tick, 0), LEFT + x, below);
      }
    },
  };
}

import { cssColour } from '../colour-scale.ts';
import { degrees, temperature } from '../format.ts';
import type { PictureModel } from './picture-model.ts';

const STOPS = 24;

/** The scale above the picture, where no plot beside it holds one. */
export function ScaleBar({ model }: { readonly model: PictureModel }) {
  const inHand = model.inHand;
  if (inHand === undefined) return null;
  const { low, high, colourAt } = model.scale.value;
  const units = model.props.display.units.value;
  const limit = inHand.car.config.limit.chargeTemperature;
  const colours = Array.from({ length: STOPS + 1 }, (_, k) => colourAt(low + ((high - low) * k) / STOPS));
  const gradient = colours.map((colour) => (colour === undefined ? 'transparent' : cssColour(colour))).join(', ');
  const share = (limit - low) / (high - low);
  return (
    <p class="picture-scale" data-page-only>
      <span>{temperature(low, units, 0).value}</span>
      <i aria-hidden="true" style={{ background: `linear-gradient(90deg, ${gradient})` }}>
        {share >= 0 && share <= 1 && <b style={{ left: `${100 * share}%` }} />}
      </i>
      <span>
        {degrees(high, units, 0)}, mark: limit {temperature(limit, units).value}
      </span>
    </p>
  );
}

import { type ColourScale, cssColour } from '../colour-scale.ts';
import { briefly, type Scale } from '../format.ts';
import type { MainMarks, Mark } from './main-model.ts';
import { besideLimit } from './main-model.ts';
import type { Pen } from './pen.ts';
import { timeTicks, type View } from './view.ts';

/** The ruler: the core's colours as the height axis of the plot [px]. */
const RULER_LEFT = 10;
const RULER_WIDTH = 14;
/** Distance of a word from its point, and of two words from each other [px]. */
const BESIDE = 9;
const APART = 16;

/** Shades the pulls, beneath the grid. */
export function paintShades(pen: Pen, { shades }: MainMarks): void {
  const { context } = pen;
  context.fillStyle = pen.palette.pull;
  for (const { from, to } of shades) {
    const left = pen.heldX(from);
    context.fillRect(left, pen.top, Math.max(1, pen.heldX(to) - left), pen.bottom - pen.top);
  }
}

/** Draws what stands above the lines: ruler, limit, peaks, crossings and the caption of the time axis. */
export function paintMarks(pen: Pen, marks: MainMarks, colours: ColourScale, scale: Scale, view: View): void {
  paintRuler(pen, colours, scale);
  paintCaption(pen, view);
  if (marks.otherLimit !== undefined) paintOtherLimit(pen, marks.otherLimit, scale);
  const named = marks.limit && paintLimit(pen, marks.limit, marks.crossings, scale);
  const limit = marks.limit && pen.y(scale.fromSi(marks.limit.kelvin));
  paintPeaks(pen, marks.peaks, scale, limit, named);
}

function paintRuler(pen: Pen, colours: ColourScale, { unit, fromSi, toSi }: Scale): void {
  const { context, palette, top, bottom } = pen;
  const upper = pen.y(fromSi(colours.high));
  const lower = pen.y(fromSi(colours.low));
  context.fillStyle = palette.panel;
  context.fillRect(RULER_LEFT, top, RULER_WIDTH, bottom - top);
  for (let y = Math.ceil(upper); y < lower; y++) {
    // Back from the place to the temperature, so that the ruler is right on any axis.
    const share = (lower - (y + 0.5)) / (lower - upper);
    const shown = fromSi(colours.low) + share * (fromSi(colours.high) - fromSi(colours.low));
    const colour = colours.colourAt(toSi(shown));
    if (colour === undefined) continue;
    context.fillStyle = cssColour(colour);
    context.fillRect(RULER_LEFT, y, RULER_WIDTH, Math.min(1.2, lower - y));
  }
  context.strokeStyle = palette.edge;
  context.lineWidth = 1;
  context.strokeRect(RULER_LEFT, top, RULER_WIDTH, bottom - top);
  pen.text(unit, RULER_LEFT, bottom + 16);
}

function paintCaption(pen: Pen, view: View): void {
  pen.text(timeTicks(view, pen.right - pen.left, 44).caption, pen.right, pen.bottom + 16, { align: 'right' });
}

/** Where a word left of its point ends, and its height [px]. */
interface WordEnd {
  readonly right: number;
  readonly height: number;
}

/** One line through ruler and plot. Tells where the word of the first crossing ends if it stands left of its ring. */
function paintLimit(
  pen: Pen,
  { kelvin, text }: NonNullable<MainMarks['limit']>,
  crossings: readonly Mark[],
  { fromSi }: Scale,
): WordEnd | undefined {
  const { ink, panel } = pen.palette;
  const y = pen.y(fromSi(kelvin));
  pen.line(RULER_LEFT - 4, y, RULER_LEFT + RULER_WIDTH + 4, y, panel, 4);
  pen.line(RULER_LEFT - 4, y, RULER_LEFT + RULER_WIDTH + 4, y, ink, 2);
  pen.line(pen.left, y, pen.right, y, ink, 2);
  // A long number reaches up to the mark on the ruler, which then ends under its rim.
  pen.text(briefly(fromSi(kelvin)), pen.left - 8, y + 4, { align: 'right', weight: 600, colour: ink, hasRim: true });
  const byTime = [...crossings].sort((a, b) => a.time - b.time);
  const named = byTime.map((mark) => ({ ...mark, x: pen.x(mark.time), width: pen.widthOf(mark.text ?? '', 12, 600) }));
  // The first crossing is named above the line and left of its ring, where the limit then makes room; the second,
  // and one too near the side, below the line and behind the ring.
  const [first] = named;
  const isFirstLeft = first !== undefined && first.x - BESIDE - first.width >= pen.left + 2;
  const limitEnd = pen.left + 10 + pen.widthOf(text, 12, 600);
  const isLimitBelow = isFirstLeft && first.x - BESIDE - first.width < limitEnd;
  pen.text(text, pen.left + 4, isLimitBelow ? y + 17 : y - 7, { weight: 600, colour: ink, hasRim: true });
  for (const mark of named) {
    const height = pen.y(fromSi(mark.kelvin));
    pen.dot(mark.x, height, 5, panel, { colour: pen.palette[mark.which], width: 2.5 });
    const isLeft = mark === first && isFirstLeft;
    pen.text(mark.text ?? '', mark.x + (isLeft ? -BESIDE : BESIDE), isLeft ? height - 7 : height + 17, {
      align: isLeft ? 'right' : 'left',
      weight: 600,
      colour: mark.which === 'after' ? pen.palette.after : ink,
      hasRim: true,
    });
  }
  return isFirstLeft ? { right: first.x - BESIDE, height: pen.y(fromSi(first.kelvin)) - 7 } : undefined;
}

function paintOtherLimit(pen: Pen, { kelvin, text }: NonNullable<MainMarks['limit']>, { fromSi }: Scale): void {
  const y = pen.y(fromSi(kelvin));
  pen.line(pen.left, y, pen.right, y, pen.palette.before, 1.5, [2, 4]);
  pen.text(text, pen.right - 4, y - 5, { align: 'right', hasRim: true });
}

/** A dot at each peak; where there is room its number stands behind it, two of them apart. */
function paintPeaks(
  pen: Pen,
  peaks: readonly Mark[],
  { fromSi }: Scale,
  limit: number | undefined,
  named: WordEnd | undefined,
): void {
  for (const { which, time, kelvin } of peaks) pen.dot(pen.x(time), pen.y(fromSi(kelvin)), 4, pen.palette[which]);
  const written = peaks.filter(({ text }) => text !== undefined);
  const heights = besideLimit(
    written.map(({ kelvin }) => pen.y(fromSi(kelvin))),
    APART,
    limit,
  );
  written.forEach(({ which, time, text = '' }, k) => {
    const width = pen.widthOf(text, 14, 600);
    const isLeft = pen.x(time) + BESIDE + width > pen.right;
    // Left of its dot it may come up to the word of the crossing, and then stands above that.
    const isNearWord =
      isLeft &&
      named !== undefined &&
      pen.x(time) - width - 3 * BESIDE < named.right &&
      Math.abs(heights[k] - named.height) < APART;
    const height = isNearWord ? named.height - APART : heights[k];
    pen.text(text, pen.x(time) + (isLeft ? -BESIDE : BESIDE), Math.max(pen.top + 10, height), {
      size: 14,
      weight: 600,
      colour: which === 'after' ? pen.palette.after : pen.palette.ink,
      align: isLeft ? 'right' : 'left',
      hasRim: true,
    });
  });
}

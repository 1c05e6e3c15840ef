/** Whether an element is more than what holds others: it has a ground or sides of its own. */
export function isBox(element: HTMLElement): boolean {
  const { backgroundColor, borderTopWidth, borderRightWidth } = getComputedStyle(element);
  const hasGround = !/^transparent$|, 0\)$/.test(backgroundColor);
  return hasGround || Number.parseFloat(borderTopWidth) > 0 || Number.parseFloat(borderRightWidth) > 0;
}

/** Draws a box's ground and sides; round corners are drawn square. */
export function drawBox(pen: CanvasRenderingContext2D, box: HTMLElement): void {
  const style = getComputedStyle(box);
  const { left, top, width, height } = box.getBoundingClientRect();
  pen.fillStyle = style.backgroundColor;
  pen.fillRect(left, top, width, height);
  const sides = [
    [style.borderTopWidth, style.borderTopColor, 0, 0, 1, 0],
    [style.borderBottomWidth, style.borderBottomColor, 0, 1, 1, 0],
    [style.borderLeftWidth, style.borderLeftColor, 0, 0, 0, 1],
    [style.borderRightWidth, style.borderRightColor, 1, 0, 0, 1],
  ] as const;
  for (const [written, colour, atRight, atBottom, isAcross, isDown] of sides) {
    const thick = Number.parseFloat(written);
    if (!(thick > 0)) continue;
    pen.fillStyle = colour;
    pen.fillRect(
      left + atRight * (width - thick),
      top + atBottom * (height - thick),
      isAcross * width || thick,
      isDown * height || thick,
    );
  }
}

/** What a vector drawing takes along, since style sheets do not reach into an image. */
const LOOKS = [
  'fill',
  'stroke',
  'stroke-width',
  'stroke-dasharray',
  'stroke-linejoin',
  'paint-order',
  'opacity',
  'text-anchor',
  'font-family',
  'font-size',
  'font-weight',
  'letter-spacing',
  'transform',
  'overflow',
] as const;

export async function drawVector(pen: CanvasRenderingContext2D, drawing: SVGSVGElement): Promise<void> {
  const { left, top, width, height } = drawing.getBoundingClientRect();
  if (width === 0 || height === 0) return;
  const copy = drawing.cloneNode(true) as SVGSVGElement;
  const originals = [drawing, ...drawing.querySelectorAll('*')];
  [copy, ...copy.querySelectorAll('*')].forEach((element, k) => {
    if (!(element instanceof SVGElement)) return;
    const style = getComputedStyle(originals[k]);
    for (const name of LOOKS) {
      // A turn written at the element itself stays; one of the style sheet comes along.
      if (name === 'transform' && element.hasAttribute('transform')) continue;
      element.style.setProperty(name, style.getPropertyValue(name));
    }
  });
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg');
  copy.setAttribute('width', String(width));
  copy.setAttribute('height', String(height));
  const image = new Image(width, height);
  image.src = `data:image/svg+xml,${encodeURIComponent(new XMLSerializer().serializeToString(copy))}`;
  await image.decode();
  pen.drawImage(image, left, top, width, height);
}

/** Draws the words of a text as the page has broken them into lines, cut off where the page cuts them off. */
export function drawWords(pen: CanvasRenderingContext2D, text: Text, owner: Element): void {
  const style = getComputedStyle(owner);
  pen.save();
  if (style.overflowX !== 'visible') {
    const { left, top, width, height } = owner.getBoundingClientRect();
    pen.beginPath();
    pen.rect(left, top, width, height);
    pen.clip();
  }
  pen.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
  pen.fillStyle = style.color;
  pen.textBaseline = 'middle';
  for (const { words, left, middle } of linesOf(text)) pen.fillText(words, left, middle);
  pen.restore();
}

interface Line {
  words: string;
  readonly left: number;
  readonly middle: number;
}

function linesOf(text: Text): Line[] {
  const range = document.createRange();
  const lines: Line[] = [];
  for (let k = 0; k < text.length; k++) {
    range.setStart(text, k);
    range.setEnd(text, k + 1);
    const [place] = range.getClientRects();
    // White space that the page swallows has no place of its own.
    if (place === undefined || place.width === 0) continue;
    const middle = place.top + place.height / 2;
    const last = lines[lines.length - 1];
    if (last !== undefined && Math.abs(last.middle - middle) < place.height / 2) last.words += text.data[k];
    else lines.push({ words: text.data[k], left: place.left, middle });
  }
  return lines.map((line) => ({ ...line, words: line.words.replace(/[\t\n]/g, ' ') }));
}

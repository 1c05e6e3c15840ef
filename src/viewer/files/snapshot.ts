/** A picture has this many pixels for each of the screen's. */
const FINENESS = 2;
/** What a picture leaves out: it is there to be used, or only spoken. */
const NOT_DRAWN = 'button, select, input, label, fieldset, details, [hidden]';

/** A canvas whose drawing is gone once it has been shown may know how to draw it again; see the picture of the core. */
interface Redrawable {
  readonly soakbenchPicture?: { pixelAt(x: number, y: number): unknown };
}

/**
 * A part of the page as PNG at twice the size on screen: its drawings and its words, without its controls.
 *
 * @param part - an element with canvases, vector drawings and text
 * @param title - stands above, so that the picture says where it is from
 */
export async function snapshot(part: HTMLElement, title: string): Promise<Blob> {
  const frame = part.getBoundingClientRect();
  const head = 32;
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(FINENESS * frame.width);
  canvas.height = Math.round(FINENESS * (frame.height + head));
  const pen = canvas.getContext('2d');
  if (pen === null) throw new Error('the browser offers nothing to draw on');
  pen.scale(FINENESS, FINENESS);
  const style = getComputedStyle(part);
  pen.fillStyle = style.getPropertyValue('--panel');
  pen.fillRect(0, 0, frame.width, frame.height + head);
  pen.fillStyle = style.getPropertyValue('--ink');
  pen.font = `600 14px ${style.fontFamily}`;
  pen.fillText(title, 12, 21);
  pen.translate(-frame.left, head - frame.top);

  for (const drawing of visible(part, 'canvas, svg')) {
    if (drawing instanceof HTMLCanvasElement) drawCanvas(pen, drawing);
    else await drawVector(pen, drawing as SVGSVGElement);
  }
  drawWords(pen, part);
  return new Promise((resolve, reject) => {
    canvas.toBlob(
      (blob) => (blob === null ? reject(new Error('the picture is too large')) : resolve(blob)),
      'image/png',
    );
  });
}

function visible(part: HTMLElement, selector: string): Element[] {
  return [...part.querySelectorAll(selector)].filter(
    (element) => element.closest(NOT_DRAWN) === null && element.getBoundingClientRect().width > 0,
  );
}

function drawCanvas(pen: CanvasRenderingContext2D, source: HTMLCanvasElement & Redrawable): void {
  source.soakbenchPicture?.pixelAt(0, 0);
  const { left, top, width, height } = source.getBoundingClientRect();
  pen.drawImage(source, left, top, width, height);
}

/** A vector drawing takes its looks along, since style sheets do not reach into an image. */
async function drawVector(pen: CanvasRenderingContext2D, drawing: SVGSVGElement): Promise<void> {
  const { left, top, width, height } = drawing.getBoundingClientRect();
  const copy = drawing.cloneNode(true) as SVGSVGElement;
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg');
  copy.setAttribute('width', String(width));
  copy.setAttribute('height', String(height));
  const originals = [drawing, ...drawing.querySelectorAll('*')];
  [copy, ...copy.querySelectorAll('*')].forEach((element, k) => {
    const style = getComputedStyle(originals[k]);
    for (const name of ['fill', 'stroke', 'stroke-width', 'stroke-dasharray', 'opacity', 'font', 'text-anchor']) {
      element.setAttribute(name, style.getPropertyValue(name));
    }
    if (style.font !== '') element.setAttribute('style', `font: ${style.font}`);
  });
  const image = new Image(width, height);
  image.src = `data:image/svg+xml,${encodeURIComponent(new XMLSerializer().serializeToString(copy))}`;
  await image.decode();
  pen.drawImage(image, left, top, width, height);
}

function drawWords(pen: CanvasRenderingContext2D, part: HTMLElement): void {
  const walker = document.createTreeWalker(part, NodeFilter.SHOW_TEXT);
  const range = document.createRange();
  for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
    const owner = node.parentElement;
    const text = (node.textContent ?? '').replace(/\s+/g, ' ');
    if (owner === null || text.trim() === '' || owner.closest(`svg, ${NOT_DRAWN}`) !== null) continue;
    range.selectNodeContents(node);
    const [line] = range.getClientRects();
    if (line === undefined) continue;
    const style = getComputedStyle(owner);
    // Words that are only spoken are cut away to nothing.
    if (style.clipPath !== 'none') continue;
    pen.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
    pen.fillStyle = style.color;
    pen.textBaseline = 'middle';
    pen.fillText(text, line.left, line.top + line.height / 2);
  }
}

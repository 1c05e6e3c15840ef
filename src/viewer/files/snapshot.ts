import { drawBox, drawVector, drawWords, isBox } from './snapshot-pen.ts';

/** A picture has this many pixels for each of the screen's. */
const FINENESS = 2;
/** What a picture leaves out: it is there to be used, or only spoken. */
const NOT_DRAWN = 'button, select, input, label, fieldset, details, [hidden], [role="status"], [data-page-only]';
const MARGIN = 16;
const BELOW_HEAD = 10;
const HEADING = { size: 14, weight: 600, line: 20 };
const BELOW_HEADING = { size: 12, weight: 400, line: 17 };

/** A canvas that can draw itself finer than the screen shows it; see the picture of the core. */
interface Redrawable {
  readonly soakbenchPicture?: { drawnAt(fineness: number): HTMLCanvasElement | undefined };
}

/** What stands above and below the part, so that the picture can stand alone. */
export interface Frame {
  /** whose numbers these are: the first line is the heading */
  readonly head: readonly string[];
  /** what the page shows elsewhere and the picture needs: a scale */
  readonly foot?: {
    readonly height: number;
    readonly paint: (pen: CanvasRenderingContext2D, style: CSSStyleDeclaration, width: number) => void;
  };
}

/**
 * A part of the page as PNG at twice the size on screen: its drawings, boxes and words, without its controls.
 *
 * @param part - an element with canvases, vector drawings and text
 */
export async function snapshot(part: HTMLElement, { head, foot }: Frame): Promise<Blob> {
  const { left, bottom, width } = part.getBoundingClientRect();
  const drawn = drawnIn(part);
  // Where the controls stood there is nothing to see.
  const top = Math.min(bottom, ...drawn.map(({ place }) => place.top)) - BELOW_HEAD;
  const height = bottom - top;
  const style = getComputedStyle(part);
  const canvas = document.createElement('canvas');
  const pen = canvas.getContext('2d');
  if (pen === null) throw new Error('the browser offers nothing to draw on');
  const lines = headLines(pen, style, head, width - 2 * MARGIN);
  const above = lines.reduce((sum, { look }) => sum + look.line, 12);
  canvas.width = Math.round(FINENESS * width);
  canvas.height = Math.round(FINENESS * (above + height + (foot?.height ?? 0)));
  pen.scale(FINENESS, FINENESS);
  pen.fillStyle = style.getPropertyValue('--panel');
  pen.fillRect(0, 0, width, above + height + (foot?.height ?? 0));

  paintHead(pen, style, lines);
  pen.translate(-left, above - top);
  for (const { draw } of drawn) await draw(pen);
  pen.translate(left, top + height);
  foot?.paint(pen, style, width);
  return new Promise((resolve, reject) => {
    canvas.toBlob(
      (blob) => (blob === null ? reject(new Error('the picture is too large')) : resolve(blob)),
      'image/png',
    );
  });
}

interface HeadLine {
  readonly text: string;
  readonly look: typeof HEADING;
}

/** The lines of the head, broken at words where they are longer than the picture is wide. */
function headLines(
  pen: CanvasRenderingContext2D,
  style: CSSStyleDeclaration,
  head: readonly string[],
  room: number,
): HeadLine[] {
  return head.flatMap((text, k) => {
    const look = k === 0 ? HEADING : BELOW_HEADING;
    pen.font = `${look.weight} ${look.size}px ${style.fontFamily}`;
    const lines: string[] = [];
    for (const word of text.split(' ')) {
      const longer = lines.length === 0 ? word : `${lines[lines.length - 1]} ${word}`;
      if (lines.length > 0 && pen.measureText(longer).width <= room) lines[lines.length - 1] = longer;
      else lines.push(word);
    }
    return lines.map((line) => ({ text: line, look }));
  });
}

function paintHead(pen: CanvasRenderingContext2D, style: CSSStyleDeclaration, lines: readonly HeadLine[]): void {
  let y = 8;
  for (const { text, look } of lines) {
    pen.font = `${look.weight} ${look.size}px ${style.fontFamily}`;
    pen.fillStyle = style.getPropertyValue(look === HEADING ? '--ink' : '--ink2');
    pen.textBaseline = 'middle';
    pen.fillText(text, MARGIN, y + look.line / 2);
    y += look.line;
  }
}

/** Something to draw, and where the page has it. */
interface Drawn {
  readonly place: DOMRect;
  readonly draw: (pen: CanvasRenderingContext2D) => void | Promise<void>;
}

/** Everything of a part that can be seen, in the order in which the page lays one over the other. */
function drawnIn(part: HTMLElement): Drawn[] {
  const drawn: Drawn[] = [];
  const walker = document.createTreeWalker(part, NodeFilter.SHOW_ELEMENT | NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
    const owner = node instanceof Element ? node : node.parentElement;
    if (owner === null || !isDrawn(owner)) continue;
    // A drawing within a drawing, and words in one, come with the outermost.
    if (owner.closest('svg') !== null && (owner !== node || owner.parentElement?.closest('svg') != null)) continue;
    const place = owner.getBoundingClientRect();
    const found = node;
    if (found instanceof Text) {
      if (found.data.trim() !== '') drawn.push({ place, draw: (pen) => drawWords(pen, found, owner) });
    } else if (found instanceof HTMLCanvasElement) drawn.push({ place, draw: (pen) => drawCanvas(pen, found) });
    else if (found instanceof SVGSVGElement) drawn.push({ place, draw: (pen) => drawVector(pen, found) });
    else if (found instanceof HTMLElement && isBox(found)) drawn.push({ place, draw: (pen) => drawBox(pen, found) });
  }
  return drawn;
}

function isDrawn(element: Element): boolean {
  if (element.closest(NOT_DRAWN) !== null || element.closest('.spoken') !== null) return false;
  // What is only spoken on this width is cut away to nothing.
  return element.getClientRects().length > 0 && getComputedStyle(element).clipPath === 'none';
}

function drawCanvas(pen: CanvasRenderingContext2D, source: HTMLCanvasElement & Redrawable): void {
  const { left, top, width, height } = source.getBoundingClientRect();
  pen.drawImage(source.soakbenchPicture?.drawnAt(FINENESS) ?? source, left, top, width, height);
}

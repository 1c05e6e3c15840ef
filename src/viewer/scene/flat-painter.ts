import { cssColour } from '../colour-scale.ts';
import { type Face, placeOn } from './block.ts';
import { type Frame, type FrameBlock, HALO, LINES, type Painter, strengthAt } from './painter.ts';
import { type Projection, project } from './projection.ts';

/** Draws without a graphics card: faces one after the other, those behind first. */
export class FlatPainter implements Painter {
  private readonly field = document.createElement('canvas');

  paint(frame: Frame, onto: CanvasRenderingContext2D): void {
    onto.imageSmoothingEnabled = false;
    for (const block of frame.blocks) this.paintBlock(frame, block, onto);
    onto.setTransform(1, 0, 0, 1, 0, 0);
  }

  dispose(): void {
    this.field.width = 0;
  }

  private paintBlock(frame: Frame, frameBlock: FrameBlock, onto: CanvasRenderingContext2D): void {
    const { block, projection, colours, neutralPart } = frameBlock;
    const { pixelRatio } = frame;
    this.field.width = block.ny;
    this.field.height = block.nx;
    const image = new ImageData(new Uint8ClampedArray(colours), block.ny, block.nx);
    this.field.getContext('2d')?.putImageData(image, 0, 0);
    for (const face of block.faces) {
      layOver(face, projection, pixelRatio, onto);
      if (face.part === neutralPart) {
        onto.fillStyle = cssColour(frame.neutral);
        onto.fillRect(0, 0, 1, 1);
      } else {
        const { i, j } = face;
        onto.drawImage(this.field, j[0], i[0], j[1] - j[0], i[1] - i[0], 0, 0, 1, 1);
      }
      onto.setTransform(pixelRatio, 0, 0, pixelRatio, 0, 0);
      strokeFace(face, projection, frame, onto);
    }
  }
}

/** Makes the unit square of the canvas the parallelogram of a face, so that its window of the field lies on it. */
function layOver(face: Face, projection: Projection, pixelRatio: number, onto: CanvasRenderingContext2D): void {
  const [x, y] = project(projection, face.corner);
  const [xJ, yJ] = project(projection, placeOn(face, [1, 0]));
  const [xI, yI] = project(projection, placeOn(face, [0, 1]));
  onto.setTransform(pixelRatio, 0, 0, pixelRatio, 0, 0);
  onto.transform(xJ - x, yJ - y, xI - x, yI - y, x, y);
}

function strokeFace(face: Face, projection: Projection, frame: Frame, onto: CanvasRenderingContext2D): void {
  onto.lineJoin = 'round';
  for (const { weight, points } of face.strokes) {
    for (const style of weight === 'outline' ? [HALO, LINES.outline] : [LINES[weight]]) {
      onto.strokeStyle = cssColour(frame[style.in]);
      onto.globalAlpha = style.fades ? style.cover * strengthAt(projection.scale) : style.cover;
      onto.lineWidth = style.width;
      onto.beginPath();
      for (const point of points) onto.lineTo(...project(projection, placeOn(face, point)));
      onto.stroke();
    }
  }
  onto.globalAlpha = 1;
}

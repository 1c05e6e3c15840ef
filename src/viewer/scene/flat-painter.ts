import { cssColour } from '../colour-scale.ts';
import type { Face } from './block.ts';
import { type Frame, type FrameBlock, LINES, type Painter, strengthAt } from './painter.ts';
import { add, type Point, project } from './projection.ts';

/** Draws without a graphics card: faces one after the other, those behind first. */
export class FlatPainter implements Painter {
  private readonly context: CanvasRenderingContext2D;
  private readonly field = document.createElement('canvas');
  private pixelRatio = 1;

  constructor(canvas: HTMLCanvasElement) {
    const context = canvas.getContext('2d');
    if (context === null) throw new Error('the browser gives no canvas to draw on');
    this.context = context;
  }

  paint(frame: Frame): void {
    const { canvas } = this.context;
    this.pixelRatio = frame.pixelRatio;
    const [width, height] = [frame.width, frame.height].map((size) => Math.round(size * frame.pixelRatio));
    if (canvas.width !== width || canvas.height !== height) {
      canvas.width = width;
      canvas.height = height;
    }
    this.context.setTransform(1, 0, 0, 1, 0, 0);
    this.context.clearRect(0, 0, width, height);
    this.context.imageSmoothingEnabled = false;
    for (const block of frame.blocks) this.paintBlock(frame, block);
  }

  pixelAt([x, y]: Point): readonly number[] {
    const place = [x, y].map((value) => Math.floor(value * this.pixelRatio));
    return [...this.context.getImageData(place[0], place[1], 1, 1).data];
  }

  dispose(): void {
    this.context.canvas.width = 0;
    this.field.width = 0;
  }

  private paintBlock(frame: Frame, { block, projection, colours, neutralPart }: FrameBlock): void {
    this.field.width = block.ny;
    this.field.height = block.nx;
    const image = new ImageData(new Uint8ClampedArray(colours), block.ny, block.nx);
    this.field.getContext('2d')?.putImageData(image, 0, 0);
    for (const face of block.faces) {
      this.fillFace(face, projection, face.part === neutralPart ? cssColour(frame.neutral) : undefined);
      this.strokeFace(face, projection, cssColour(frame.ink));
    }
  }

  /** Lays the face's window of the field over its corners; each cell becomes a sharp parallelogram. */
  private fillFace({ corner, edgeI, edgeJ, i, j }: Face, projection: FrameBlock['projection'], plain?: string): void {
    const { context, pixelRatio } = this;
    const [x, y] = project(projection, corner);
    const [xJ, yJ] = project(projection, add(corner, edgeJ));
    const [xI, yI] = project(projection, add(corner, edgeI));
    const edges = [xJ - x, yJ - y, xI - x, yI - y, x, y].map((value) => value * pixelRatio);
    context.setTransform(edges[0], edges[1], edges[2], edges[3], edges[4], edges[5]);
    if (plain === undefined) {
      context.drawImage(this.field, j[0], i[0], j[1] - j[0], i[1] - i[0], 0, 0, 1, 1);
    } else {
      context.fillStyle = plain;
      context.fillRect(0, 0, 1, 1);
    }
  }

  private strokeFace({ strokes }: Face, projection: FrameBlock['projection'], ink: string): void {
    const { context, pixelRatio } = this;
    context.setTransform(pixelRatio, 0, 0, pixelRatio, 0, 0);
    context.strokeStyle = ink;
    context.lineJoin = 'round';
    for (const { weight, points } of strokes) {
      const { cover, width, fades } = LINES[weight];
      context.globalAlpha = fades ? cover * strengthAt(projection.scale) : cover;
      context.lineWidth = width;
      context.beginPath();
      for (const point of points) context.lineTo(...project(projection, point));
      context.stroke();
    }
    context.globalAlpha = 1;
  }
}

import {
  type BufferGeometry,
  DataTexture,
  DoubleSide,
  Group,
  Matrix4,
  Mesh,
  NearestFilter,
  OrthographicCamera,
  Scene,
  type ShaderMaterial,
  Vector2,
  Vector3,
  WebGLRenderer,
} from 'three';
import type { Colour } from '../colour-scale.ts';
import type { CarRole } from '../state/cars.ts';
import type { Block } from './block.ts';
import { faceGeometry, lineGeometry, PART_NUMBER } from './geometries.ts';
import { faceMaterial, lineMaterial } from './materials.ts';
import { type Frame, type FrameBlock, type Painter, strengthAt } from './painter.ts';
import { add, type Vector, type View } from './projection.ts';

/** Distance of the camera from the middle of the picture, and of everything from it at most [pixels]. */
const FAR = 4000;

/** What a graphics card holds for the picture. */
export interface CardContent {
  readonly geometries: number;
  readonly textures: number;
  readonly programs: number;
}

/**
 * Draws with the graphics card: both blocks in one scene before one camera without perspective. It draws on a canvas of
 * its own that the frame is copied from, so that what is on the page can be printed, saved and read.
 */
export class SolidPainter implements Painter {
  private readonly renderer: WebGLRenderer;
  private readonly scene = new Scene();
  private readonly camera = new OrthographicCamera();
  private readonly resolution = new Vector2(1, 1);
  private readonly pixelRatio = { value: 1 };
  private readonly solids = new Map<CarRole, Solid>();

  /** @param canvas - not on the page; its context comes with it */
  constructor(canvas: HTMLCanvasElement, context: WebGL2RenderingContext) {
    this.renderer = new WebGLRenderer({ canvas, context, alpha: true, antialias: true });
    this.renderer.setClearColor(0x000000, 0);
  }

  paint(frame: Frame, onto: CanvasRenderingContext2D): void {
    const { width, height, blocks } = frame;
    this.fit(frame);
    for (const [role, solid] of this.solids) {
      if (!blocks.some((each) => each.role === role)) this.remove(role, solid);
    }
    for (const each of blocks) this.solidOf(each).show(each, frame);
    if (blocks.length > 0) this.aim(blocks[0].projection.view, width, height);
    this.renderer.render(this.scene, this.camera);
    // In the same task as the rendering: the card's canvas is empty once its frame is shown.
    onto.drawImage(this.renderer.domElement, 0, 0);
  }

  content(): CardContent {
    const { memory, programs } = this.renderer.info;
    return { geometries: memory.geometries, textures: memory.textures, programs: programs?.length ?? 0 };
  }

  loseContext(): void {
    this.renderer.forceContextLoss();
  }

  restoreContext(): void {
    this.renderer.forceContextRestore();
  }

  /** Lets go of all blocks; the next frame builds them again. A card that was lost takes what it held with it. */
  forget(): void {
    for (const [role, solid] of this.solids) this.remove(role, solid);
  }

  dispose(): void {
    this.forget();
    this.renderer.dispose();
    // Browsers keep a small number of contexts alive; this one is given back at once.
    if (!this.renderer.getContext().isContextLost()) this.renderer.forceContextLoss();
  }

  private fit({ width, height, pixelRatio }: Frame): void {
    const size = this.renderer.getSize(new Vector2());
    if (size.x === width && size.y === height && this.renderer.getPixelRatio() === pixelRatio) return;
    this.renderer.setPixelRatio(pixelRatio);
    this.renderer.setSize(width, height, false);
    this.resolution.set(width, height);
    this.pixelRatio.value = pixelRatio;
  }

  private solidOf({ role, block }: FrameBlock): Solid {
    const known = this.solids.get(role);
    if (known !== undefined) {
      if (known.block !== block) known.rebuild(block);
      return known;
    }
    const solid = new Solid(block, this.resolution, this.pixelRatio);
    this.solids.set(role, solid);
    this.scene.add(solid.group);
    return solid;
  }

  private remove(role: CarRole, solid: Solid): void {
    this.scene.remove(solid.group);
    solid.dispose();
    this.solids.delete(role);
  }

  private aim({ right, up, toward }: View, width: number, height: number): void {
    const { camera } = this;
    Object.assign(camera, { left: -width / 2, right: width / 2, top: height / 2, bottom: -height / 2 });
    Object.assign(camera, { near: 0, far: 2 * FAR });
    camera.position.set(...toward).multiplyScalar(FAR);
    camera.quaternion.setFromRotationMatrix(
      new Matrix4().makeBasis(new Vector3(...right), new Vector3(...up), new Vector3(...toward)),
    );
    camera.updateProjectionMatrix();
  }
}

/** A block on the graphics card: its faces with the field as a texture, one texel a cell, and its lines. */
class Solid {
  block: Block;
  readonly group = new Group();
  private texture: DataTexture;
  private readonly faces: Mesh<BufferGeometry, ShaderMaterial>;
  private readonly lines: Mesh<BufferGeometry, ShaderMaterial>;

  constructor(block: Block, resolution: Vector2, pixelRatio: { value: number }) {
    this.block = block;
    this.texture = fieldTexture(block);
    this.faces = new Mesh(faceGeometry(block), faceMaterial(this.texture));
    this.lines = new Mesh(lineGeometry(block), lineMaterial(resolution, pixelRatio));
    for (const mesh of [this.faces, this.lines]) {
      mesh.material.side = DoubleSide;
      mesh.frustumCulled = false;
      this.group.add(mesh);
    }
  }

  /** Takes another shape; what the shaders were built for stays. */
  rebuild(block: Block): void {
    this.block = block;
    for (const mesh of [this.faces, this.lines]) mesh.geometry.dispose();
    this.faces.geometry = faceGeometry(block);
    this.lines.geometry = lineGeometry(block);
    const { width, height } = this.texture.image;
    if (width === block.ny && height === block.nx) return;
    this.texture.dispose();
    this.texture = fieldTexture(block);
    this.faces.material.uniforms.field.value = this.texture;
  }

  show({ projection, colours, neutralPart }: FrameBlock, { width, height, ink, paper, neutral }: Frame): void {
    const { view, scale, middle } = projection;
    const place = add(scaled(view.right, middle[0] - width / 2), view.up, height / 2 - middle[1]);
    this.group.position.set(...place);
    this.group.scale.setScalar(scale);
    (this.texture.image.data as Uint8Array).set(colours);
    this.texture.needsUpdate = true;
    const [onFaces, onLines] = [this.faces.material.uniforms, this.lines.material.uniforms];
    onFaces.neutral.value.set(...shares(neutral));
    onFaces.neutralPart.value = neutralPart === undefined ? -1 : PART_NUMBER[neutralPart];
    onLines.ink.value.set(...shares(ink));
    onLines.paper.value.set(...shares(paper));
    onLines.strength.value = strengthAt(scale);
  }

  dispose(): void {
    this.texture.dispose();
    for (const mesh of [this.faces, this.lines]) {
      mesh.geometry.dispose();
      mesh.material.dispose();
    }
  }
}

function fieldTexture({ nx, ny }: Block): DataTexture {
  const texture = new DataTexture(new Uint8Array(4 * nx * ny), ny, nx);
  texture.magFilter = NearestFilter;
  texture.minFilter = NearestFilter;
  return texture;
}

function scaled(vector: Vector, times: number): Vector {
  return add([0, 0, 0], vector, times);
}

function shares([red, green, blue]: Colour): [number, number, number] {
  return [red / 255, green / 255, blue / 255];
}

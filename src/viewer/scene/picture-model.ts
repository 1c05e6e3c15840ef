import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { ColumnName } from '../../sim/index.ts';
import { type Colour, type ColourScale, colourScale } from '../colour-scale.ts';
import type { PageProps } from '../page.tsx';
import type { Car, CarRole, CarRun } from '../state/cars.ts';
import { columnAt, type Moment, momentAt } from '../state/clock.ts';
import { type Block, buildBlock, type Face } from './block.ts';
import { blockShape } from './block-shape.ts';
import { cellTemperature, fillColours, fillPlain, isSolvedAt } from './core-field.ts';
import { footOrder } from './foot.ts';
import { type Layout, layOut, type PlacedBlock } from './layout.ts';
import type { Frame, FrameBlock } from './painter.ts';
import { type Cell, cellToPixel, levelFaceOf, pickCell } from './picking.ts';
import type { Point } from './projection.ts';

export interface PicturedCar {
  readonly role: CarRole;
  readonly car: Car;
  readonly run: CarRun;
}

/** What is being read: whatever cell is under the pointer, or the one that keys walked to. */
export type Reading =
  | { readonly by: 'pointer'; readonly at: Point }
  | { readonly by: 'keys'; readonly role: CarRole; readonly cell: Cell };

/** A cell that is read, where it is seen, and the pixel that its number stands beside. */
export interface ReadCell {
  readonly placed: PlacedBlock;
  readonly cell: Cell;
  readonly face: Face;
  readonly at: Point;
}

/** What the picture shows, worked out from the state of the page whenever that changes; no DOM. */
export class PictureModel {
  /** pixels of the page that the picture fills */
  readonly size: Signal<{ readonly width: number; readonly height: number }> = signal({ width: 0, height: 0 });
  readonly reading: Signal<Reading | undefined> = signal(undefined);
  readonly cars: ReadonlySignal<readonly PicturedCar[]>;
  readonly scale: ReadonlySignal<ColourScale>;
  readonly layout: ReadonlySignal<Layout | undefined>;
  readonly read: ReadonlySignal<ReadCell | undefined>;
  readonly props: PageProps;
  private readonly blocks = new Map<CarRole, { readonly key: string; readonly block: Block }>();
  private readonly colours = new Map<CarRole, Uint8ClampedArray>();

  constructor(props: PageProps) {
    this.props = props;
    const { session, display } = props;
    this.cars = computed(() => {
      const found: PicturedCar[] = [];
      const [before, after] = [session.before.value, session.after.value];
      if (before !== undefined) found.push({ role: 'before', car: before, run: session.beforeRun.value });
      if (after !== undefined) found.push({ role: 'after', car: after, run: session.afterRun.value });
      return found;
    });
    this.scale = computed(() =>
      colourScale(
        display.colourBy.value,
        this.cars.value.map(({ run }) => run.series),
      ),
    );
    this.layout = computed(() => {
      const { width, height } = this.size.value;
      const blocks = this.cars.value.map((pictured) => ({
        role: pictured.role,
        block: this.blockOf(pictured),
        leaksPast: pictured.car.config.core.leakPast > 0,
      }));
      if (blocks.length === 0 || width === 0 || height === 0) return undefined;
      const behind = this.inHand?.car.config.bypass.shareAfterCore ?? 0;
      const taken = { isTakenBehind: behind > 0, isTakenBefore: behind < 1 };
      const foot = this.inHand && footOrder(this.inHand.car.config);
      return layOut({ width, height, camera: display.camera.value, blocks, ...taken, ...(foot && { foot }) });
    });
    this.read = computed(() => findCell(this.reading.value, this.layout.value));
  }

  /** The car whose loop is drawn. */
  get inHand(): PicturedCar | undefined {
    return this.cars.value[this.cars.value.length - 1];
  }

  carOf(role: CarRole): PicturedCar | undefined {
    return this.cars.value.find((each) => each.role === role);
  }

  /** Where the time on screen stands in a car's run; undefined where that is not solved. */
  momentOf({ run: { series } }: PicturedCar): Moment | undefined {
    const time = this.props.clock.shown.value;
    return series !== undefined && isSolvedAt(series, time) ? momentAt(series, time) : undefined;
  }

  /** A recorded quantity at the time on screen, SI. */
  valueOf(pictured: PicturedCar, name: ColumnName): number | undefined {
    const { series } = pictured.run;
    const moment = this.momentOf(pictured);
    return series === undefined || moment === undefined ? undefined : columnAt(series, name, moment);
  }

  /** Temperature of a cell as the core is coloured, at the time on screen [K]. */
  temperatureAt(pictured: PicturedCar, { i, j }: Cell): number | undefined {
    const moment = this.momentOf(pictured);
    const core = pictured.run.series?.core;
    if (core === undefined || moment === undefined || i >= core.nx || j >= core.ny) return undefined;
    return cellTemperature(core, this.props.display.colourBy.value, moment, i, j);
  }

  /** The blocks with the colours of the time on screen. */
  frame(layout: Layout, pixelRatio: number, tones: Pick<Frame, 'ink' | 'paper' | 'neutral'>): Frame {
    const colourBy = this.props.display.colourBy.value;
    const neutralPart = colourBy === 'air' ? 'tube' : colourBy === 'coolant' ? 'fin' : undefined;
    const blocks = layout.blocks.map(
      ({ role, block, projection }): FrameBlock => ({
        role,
        block,
        projection,
        colours: this.coloursOf(role, block, tones.neutral),
        neutralPart,
      }),
    );
    return { width: layout.width, height: layout.height, pixelRatio, blocks, ...tones };
  }

  private coloursOf(role: CarRole, block: Block, neutral: Colour): Uint8ClampedArray {
    const length = 4 * block.nx * block.ny;
    let colours = this.colours.get(role);
    if (colours?.length !== length) {
      colours = new Uint8ClampedArray(length);
      this.colours.set(role, colours);
    }
    const pictured = this.carOf(role);
    const moment = pictured && this.momentOf(pictured);
    const core = pictured?.run.series?.core;
    if (core === undefined || moment === undefined) fillPlain(neutral, colours);
    else fillColours(core, this.props.display.colourBy.value, moment, this.scale.value, neutral, colours);
    return colours;
  }

  /** The same block as long as nothing that it is built from changes, so that it is not built for every frame. */
  private blockOf({ role, car, run }: PicturedCar): Block {
    const { show } = this.props.display;
    const { hasCellLines, tubes, apart } = this.props.display.drawing;
    const { core } = car.config;
    const [nx, ny] =
      run.series?.core === undefined
        ? [core.cellsAlongAir, core.cellsAlongCoolant]
        : [run.series.core.nx, run.series.core.ny];
    const shape = blockShape(core, tubes.value);
    const options = { show: show.value, hasCellLines: hasCellLines.value, apart: apart.value };
    const key = JSON.stringify([shape, nx, ny, options]);
    const known = this.blocks.get(role);
    if (known?.key === key) return known.block;
    const block = buildBlock(shape, nx, ny, options);
    this.blocks.set(role, { key, block });
    return block;
  }
}

function findCell(reading: Reading | undefined, layout: Layout | undefined): ReadCell | undefined {
  if (reading === undefined || layout === undefined) return undefined;
  for (const placed of layout.blocks) {
    const { block, projection } = placed;
    if (reading.by === 'pointer') {
      const found = pickCell(block, projection, reading.at);
      if (found !== undefined) return { placed, ...found, at: reading.at };
    } else if (reading.role === placed.role) {
      const cell = { i: Math.min(reading.cell.i, block.nx - 1), j: Math.min(reading.cell.j, block.ny - 1) };
      return { placed, cell, face: levelFaceOf(block, cell), at: cellToPixel(block, projection, cell) };
    }
  }
  return undefined;
}

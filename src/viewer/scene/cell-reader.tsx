import { degrees } from '../format.ts';
import { ROLE_NAMES } from '../state/cars.ts';
import type { PlacedBlock } from './layout.ts';
import { cellOutline, walked } from './picking.ts';
import type { PictureModel, ReadCell } from './picture-model.ts';

/** Where the arrow keys lead: cells along the air and along the coolant. */
const STEPS: Readonly<Record<string, readonly [i: number, j: number]>> = {
  ArrowUp: [1, 0],
  ArrowDown: [-1, 0],
  ArrowRight: [0, 1],
  ArrowLeft: [0, -1],
  PageUp: [Number.POSITIVE_INFINITY, 0],
  PageDown: [Number.NEGATIVE_INFINITY, 0],
  End: [0, Number.POSITIVE_INFINITY],
  Home: [0, Number.NEGATIVE_INFINITY],
};
const TIP_WIDTH = 236;
const TIP_HEIGHT = 56;

/** One place to focus for each core, the cell that is read, and its number. */
export function CellReader({ model }: { readonly model: PictureModel }) {
  const layout = model.layout.value;
  if (layout === undefined) return null;
  const read = model.read.value;
  const isByKeys = model.reading.value?.by === 'keys';
  return (
    <>
      {layout.blocks.map((each) => (
        <BlockFocus key={each.role} placed={each} model={model} isAlone={layout.blocks.length === 1} />
      ))}
      <p id="picture-keys" class="spoken">
        Arrow keys go from cell to cell: up and down along the air, left and right along the coolant. Page up, page
        down, Home and End go to the sides.
      </p>
      {read !== undefined && <Tip read={read} model={model} />}
      <p class="spoken" role="status">
        {read !== undefined && isByKeys ? describeCell(model, read).join(': ') : ''}
      </p>
    </>
  );
}

interface BlockFocusProps {
  readonly placed: PlacedBlock;
  readonly model: PictureModel;
  readonly isAlone: boolean;
}

function BlockFocus({ placed: { role, block, bounds }, model, isAlone }: BlockFocusProps) {
  const { x, y, width, height } = bounds;
  return (
    <div
      class="picture-focus"
      role="application"
      aria-label={isAlone ? 'Cells of the core' : `${ROLE_NAMES[role]}: cells of the core`}
      aria-describedby="picture-keys"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: its keys walk the cells
      tabIndex={0}
      style={{ left: `${x}px`, top: `${y}px`, width: `${width}px`, height: `${height}px` }}
      onKeyDown={(event) => {
        if (event.key === 'Escape') {
          model.reading.value = undefined;
          return;
        }
        const step = STEPS[event.key];
        if (step === undefined || event.ctrlKey || event.altKey || event.metaKey) return;
        event.preventDefault();
        const current = model.reading.value;
        const start = current?.by === 'keys' && current.role === role ? current.cell : undefined;
        model.reading.value = { role, by: 'keys', cell: walked(start, step, block.nx, block.ny) };
      }}
      onBlur={() => {
        if (model.reading.value?.by === 'keys') model.reading.value = undefined;
      }}
    />
  );
}

/** The cell that is read, outlined, and its number beside it. */
function Tip({ read, model }: { readonly read: ReadCell; readonly model: PictureModel }) {
  const { placed, cell, face, at } = read;
  const corners = cellOutline(face, placed.projection, cell)
    .map((point) => point.join(','))
    .join(' ');
  const { width, height } = model.size.value;
  const [x, y] = at;
  const left = Math.max(4, Math.min(x + 14, width - TIP_WIDTH - 4));
  const top = y + 14 + TIP_HEIGHT > height ? y - 14 - TIP_HEIGHT : y + 14;
  const [place, value] = describeCell(model, read);
  return (
    <>
      <svg class="picture-cell" width={width} height={height} aria-hidden="true">
        <polygon points={corners} />
        <polygon points={corners} />
      </svg>
      <p class="picture-tip" aria-hidden="true" style={{ left: `${left}px`, top: `${top}px` }}>
        <b>{value}</b>
        <span>{place}</span>
      </p>
    </>
  );
}

function describeCell(model: PictureModel, { placed: { role, block }, cell }: ReadCell): [string, string] {
  const { colourBy, units } = model.props.display;
  const car = model.carOf(role);
  const value = car && model.temperatureAt(car, cell);
  const number = value === undefined ? 'not solved at this time' : degrees(value, units.value);
  const place = `along the air ${cell.i + 1} of ${block.nx}, along the coolant ${cell.j + 1} of ${block.ny}`;
  const isAlone = model.cars.value.length === 1;
  return [isAlone ? place : `${ROLE_NAMES[role]}: ${place}`, `${colourBy.value} ${number}`];
}

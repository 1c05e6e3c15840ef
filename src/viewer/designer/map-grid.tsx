import { useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import type { CoreMap, CoreMapPoint } from '../../sim/index.ts';
import { cssColour, inkOn } from '../colour-scale.ts';
import { length, NO_BREAK_SPACE } from '../format.ts';
import type { Car } from '../state/cars.ts';
import type { UnitChoice } from '../state/display.ts';
import { type MapCell, type MapShow, type MapTable, mapTable, ownCore, wide } from './core-map.ts';
import { finsPerInch } from './shown.ts';

interface MapGridProps {
  readonly map: CoreMap;
  readonly show: MapShow;
  /** times the width of this car's core */
  readonly width: number;
  readonly car: Car;
  readonly units: UnitChoice;
  readonly onPick: (point: CoreMapPoint) => void;
}

interface Place {
  readonly row: number;
  readonly column: number;
}

const STEPS: Readonly<Record<string, readonly [rows: number, columns: number]>> = {
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
};

/** The map as one table for eyes, keys and screen readers: arrows go about in it, Enter takes a cell. */
export function MapGrid({ map, show, width, car, units, onPick }: MapGridProps) {
  const own = ownCore(car);
  const table = mapTable(map, show, own ?? { finPitch: 0, depth: 0 }, units, width);
  const body = useRef<HTMLTableSectionElement>(null);
  /** the one cell that Tab stops at */
  const stop = useSignal<Place>(firstStop(table));
  const onKeyDown = (event: KeyboardEvent) => {
    const step = STEPS[event.key];
    if (step === undefined) return;
    event.preventDefault();
    const row = stop.value.row + step[0];
    const column = stop.value.column + step[1];
    if (table.rows[row]?.cells[column] === undefined) return;
    stop.value = { row, column };
    // The first column names the row.
    body.current?.rows[row].cells[column + 1].querySelector('button')?.focus();
  };
  return (
    <>
      <table class="map-grid">
        <caption>
          First pull: {show} ({table.unit}) by fins per inch and depth ({table.depthUnit}){wide(width)}
        </caption>
        <thead>
          <tr>
            <th scope="col">
              fins<span class="spoken"> per inch</span>
            </th>
            {table.depths.map((depth) => (
              <th scope="col" key={depth}>
                {length(depth, units).split(NO_BREAK_SPACE)[0]}
                <span class="spoken"> {table.depthUnit} deep</span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody ref={body} onKeyDown={onKeyDown}>
          {table.rows.map(({ finPitch, cells }, row) => (
            <tr key={finPitch}>
              <th scope="row">{finsPerInch(finPitch)}</th>
              {cells.map((cell, column) => (
                <td key={table.depths[column]}>
                  {cell && (
                    <Cell
                      cell={cell}
                      isStop={stop.value.row === row && stop.value.column === column}
                      onPick={() => {
                        stop.value = { row, column };
                        onPick(cell.point);
                      }}
                    />
                  )}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <Key table={table} />
    </>
  );
}

/** The car's own cell, or the first there is. */
function firstStop({ rows }: MapTable): Place {
  const row = rows.findIndex(({ cells }) => cells.some((cell) => cell?.isOwn));
  if (row >= 0) return { row, column: rows[row].cells.findIndex((cell) => cell?.isOwn) };
  return { row: 0, column: Math.max(0, rows[0]?.cells.findIndex((cell) => cell !== undefined) ?? 0) };
}

interface CellProps {
  readonly cell: MapCell;
  readonly isStop: boolean;
  readonly onPick: () => void;
}

function Cell({ cell, isStop, onPick }: CellProps) {
  const { text, word, said, colour, isOwn, bestFor } = cell;
  const style = colour && { backgroundColor: cssColour(colour), color: inkOn(colour) };
  return (
    <button
      type="button"
      class={isOwn ? 'cell own' : 'cell'}
      style={style}
      tabIndex={isStop ? 0 : -1}
      aria-label={said}
      aria-pressed={isOwn}
      title={said}
      onClick={onPick}
    >
      <span>
        {text}
        {bestFor.length > 0 && <b>*</b>}
      </span>
      {word !== '' && <span class="word">{word}</span>}
    </button>
  );
}

/** What the colours and the marks stand for. */
function Key({ table }: { readonly table: MapTable }) {
  return (
    <p class="small map-key">
      <span class="ramp">
        <span>{table.ends[0]}</span>
        <i aria-hidden="true" />
        <span>{table.ends[1]}</span>
      </span>
      Open: too open to cool. Dense: too dense to breathe. Framed: this car. * the best for a goal below. A click, or
      Enter, makes a cell After's core; arrow keys go from cell to cell.
    </p>
  );
}

import './range-list.css';
import { type Signal, useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { Scenario } from '../../../sim/index.ts';
import { Fold } from '../../fields/fold.tsx';
import { measureOf, valueText } from '../../fields/measure.ts';
import { capitalised } from '../../format.ts';
import type { UnitChoice } from '../../state/display.ts';
import type { FileNumber } from '../file-numbers.ts';
import { NumberSelect } from '../number-select.tsx';
import { isNumber } from '../typed.ts';
import { numberInput } from '../typed-box.tsx';
import {
  isUsual,
  type OwnRanges,
  type Side,
  USUAL_RANGES,
  withAdded,
  withEnd,
  withoutAdded,
  withTick,
} from './own-ranges.ts';
import { lostRanges, type RangeFault, type RangeRow } from './range-rows.ts';
import { basisOf, captionOf, endText, isTyped, summaryOf, typedEnd } from './range-words.ts';

interface RangeListProps {
  readonly scenario: Scenario;
  /** all of the car, each of which may be added */
  readonly numbers: readonly FileNumber[];
  readonly units: UnitChoice;
  readonly own: Signal<OwnRanges>;
  readonly rows: readonly RangeRow[];
  readonly fault: RangeFault | undefined;
}

/** What is varied and how far: folded a line, opened a row for each input. */
export function RangeList(props: RangeListProps) {
  const { scenario, numbers, own, rows } = props;
  const lost = lostRanges(scenario, numbers, own.value);
  return (
    <div class="ranges">
      <Fold title={summaryOf(rows)}>{() => <Rows {...props} />}</Fold>
      <p class="small" role="status">
        {lost.length > 0 && `Not in this car, and left off the list: ${lost.join('; ')}.`}
      </p>
    </div>
  );
}

function Rows(props: RangeListProps) {
  const { own, rows } = props;
  const list = useRef<HTMLUListElement>(null);
  const choice = useRef<HTMLSelectElement>(null);
  /** an input that was just added takes the focus, so that its range can be typed at once */
  const added = useRef<string | undefined>(undefined);
  useEffect(() => {
    const row = rows.findIndex(({ key }) => key === added.current);
    if (row >= 0) list.current?.children[row]?.querySelector<HTMLElement>('.range-ends input')?.focus();
    added.current = undefined;
  }, [rows]);
  // What takes a row or a button off the page hands the focus on.
  const change = (changed: OwnRanges) => {
    own.value = changed;
    choice.current?.focus();
  };
  return (
    <>
      <p class="small">{basisOf(rows)}</p>
      <ul ref={list}>
        {rows.map((row) => (
          <Row key={row.key} {...props} row={row} onTakeOff={() => change(withoutAdded(own.value, row.key))} />
        ))}
      </ul>
      <div class="range-acts">
        <AddInput
          {...props}
          choice={choice}
          onAdd={(number) => {
            added.current = number.path;
            own.value = withAdded(own.value, number);
          }}
        />
        {!isUsual(own.value) && (
          <button type="button" class="link" onClick={() => change(USUAL_RANGES)}>
            Back to the usual ranges
          </button>
        )}
      </div>
    </>
  );
}

interface RowProps extends RangeListProps {
  readonly row: RangeRow;
  readonly onTakeOff: () => void;
}

function Row({ row, units, own, fault, onTakeOff }: RowProps) {
  const { key, input, fileUnit, ends, isVaried, number } = row;
  const isWrong = (side: Side): boolean =>
    (ends[side] !== undefined && !isNumber(ends[side].value)) || (fault?.key === key && (fault.side ?? side) === side);
  const box = (side: Side) => (
    <input
      {...numberInput(endText(row, side, units), isVaried && isWrong(side), (text) => {
        own.value = withEnd(own.value, key, side, typedEnd(row, text, units));
      })}
      aria-label={`${capitalised(input.name)}, ${side}`}
      disabled={!isVaried}
    />
  );
  return (
    <li class={isVaried ? undefined : 'left-out'}>
      <label class="range-name">
        <input
          type="checkbox"
          checked={isVaried}
          onChange={() => {
            own.value = withTick(own.value, key);
          }}
        />
        {capitalised(input.name)}
      </label>
      <span class="range-ends">
        {box('low')} to {box('high')} {captionOf(row, units)}
      </span>
      <span class="range-basis small">
        {isTyped(row) ? 'Typed' : 'Usual'}
        {number && `; the car has ${valueText(number.value, measureOf(fileUnit, units))}`}
        {number && (
          <button type="button" class="link" onClick={onTakeOff}>
            Take off<span class="spoken"> {input.name}</span>
          </button>
        )}
      </span>
    </li>
  );
}

interface AddInputProps extends RangeListProps {
  readonly choice: { current: HTMLSelectElement | null };
  readonly onAdd: (number: FileNumber) => void;
}

/** Any other number of the car, by its name, under the part that has it. */
function AddInput({ numbers, own, choice, onAdd }: AddInputProps) {
  const chosen = useSignal('');
  const others = numbers.filter(({ path }) => own.value.added.every((each) => each.path !== path));
  const number = others.find(({ path }) => path === chosen.value);
  return (
    <>
      <NumberSelect
        label="Add an input"
        numbers={others}
        path={number?.path ?? ''}
        none="Choose a number of the car"
        onChoose={(each) => {
          chosen.value = each?.path ?? '';
        }}
        selectRef={choice}
      />
      <button
        type="button"
        onClick={() => {
          if (number === undefined) choice.current?.focus();
          else onAdd(number);
          chosen.value = '';
        }}
      >
        Add
      </button>
    </>
  );
}

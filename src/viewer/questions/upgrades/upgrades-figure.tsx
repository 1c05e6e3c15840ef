import './upgrades-figure.css';
import { placeOn, UprightLines } from '../../figures/scales.tsx';
import { briefly, fixed, named, onScreen } from '../../format.ts';
import type { Dumbbell, UpgradeMarks } from './upgrade-marks.ts';

const WIDTH = 380;
const LEFT = 14;
/** Room for what is written beside a mark. */
const RIGHT = 92;
const TOP = 36;
const ROW = 56;
const FOOT = 34;
/** Of a row: its name, then the two marks. */
const NAME = 16;
const ALONE = 28;
const IN_ORDER = 42;
/** Letters of a name that fit over a row. */
const LETTERS = 52;

interface UpgradesFigureProps {
  readonly marks: UpgradeMarks;
  readonly unit: string;
  /** "the best order" */
  readonly orderName: string;
}

/** Deciding peak with each upgrade, alone and on top of those before it, against the limit. */
export function UpgradesFigure({ marks, unit, orderName }: UpgradesFigureProps) {
  const { rows, range, ticks, limit, asItIs } = marks;
  const x = placeOn(range, LEFT, WIDTH - RIGHT);
  const floor = TOP + ROW * rows.length + 4;
  return (
    <figure class="upgrades-figure">
      <svg
        viewBox={`0 0 ${WIDTH} ${floor + FOOT}`}
        role="img"
        aria-label="Deciding peak with each upgrade, alone and in order; the tables have the numbers"
      >
        <UprightLines ticks={ticks} place={x} write={briefly} from={floor} to={TOP} />
        <text x={WIDTH - RIGHT} y={floor + 29} text-anchor="end">
          {named('Peak of the deciding pull', unit)}
        </text>
        <Upright x={x(limit)} y={12} floor={floor} class="limit" says={`limit ${fixed(limit, 1)}`} />
        {asItIs !== undefined && (
          <Upright x={x(asItIs)} y={27} floor={floor} class="mark" says={`as it is ${fixed(asItIs, 1)}`} />
        )}
        {rows.map(({ name, alone, inOrder }, k) => (
          <g key={name} transform={`translate(0 ${TOP + ROW * k})`}>
            <text class="name" x={2} y={NAME}>
              {onScreen(name.length > LETTERS ? `${name.slice(0, LETTERS - 1)}…` : name)}
            </text>
            <Mark {...alone} x={x} y={ALONE} shape="circle" />
            <Mark {...inOrder} x={x} y={IN_ORDER} shape="square" />
          </g>
        ))}
      </svg>
      <figcaption class="small">
        ● alone, on the car as it is. ■ on top of those before it, in {orderName}. ○ □ without it. Left is colder; up to
        the limit a pull counts.
      </figcaption>
    </figure>
  );
}

interface UprightProps {
  readonly x: number;
  readonly y: number;
  readonly floor: number;
  readonly class: string;
  readonly says: string;
}

/** A line from top to bottom with its name on the side where there is room. */
function Upright({ x, y, floor, class: kind, says }: UprightProps) {
  const isRight = x > WIDTH / 2;
  return (
    <>
      <line class={kind} x1={x} x2={x} y1={y - 10} y2={floor} />
      <text x={isRight ? x - 5 : x + 5} y={y} text-anchor={isRight ? 'end' : 'start'}>
        {says}
      </text>
    </>
  );
}

interface MarkProps extends Dumbbell {
  readonly x: (value: number) => number;
  readonly y: number;
  readonly shape: 'circle' | 'square';
}

function Mark({ without, with: reached, says, x, y, shape }: MarkProps) {
  const rightmost = Math.max(
    ...[without, reached].flatMap((value) => (value === undefined ? [] : [x(value)])),
    LEFT - 8,
  );
  return (
    <>
      {without !== undefined && reached !== undefined && (
        <>
          <line class="way" x1={x(without)} x2={x(reached)} y1={y} y2={y} />
          <Dot class="without" shape={shape} x={x(without)} y={y} />
        </>
      )}
      {reached !== undefined && <Dot class={shape} shape={shape} x={x(reached)} y={y} />}
      <text x={rightmost + 9} y={y + 4}>
        {says}
      </text>
    </>
  );
}

function Dot({ shape, x, y, ...rest }: { shape: MarkProps['shape']; class: string; x: number; y: number }) {
  return shape === 'circle' ? (
    <circle {...rest} cx={x} cy={y} r={4.5} />
  ) : (
    <rect {...rest} x={x - 4} y={y - 4} width={8} height={8} />
  );
}

import type { Config } from '../../sim/index.ts';
import { fixed, length } from '../format.ts';
import type { UnitChoice } from '../state/display.ts';
import { type Dimension, depthView, faceView, PAPER_WIDTH, pitchView, type View } from './drawing.ts';

type CoreShape = NonNullable<Config['core']['geometry']>['shape'];

interface DrawingProps {
  readonly shape: CoreShape;
  readonly units: UnitChoice;
}

/** The core drawn to scale from its measures: one pitch, along the air, and its face. */
export function Drawing({ shape, units }: DrawingProps) {
  const said = (metres: number) => length(metres, units);
  const { fins, tubes, rows, coolantLayers, finLayers } = shape;
  const ports = tubes.kind === 'multi-port' ? `, ${tubes.ports} ports each` : '';
  const stack = coolantLayers * shape.tubeHeight + finLayers * shape.finHeight;
  return (
    <div class="core-drawing">
      <Figure
        title="One pitch of the fins"
        view={pitchView(shape)}
        units={units}
        note={`sheet ${said(shape.finThickness)}, tube wall ${said(shape.tubeWall)}`}
        text={`Fins ${said(shape.finPitch)} from one to the next and ${said(shape.finHeight)} high, between tubes ${said(shape.tubeHeight)} high`}
      />
      <Figure
        title="Along the air"
        view={depthView(shape)}
        units={units}
        note={cutsInWords(fins, said)}
        text={`${said(shape.depth)} deep, ${rows === 1 ? 'one tube' : `${rows} tubes one behind the other`}${ports}`}
      />
      <Figure
        title="Face"
        view={faceView(shape)}
        units={units}
        note={`${coolantLayers} layers of tubes (solid), ${finLayers} of fins (lines)`}
        text={`${said(shape.length)} wide, ${said(stack)} high`}
      />
    </div>
  );
}

function cutsInWords(fins: CoreShape['fins'], said: (metres: number) => string): string {
  if (fins.kind === 'plain') return 'plain fins';
  if (fins.kind === 'offset strip') return `strips ${said(fins.stripLength)} long`;
  const angle = fixed((fins.louvreAngle * 180) / Math.PI, 0);
  return `louvres every ${said(fins.louvrePitch)}, ${said(fins.louvreLength)} long, at ${angle}°`;
}

interface FigureProps {
  readonly title: string;
  readonly view: View;
  readonly units: UnitChoice;
  /** what the view does not carry, below it */
  readonly note: string;
  /** what the view shows, in words */
  readonly text: string;
}

function Figure({ title, view, units, note, text }: FigureProps) {
  return (
    <figure>
      <figcaption>
        <b>{title}</b> <span class="small">{note}</span>
      </figcaption>
      <svg
        viewBox={`0 0 ${PAPER_WIDTH} ${view.height.toFixed(2)}`}
        role="img"
        aria-label={`${title}, to scale. ${text}; ${note}.`}
      >
        {view.metal.map((box) => (
          <rect key={`m${box.x} ${box.y}`} class="metal" {...box} />
        ))}
        {view.coolant.map((box) => (
          <rect key={`c${box.x} ${box.y}`} class="coolant" {...box} />
        ))}
        <path class="fins" d={view.lines} stroke-width={view.lineWidth} />
        {view.dimensions.map((dimension) => (
          <Measure
            key={`${dimension.direction} ${dimension.from}`}
            {...dimension}
            text={length(dimension.measure, units)}
          />
        ))}
      </svg>
    </figure>
  );
}

const TICK = 3;

/** A line between two ends with its length beside it. */
function Measure({ direction, from, to, at, text }: Dimension & { readonly text: string }) {
  const middle = (from + to) / 2;
  if (direction === 'up')
    return (
      <g class="measure">
        <path d={`M${at - TICK} ${from}h${2 * TICK}M${at - TICK} ${to}h${2 * TICK}M${at} ${from}V${to}`} />
        <text x={at - 6} y={middle + 4} text-anchor="end">
          {text}
        </text>
      </g>
    );
  return (
    <g class="measure">
      <path d={`M${from} ${at - TICK}v${2 * TICK}M${to} ${at - TICK}v${2 * TICK}M${from} ${at}H${to}`} />
      <text
        x={to + 6 > PAPER_WIDTH - 50 ? middle : to + 6}
        y={to + 6 > PAPER_WIDTH - 50 ? at + 14 : at + 4}
        text-anchor={to + 6 > PAPER_WIDTH - 50 ? 'middle' : 'start'}
      >
        {text}
      </text>
    </g>
  );
}

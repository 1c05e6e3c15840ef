import { useSignalEffect } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { type Colour, cssColour, inkOn } from '../colour-scale.ts';
import { columnBehind, footOrder } from './foot.ts';
import { type Arrow, PAST_WIDTH, segments } from './layout.ts';
import { PIPE_WIDTH } from './loop-layout.ts';
import type { PicturedCar, PictureModel } from './picture-model.ts';
import type { Point } from './projection.ts';

/** Distance of the marks of a stream [pixels]. */
const MARK_STEP = 28;
/** How fast marks move on screen [pixels per second] for a flow of 1 m3/s of coolant, 1 kg/s of air. */
const COOLANT_SPEED = 180_000;
const AIR_SPEED = 280;
const AIR_PIPE_WIDTH = 9;

/** The loop of the car in hand and the streams of air, behind the blocks. */
export function Pipes({ model }: { readonly model: PictureModel }) {
  const svg = useRef<SVGSVGElement>(null);
  useSignalEffect(() => moveStreams(model, svg.current));
  const layout = model.layout.value;
  const inHand = model.inHand;
  if (layout === undefined || inHand === undefined) return null;
  const { pipes, blocks } = layout;
  const scale = model.scale.value;
  const colourOf = (name: Parameters<PictureModel['valueOf']>[1], car = inHand) => {
    const temperature = model.valueOf(car, name);
    return temperature === undefined ? undefined : scale.colourAt(temperature);
  };
  const { config } = inHand.car;
  const order = footOrder(config);
  const behind = (index: number) => {
    const column = columnBehind(config, order, index);
    return column && colourOf(column);
  };
  const bypass = bypassState(model);
  const discharge = colourOf('dischargeTemperature');
  return (
    <svg class="picture-pipes" width={layout.width} height={layout.height} aria-hidden="true" ref={svg}>
      <Pipe points={pipes.intoCore} colour={colourOf('coolantIntoCore')} stream="coolant" />
      <Pipe points={pipes.outOfCore} colour={colourOf('coolantOutOfCore')} stream="coolant" />
      {pipes.firstOn.length > 0 && <Pipe points={pipes.firstOn} colour={behind(0)} stream="coolant" />}
      <Pipe points={pipes.ontoLast} colour={behind(order.length - 2)} stream="coolant" />
      {isTakenBefore(inHand) && <Bypass points={pipes.bypass} isOpen={bypass === 'open'} colour={discharge} />}
      {pipes.bypassBehind.length > 0 && (
        <Bypass points={pipes.bypassBehind} isOpen={bypass === 'open'} colour={colourOf('chargeTemperature')} />
      )}
      <Pipe points={pipes.air} colour={discharge} stream="air" />
      {blocks.flatMap(({ role, airIn, charge, past }) => {
        const car = model.carOf(role);
        return [
          <Past points={past} colour={colourOf('dischargeTemperature', car)} />,
          ...airIn.map((arrow) => <AirArrow arrow={arrow} colour={colourOf('dischargeTemperature', car)} />),
          ...charge.map((arrow) => <AirArrow arrow={arrow} colour={colourOf('chargeTemperature', car)} />),
        ];
      })}
    </svg>
  );
}

/** Whether air goes back through the bypass: the valve shuts in a pull, and a standing engine moves no air. */
export function bypassState(model: PictureModel): 'shut' | 'open' | 'no flow' | undefined {
  const kind = model.inHand && model.momentOf(model.inHand)?.phase?.kind;
  if (kind === undefined) return undefined;
  return kind === 'pull' ? 'shut' : kind === 'hot soak' ? 'no flow' : 'open';
}

/** Whether a car takes recirculated air before its core; where none is taken behind it, the way is drawn there. */
export const isTakenBefore = ({ car }: PicturedCar): boolean => car.config.bypass.shareAfterCore < 1;

interface BypassProps {
  readonly points: readonly Point[];
  readonly isOpen: boolean;
  readonly colour: Colour | undefined;
}

/** A way of the recirculated air: a pipe while it is open, else a dashed line. */
function Bypass({ points, isOpen, colour }: BypassProps) {
  return isOpen ? (
    <Pipe points={points} colour={colour} stream="air" />
  ) : (
    <polyline class="bypass-closed" points={written(points)} />
  );
}

/** Air that passes the core without touching it: a thin stream. */
function Past({ points, colour }: Pick<BypassProps, 'points' | 'colour'>) {
  if (points.length === 0) return null;
  return (
    <g class={colour === undefined ? 'pipe plain' : 'pipe'}>
      <polyline class="pipe-rim" points={written(points)} stroke-width={PAST_WIDTH + 2} />
      <polyline class="pipe-fill" points={written(points)} stroke-width={PAST_WIDTH} style={strokeStyle(colour)} />
    </g>
  );
}

interface PipeProps {
  readonly points: readonly Point[];
  readonly colour: Colour | undefined;
  readonly stream: 'coolant' | 'air';
}

function Pipe({ points, colour, stream }: PipeProps) {
  const width = stream === 'air' ? AIR_PIPE_WIDTH : PIPE_WIDTH;
  return (
    <g class={colour === undefined ? 'pipe plain' : 'pipe'}>
      <polyline class="pipe-rim" points={written(points)} stroke-width={width} />
      <polyline class="pipe-fill" points={written(points)} stroke-width={width - 2.5} style={strokeStyle(colour)} />
      {segments(points).map(([from, to]) => (
        <Marks from={from} to={to} colour={colour} stream={stream} />
      ))}
    </g>
  );
}

interface MarksProps {
  readonly from: Point;
  readonly to: Point;
  readonly colour: Colour | undefined;
  readonly stream: 'coolant' | 'air';
  readonly step?: number;
}

/** Chevrons along a stretch, cut off at its ends, so that they can move on by one step and start again. */
function Marks({ from, to, colour, stream, step = MARK_STEP }: MarksProps) {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const turn = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
  const count = Math.ceil(length / step) + 1;
  const chevrons = Array.from({ length: count }, (_, k) => `M${(k - 0.5) * step - 2.5} 3.2l4.5 2.8l-4.5 2.8`).join('');
  return (
    <g transform={`translate(${from[0]} ${from[1]}) rotate(${turn})`}>
      <svg class="marks" y={-6} width={length} height={12} aria-hidden="true">
        <path class={`marks-${stream}`} d={chevrons} style={colour && { stroke: inkOn(colour) }} />
      </svg>
    </g>
  );
}

/** An arrow of air; its marks move inside the shaft. */
function AirArrow({ arrow: { tail, tip }, colour }: { readonly arrow: Arrow; readonly colour: Colour | undefined }) {
  const length = Math.hypot(tip[0] - tail[0], tip[1] - tail[1]);
  const turn = (Math.atan2(tip[1] - tail[1], tip[0] - tail[0]) * 180) / Math.PI;
  const [half, wing] = length > 36 ? [4.5, 10] : [3.5, 8];
  const head = 1.7 * wing;
  const shaft = length - head;
  const shape = `M0 ${-half}H${shaft}V${-wing}L${length} 0L${shaft} ${wing}V${half}H0Z`;
  const end: Point = [tail[0] + ((tip[0] - tail[0]) * shaft) / length, tail[1] + ((tip[1] - tail[1]) * shaft) / length];
  return (
    <g class={colour === undefined ? 'air-arrow plain' : 'air-arrow'}>
      <path
        d={shape}
        transform={`translate(${tail[0]} ${tail[1]}) rotate(${turn})`}
        style={colour && { fill: cssColour(colour) }}
      />
      <Marks from={tail} to={end} colour={colour} stream="air" step={MARK_STEP / 2} />
    </g>
  );
}

/** Moves the marks while the page plays, by the flows of the moment; never where motion is unwanted. */
function moveStreams(model: PictureModel, svg: SVGSVGElement | null): (() => void) | undefined {
  const { clock, display } = model.props;
  if (!clock.isPlaying.value || display.hasReducedMotion.value || svg === null) return undefined;
  const shifts = { coolant: 0, air: 0 };
  let last = performance.now();
  let request = 0;
  const move = (now: number) => {
    const seconds = (now - last) / 1000;
    last = now;
    const car = model.inHand;
    if (car !== undefined) {
      const coolant = (model.valueOf(car, 'coolantFlow') ?? 0) * COOLANT_SPEED;
      const air = (model.valueOf(car, 'airFlow') ?? 0) * AIR_SPEED;
      shifts.coolant = (shifts.coolant + coolant * seconds) % MARK_STEP;
      shifts.air = (shifts.air + air * seconds) % (MARK_STEP / 2);
      svg.style.setProperty('--coolant-shift', `${shifts.coolant}px`);
      svg.style.setProperty('--air-shift', `${shifts.air}px`);
    }
    request = requestAnimationFrame(move);
  };
  request = requestAnimationFrame(move);
  return () => cancelAnimationFrame(request);
}

function strokeStyle(colour: Colour | undefined) {
  return colour && { stroke: cssColour(colour) };
}

function written(points: readonly Point[]): string {
  return points.map(([x, y]) => `${x},${y}`).join(' ');
}

import type { OperatingPoint } from '../../sim/index.ts';
import { Axes } from '../figures/axes.tsx';
import { flow, joined, pressure, scaleOf, wordingIn } from '../format.ts';
import type { PageProps } from '../page.tsx';
import type { UnitChoice } from '../state/display.ts';
import { areDrawnAlike, axesFor, type CurveAxes, curvesView, PAPER } from './curves.ts';
import type { PointOf } from './loop.tsx';

interface CurvesProps extends PageProps {
  readonly cars: readonly PointOf[];
}

/** Pump against loop of the car in hand, and in grey beneath it that of Before where it is not the same. */
export function Curves({ cars, display }: CurvesProps) {
  const units = display.units.value;
  const hand = cars[cars.length - 1];
  if (hand.point === undefined) return null;
  const before = cars.length < 2 ? undefined : cars[0];
  const axes = axesFor(
    cars.flatMap(({ point }) => point ?? []),
    units,
  );
  const isAlike = before?.point !== undefined && areDrawnAlike(before.point, hand.point, axes, units);
  const beneath = isAlike ? undefined : before?.point;
  return (
    <div class="loop-curves">
      <h3>Pump against loop</h3>
      <figure class={hand.role}>
        {before && <figcaption>{captionOf(before, hand, isAlike)}</figcaption>}
        <Drawing point={hand.point} beneath={beneath} axes={axes} units={units} />
        <p class="small key">
          <span class="pump">pump makes</span> <span class="taken">loop takes</span>
          {beneath && <span class="before">Before, both</span>}
        </p>
        {cars.map(({ name, role, point }) =>
          point === undefined || (isAlike && role === 'before') ? null : (
            <Table key={role} point={point} units={units} name={isAlike ? 'Before and After' : name} />
          ),
        )}
      </figure>
    </div>
  );
}

function captionOf(before: PointOf, { name, car }: PointOf, isAlike: boolean) {
  if (isAlike) return 'Before and After have the same pump and loop.';
  return (
    <>
      <b>{name}</b>, {car.label}
      {before.point === undefined && '. Before: no pump is on in any phase.'}
    </>
  );
}

interface DrawingProps {
  readonly point: OperatingPoint;
  /** drawn in grey beneath it */
  readonly beneath: OperatingPoint | undefined;
  readonly axes: CurveAxes;
  readonly units: UnitChoice;
}

const path = (points: readonly (readonly [number, number])[]): string =>
  points.length === 0 ? '' : `M${points.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}`;

function Drawing({ point, beneath, axes, units }: DrawingProps) {
  const view = curvesView(point, axes, units);
  const under = beneath && curvesView(beneath, axes, units);
  const flowOf = (each: OperatingPoint): string =>
    `${joined(flow(each.flow, units))} at ${wordingIn(units).pressure(each.pressure)}`;
  const real = `Real flow ${flowOf(point)}`;
  const free =
    beneath === undefined || beneath.rating === point.rating ? '' : `, free ${joined(flow(beneath.rating, units))}`;
  const realBefore = beneath && `Before: real flow ${flowOf(beneath)}${free}`;
  const rated = `Free flow on the label ${joined(flow(point.rating, units))}: never the flow in a loop`;
  const straight =
    point.straightLineFlow === undefined
      ? undefined
      : `Low end, a straight line between its two figures: ${joined(flow(point.straightLineFlow, units))}`;
  return (
    <Axes
      paper={PAPER}
      label={[real, rated, straight, realBefore].filter(Boolean).join('. ')}
      up={axes.pressure}
      across={axes.flow}
    >
      <g class="words">
        <circle class="crossing" cx="8" cy="9" r="4" />
        <text class="telling" x="18" y="13">
          {real}
        </text>
        <circle class="rating" cx="8" cy="25" r="4" />
        <text x="18" y="29">
          {rated}
        </text>
        {straight && (
          <>
            <path class="straight" d="M2 41H14" />
            <text x="18" y="45">
              {straight}
            </text>
          </>
        )}
        {realBefore && (
          <>
            <circle class="crossing before" cx="8" cy={straight ? 57 : 41} r="4" />
            <text x="18" y={straight ? 61 : 45}>
              {realBefore}
            </text>
          </>
        )}
      </g>
      <text x="2" y={PAPER.height - 6}>
        {scaleOf('kPa', units).unit}
      </text>
      {under && (
        <g class="before">
          <path class="pump" d={path(under.pump)} />
          <path class="taken" d={path(under.loop)} />
          <circle class="crossing before" cx={under.crossing[0]} cy={under.crossing[1]} r="4.5" />
        </g>
      )}
      {view.straight && <path class="straight" d={path(view.straight.line)} />}
      <path class="pump" d={path(view.pump)} />
      <path class="taken" d={path(view.loop)} />
      <path class="drop" d={`M${view.crossing[0]} ${view.crossing[1]}V${axes.pressure.place(0)}`} />
      {view.straight && <circle class="low" cx={view.straight.crossing[0]} cy={view.straight.crossing[1]} r="3" />}
      <circle class="crossing" cx={view.crossing[0]} cy={view.crossing[1]} r="4.5" />
      <circle class="rating" cx={view.rating[0]} cy={view.rating[1]} r="4.5" />
    </Axes>
  );
}

/** Of the points of a curve a table has every so many. */
const TABLE_STEP = 6;

function Table({ point, units, name }: Pick<DrawingProps, 'point' | 'units'> & { readonly name: string }) {
  const { flow: flows, pump, loop } = point.curves;
  return (
    <div class="spoken">
      <table>
        <caption>{name}: pressure of the pump and of the loop over flow</caption>
        <thead>
          <tr>
            <th scope="col">Flow</th>
            <th scope="col">Pump makes</th>
            <th scope="col">Loop takes</th>
          </tr>
        </thead>
        <tbody>
          {flows.flatMap((at, k) =>
            k % TABLE_STEP > 0
              ? []
              : [
                  <tr key={at}>
                    <th scope="row">{joined(flow(at, units))}</th>
                    <td>{pressure(pump[k], units)}</td>
                    <td>{pressure(loop[k], units)}</td>
                  </tr>,
                ],
          )}
        </tbody>
      </table>
    </div>
  );
}

import { useRef } from 'preact/hooks';
import { halfwayAdded, itemsAt } from '../document/lists.ts';
import { PARTS } from '../document/parts.ts';
import { curveFromParabola, type PumpKey, parabolaFromCurve } from '../document/pump-changes.ts';
import { Caution } from '../fields/caution.tsx';
import { FieldList, type FormProps, More, PartOfFile, specsOf } from '../fields/field-list.tsx';
import { ListItems } from '../fields/list-items.tsx';
import { rebuild } from '../fields/rebuild.ts';
import { flow, joined } from '../format.ts';

const PUMP = PARTS.filter(({ part }) => part === 'pump')[0];

/** The pump: what its label says beside what really flows. */
export function PumpPart(props: FormProps) {
  const { car } = props;
  const hasCurve = itemsAt(car.document, 'pump.curve').length > 0;
  const hasSecondCurve = itemsAt(car.document, 'secondPump.curve').length > 0;
  const main = hasCurve ? PUMP.main.filter((path) => path === 'pump.electricalPower') : PUMP.main;
  return (
    <>
      <RealFlow {...props} />
      <Curve {...props} pump="pump" />
      <FieldList {...props} fields={specsOf(props, main)} />
      <Way {...props} pump="pump" />
      <More {...props} part={PUMP} shown={PUMP.main} />
      <PartOfFile
        {...props}
        group="secondPump"
        hidden={hasSecondCurve ? ['secondPump.shutOffPressure', 'secondPump.freeFlow'] : []}
      >
        <Curve {...props} pump="secondPump" />
        <Way {...props} pump="secondPump" />
      </PartOfFile>
      <Caution>
        Larger pumps draw 8 to 25 A: give them their own relay, fuse and earth, wired to the local code by someone
        qualified. The flow in the loop falls with the voltage at the pump.
      </Caution>
    </>
  );
}

/** The free flow of a label is never the flow in the loop: both, side by side. */
function RealFlow({ session, display, car }: FormProps) {
  const units = display.units.value;
  const { pulls } = session.inHandRun.value;
  const last = useRef<number | undefined>(undefined);
  last.current = pulls[0]?.atEnd.coolantFlow ?? last.current;
  const real = last.current;
  const { curve } = car.config.pump;
  const rated = curve.kind === 'parabola' ? curve.freeFlow : undefined;
  return (
    <dl class="follow">
      {rated !== undefined && (
        <div>
          <dt>Free-flow rating</dt>
          <dd>{joined(flow(rated, units))}</dd>
        </div>
      )}
      <div>
        <dt>Real flow in this loop, pull 1</dt>
        <dd>
          <b>{real === undefined ? 'after the run' : joined(flow(real, units))}</b>
        </dd>
      </div>
    </dl>
  );
}

type PumpProps = FormProps & { readonly pump: PumpKey };

function Curve({ pump, ...props }: PumpProps) {
  const { document, scenario } = props.car;
  const curve = scenario.values[pump]?.curve;
  if (curve === undefined) return null;
  const list = `${pump}.curve`;
  return (
    <ListItems
      {...props}
      list={list}
      label={`Points of the ${pump === 'pump' ? 'pump' : 'second pump'} curve`}
      what="point"
      least={2}
      added={(index) => halfwayAdded(document, list, curve, index)}
    />
  );
}

/** From two figures to a curve and back. */
function Way({ car, pump, ...props }: PumpProps) {
  const { shutOffPressure, freeFlow, curve } = car.scenario.values[pump] ?? {};
  if (curve !== undefined) {
    return (
      <button
        type="button"
        class="link"
        onClick={() => rebuild(props, parabolaFromCurve(pump, curve), 'pump by two figures')}
      >
        Give it by free flow and shut-off pressure instead
      </button>
    );
  }
  if (shutOffPressure === undefined || freeFlow === undefined) return null;
  return (
    <button
      type="button"
      class="link"
      onClick={() => rebuild(props, curveFromParabola(pump, shutOffPressure, freeFlow), 'pump by a curve')}
    >
      Give it as a curve of points instead
    </button>
  );
}

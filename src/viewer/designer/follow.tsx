import { type CoreDesignStudy, type SizeChange, WHY_NO_ANSWER } from '../../sim/index.ts';
import type { FormProps } from '../fields/field-list.tsx';
import { Fold } from '../fields/fold.tsx';
import { flow, joined, onScreen } from '../format.ts';
import { atFlows, changeRows, followSections } from './follow-rows.ts';
import { doubt } from './shown.ts';
import { useDesign } from './use-design.ts';

/** What the measures come to at the end of the first pull, and what one row more does. */
export function Follow(props: FormProps) {
  const { display } = props;
  const { found, isLate, failure } = useDesign(props);
  if (failure !== undefined) return <p class="small">What follows is not worked out: {onScreen(failure)}.</p>;
  if (found === undefined) return <p class="small">Working out what follows.</p>;
  if (found.study === undefined) return <p class="small">{WHY_NO_ANSWER.noPumpedPull}</p>;
  const { design, changes } = found.study;
  const units = display.units.value;
  return (
    <div class={isLate ? 'core-follow late' : 'core-follow'} aria-busy={isLate}>
      {design.marks.length > 0 && (
        <>
          <h3>Beyond what was published, or typed</h3>
          <ul class="marks">
            {design.marks.map((mark) => (
              <li key={mark}>{onScreen(doubt(mark))}</li>
            ))}
          </ul>
        </>
      )}
      <Sizes {...props} changes={changes} />
      <Fold title="What follows from the measures" isOpenAtFirst>
        {() => (
          <>
            <p class="small">{atFlows(design, (coolant) => joined(flow(coolant, units)))}</p>
            {followSections(design, units).map(({ title, rows }) => (
              <section key={title}>
                <h3>{title}</h3>
                <dl class="follow">
                  {rows.map(({ name, value, isPart }) => (
                    <div key={name} class={isPart ? 'part-of' : undefined}>
                      <dt>{name}</dt>
                      <dd>{value}</dd>
                    </div>
                  ))}
                </dl>
              </section>
            ))}
            <p class="small">Headers and end plates are in no mass.{inPlace(props)}</p>
          </>
        )}
      </Fold>
    </div>
  );
}

/** A typed coolant drop stands in place of the three above. */
const inPlace = ({ car }: FormProps): string =>
  car.config.core.coolantDrop.kind === 'power'
    ? ' The run takes the typed coolant drop factor in place of the coolant drop here.'
    : '';

interface SizesProps extends FormProps {
  readonly changes: CoreDesignStudy['changes'];
}

/** One row wider and as much deeper, beside each other, and the buttons that do it. */
function Sizes({ changes, session, display, car }: SizesProps) {
  const geometry = car.scenario.values.coreGeometry;
  const grow = ({ measure, factor }: SizeChange) => {
    if (geometry === undefined) return;
    const value = Number((geometry[measure] * factor).toPrecision(6));
    session.change({ [`coreGeometry.${measure}`]: value }, measure === 'width' ? 'one row wider' : `depth ×${factor}`);
  };
  return (
    <>
      <h3>One row more, fins and tubes alike</h3>
      <table class="numbers sizes">
        <thead>
          <tr>
            <td />
            {changes.map(({ measure, factor }) => (
              <th scope="col" key={measure}>
                {measure} ×{factor}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {changeRows(changes, display.units.value).map(({ name, values }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              {values.map((value, k) => (
                <td key={changes[k].measure}>{value}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <p class="grow">
        {changes.map((change) => (
          <button type="button" key={change.measure} onClick={() => grow(change)}>
            {change.measure === 'width' ? 'One row wider' : `Depth ×${change.factor}`}
          </button>
        ))}
      </p>
      <p class="small">
        The first three lines: in the first pull of this car. The others at the flows of the core as it is.
      </p>
    </>
  );
}

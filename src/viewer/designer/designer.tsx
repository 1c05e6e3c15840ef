import './designer.css';
import { useEffect, useRef } from 'preact/hooks';
import { Caution } from '../fields/caution.tsx';
import { FieldList, type FormProps, specsOf, stateOf } from '../fields/field-list.tsx';
import { Fold } from '../fields/fold.tsx';
import { Drawing } from './drawing-figure.tsx';
import { Follow } from './follow.tsx';
import { MapOfCores } from './map-of-cores.tsx';
import { exampleMeasures, isExample, measurePaths, measureSections } from './measures.ts';

/** A core by its measures: drawn, with what follows, and others like it on a map. */
export function Designer(props: FormProps) {
  const { session, car } = props;
  const { isChanged, hasDraft, warnings } = stateOf(props, ['coreGeometry']);
  const isByMeasures = car.scenario.values.coreGeometry !== undefined;
  const place = useRef<HTMLDivElement>(null);
  const isAsked = useRef(false);
  /** an open fold stays so when the kind of core changes under it */
  const hasBeenOpen = useRef(false);
  // What was pressed is gone with the kind of core: the focus goes to the title of what came in its place.
  useEffect(() => {
    if (isAsked.current) place.current?.querySelector('summary')?.focus();
    isAsked.current = false;
  }, [isByMeasures]);
  const change = (act: () => void) => {
    isAsked.current = true;
    act();
  };
  return (
    <div ref={place}>
      <Fold
        key={isByMeasures ? 'measures' : 'test points'}
        title="Core by its measures"
        note={isChanged ? 'changed' : undefined}
        isOpenAtFirst={hasDraft || warnings > 0 || isByMeasures || hasBeenOpen.current}
      >
        {() => {
          hasBeenOpen.current = true;
          return isByMeasures ? (
            <Measured {...props} onChange={change} />
          ) : (
            <div class="designer">
              <p class="small">
                This core is given by test points. Measured with a ruler instead, it is drawn to scale, and its
                conductances and pressure drops follow from published formulas.
              </p>
              <button
                type="button"
                onClick={() =>
                  change(() => session.change(exampleMeasures(car.document), 'core by its measures, invented'))
                }
              >
                Start from an invented core
              </button>
              <p class="small">
                Its measures are made up, to be typed over with yours. What is typed as test points goes; Undo brings it
                back.
              </p>
            </div>
          );
        }}
      </Fold>
    </div>
  );
}

function Measured({ onChange, ...props }: FormProps & { readonly onChange: (act: () => void) => void }) {
  const { session, display, car, before } = props;
  const { geometry } = car.config.core;
  const values = car.scenario.values.coreGeometry;
  if (geometry === undefined || values === undefined) return null;
  const { isChanged, hasDraft } = stateOf(props, measurePaths());
  return (
    <div class="designer">
      {isExample(car.document) && <Caution>Invented measures: no such core was built or tested.</Caution>}
      <Drawing shape={geometry.shape} units={display.units.value} />
      <Fold title={`Measures (${count(values)})`} note={isChanged ? 'changed' : undefined} isOpenAtFirst={hasDraft}>
        {() =>
          measureSections(values).map(({ title, paths }) => (
            <section key={title}>
              <h3>{title}</h3>
              <FieldList {...props} fields={specsOf(props, paths)} areMany />
            </section>
          ))
        }
      </Fold>
      <Follow {...props} />
      <MapOfCores {...props} />
      {before.scenario.values.coreGeometry === undefined && (
        <button
          type="button"
          class="link"
          onClick={() => onChange(() => session.putBack(['coreGeometry', 'core'], 'test points'))}
        >
          Back to Before's core by test points
        </button>
      )}
    </div>
  );
}

const count = (values: Parameters<typeof measureSections>[0]): number =>
  measureSections(values).reduce((sum, { paths }) => sum + paths.length, 0);

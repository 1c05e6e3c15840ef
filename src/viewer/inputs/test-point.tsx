import type { TestedPart } from '../../sim/index.ts';
import { givenOtherwise, isTested } from '../document/test-point-changes.ts';
import type { FormProps } from '../fields/field-list.tsx';
import { rebuild } from '../fields/rebuild.ts';

/** From conductances to a test point and back; the run stays what it was. */
export function TestPoint({ part, ...props }: FormProps & { readonly part: TestedPart }) {
  const { scenario } = props.car;
  const label = isTested(scenario, part) ? 'Give its conductances instead of a test' : 'Give a test of it instead';
  return (
    <p class="acts">
      <button type="button" class="link" onClick={() => rebuild(props, givenOtherwise(scenario, part), label)}>
        {label}
      </button>
    </p>
  );
}

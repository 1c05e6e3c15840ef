import { useSignalEffect } from '@preact/signals';
import { useRef } from 'preact/hooks';
import type { ColumnName } from '../../sim/index.ts';
import { TRACE_GROUPS } from './traces.ts';

interface TraceChoiceProps {
  readonly chosen: readonly ColumnName[];
  readonly choose: (columns: readonly ColumnName[]) => void;
}

/** The list of quantities that have a strip of their own. */
export function TraceChoice({ chosen, choose }: TraceChoiceProps) {
  const list = useRef<HTMLDetailsElement>(null);
  const close = () => {
    if (list.current !== null) list.current.open = false;
  };
  useSignalEffect(() => {
    const onPress = ({ target }: Event) => {
      if (target instanceof Node && list.current?.contains(target) === false) close();
    };
    document.addEventListener('pointerdown', onPress);
    return () => document.removeEventListener('pointerdown', onPress);
  });
  const change = (column: ColumnName, isChosen: boolean) =>
    choose(isChosen ? [...chosen, column] : chosen.filter((each) => each !== column));
  return (
    <details
      class="trace-choice"
      ref={list}
      onKeyDown={({ key }) => {
        if (key !== 'Escape') return;
        close();
        list.current?.querySelector('summary')?.focus();
      }}
    >
      <summary>Traces</summary>
      <div class="trace-list">
        {TRACE_GROUPS.map(({ title, traces }) => (
          <fieldset key={title}>
            <legend>{title}</legend>
            {traces.map(({ column, title: name }) => (
              <label key={column}>
                <input
                  type="checkbox"
                  checked={chosen.includes(column)}
                  onChange={({ currentTarget }) => change(column, currentTarget.checked)}
                />
                {name}
              </label>
            ))}
          </fieldset>
        ))}
      </div>
    </details>
  );
}

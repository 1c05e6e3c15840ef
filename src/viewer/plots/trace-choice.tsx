import { type Signal, useSignalEffect } from '@preact/signals';
import { useRef } from 'preact/hooks';
import type { ColumnName } from '../../sim/index.ts';
import { TRACE_GROUPS } from './traces.ts';

/** The list of quantities that have a strip of their own. */
export function TraceChoice({ chosen }: { chosen: Signal<readonly ColumnName[]> }) {
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
  const choose = (column: ColumnName, isChosen: boolean) => {
    chosen.value = isChosen ? [...chosen.value, column] : chosen.value.filter((each) => each !== column);
  };
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
                  checked={chosen.value.includes(column)}
                  onChange={({ currentTarget }) => choose(column, currentTarget.checked)}
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

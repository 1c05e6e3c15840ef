import { useSignal } from '@preact/signals';
import { type Issue, variants } from '../../sim/index.ts';
import type { FormProps } from '../fields/field-list.tsx';
import { RefusalMessage } from '../fields/messages.tsx';
import { TextField } from '../fields/text-field.tsx';
import type { Session } from '../state/session.ts';

/** Stands for the file as it was opened, among the names of its variants. */
export const AS_OPENED = '';
/** Stands for what was changed by hand. */
export const OWN = 'own changes';

/** Makes After a variant of the file, or takes it away; the errors say why where that cannot be. */
export function chooseVariant(session: Session, chosen: string): readonly Issue[] {
  if (chosen !== AS_OPENED) return session.tryVariant(chosen).filter(({ severity }) => severity === 'error');
  session.putBack(session.changes.value, 'all');
  return [];
}

/** The variants that the file lists, and the way to make After one of them. */
export function VariantsRow({ session, before }: FormProps) {
  const isNaming = useSignal(false);
  const name = useSignal('');
  const problems = useSignal<readonly Issue[]>([]);
  const after = session.after.value;
  const names = variants(before.scenario);
  const isOwn = after !== undefined && !names.includes(after.label);
  const choose = (chosen: string) => {
    problems.value = chooseVariant(session, chosen);
  };
  const add = () => {
    if (name.value.trim() === '') return;
    problems.value = session.addVariant(name.value.trim());
    if (problems.value.length > 0) return;
    isNaming.value = false;
    name.value = '';
  };
  if (names.length === 0 && !isOwn) return null;
  return (
    <section class="variants" aria-label="Variants">
      <div class="field">
        <span class="name">
          <label for="variant">
            <b>Variants</b> of the file
          </label>
        </span>
        <select
          id="variant"
          value={isOwn ? OWN : (after?.label ?? AS_OPENED)}
          onChange={(event) => choose(event.currentTarget.value)}
        >
          <option value={AS_OPENED}>{before.label}</option>
          {isOwn && <option value={OWN}>{after.label}</option>}
          {names.map((each) => (
            <option key={each} value={each}>
              {each}
            </option>
          ))}
        </select>
      </div>
      {isOwn && !isNaming.value && (
        <button
          type="button"
          class="link small"
          onClick={() => {
            isNaming.value = true;
          }}
        >
          Add these changes to the file as a variant
        </button>
      )}
      {isOwn && isNaming.value && (
        <>
          <TextField
            id="variant-name"
            label="Name of the variant"
            value={name.value}
            placeholder={after.label}
            onChange={(text) => {
              name.value = text;
            }}
          />
          <p class="acts">
            <button type="button" onClick={add}>
              Add
            </button>
            <button
              type="button"
              onClick={() => {
                isNaming.value = false;
              }}
            >
              Leave it
            </button>
          </p>
        </>
      )}
      <RefusalMessage of={problems.value} />
    </section>
  );
}

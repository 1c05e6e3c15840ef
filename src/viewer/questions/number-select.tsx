import type { Ref } from 'preact';
import { capitalised } from '../format.ts';
import type { FileNumber } from './file-numbers.ts';

interface NumberSelectProps {
  readonly label: string;
  readonly numbers: readonly FileNumber[];
  /** '' for none */
  readonly path: string;
  /** what stands for none */
  readonly none: string;
  readonly onChoose: (number: FileNumber | undefined) => void;
  readonly selectRef?: Ref<HTMLSelectElement> | undefined;
}

/** Any number of the car, by its name, under the part that has it. */
export function NumberSelect({ label, numbers, path, none, onChoose, selectRef }: NumberSelectProps) {
  return (
    <label>
      <span>{label}</span>{' '}
      <select
        {...(selectRef && { ref: selectRef })}
        value={path}
        onChange={({ currentTarget }) => onChoose(numbers.find((each) => each.path === currentTarget.value))}
      >
        <option value="">{none}</option>
        {[...new Set(numbers.map(({ part }) => part))].map((part) => (
          <optgroup key={part} label={part}>
            {numbers
              .filter((each) => each.part === part)
              .map(({ path: each, name }) => (
                <option key={each} value={each}>
                  {capitalised(name)}
                </option>
              ))}
          </optgroup>
        ))}
      </select>
    </label>
  );
}

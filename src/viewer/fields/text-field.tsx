import { useSignal } from '@preact/signals';

interface TextFieldProps {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  /** what stands in where nothing is typed */
  readonly placeholder?: string | undefined;
  readonly isLong?: boolean;
  readonly onChange: (text: string) => void;
}

/** Free text of the file. It is taken on leaving the box, and by Enter. */
export function TextField({ id, label, value, placeholder, isLong = false, onChange }: TextFieldProps) {
  const text = useSignal<string | undefined>(undefined);
  const settle = () => {
    const typed = text.value;
    text.value = undefined;
    if (typed !== undefined && typed !== value) onChange(typed);
  };
  const shared = {
    id,
    value: text.value ?? value,
    placeholder: placeholder ?? '',
    autocomplete: 'off' as const,
    onBlur: settle,
    onInput: (event: { readonly currentTarget: { readonly value: string } }) => {
      text.value = event.currentTarget.value;
    },
    onKeyDown: (event: KeyboardEvent) => {
      if (event.key === 'Enter' && !isLong) settle();
      if (event.key === 'Escape' && text.value !== undefined) {
        event.stopPropagation();
        text.value = undefined;
      }
    },
  };
  return (
    <div class="field words">
      <span class="name">
        <label for={id}>{label}</label>
      </span>
      {isLong ? <textarea rows={4} {...shared} /> : <input type="text" {...shared} />}
    </div>
  );
}

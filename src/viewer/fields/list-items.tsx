import { fieldGroups } from '../document/field-groups.ts';
import { capitalised } from '../format.ts';
import type { Changes } from '../state/session.ts';
import { FieldList, type FormProps } from './field-list.tsx';
import { ListActions } from './list-actions.tsx';

interface ListItemsProps extends FormProps {
  /** path of the list */
  readonly list: string;
  /** what the list holds, for screen readers */
  readonly label: string;
  /** one item, in a word: "point" */
  readonly what: string;
  readonly least?: number;
  /** what adding beside an item does */
  readonly added: (index: number) => Changes;
}

/** The items of a list of the file, each with its boxes and what may be done with it. */
export function ListItems({ list, label, what, least = 1, added, ...props }: ListItemsProps) {
  const items = fieldGroups(props.car.document).filter(({ path }) => path.startsWith(`${list}.`));
  return (
    <ol class="items" aria-label={label}>
      {items.map(({ path, fields }, index) => (
        <li key={path}>
          <h3>
            {capitalised(what)} {index + 1}
          </h3>
          <FieldList {...props} fields={fields} areMany />
          <ListActions {...props} list={list} index={index} what={what} least={least} added={added(index)} />
        </li>
      ))}
    </ol>
  );
}

import { itemAdded, itemRemoved, itemsAt } from '../document/lists.ts';
import type { PageProps } from '../page.tsx';
import type { Car } from '../state/cars.ts';
import type { Changes } from '../state/session.ts';
import { rebuild } from './rebuild.ts';

interface ListActionsProps extends PageProps {
  readonly car: Car;
  /** path of the list */
  readonly list: string;
  readonly index: number;
  /** one item, in a word: "segment" */
  readonly what: string;
  readonly least?: number;
  /** what adding does, where it is not the same item once more */
  readonly added?: Changes;
}

/** One item more behind this one, or without it. */
export function ListActions({ car, list, index, what, least = 1, added, ...props }: ListActionsProps) {
  const count = itemsAt(car.document, list).length;
  return (
    <p class="acts">
      <button
        type="button"
        class="link"
        onClick={() => rebuild(props, added ?? itemAdded(car.document, list, index), `add a ${what}`)}
      >
        {added === undefined ? `Add a ${what} like it` : `Add a ${what} beside it`}
      </button>
      {count > least && (
        <button
          type="button"
          class="link"
          onClick={() => rebuild(props, itemRemoved(car.document, list, index), `remove a ${what}`)}
        >
          Remove this {what}
        </button>
      )}
    </p>
  );
}

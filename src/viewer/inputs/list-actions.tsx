import type { PageProps } from '../page.tsx';
import type { Car } from '../state/cars.ts';
import { itemAdded, itemRemoved, itemsAt } from './lists.ts';

interface ListActionsProps extends PageProps {
  readonly car: Car;
  /** path of the list */
  readonly list: string;
  readonly index: number;
  /** one item, in a word: "segment" */
  readonly what: string;
  readonly least?: number;
}

/** One item more behind this one, or without it. */
export function ListActions({ session, car, list, index, what, least = 1 }: ListActionsProps) {
  const count = itemsAt(car.document, list).length;
  return (
    <p class="acts">
      <button
        type="button"
        class="link"
        onClick={() => session.change(itemAdded(car.document, list, index), `add a ${what}`)}
      >
        Add a {what} like it
      </button>
      {count > least && (
        <button
          type="button"
          class="link"
          onClick={() => session.change(itemRemoved(car.document, list, index), `remove a ${what}`)}
        >
          Remove this {what}
        </button>
      )}
    </p>
  );
}

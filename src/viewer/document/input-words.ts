import { type LinePlace, lineAfter, linePlacesOf, PART_WORDS } from '../../sim/index.ts';
import { type Car, valueAt } from '../state/cars.ts';
import { type FieldGroup, type FieldSpec, fieldGroups } from './field-groups.ts';

/** What it takes to say where a number stands. */
type Placed = Pick<Car, 'config' | 'document'>;

/** Where the boxes of an object stand, as far as their labels do not tell: "pull"; "after the pump", "segment 1". */
export function placeWords({ config, document }: Placed, { path, title }: FieldGroup): string[] {
  if (title === 'phase') return [String(valueAt(document, `${path}.name`) ?? valueAt(document, `${path}.kind`))];
  const [first, second] = path.split('.');
  const index = /\.(\d+)$/.exec(path)?.[1];
  const line = linePlacesOf(config.loop).find((place) => first === 'lines' && lineAfter(place) === second);
  if (line !== undefined) {
    return [`after the ${PART_WORDS[line]}`, ...(index === undefined ? [] : [`segment ${Number(index) + 1}`])];
  }
  return [
    ...(first.startsWith('second') || second === 'test' ? [PART_WORDS[first as LinePlace]] : []),
    ...(index === undefined ? [] : [`point ${Number(index) + 1}`]),
  ];
}

/** The box of a path, and the object that it stands in. */
interface Place {
  readonly group: FieldGroup;
  readonly field: FieldSpec;
}

/** One item of a list may stand without its brackets. */
const unbracketed = (path: string): string => path.replace(/\.0(?=\.)/g, '');

/** The place of a path, or of the pair that it is an end of. */
function placeOf(groups: readonly FieldGroup[], path: string): Place | undefined {
  const places = groups.flatMap((group) => group.fields.map((field): Place => ({ group, field })));
  const ofPair = path.replace(/\.[01]$/, '');
  return (
    places.find(({ field }) => field.path === path) ??
    places.find(({ field }) => field.path === ofPair) ??
    places.find(({ field }) => unbracketed(field.path) === unbracketed(path))
  );
}

/** The box of a path, or of the pair that it is an end of. */
export const specAt = ({ document }: Pick<Car, 'document'>, path: string): FieldSpec | undefined =>
  placeOf(fieldGroups(document), path)?.field;

/**
 * What the table calls a path, behind the place that it stands in: "pull: engine speed"; of phases of one name the
 * second is "part (2)". Undefined where the table has no such key.
 */
export function inputName(car: Placed, path: string): string | undefined {
  const groups = fieldGroups(car.document);
  const place = placeOf(groups, path);
  if (place === undefined) return undefined;
  const { group, field } = place;
  const words = placeWords(car, group).join(', ');
  if (words === '') return field.row.label;
  const before = groups
    .slice(0, groups.indexOf(group))
    .filter((other) => other.title === group.title && placeWords(car, other).join(', ') === words).length;
  return `${words}${before === 0 ? '' : ` (${before + 1})`}: ${field.row.label}`;
}

/** A value of a file in words: "none" where there is none, a rise from end to end. */
export function valueInWords(value: unknown, write: (value: number) => string): string {
  if (value === undefined || value === null) return 'none';
  const one = (each: unknown): string => (typeof each === 'number' ? write(each) : String(each));
  return Array.isArray(value) ? value.map(one).join(' rising to ') : one(value);
}

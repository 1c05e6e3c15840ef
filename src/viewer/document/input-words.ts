import { type LinePlace, lineAfter, linePlacesOf, PART_WORDS, type Parameter, rowAt } from '../../sim/index.ts';
import { type Car, valueAt } from '../state/cars.ts';
import { type FieldGroup, fieldGroups } from './field-groups.ts';

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

/** One item of a list may stand without its brackets. */
const unbracketed = (path: string): string => path.replace(/\.0(?=\.)/g, '');

/** The object that has the box of a path, or of the pair that it is an end of. */
function groupOf(groups: readonly FieldGroup[], path: string): FieldGroup | undefined {
  const groupWith = (isIt: (box: string) => boolean) =>
    groups.find(({ fields }) => fields.some((field) => isIt(field.path)));
  const ofPair = path.replace(/\.[01]$/, '');
  return (
    groupWith((box) => box === path) ??
    groupWith((box) => box === ofPair) ??
    groupWith((box) => unbracketed(box) === unbracketed(path))
  );
}

/**
 * What the table calls a path, behind the place that it stands in: "pull: engine speed"; of phases of one name the
 * second is "part (2)". Undefined where the table has no such key.
 */
export function inputName(car: Placed, path: string): string | undefined {
  const groups = fieldGroups(car.document);
  const group = groupOf(groups, path);
  const label = rowAt(path)?.label;
  if (group === undefined || label === undefined) return undefined;
  const words = placeWords(car, group).join(', ');
  if (words === '') return label;
  const before = groups
    .slice(0, groups.indexOf(group))
    .filter((other) => other.title === group.title && placeWords(car, other).join(', ') === words).length;
  return `${words}${before === 0 ? '' : ` (${before + 1})`}: ${label}`;
}

/** What holds where the box of a path is left empty; another input is said by its label: "as line bore". */
export function absentWords(path: string, { absent }: Parameter): string | undefined {
  if (absent === undefined) return undefined;
  const other = rowAt(absent) ?? rowAt(path.replace(/[^.]*$/, absent));
  return other === undefined ? absent : `as ${other.label}`;
}

/** A value of a file in words: "none" where there is none, a rise from end to end. */
export function valueInWords(value: unknown, write: (value: number) => string): string {
  if (value === undefined || value === null) return 'none';
  const one = (each: unknown): string => (typeof each === 'number' ? write(each) : String(each));
  return Array.isArray(value) ? value.map(one).join(' rising to ') : one(value);
}

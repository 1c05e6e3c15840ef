import { type JsonValue, type NumberRow, placeOfSource, readQuantity } from '../../sim/index.ts';
import { numberAt } from '../document/field-groups.ts';
import { absentWords } from '../document/input-words.ts';
import { capitalised } from '../format.ts';
import type { PageProps } from '../page.tsx';
import { areRelated, type Car, valueAt } from '../state/cars.ts';
import type { Changes } from '../state/session.ts';
import { FieldName } from './field-name.tsx';
import { valueText } from './measure.ts';
import { DraftMessage, Warnings } from './messages.tsx';
import { Slider } from './slider.tsx';
import { sliderSpan } from './slider-span.ts';
import { useNumberBox } from './use-number-box.ts';

export interface NumberFieldProps extends PageProps {
  readonly car: Car;
  readonly before: Car;
  readonly row: NumberRow;
  /** place in the file; for an end of a pair, that of the end */
  readonly path: string;
  /** what it is called where the table's label is not enough */
  readonly label?: string | undefined;
  readonly hasSlider?: boolean | undefined;
  /** the car cannot run without it, though another could */
  readonly isNeeded?: boolean | undefined;
  /** what a new value changes in the file; without it, just `path` */
  readonly changesFor?: ((value: JsonValue | undefined) => Changes) | undefined;
}

/** A number of the file: a box that takes any unit, a slider where one makes sense, and the way back to Before. */
export function NumberField(props: NumberFieldProps) {
  const { session, clock, display, solving, car, before, row, path, label = row.label, hasSlider = true } = props;
  const page = { session, clock, display, solving };
  const box = useNumberBox({ ...page, car, row, path, label, changesFor: props.changesFor });
  const { measure, value, draft, attempt, giveUp } = box;
  const own = numberAt(before, path);
  const isChanged = session.changes.value.some((changed) => areRelated(changed, path));
  const warnings = car.warnings.filter((warning) => warning.path === path);
  const isDefault = value !== undefined && valueAt(car.document, path) === undefined && !isPairEnd(car, path);

  const others = hasSlider ? variantValues(before, path, row) : [];
  const span =
    hasSlider && value !== undefined && Number.isFinite(value)
      ? sliderSpan(row, measure, own ?? value, others, value)
      : undefined;
  const id = `field-${path}`;
  const describedBy = [draft && `${id}-draft`, warnings.length > 0 && `${id}-doubt`, `${id}-about`].filter(Boolean);
  return (
    <div class={isChanged ? 'field changed' : 'field'}>
      <FieldName id={id} label={label} path={path} row={row} measure={measure} isNeeded={props.isNeeded} />
      <span class={draft === undefined ? 'box' : 'box unread'}>
        <input id={id} {...box.props} aria-describedby={describedBy.join(' ')} />
        {measure.caption !== '' && <span class="unit">{measure.caption}</span>}
      </span>
      {span && value !== undefined && (
        <Slider
          label={`${capitalised(label)}, slider`}
          span={span}
          value={measure.fromFile(value)}
          valueText={valueText(value, measure)}
          mark={isChanged && own !== undefined ? measure.fromFile(own) : undefined}
          onMove={(moved) => attempt(String(moved))}
          onRelease={() => session.commit(label)}
        />
      )}
      {draft && (
        <DraftMessage
          {...page}
          id={`${id}-draft`}
          draft={draft}
          label={label}
          kept={value === undefined ? undefined : valueText(value, measure)}
          onKeep={giveUp}
        />
      )}
      {isDefault && <p class="small was">{sourceOf(car, path, row)}</p>}
      {value === undefined && row.absent !== undefined && <p class="small was">Empty: {absentWords(path, row)}.</p>}
      {isChanged && draft === undefined && own !== undefined && (
        <p class="small was">
          Before: {valueText(own, measure)}{' '}
          <button type="button" class="link" onClick={() => session.putBack([path], label)}>
            Put back<span class="spoken"> {label}</span>
          </button>
        </p>
      )}
      <Warnings id={`${id}-doubt`} session={session} warnings={warnings} label={label} />
    </div>
  );
}

/** Where a value comes from that is not in the file. */
function sourceOf({ document }: Car, path: string, { followsFrom }: NumberRow): string {
  const [group] = path.split('.');
  const source = followsFrom?.find((each) => valueAt(document, placeOfSource(each, group)) !== undefined);
  if (source === undefined) return 'Not in the file: the default.';
  return source === 'coreGeometry' ? 'Follows from the measures.' : 'Follows from the test point.';
}

/** One value in the file may stand for both ends of a pair. */
function isPairEnd({ document }: Car, path: string): boolean {
  const whole = path.replace(/\.[01]$/, '');
  return whole !== path && valueAt(document, whole) !== undefined;
}

/** Numbers that the variants of the opened file give to a key, in the file unit. */
function variantValues({ scenario }: Car, path: string, row: NumberRow): number[] {
  return (scenario.values.variants ?? []).flatMap(({ changes }) => {
    const typed = changes[path];
    if (typeof typed === 'number') return [typed];
    const reading = typeof typed === 'string' ? readQuantity(typed, row.unit) : undefined;
    return reading?.kind === 'value' ? [reading.value] : [];
  });
}

import { type Signal, useSignal } from '@preact/signals';
import { type Issue, isNumberRow, type NumberRow, questionPieces, variants } from '../../sim/index.ts';
import { numberAt } from '../document/field-groups.ts';
import { type FormProps, specsOf } from '../fields/field-list.tsx';
import { measureOf, valueText } from '../fields/measure.ts';
import { DraftMessage, RefusalMessage, Warnings } from '../fields/messages.tsx';
import { useNumberBox } from '../fields/use-number-box.ts';
import { capitalised, NO_BREAK_SPACE, wordingIn } from '../format.ts';
import { AS_OPENED, chooseVariant, OWN } from '../inputs/variants-row.tsx';
import type { Car } from '../state/cars.ts';
import { type Asked, askedChange, labelOf } from './asked.ts';
import { type NumberSlot, slotPaths } from './slots.ts';

/** What the box of a quantity is called where the table's name alone does not say which one is meant. */
const SLOT_LABELS: Partial<Record<NumberSlot, string>> = {
  pulls: 'number of pulls',
  length: 'length of a pull',
  rest: 'rest between pulls',
};

interface SlotSpec {
  readonly path: string;
  readonly row: NumberRow;
  readonly label: string;
}

const LEADING_MARK = /^[,?]/;
const idOf = ({ path }: SlotSpec): string => `letter-${path}`;

/** What the customer asked; every quantity of it is set where it stands. */
export function Question(props: FormProps) {
  const { car, before, display, session } = props;
  const problems = useSignal<readonly Issue[]>([]);
  const asked = askedChange(before, session.after.value);
  const specs = slotSpecs(props);
  const pieces = questionPieces({ label: labelOf(asked), config: car.config }, wordingIn(display.units.value));
  return (
    <section class="letter-question" aria-label="Question">
      <p>
        {pieces.map(({ slot, text }, k) => {
          // A mark never stands alone at the start of a line: it is held to the quantity before it.
          if (slot === undefined) return k === 0 ? text : text.replace(LEADING_MARK, '');
          const mark = LEADING_MARK.exec(pieces[k + 1]?.text ?? '')?.[0];
          const spec = slot === 'change' ? undefined : specs.get(slot);
          return (
            <span key={slot} class={slot === 'change' ? undefined : 'held'}>
              {slot === 'change' ? (
                <ChangeChoice {...props} asked={asked} problems={problems} />
              ) : spec === undefined ? (
                text
              ) : (
                <SlotBox {...props} spec={spec} />
              )}
              {mark}
            </span>
          );
        })}
      </p>
      <RefusalMessage of={problems.value} />
      {[...specs.values()].map((spec) => (
        <SlotMessages key={spec.path} {...props} spec={spec} />
      ))}
    </section>
  );
}

function slotSpecs(props: FormProps): Map<NumberSlot, SlotSpec> {
  const specs = new Map<NumberSlot, SlotSpec>();
  for (const [slot, path] of Object.entries(slotPaths(props.car.document)) as [NumberSlot, string][]) {
    const [spec] = specsOf(props, [path]);
    if (spec === undefined || !isNumberRow(spec.row)) continue;
    specs.set(slot, { path, row: spec.row, label: SLOT_LABELS[slot] ?? spec.row.label });
  }
  return specs;
}

interface SlotProps extends FormProps {
  readonly spec: SlotSpec;
}

/** A quantity in the sentence: it is typed over, in any unit. */
function SlotBox({ spec, ...props }: SlotProps) {
  const { path, row, label } = spec;
  const { session, clock, display, solving, car } = props;
  const box = useNumberBox({ session, clock, display, solving, car, row, path, label });
  const id = idOf(spec);
  const describedBy = [box.draft && `${id}-draft`, isDoubtful(car, path) && `${id}-doubt`].filter(Boolean).join(' ');
  return (
    <span class={box.draft === undefined ? 'slot' : 'slot unread'}>
      <label class="spoken" for={id}>
        {capitalised(label)}
      </label>
      <input
        id={id}
        {...box.props}
        style={{ width: widthOf(box.props.value) }}
        {...(describedBy !== '' && { 'aria-describedby': describedBy })}
        onFocus={({ currentTarget }) => currentTarget.select()}
      />
      {box.measure.caption !== '' && <span class="unit">{NO_BREAK_SPACE + box.measure.caption}</span>}
    </span>
  );
}

/** Room for a number in figures of one width; a point or comma takes about half of one. */
const widthOf = (text: string): string => `${text.length - 0.45 * (text.match(/[.,]/g)?.length ?? 0) + 0.1}ch`;

const isDoubtful = (car: Car, path: string): boolean => car.warnings.some((warning) => warning.path === path);

/** What there is to say about a quantity of the sentence, below it. */
function SlotMessages({ spec, ...props }: SlotProps) {
  const { path, row, label } = spec;
  const { session, clock, display, solving, car } = props;
  const id = idOf(spec);
  const draft = session.drafts.value.find((each) => each.path === path);
  const value = numberAt(car, path);
  return (
    <>
      {draft && (
        <DraftMessage
          {...{ session, clock, display, solving }}
          id={`${id}-draft`}
          draft={draft}
          label={label}
          kept={value === undefined ? undefined : valueText(value, measureOf(row.unit, display.units.value))}
          onKeep={() => {
            session.dropDraft(path);
            document.getElementById(id)?.focus();
          }}
        />
      )}
      <Warnings
        id={`${id}-doubt`}
        session={session}
        warnings={car.warnings.filter((warning) => warning.path === path)}
        label={label}
      />
    </>
  );
}

interface ChangeChoiceProps extends FormProps {
  readonly asked: Asked;
  readonly problems: Signal<readonly Issue[]>;
}

/** Which change is asked about: none, a variant of the file, or what was changed by hand. */
function ChangeChoice({ session, before, asked, problems }: ChangeChoiceProps) {
  const value = asked.kind === 'as it stands' ? AS_OPENED : asked.kind === 'own' ? OWN : asked.name;
  const names = variants(before.scenario);
  const chosen = labelOf(asked);
  return (
    <span class="slot choice">
      <label class="spoken" for="letter-change">
        Change that is asked about
      </label>
      <select
        id="letter-change"
        value={value}
        style={{ width: `${0.92 * chosen.length + 2}ch` }}
        onChange={({ currentTarget }) => {
          problems.value = chooseVariant(session, currentTarget.value);
        }}
      >
        <option value={AS_OPENED}>as it stands</option>
        {asked.kind === 'own' && <option value={OWN}>{chosen}</option>}
        {names.map((name) => (
          <option key={name} value={name}>
            {labelOf({ kind: 'variant', name })}
          </option>
        ))}
      </select>
      <span class="on-paper">{chosen}</span>
    </span>
  );
}

import './inputs.css';
import { useEffect, useRef } from 'preact/hooks';
import { PARTS, partOf } from '../document/parts.ts';
import { Field } from '../fields/field.tsx';
import { type FormProps, specsOf } from '../fields/field-list.tsx';
import { Fold } from '../fields/fold.tsx';
import { Warnings } from '../fields/messages.tsx';
import { TextField } from '../fields/text-field.tsx';
import type { PageProps } from '../page.tsx';
import { keepFocusNear } from './kept-focus.ts';
import { PartDetails } from './part-details.tsx';
import { VariantsRow } from './variants-row.tsx';

const LIMIT = 'limit.chargeTemperature';

/** Everything that can be changed about the car: the limit, then its parts. On a narrow screen, a sheet. */
export function Inputs(props: PageProps) {
  const { session, display } = props;
  const isOpen = display.isSheetOpen.value;
  const close = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    // Only a sheet has the button. A part that was asked for has taken the focus already.
    const isInside = close.current?.closest('aside')?.contains(document.activeElement);
    if (isOpen && !isInside && isShown(close.current)) close.current?.focus();
  }, [isOpen]);
  const leave = () => {
    display.isSheetOpen.value = false;
  };
  const before = session.before.value;
  const car = session.inHand.value;
  return (
    <aside
      class={isOpen ? 'inputs open' : 'inputs'}
      aria-label="Inputs"
      onClick={keepFocusNear}
      onKeyDown={(event) => {
        if (event.key === 'Escape' && isOpen && isShown(close.current)) leave();
      }}
    >
      <div class="sheet-head">
        <b>Change a part</b>
        <button type="button" ref={close} onClick={leave}>
          Close
        </button>
      </div>
      {before === undefined || car === undefined ? (
        <p class="nothing">Nothing to change yet: open a demo car or a file.</p>
      ) : (
        <Form {...props} before={before} car={car} />
      )}
    </aside>
  );
}

const isShown = (element: HTMLElement | null): boolean => element !== null && element.offsetParent !== null;

function Form(props: FormProps) {
  const { session, car } = props;
  const ofNoPart = car.warnings.filter(
    ({ path }) => partOf(path) === undefined && path !== LIMIT && !path.startsWith('variants.'),
  );
  return (
    <>
      <div class="top">
        {specsOf(props, [LIMIT]).map((spec) => (
          <Field key={spec.path} {...props} spec={spec} hasSlider={false} />
        ))}
        <VariantsRow {...props} />
        <Warnings id="file-doubt" session={session} label="the file" warnings={ofNoPart} />
      </div>
      {PARTS.map((part) => (
        <PartDetails key={part.part} {...props} part={part} />
      ))}
      <NameAndNotes {...props} />
    </>
  );
}

function NameAndNotes({ session, car }: FormProps) {
  const { name, notes = '' } = car.scenario.values;
  return (
    <div class="about-car">
      <Fold title="Name and notes">
        {() => (
          <>
            <TextField
              id="field-name"
              label="Name of the scenario"
              value={name}
              onChange={(text) => session.describe({ name: text })}
            />
            <TextField
              id="field-notes"
              label="Notes"
              value={notes}
              isLong
              onChange={(text) => session.describe({ notes: text })}
            />
          </>
        )}
      </Fold>
    </div>
  );
}

import { useEffect, useRef } from 'preact/hooks';
import { counted, isNumberRow, pullsIn, pullsOfCycle } from '../../sim/index.ts';
import { fieldGroups, readAt } from '../document/field-groups.ts';
import type { PartSpec } from '../document/parts.ts';
import { FieldList, type FormProps, More, specsOf, stateOf } from '../fields/field-list.tsx';
import { measureOf, valueText } from '../fields/measure.ts';
import { Warnings } from '../fields/messages.tsx';
import { joined } from '../format.ts';
import type { InputPart } from '../state/display.ts';
import { AirPart } from './air-part.tsx';
import { CompressorPart, MAIN_OF_KIND } from './compressor-part.tsx';
import { CorePart } from './core-part.tsx';
import { ExchangerPart } from './exchanger-part.tsx';
import { LinesPart } from './lines-part.tsx';
import { PullsPart } from './pulls-part.tsx';
import { PumpPart } from './pump-part.tsx';
import { Sketch } from './sketches.tsx';
import { TankPart } from './tank-part.tsx';

const OWN_FORMS: Partial<Record<InputPart, (props: FormProps) => preact.JSX.Element>> = {
  core: CorePart,
  pump: PumpPart,
  lines: LinesPart,
  exchanger: ExchangerPart,
  tank: TankPart,
  pulls: PullsPart,
  compressor: CompressorPart,
  air: AirPart,
};

/** One part of the car: its sketch, name and one telling value; opened, its inputs. */
export function PartDetails({ part: spec, ...props }: FormProps & { readonly part: PartSpec }) {
  const { session, display, car } = props;
  const { part, name, groups } = spec;
  const isOpen = display.openedPart.value === part;
  const summary = useRef<HTMLElement>(null);
  const state = stateOf(props, groups);

  const isAsked = display.askedPart.value === part;
  useEffect(() => {
    if (!isAsked) return;
    display.askedPart.value = undefined;
    summary.current?.focus({ preventScroll: true });
    summary.current?.scrollIntoView({ block: 'nearest' });
  }, [isAsked, display]);

  const Form = OWN_FORMS[part] ?? PlainForm;
  return (
    <details
      class={state.isChanged ? 'part changed' : 'part'}
      open={isOpen}
      onToggle={(event) => {
        // The page keeps which part is open, since another part of it may ask for one.
        if (event.currentTarget.open) display.openedPart.value = part;
        else if (display.openedPart.value === part) display.openedPart.value = undefined;
      }}
    >
      <summary class="line" ref={summary}>
        <Sketch part={part} />
        <span>{name}</span>
        <span class={state.hasDraft ? 'telling not-read' : 'telling'}>
          {state.warnings > 0 && (
            <span class="flag" title={`${state.warnings} to look at`}>
              !<span class="spoken">{state.warnings} to look at</span>
            </span>
          )}
          {state.hasDraft ? 'not read' : state.isChanged ? 'changed' : tellingValue(props, spec)}
        </span>
      </summary>
      {isOpen && (
        <div class="fields">
          <Warnings
            id={`part-${part}-doubt`}
            session={session}
            label={name}
            warnings={warningsWithoutBox(props, spec, car.warnings)}
          />
          <Form {...props} part={spec} />
        </div>
      )}
    </details>
  );
}

function PlainForm({ part, ...props }: FormProps & { readonly part: PartSpec }) {
  return (
    <>
      <FieldList {...props} fields={specsOf(props, part.main)} />
      <More {...props} part={part} shown={part.main} />
    </>
  );
}

/** Doubts about a part as a whole: no box of its own stands for them. */
function warningsWithoutBox({ car }: FormProps, { groups }: PartSpec, warnings: FormProps['car']['warnings']) {
  const boxes = new Set(fieldGroups(car.document).flatMap(({ fields }) => fields.map(({ path }) => path)));
  return warnings.filter(
    ({ path }) => groups.includes(path.split('.')[0]) && !boxes.has(path) && !boxes.has(path.replace(/\.[01]$/, '')),
  );
}

/** The one value that stands for a part. */
function tellingValue(props: FormProps, { part, main }: PartSpec): string {
  const { car, display } = props;
  if (part === 'pulls') return tellingPulls(props);
  if (part === 'exchanger' && car.config.exchanger === undefined) return 'none';
  const [spec] = specsOf(props, part === 'compressor' ? MAIN_OF_KIND[car.config.compressor.kind] : main);
  const value = spec && readAt(car.scenario, spec.path);
  if (typeof value !== 'number' || !isNumberRow(spec.row)) return '';
  const text = valueText(value, measureOf(spec.row.unit, display.units.value));
  return part === 'sensor' ? `lag ${text}` : text;
}

/** "8, rest 90 s": how many pulls, and the time between two of them. */
function tellingPulls({ car }: FormProps): string {
  const { cycle } = car.config;
  const pulls = pullsOfCycle(cycle);
  const rest = cycle.block.filter(({ kind }) => kind !== 'pull').reduce((sum, { duration }) => sum + duration, 0);
  return pullsIn(cycle.block) === 1 && rest > 0
    ? `${pulls}, rest ${joined({ value: String(Number(rest.toPrecision(4))), unit: 's' })}`
    : counted(pulls, 'pull');
}

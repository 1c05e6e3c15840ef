import { useSignal } from '@preact/signals';
import { type CoreSize, readQuantity } from '../../sim/index.ts';
import { Designer } from '../designer/designer.tsx';
import { measurePaths } from '../designer/measures.ts';
import { corePresets, hasCore, SIZED_KEYS, sizeBetween, sizeChanges } from '../document/core-changes.ts';
import { readAt } from '../document/field-groups.ts';
import { PARTS } from '../document/parts.ts';
import { conductancePaths, isTested } from '../document/test-point-changes.ts';
import { Caution } from '../fields/caution.tsx';
import { FieldList, type FormProps, More, specsOf, stateOf } from '../fields/field-list.tsx';
import { Fold } from '../fields/fold.tsx';
import { measureOf, valueText } from '../fields/measure.ts';
import { Slider } from '../fields/slider.tsx';
import { capitalised } from '../format.ts';
import { valueAt } from '../state/cars.ts';
import { AirVelocity } from './air-velocity.tsx';
import { TestPoint } from './test-point.tsx';

const [CORE] = PARTS;
/** A core of the same make is thought of within these factors; what is typed may go further. */
const SIZE_SPAN = { min: 0.8, max: 2, step: 0.01 };
/** Beyond these a factor is a slip of the finger. */
const SMALLEST = 0.2;
const LARGEST = 5;

/** The core: those that the file offers, its size, and its values. */
export function CorePart(props: FormProps) {
  const { session, car, before } = props;
  const presets = corePresets(before.document);
  const isByMeasures = car.scenario.values.coreGeometry !== undefined;
  const isByTest = isTested(car.scenario, 'core');
  return (
    <>
      {presets.length > 1 && (
        <fieldset class="presets">
          <legend class="spoken">Core to start from</legend>
          {presets.map((preset) => (
            <button
              type="button"
              key={preset.name}
              aria-pressed={hasCore(car.document, preset)}
              onClick={() =>
                session.change(
                  { core: preset.core, coreGeometry: preset.coreGeometry },
                  preset.name === 'Stock' ? 'stock core' : preset.name,
                )
              }
            >
              {capitalised(preset.name)}
            </button>
          ))}
        </fieldset>
      )}
      {isByMeasures === (before.scenario.values.coreGeometry !== undefined) && <Size {...props} />}
      {!isByMeasures && !isByTest && <FieldList {...props} fields={specsOf(props, CORE.main)} />}
      {!isByMeasures && <TestPoint {...props} part="core" />}
      <Designer {...props} />
      <AirAndPasses {...props} />
      <AirVelocity {...props} />
      <More
        {...props}
        part={CORE}
        title={isByMeasures ? 'Measured, in place of what follows' : 'Set each alone'}
        shown={[
          ...(isByMeasures ? [...measurePaths(), ...OWN_CURVES] : CORE.main),
          ...(isByTest ? conductancePaths('core') : []),
          ...AIR_AND_PASSES,
        ]}
      />
      <Caution>
        A leaking core feeds coolant to the engine: falling level, misfire, white smoke, risk of hydraulic lock. Stop
        when the level drops. Pressure-test the core before it is fitted. Ask for its rating on the air side and on the
        coolant side, and stay below both: an owner's published report has one leak after six months above its rating.
      </Caution>
    </>
  );
}

/** Exponents and the like of test points; measures bring their own curves, and the reader refuses these beside them. */
const OWN_CURVES = [
  'core.airConductanceExponent',
  'core.coolantConductanceExponent',
  'core.coolantConductanceFloor',
  'core.airDropExponent',
];

const OF_TWO_PASSES = ['core.passArrangement', 'core.turnVolume'];
const AIR_AND_PASSES = [
  'core.leakPast',
  'core.airPortArea',
  'core.exposedShare',
  'core.condensation',
  'core.passes',
  ...OF_TWO_PASSES,
];

/** What the air does beside the core, and how the coolant goes through it. */
function AirAndPasses(props: FormProps) {
  const { document, scenario } = props.car;
  const isShown = (path: string) =>
    !OF_TWO_PASSES.includes(path) || scenario.values.core.passes === 2 || valueAt(document, path) !== undefined;
  const { isChanged, hasDraft, warnings } = stateOf(props, AIR_AND_PASSES);
  return (
    <Fold
      title="Seal, air port, opening, condensation, passes"
      note={isChanged ? 'changed' : undefined}
      isOpenAtFirst={hasDraft || warnings > 0}
    >
      {() => <FieldList {...props} fields={specsOf(props, AIR_AND_PASSES.filter(isShown))} areMany />}
    </Fold>
  );
}

/** Width and depth of the core, counted from Before's: what follows from them moves together. */
function Size(props: FormProps) {
  const { session, display, car, before } = props;
  const size = sizeBetween(before.scenario, car.scenario);
  const isByMeasures = car.scenario.values.coreGeometry !== undefined;
  const set = (change: Partial<CoreSize>) => {
    const next = { width: 1, depth: 1, ...size, ...change };
    const name = `core size ${next.width.toFixed(2)} × ${next.depth.toFixed(2)}`;
    const changes = sizeChanges(before.scenario, next);
    // A measure is moved alone; of test points all follow.
    const isMoved = (path: string) => path.slice('coreGeometry.'.length) in change;
    session.preview(
      isByMeasures ? Object.fromEntries(Object.entries(changes).filter(([path]) => isMoved(path))) : changes,
      name,
    );
  };
  const units = display.units.value;
  // What follows from measures is in the designer, at the flows of the pull.
  const followers = specsOf(
    props,
    (isByMeasures ? [] : SIZED_KEYS).filter((key) => key !== 'airConductance').map((key) => `core.${key}`),
  );
  return (
    <section>
      <h3>Core size against Before</h3>
      <div class="factors">
        <Factor
          name="Width"
          value={size?.width}
          onMove={(width) => set({ width })}
          onRelease={() => session.commit('core size')}
        />
        <Factor
          name="Depth"
          value={size?.depth}
          onMove={(depth) => set({ depth })}
          onRelease={() => session.commit('core size')}
        />
      </div>
      {size === undefined && (
        <p class="small">
          The core's values were set one by one and follow no one size. A slider here sets all five anew from Before's.
        </p>
      )}
      <dl class="follow">
        {followers.map(({ path, row }) => (
          <div key={path}>
            <dt>{FOLLOWER_NAMES[path] ?? row.label}</dt>
            <dd>
              {'unit' in row &&
                valueText(Number((readAt(car.scenario, path) as number).toPrecision(4)), measureOf(row.unit, units))}
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

const FOLLOWER_NAMES: Readonly<Record<string, string>> = {
  'core.coolantConductance': 'Coolant side',
  'core.airDrop': 'Core pressure drop',
  'core.metalHeatCapacity': 'Metal',
  'core.coolantVolume': 'Coolant inside',
};

interface FactorProps {
  readonly name: string;
  /** undefined where the core follows no one size */
  readonly value: number | undefined;
  readonly onMove: (value: number) => void;
  readonly onRelease: () => void;
}

function Factor({ name, value, onMove, onRelease }: FactorProps) {
  const text = useSignal<string | undefined>(undefined);
  const problem = useSignal('');
  const id = `core-${name.toLowerCase()}`;
  const shown = value === undefined ? '' : value.toFixed(2);
  const settle = () => {
    const typed = text.value?.trim();
    if (typed === undefined || typed === shown) {
      text.value = undefined;
      problem.value = '';
      return;
    }
    const reading = readQuantity(typed, '-');
    const factor = reading.kind === 'value' ? reading.value : Number.NaN;
    problem.value =
      factor >= SMALLEST && factor <= LARGEST
        ? ''
        : `"${typed}" is no size; expected ${SMALLEST} to ${LARGEST} times Before's.`;
    if (problem.value !== '') return;
    text.value = undefined;
    onMove(factor);
    onRelease();
  };
  const at = value ?? 1;
  const span = { ...SIZE_SPAN, min: Math.min(SIZE_SPAN.min, at), max: Math.max(SIZE_SPAN.max, at) };
  return (
    <div class="field">
      <span class="name">
        <label for={id}>{name} ×</label>
      </span>
      <span class={problem.value === '' ? 'box' : 'box unread'}>
        <input
          id={id}
          type="text"
          inputMode="decimal"
          autocomplete="off"
          value={text.value ?? shown}
          aria-invalid={problem.value !== ''}
          aria-describedby={`${id}-problem`}
          onInput={(event) => {
            text.value = event.currentTarget.value;
          }}
          onBlur={settle}
          onKeyDown={(event) => {
            if (event.key === 'Enter') settle();
            if (event.key === 'Escape' && text.value !== undefined) {
              event.stopPropagation();
              text.value = undefined;
              problem.value = '';
            }
          }}
        />
      </span>
      <Slider
        label={`${name} of the core, slider`}
        span={span}
        value={at}
        valueText={`${at.toFixed(2)} times Before's`}
        mark={at === 1 ? undefined : 1}
        onMove={onMove}
        onRelease={onRelease}
      />
      <p class={problem.value === '' ? 'spoken' : 'message'} id={`${id}-problem`} role="status">
        {problem.value}
      </p>
    </div>
  );
}

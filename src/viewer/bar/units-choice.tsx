import { useSignal } from '@preact/signals';
import { writtenUnit } from '../format.ts';
import type { PageProps } from '../page.tsx';
import { IMPERIAL, METRIC, UNIT_CHOICES, type UnitChoice, type UnitQuantity } from '../state/display.ts';

const QUANTITY_NAMES: Record<UnitQuantity, string> = {
  temperature: 'Temperature',
  coolantFlow: 'Coolant flow',
  pressure: 'Pressure',
  length: 'Length',
  power: 'Power',
};
const QUANTITIES = Object.keys(UNIT_CHOICES) as UnitQuantity[];

const areSame = (a: UnitChoice, b: UnitChoice): boolean => QUANTITIES.every((quantity) => a[quantity] === b[quantity]);

/** Units of the page: a set of them, or each quantity on its own. What is stored never changes. */
export function UnitsChoice({ display }: PageProps) {
  const units = display.units.value;
  const isMixing = useSignal(false);
  const known = areSame(units, METRIC) ? 'metric' : areSame(units, IMPERIAL) ? 'us' : 'mixed';
  const isOpen = isMixing.value;
  return (
    <div class="units">
      <label>
        <span class="word">Units</span>
        <select
          aria-label="Units"
          value={isOpen ? 'mixed' : known}
          onChange={({ currentTarget: { value } }) => {
            isMixing.value = value === 'mixed';
            if (value === 'metric') display.units.value = METRIC;
            if (value === 'us') display.units.value = IMPERIAL;
          }}
        >
          <option value="metric">Metric</option>
          <option value="us">US</option>
          <option value="mixed">Mixed…</option>
        </select>
      </label>
      {isOpen ? (
        <Each
          display={display}
          onClose={() => {
            isMixing.value = false;
          }}
        />
      ) : (
        known === 'mixed' && (
          <button
            type="button"
            class="link"
            onClick={() => {
              isMixing.value = true;
            }}
          >
            Change
          </button>
        )
      )}
    </div>
  );
}

function Each({ display, onClose }: Pick<PageProps, 'display'> & { readonly onClose: () => void }) {
  return (
    <fieldset class="sheet">
      <legend class="spoken">Unit of each quantity</legend>
      {QUANTITIES.map((quantity) => (
        <label key={quantity}>
          {QUANTITY_NAMES[quantity]}
          <select
            value={display.units.value[quantity]}
            onChange={({ currentTarget: { value } }) => {
              display.units.value = { ...display.units.value, [quantity]: value };
            }}
          >
            {UNIT_CHOICES[quantity].map((symbol) => (
              <option key={symbol} value={symbol}>
                {writtenUnit(symbol)}
              </option>
            ))}
          </select>
        </label>
      ))}
      <button type="button" onClick={onClose}>
        Done
      </button>
    </fieldset>
  );
}

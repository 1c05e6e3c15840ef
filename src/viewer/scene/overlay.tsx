import type { ComponentChildren } from 'preact';
import type { ColumnName } from '../../sim/index.ts';
import { cssColour } from '../colour-scale.ts';
import { flow, joined, NO_BREAK_SPACE, temperature } from '../format.ts';
import { isOneLine, type LabelName, valueSize } from './labels.ts';
import { type CarRole, type Layout, NODE_NAMES, type NodeName, type PlacedLabel, type Room } from './layout.ts';
import type { PicturedCar, PictureModel } from './picture-model.ts';
import { bypassState } from './pipes.tsx';

const NOTHING = '–';
export const ROLE_NAMES: Readonly<Record<CarRole, string>> = { before: 'Before', after: 'After' };

const NODES: Readonly<Record<NodeName, { readonly name: string; readonly short?: string; readonly at: ColumnName }>> = {
  compressor: { name: 'Compressor', at: 'dischargeTemperature' },
  pump: { name: 'Pump', at: 'reservoirTemperature' },
  tank: { name: 'Tank', at: 'reservoirTemperature' },
  exchanger: { name: 'Front exchanger', short: 'Exchanger', at: 'coolantOutOfExchanger' },
};

/** Names and numbers over the picture: what goes in and out of each core, and the parts of the loop in hand. */
export function Overlay({ model }: { readonly model: PictureModel }) {
  const layout = model.layout.value;
  const inHand = model.inHand;
  if (layout === undefined || inHand === undefined) return null;
  return (
    <div class={`picture-overlay ${layout.room}`}>
      {layout.blocks.map(({ role, title }) => (
        <section key={role} aria-label={`${ROLE_NAMES[role]}: numbers at the core`}>
          {layout.blocks.length > 1 && <Title role={role} place={title} model={model} />}
          {layout.labels
            .filter((label) => label.role === role && label.name !== 'bypass')
            .map((label) => (
              <Label key={label.name} label={label} model={model} room={layout.room} />
            ))}
        </section>
      ))}
      <section aria-label="Parts of the loop">
        {NODE_NAMES.map((name) => (
          <Node key={name} name={name} layout={layout} model={model} car={inHand} />
        ))}
        {layout.labels
          .filter(({ name }) => name === 'bypass')
          .map((label) => (
            <Label key={label.name} label={label} model={model} room={layout.room} />
          ))}
      </section>
    </div>
  );
}

interface TitleProps {
  readonly role: CarRole;
  readonly place: PlacedLabel | Layout['blocks'][number]['title'];
  readonly model: PictureModel;
}

function Title({ role, place, model }: TitleProps) {
  return (
    <h3 class={role} style={placed(place)}>
      {ROLE_NAMES[role]}
      <span class="what">: {model.carOf(role)?.car.label}</span>
    </h3>
  );
}

interface LabelProps {
  readonly label: PlacedLabel;
  readonly model: PictureModel;
  readonly room: Room;
}

function Label({ label, model, room }: LabelProps) {
  const { size, line } = valueSize(label.name, room);
  return (
    <p
      class={`picture-label ${label.name} ${label.role}${isOneLine(label.name, room) ? ' one-line' : ''}`}
      style={placed(label)}
    >
      <span>{CAPTIONS[label.name]}</span>
      <b style={{ fontSize: `${size}px`, lineHeight: `${line}px` }}>{labelText(label, model)}</b>
    </p>
  );
}

const CAPTIONS: Readonly<Record<LabelName, string>> = {
  charge: 'charge',
  airIn: 'air in',
  coolantIn: 'coolant in',
  coolantOut: 'coolant out',
  coolantBoth: 'coolant in, out',
  bypass: 'bypass',
};

const COLUMN_OF: Partial<Record<LabelName, ColumnName>> = {
  charge: 'chargeTemperature',
  airIn: 'dischargeTemperature',
  coolantIn: 'coolantIntoCore',
  coolantOut: 'coolantOutOfCore',
};

function labelText({ name, role }: PlacedLabel, model: PictureModel): string {
  const car = model.carOf(role);
  if (car === undefined) return NOTHING;
  if (name === 'bypass') return bypassState(model) ?? NOTHING;
  const column = COLUMN_OF[name];
  if (column !== undefined) return degrees(model, car, column);
  const units = model.props.display.units.value;
  const [into, out] = [model.valueOf(car, 'coolantIntoCore'), model.valueOf(car, 'coolantOutOfCore')];
  if (into === undefined || out === undefined) return NOTHING;
  return `${temperature(into, units).value}${NO_BREAK_SPACE}→${NO_BREAK_SPACE}${joined(temperature(out, units))}`;
}

function degrees(model: PictureModel, car: PicturedCar, column: ColumnName): string {
  const value = model.valueOf(car, column);
  return value === undefined ? NOTHING : joined(temperature(value, model.props.display.units.value));
}

interface NodeProps {
  readonly name: NodeName;
  readonly layout: Layout;
  readonly model: PictureModel;
  readonly car: PicturedCar;
}

/** A part of the loop with its number and a stripe in the colour of its temperature. */
function Node({ name, layout, model, car }: NodeProps) {
  const { at, short, name: whole } = NODES[name];
  const value = model.valueOf(car, at);
  const colour = value === undefined ? undefined : model.scale.value.colourAt(value);
  return (
    <p class={`picture-node ${name}`} style={placed(layout.nodes[name])}>
      <i aria-hidden="true" style={colour && { background: cssColour(colour) }} />
      <span>{layout.room === 'roomy' ? whole : (short ?? whole)}</span>
      <b>{name === 'pump' ? pumpFlow(model, car) : degrees(model, car, at)}</b>
    </p>
  );
}

function pumpFlow(model: PictureModel, car: PicturedCar): ComponentChildren {
  const value = model.valueOf(car, 'coolantFlow');
  return value === undefined ? NOTHING : joined(flow(value, model.props.display.units.value));
}

function placed({ x, y, width, height }: Pick<PlacedLabel, 'x' | 'y' | 'width' | 'height'>) {
  return { left: `${x}px`, top: `${y}px`, width: `${width}px`, height: `${height}px` };
}

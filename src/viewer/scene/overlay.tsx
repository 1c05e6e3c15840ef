import type { ColumnName } from '../../sim/index.ts';
import { cssColour } from '../colour-scale.ts';
import { degrees, fixed, flow, joined, NO_BREAK_SPACE, temperature } from '../format.ts';
import { type CarRole, ROLE_NAMES } from '../state/cars.ts';
import { columnBehind, countAt, exchangerColumns, footOrder } from './foot.ts';
import type { Rectangle } from './free-place.ts';
import { type LabelName, valueSize, WORDS } from './labels.ts';
import type { Layout, PlacedLabel } from './layout.ts';
import { NODE_NAMES, type NodeName } from './loop-layout.ts';
import type { PicturedCar, PictureModel } from './picture-model.ts';
import { bypassState, isTakenBefore } from './pipes.tsx';

const NOTHING = '–';

interface OverlayProps {
  readonly model: PictureModel;
}

/** Names and numbers over the picture: what goes in and out of each core, and the parts of the loop in hand. */
export function Overlay({ model }: OverlayProps) {
  const layout = model.layout.value;
  const inHand = model.inHand;
  if (layout === undefined || inHand === undefined) return null;
  const labelsOf = (role: CarRole) => layout.labels.filter((label) => label.role === role && !isOfBypass(label));
  const bypasses = layout.labels.filter(isOfBypass);
  return (
    <div class={`picture-overlay ${layout.room}`}>
      {layout.blocks.map(({ role, title }) => (
        <section key={role} aria-label={`${ROLE_NAMES[role]}: numbers at the core`}>
          {layout.blocks.length > 1 && (
            <p class={`picture-title ${role}`} style={placed(title)}>
              {ROLE_NAMES[role]}: {model.carOf(role)?.car.label}
            </p>
          )}
          {labelsOf(role).map((label) => (
            <Label key={label.name} label={label} layout={layout} model={model} />
          ))}
        </section>
      ))}
      <section aria-label="Parts of the loop">
        {NODE_NAMES.map((name) => {
          const box = layout.nodes[name];
          return box && <Node key={name} name={name} box={box} layout={layout} model={model} car={inHand} />;
        })}
        {bypasses.map((label) => (
          <Label key={label.name} label={label} layout={layout} model={model} />
        ))}
        {layout.room !== 'roomy' && layout.pipes.bypassBehind.length > 0 && (
          <p class="spoken">
            Recirculated air is taken {isTakenBefore(inHand) ? 'before and behind' : 'behind'} the core.
          </p>
        )}
      </section>
    </div>
  );
}

const isOfBypass = ({ name }: PlacedLabel): boolean => name === 'bypass' || name === 'bypassBehind';

interface LabelProps extends OverlayProps {
  readonly label: PlacedLabel;
  readonly layout: Layout;
}

/** A number beside a block. One that found no room is still read out. */
function Label({ label, layout: { room }, model }: LabelProps) {
  const { name, role, isFree } = label;
  const { caption, short } = WORDS[name];
  const { size, line } = valueSize(name, room);
  return (
    <p class={isFree ? `picture-label ${name}` : 'spoken'} style={isFree ? placed(label) : undefined}>
      <span aria-hidden={room !== 'roomy' && short !== undefined}>
        {room === 'roomy' ? caption : (short ?? caption)}
      </span>
      {room !== 'roomy' && short !== undefined && <span class="spoken">{caption}</span>}
      <b class={role} style={{ fontSize: `${size}px`, lineHeight: `${line}px` }}>
        {labelText(label, room !== 'roomy', model)}
      </b>
    </p>
  );
}

const COLUMN_OF: Partial<Record<LabelName, ColumnName>> = {
  charge: 'chargeTemperature',
  airIn: 'dischargeTemperature',
  coolantIn: 'coolantIntoCore',
  coolantOut: 'coolantOutOfCore',
};

function labelText({ name, role }: PlacedLabel, isShort: boolean, model: PictureModel): string {
  if (name === 'bypass' || name === 'bypassBehind') return bypassState(model) ?? NOTHING;
  const car = model.carOf(role);
  if (car === undefined) return NOTHING;
  if (name === 'pastCore') return `${fixed(100 * car.car.config.core.leakPast, 0)}${NO_BREAK_SPACE}%`;
  const out = degreesAt(model, car, COLUMN_OF[name] ?? 'coolantOutOfCore');
  if (name !== 'coolantBoth' || isShort) return out;
  const into = model.valueOf(car, 'coolantIntoCore');
  if (into === undefined) return NOTHING;
  return [temperature(into, model.props.display.units.value).value, '→', out].join(NO_BREAK_SPACE);
}

interface NodeProps extends OverlayProps {
  readonly name: NodeName;
  readonly box: Rectangle;
  readonly layout: Layout;
  readonly car: PicturedCar;
}

interface NodeWords {
  readonly name: string;
  readonly short?: string;
  /** what two in one box are called */
  readonly both?: string;
  readonly shortBoth?: string;
}

const NODES: Readonly<Record<NodeName, NodeWords>> = {
  compressor: { name: 'Compressor' },
  pump: { name: 'Pump', both: '2 pumps' },
  tank: { name: 'Tank' },
  exchanger: { name: 'Front exchanger', short: 'Exchanger', both: '2 exchangers', shortBoth: '2 exch.' },
};

/** Temperatures that a box stands for; the pump's colour is that of the coolant before it. */
function columnsAt(name: NodeName, { config }: PicturedCar['car']): ColumnName[] {
  if (name === 'compressor') return ['dischargeTemperature'];
  if (name === 'exchanger') return exchangerColumns(config);
  const order = footOrder(config);
  return [columnBehind(config, order, order.indexOf(name)) ?? []].flat();
}

/** A part of the loop with its number and a stripe in the colour of its temperature. */
function Node({ name, box, layout, model, car }: NodeProps) {
  const columns = columnsAt(name, car.car);
  const value = columns.length === 1 ? model.valueOf(car, columns[0]) : undefined;
  const colour = value === undefined ? undefined : model.scale.value.colourAt(value);
  const isRoomy = layout.room === 'roomy';
  const { name: whole, short = whole, both = whole, shortBoth = both } = NODES[name];
  const isDouble = name !== 'compressor' && countAt(car.car.config, name) > 1;
  return (
    <p class={`picture-node ${name}`} style={placed(box)}>
      <i aria-hidden="true" style={colour && { background: cssColour(colour) }} />
      <span>{isRoomy ? (isDouble ? both : whole) : isDouble ? shortBoth : short}</span>
      <b>{name === 'pump' ? coolantFlow(model, car) : allDegrees(model, car, columns, isRoomy)}</b>
      {name === 'compressor' && !isRoomy && <span>{bypassWords(model)}</span>}
    </p>
  );
}

/** One temperature, or those of two ways in a row. */
function allDegrees(model: PictureModel, car: PicturedCar, columns: readonly ColumnName[], isRoomy: boolean): string {
  if (columns.length === 1) return degreesAt(model, car, columns[0]);
  const units = model.props.display.units.value;
  const shown = columns.map((column) => temperature(model.valueOf(car, column) ?? Number.NaN, units, isRoomy ? 1 : 0));
  if (shown.some(({ value }) => value === 'NaN')) return NOTHING;
  return joined({ value: shown.map(({ value }) => value).join('/'), unit: shown[0].unit });
}

/** What the compressor's box says of the bypass; a standing engine moves no air at all. */
const BYPASS_WORDS = { shut: 'bypass shut', open: 'bypass open', 'no flow': 'no air flow' } as const;

function bypassWords(model: PictureModel): string {
  const state = bypassState(model);
  return state === undefined ? `bypass ${NOTHING}` : BYPASS_WORDS[state];
}

function degreesAt(model: PictureModel, car: PicturedCar, column: ColumnName): string {
  const value = model.valueOf(car, column);
  return value === undefined ? NOTHING : degrees(value, model.props.display.units.value);
}

function coolantFlow(model: PictureModel, car: PicturedCar): string {
  const value = model.valueOf(car, 'coolantFlow');
  return value === undefined ? NOTHING : joined(flow(value, model.props.display.units.value));
}

function placed({ x, y, width, height }: Rectangle) {
  return { left: `${x}px`, top: `${y}px`, width: `${width}px`, height: `${height}px` };
}

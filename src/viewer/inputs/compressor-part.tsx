import type { Config } from '../../sim/index.ts';
import { keysOfKind } from '../document/compressor-keys.ts';
import { PARTS } from '../document/parts.ts';
import { Field } from '../fields/field.tsx';
import { FieldList, type FormProps, More, specsOf } from '../fields/field-list.tsx';
import { degrees, fixed, joined, kelvins, NO_BREAK_SPACE } from '../format.ts';
import { valueAt } from '../state/cars.ts';
import type { UnitChoice } from '../state/display.ts';
import { type Head, headOf } from './compressor-head.ts';

const COMPRESSOR = PARTS.filter(({ part }) => part === 'compressor')[0];
type Kind = Config['compressor']['kind'];

/** Keys that stand out, by kind of compressor; the first tells of the part. */
export const MAIN_OF_KIND: Readonly<Record<Kind, readonly string[]>> = {
  displacement: COMPRESSOR.main,
  centrifugal: [
    'compressor.boostOutletPressure',
    'compressor.boostSpeed',
    'compressor.driveRatio',
    'compressor.quotedFlow',
    'compressor.quotedEfficiency',
  ],
  'turbine-driven': [
    'compressor.targetManifoldPressure',
    'compressor.highestSpeed',
    'compressor.boostOutletPressure',
    'compressor.boostSpeed',
    'compressor.quotedFlow',
    'compressor.quotedEfficiency',
  ],
};
const BYPASS = ['bypass.throttle', 'bypass.route', 'bypass.shareAfterCore', 'bypass.leak', 'bypass.recirculation'];

/** The compressor by its kind, and the way its recirculated air takes. */
export function CompressorPart(props: FormProps) {
  const { car, display } = props;
  const { kind } = car.config.compressor;
  const { unused, needed } = keysOfKind(car.document, kind);
  // What is typed is never hidden.
  const isHidden = (path: string) => unused.has(path) && valueAt(car.document, path) === undefined;
  const main = MAIN_OF_KIND[kind];
  const isPart = car.scenario.values.bypass.route === 'part of each';
  const bypass = BYPASS.filter((path) => !isHidden(path) && (isPart || path !== 'bypass.shareAfterCore'));
  const hidden = [...unused].filter(isHidden);
  const head = headOf(car.config);
  return (
    <>
      {specsOf(props, ['compressor.kind']).map((spec) => (
        <Field key={spec.path} {...props} spec={spec} backWith={['compressor', 'bypass.recirculation']} />
      ))}
      <FieldList {...props} fields={specsOf(props, main)} needed={needed} />
      {head && <HeadLines head={head} units={display.units.value} />}
      <section>
        <h3>Recirculated air</h3>
        {specsOf(props, bypass).map((spec) => (
          <Field
            key={spec.path}
            {...props}
            spec={spec}
            isNeeded={needed.has(spec.path) && spec.path === 'bypass.recirculation'}
            backWith={['bypass.route', 'bypass.shareAfterCore']}
          />
        ))}
      </section>
      <More {...props} part={COMPRESSOR} shown={['compressor.kind', ...main, ...BYPASS, ...hidden]} needed={needed} />
    </>
  );
}

/** A speed with its thousands set apart: "9 300 rpm". */
const rotation = (rpm: number): string =>
  joined({ value: fixed(rpm, 0).replace(/(?<=\d)(?=(\d{3})+$)/g, NO_BREAK_SPACE), unit: 'rpm' });

function HeadLines({ head, units }: { readonly head: Head; readonly units: UnitChoice }) {
  const air = degrees(head.inletTemperature, units, 0);
  return (
    <dl class="follow">
      <div>
        <dt>Head at {rotation(head.speed)}</dt>
        <dd>{kelvins(head.head, units)}</dd>
      </div>
      <div>
        <dt>Pressure ratio there, with air of {air}</dt>
        <dd>{fixed(head.pressureRatio, 2)}</dd>
      </div>
      {head.atTop && (
        <div>
          <dt>At {rotation(head.atTop.speed)}, the top of a pull</dt>
          <dd>{fixed(head.atTop.pressureRatio, 2)}</dd>
        </div>
      )}
    </dl>
  );
}

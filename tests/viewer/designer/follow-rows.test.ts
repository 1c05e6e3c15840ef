import { describe, expect, it } from 'vitest';
import { conduct } from '../../../src/sim/answers/study.ts';
import { studyCoreDesign } from '../../../src/sim/index.ts';
import { changeRows, followSections } from '../../../src/viewer/designer/follow-rows.ts';
import { doubt, finsPerInch } from '../../../src/viewer/designer/shown.ts';
import { length } from '../../../src/viewer/format.ts';
import { IMPERIAL, METRIC } from '../../../src/viewer/state/display.ts';
import { shippedConfig } from '../../support/shipped.ts';

const study = conduct(studyCoreDesign(shippedConfig('rolling-road-estate', 'core by its measures, 120 mm deep')));
if (study === undefined) throw new Error('no design');
const { design, changes } = study;
const spaced = (text: string) => text.replaceAll('\u00a0', ' ');
const shownFor = (title: string, name: string, units = METRIC) => {
  const section = followSections(design, units).find((each) => each.title === title);
  return spaced(section?.rows.find((row) => row.name === name)?.value ?? 'nothing');
};

describe('what follows from the measures', () => {
  // By hand from the file: 200 x 63 mm face; (6 layers x 200/1.8143) channels of 1.7143 x 7.9 mm are 89.6 cm2 free;
  // 5 tubes of 119.2 x 2.2 mm are 13.1 cm2, 4 A/P of one is 4.32 mm.
  it.each([
    ['Air side', 'Face', '126 cm²'],
    ['Air side', 'Free for the air', '89.6 cm²'],
    ['Coolant side', 'Free for the coolant', '13.1 cm²'],
    ['Coolant side', 'Hydraulic diameter', '4.32 mm'],
  ])('%s, %s: %s', (title, name, value) => expect(shownFor(title, name)).toBe(value));

  it('has the drops of the library, and their parts', () => {
    const kilopascals = (pascal: number) => `${(pascal / 1000).toFixed(2).replace('-', '−')} kPa`;
    expect(shownFor('Air side', 'Pressure drop')).toBe(kilopascals(design.airDrop));
    expect(shownFor('Air side', 'friction')).toBe(kilopascals(design.air.drop.friction));
    expect(shownFor('Air side', 'exit')).toBe(kilopascals(design.air.drop.exit));
    expect(shownFor('Air side', 'exit')).toMatch(/^−/);
    expect(shownFor('Coolant side', 'ports')).toBe(kilopascals(design.coolant.drop.ports));
    expect(shownFor('Coolant side', 'headers')).toBe(kilopascals(design.coolant.drop.headers));
    const { friction, ends } = design.coolant.drop.tubes;
    expect(shownFor('Coolant side', 'tubes')).toBe(kilopascals(friction + ends));
  });

  it('is in the units of the reader: 1 psi is 6894.757 Pa, an inch 25.4 mm', () => {
    expect(shownFor('Air side', 'Pressure drop', IMPERIAL)).toBe(`${(design.airDrop / 6894.757).toFixed(3)} psi`);
    expect(spaced(length(0.0254 / 8, IMPERIAL))).toBe('0.125 in');
  });

  it('says beside a figure that it was typed', () => {
    const calibrated = { ...design, factors: { ...design.factors, airConductance: 1.25 } };
    const names = followSections(calibrated, METRIC).flatMap(({ rows }) => rows.map(({ name }) => name));
    expect(names).toContain('Conductance UA, typed: ×1.250');
  });
});

describe('a larger core', () => {
  it('stands with its signs and ratios, width before depth', () => {
    const rows = Object.fromEntries(changeRows(changes, METRIC).map(({ name, values }) => [name, values.map(spaced)]));
    const [wider, deeper] = changes;
    expect([wider.measure, deeper.measure]).toEqual(['width', 'depth']);
    expect(rows['UA both']).toEqual([wider, deeper].map(({ conductance }) => `×${conductance.toFixed(3)}`));
    expect(rows['Charge peak']).toEqual(
      [wider, deeper].map(({ pull }) => `−${Math.abs(pull?.peak ?? 0).toFixed(2)} K`),
    );
    // A wider core breathes better, so the engine gets more air.
    expect(rows['Air mass'][0]).toMatch(/^\+0\.\d\d %$/);
  });

  it('leaves open what has no pull', () => {
    const [{ pull: _, ...wider }] = changes;
    expect(changeRows([wider], METRIC)[0].values).toEqual(['–']);
  });
});

describe('words of the designer', () => {
  it('write fins as the trade counts them, and doubts with one sign', () => {
    expect(finsPerInch(0.0254 / 14)).toBe('14');
    expect(finsPerInch(0.002)).toBe('12.7');
    expect(doubt('extrapolated, +-20 %.')).toBe('Extrapolated, ±20 %.');
  });
});

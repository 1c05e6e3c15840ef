import { describe, expect, it } from 'vitest';
import { dropPanels, dropRows } from '../../../../src/viewer/questions/drop/drop-rows.ts';
import { IMPERIAL, METRIC } from '../../../../src/viewer/state/display.ts';

const figures = (drop: number, drivePower: number, discharge: number, airFlow: number) => ({
  drop,
  pressureRatio: 1.8,
  discharge: discharge + 273.15,
  drivePower,
  manifold: 170_000,
  airFlow,
  peak: 333.15,
});
const { drop: _, ...slopes } = figures(0, 0, 0, 0);
const STUDY = {
  asItIs: figures(7000, 15_000, 110, 0.3),
  free: figures(0, 10_000, 100, 0.32),
  doubled: figures(14_000, 18_000, 120, 0.28),
  none: figures(0, 20_000, 130, 0.24),
  perPascal: slopes,
};

describe('what the drop of the core takes', () => {
  it('is a row a figure with its unit, the four cars side by side', () => {
    const rows = dropRows(STUDY, METRIC);
    expect(rows[0]).toEqual(['Core pressure drop, kPa', '7.00', '0.00', '14.00', '0.00']);
    expect(rows[1]).toEqual(['Pressure ratio', '1.800', '1.800', '1.800', '1.800']);
    expect(rows[2]).toEqual(['Discharge, °C', '110.0', '100.0', '120.0', '130.0']);
    expect(rows[3]).toEqual(['Drive power, kW', '15.00', '10.00', '18.00', '20.00']);
    expect(rows[5]).toEqual(['Air, kg/s', '0.3000', '0.3200', '0.2800', '0.2400']);
  });

  it('is in the chosen units', () => {
    const [drop, , discharge, power] = dropRows(STUDY, IMPERIAL);
    // 110 degC is 230 degF; 1 psi is 6.894757 kPa; 1 hp is 0.745700 kW.
    expect(discharge.slice(0, 2)).toEqual(['Discharge, °F', '230.0']);
    expect(drop.slice(0, 2)).toEqual(['Core pressure drop, psi', (7 / 6.894757).toFixed(3)]);
    expect(power.slice(0, 2)).toEqual(['Drive power, hp', (15 / 0.7457).toFixed(2)]);
  });

  it('is drawn from nought, and the discharge from the air outside', () => {
    const [power, discharge, air] = dropPanels(STUDY, 303.15, METRIC);
    const shares = ({ bars }: typeof power) => bars.map(({ share }) => share);
    expect(shares(power)).toEqual([0.75, 0.5, 0.9, 1]);
    // 80, 70, 90 and 100 K above 30 degC.
    expect(shares(discharge)).toEqual([0.8, 0.7, 0.9, 1].map((share) => expect.closeTo(share, 9)));
    expect(discharge.title).toContain('30.0');
    expect(shares(air)).toEqual([0.9375, 1, 0.875, 0.75].map((share) => expect.closeTo(share, 9)));
    expect(power.bars.map(({ name }) => name)).toEqual(['as it is', 'no drop', 'twice the drop', 'no core']);
    expect(power.bars[0].value).toBe('15.00\u00a0kW');
  });

  it('has bars of no length where a turbine drives and nothing is taken from the engine', () => {
    const driven = { ...STUDY };
    for (const car of ['asItIs', 'free', 'doubled', 'none'] as const) driven[car] = { ...STUDY[car], drivePower: 0 };
    expect(dropPanels(driven, 303.15, METRIC)[0].bars.map(({ share }) => share)).toEqual([0, 0, 0, 0]);
  });
});

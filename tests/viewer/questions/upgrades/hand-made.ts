import type { Upgrade, UpgradeStudy } from '../../../../src/sim/index.ts';

/** Three steps of a build: one helps, one does nothing, one is refused. Peaks in round degC. */
export const UPGRADES: readonly Upgrade[] = [
  { name: 'core', price: 1200.5, hours: 9 },
  { name: 'sticker', price: 10 },
  { name: 'pump' },
];

const kelvin = (celsius: number) => celsius + 273.15;
const FIRST_PULL = { coolantFlow: 12 / 6e4, coreAirDrop: 7500, drivePower: 24_000, airFlow: 0.28 };
const carAt = (celsius: number, count: number) => ({
  count,
  pullsRun: 4,
  deciding: { pull: count === 4 ? 4 : count + 1, peak: kelvin(celsius) },
  firstPull: FIRST_PULL,
});

export const STUDY: UpgradeStudy = {
  limit: kelvin(50),
  base: carAt(60, 0),
  fitted: [],
  alone: [
    {
      upgrade: 0,
      car: carAt(47, 4),
      change: { effect: 'better', count: 4, peak: -13 },
      total: { effect: 'better', count: 4, peak: -13 },
    },
    {
      upgrade: 1,
      car: carAt(60, 0),
      change: { effect: 'no effect', count: 0, peak: 0 },
      total: { effect: 'no effect', count: 0, peak: 0 },
    },
    { upgrade: 2 },
  ],
  inOrder: [
    {
      upgrade: 0,
      car: carAt(47, 4),
      change: { effect: 'better', count: 4, peak: -13 },
      total: { effect: 'better', count: 4, peak: -13 },
    },
    {
      upgrade: 1,
      car: carAt(48, 4),
      change: { effect: 'worse', count: 0, peak: 1 },
      total: { effect: 'better', count: 4, peak: -12 },
    },
    { upgrade: 2 },
  ],
};

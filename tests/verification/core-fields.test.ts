import { describe, expect, it } from 'vitest';
import { CellBlock } from '../../src/sim/model/cell-block.ts';

/**
 * Steady temperatures in an unmixed cross-flow core, (T - coolant inlet)/(air inlet - coolant inlet), at x, y = 1/4,
 * 1/2, 3/4 along the air and along the coolant: rows x, columns y. W. Nusselt, Technische Mechanik und Thermodynamik 1,
 * 1930, 417-422: theta_a = J(NTU_a x, NTU_c y), theta_c = 1 - J(NTU_c y, NTU_a x), theta_m =
 * (theta_a + r theta_c)/(1 + r), J(a, b) = 1 - e^-b int_0^a e^-t I0(2 sqrt(b t)) dt; NTU on the overall conductance,
 * r = coolant over air conductance.
 */
interface Field {
  readonly name: string;
  readonly ntuAir: number;
  /** heat capacity rate of air over coolant */
  readonly ratio: number;
  readonly r: number;
  readonly coolant: readonly (readonly number[])[];
  readonly metal: readonly (readonly number[])[];
}
const FIELDS: readonly Field[] = [
  {
    name: 'gentle',
    ntuAir: 1,
    ratio: 0.5,
    r: 1,
    coolant: [
      [0.09291882462, 0.1774823648, 0.2544065788],
      [0.07347260204, 0.1423659139, 0.2068534778],
      [0.05809181368, 0.1141666826, 0.1680955076],
    ],
    metal: [
      [0.4473865485, 0.5, 0.5477218899],
      [0.3580934162, 0.4090076051, 0.4562358307],
      [0.2865260076, 0.3342458366, 0.379388157],
    ],
  },
  {
    name: 'charge cooler',
    ntuAir: 2,
    ratio: 0.25,
    r: 5,
    coolant: [
      [0.07347260204, 0.1423659139, 0.2068534778],
      [0.04592749121, 0.09152895402, 0.1365266497],
      [0.02870086183, 0.05878494935, 0.08992459446],
    ],
    metal: [
      [0.1683462067, 0.2312464776, 0.2899809288],
      [0.1070141498, 0.1519846119, 0.1960137362],
      [0.06796748927, 0.09966978612, 0.1320134578],
    ],
  },
  {
    name: 'balanced',
    ntuAir: 3,
    ratio: 1,
    r: 0.25,
    coolant: [
      [0.3162831955, 0.5513141414, 0.7142406579],
      [0.1868881935, 0.3784998229, 0.5457306455],
      [0.1091161808, 0.2532102955, 0.4029008612],
    ],
    metal: [
      [0.6102300827, 0.7607522734, 0.855555187],
      [0.3963263256, 0.5729001062, 0.7065778927],
      [0.2504307098, 0.4140575427, 0.5582594833],
    ],
  },
  {
    name: 'coolant is cmin',
    ntuAir: 1,
    ratio: 2,
    r: 2,
    coolant: [
      [0.3243507037, 0.5457370989, 0.69590603],
      [0.2671201962, 0.4698696378, 0.6206436532],
      [0.2197894838, 0.403528913, 0.5513141414],
    ],
    metal: [
      [0.5021118312, 0.6666484146, 0.7776757036],
      [0.4223733987, 0.5863497494, 0.7064872697],
      [0.3546048839, 0.5137542985, 0.6385800298],
    ],
  },
];

/** Metal and coolant at the nine places, each from the means of the four cells around it. */
function fieldOf({ ntuAir, ratio, r }: Field, nx: number, ny: number) {
  const block = new CellBlock(nx, ny, 0, 1, 1);
  const overall = ntuAir;
  const rates = {
    airRate: 1,
    airConductance: (overall * (1 + r)) / r,
    coolantRate: 1 / ratio,
    coolantConductance: overall * (1 + r),
    metalLoss: 0,
    metalSource: 0,
  };
  const out = new Float64Array(block.size);
  block.sweep(rates, { s: 0, reach: 1, base: new Float64Array(block.size), out }, 1, 0);
  const at = (place: number) => (x: number, y: number) => {
    const [i, j] = [(x * nx) / 4, (y * ny) / 4];
    const cells = [
      [i - 1, j - 1],
      [i - 1, j],
      [i, j - 1],
      [i, j],
    ];
    return cells.reduce((sum, [a, b]) => sum + out[2 * (a * ny + b) + place], 0) / 4;
  };
  return { metal: at(0), coolant: at(1) };
}

describe.each(FIELDS)('the steady field, $name', (field) => {
  const [coarse, fine] = [fieldOf(field, 48, 24), fieldOf(field, 96, 48)];
  it.each(['metal', 'coolant'] as const)('of the %s: near at 48 x 24, exact beyond the grid', (part) => {
    for (const x of [1, 2, 3]) {
      for (const y of [1, 2, 3]) {
        const exact = field[part][x - 1][y - 1];
        const [a, b] = [coarse[part](x, y), fine[part](x, y)];
        expect(Math.abs(a - exact), `x ${x}/4, y ${y}/4: ${a}`).toBeLessThan(3e-3);
        expect(Math.abs((4 * b - a) / 3 - exact), `x ${x}/4, y ${y}/4, beyond`).toBeLessThan(1e-4);
      }
    }
  });
});

/**
 * Film coefficient in turbulent flow through a smooth duct [W/(m2 K)].
 *
 *     Nu = (f/8)(Re - 1000) Pr / (1 + 12.7 (f/8)^(1/2) (Pr^(2/3) - 1)),     f = (0.79 ln Re - 1.64)^-2
 *
 * Source: V. Gnielinski, Int. Chem. Eng. 16(2), 1976, 359-368; f after B. S. Petukhov, Adv. Heat Transfer 6, 1970.
 */
export function filmCoefficient(
  massFlow: number,
  area: number,
  hydraulicDiameter: number,
  fluid: { readonly viscosity: number; readonly conductivity: number; readonly heatCapacity: number },
): number {
  const Re = (massFlow * hydraulicDiameter) / (area * fluid.viscosity);
  const Pr = (fluid.heatCapacity * fluid.viscosity) / fluid.conductivity;
  const f = (0.79 * Math.log(Re) - 1.64) ** -2;
  const Nu = ((f / 8) * (Re - 1000) * Pr) / (1 + 12.7 * Math.sqrt(f / 8) * (Pr ** (2 / 3) - 1));
  return (Nu * fluid.conductivity) / hydraulicDiameter;
}

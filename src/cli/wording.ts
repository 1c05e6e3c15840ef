/** How sentences write sizes at a terminal; what they take is SI. */
export const WORDING = {
  difference: (kelvin: number): string => `${kelvin.toFixed(1)} K`,
  pressure: (pascal: number): string => `${(pascal / 1e3).toFixed(1)} kPa`,
  power: (watts: number): string => (watts < 2000 ? `${watts.toFixed(0)} W` : `${(watts / 1e3).toFixed(1)} kW`),
};

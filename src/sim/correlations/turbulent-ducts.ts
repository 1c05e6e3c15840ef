import { requirePositive, requireWithin } from '../errors.ts';
import { joinedMark, markOf, type Ranged, type RangeMark } from './range-mark.ts';

/** Reynolds numbers between which neither law holds, [1] of bridgedTransition. */
const LAMINAR_TO = 2300;
const TURBULENT_FROM = 4000;

/**
 * Darcy friction factor of a smooth duct in turbulent flow, after Konakov.
 *
 *     f = (1.8 log10 Re - 1.5)^-2
 *
 * Range: 4000 to 1e6, on the hydraulic diameter. It is the friction that Gnielinski's law of 2013 is written with;
 * Petukhov's is up to 2.9 % higher, at 4000, where it makes the Nusselt number 3.3 % higher at Pr 0.7.
 *
 * @param Re - Reynolds number on the hydraulic diameter [-]
 * @returns Darcy friction factor, four times Fanning's, with its mark [-]
 * @throws {OutOfRangeError} when Re is below 10, where the formula has no meaning
 *
 * @example
 * frictionKonakov(10000).value // 0.03078
 *
 * [1] P. K. Konakov, Dokl. Akad. Nauk SSSR 51, 1946, 503-506; V. Gnielinski, Int. J. Heat Mass Transfer 63, 2013, 134.
 */
export function frictionKonakov(Re: number): Ranged {
  requireWithin('Reynolds number', Re, 10, Number.POSITIVE_INFINITY);
  return {
    value: (1.8 * Math.log10(Re) - 1.5) ** -2,
    range: markOf([['Reynolds number [-]', Re, TURBULENT_FROM, 1e6]]),
  };
}

/**
 * Mean Nusselt number of turbulent flow in a smooth duct, after Gnielinski.
 *
 *     Nu = (f/8)(Re - 1000) Pr/( 1 + 12.7 (f/8)^(1/2) (Pr^(2/3) - 1) ) (1 + (d/L)^(2/3)),  f of Konakov
 *
 * Range: 4000 <= Re <= 1e6, 0.1 <= Pr <= 1000, d/L <= 1. The factor of the wall's viscosity is left out.
 *
 * @param Re - Reynolds number on the hydraulic diameter [-]
 * @param Pr - Prandtl number [-]
 * @param diameterOverLength - hydraulic diameter over length, d/L; 0 for a long duct [-]
 * @returns Nusselt number on the hydraulic diameter, with its mark [-]
 * @throws {OutOfRangeError} when Re is below 1000, Pr not above 0, or diameterOverLength below 0
 *
 * @example
 * nusseltGnielinski(10000, 8, 0).value // 82.36388762
 *
 * [1] V. Gnielinski, On heat transfer in tubes, Int. J. Heat Mass Transfer 63, 2013, 134-140.
 */
export function nusseltGnielinski(Re: number, Pr: number, diameterOverLength: number): Ranged {
  requireWithin('Reynolds number', Re, 1000, Number.POSITIVE_INFINITY);
  requirePositive('Prandtl number', Pr);
  requireWithin('diameter over length', diameterOverLength, 0, Number.POSITIVE_INFINITY);
  const f8 = frictionKonakov(Re).value / 8;
  const developed = (f8 * (Re - 1000) * Pr) / (1 + 12.7 * Math.sqrt(f8) * (Math.cbrt(Pr) ** 2 - 1));
  return {
    value: developed * (1 + Math.cbrt(diameterOverLength) ** 2),
    range: markOf([
      ['Reynolds number [-]', Re, TURBULENT_FROM, 1e6],
      ['Prandtl number [-]', Pr, 0.1, 1000],
      ['diameter over length [-]', diameterOverLength, 0, 1],
    ]),
  };
}

/**
 * A quantity between laminar and turbulent flow: a straight line over the Reynolds number.
 *
 *     y = (Re - 2300)/1700,  value = (1 - y) laminar(2300) + y turbulent(4000)
 *
 * Range: 2300 <= Re <= 4000. Published for the Nusselt number; for friction we draw the line on f Re^2, which the
 * pressure drop follows, so that it rises with every flow in a short duct too.
 *
 * @param Re - Reynolds number [-]
 * @param laminar - the quantity at 2300 [-]
 * @param turbulent - the quantity at 4000 [-]
 * @returns the quantity at Re [-]
 * @throws {OutOfRangeError} when Re is outside the range above
 *
 * @example
 * bridgedTransition(3000, 8.09573209932, 26.7655453341) // 15.7833022548
 *
 * [1] V. Gnielinski, On heat transfer in tubes, Int. J. Heat Mass Transfer 63, 2013, 134-140.
 */
export function bridgedTransition(Re: number, laminar: number, turbulent: number): number {
  requireWithin('Reynolds number', Re, LAMINAR_TO, TURBULENT_FROM);
  const y = (Re - LAMINAR_TO) / (TURBULENT_FROM - LAMINAR_TO);
  return (1 - y) * laminar + y * turbulent;
}

export type FlowRegime = 'laminar' | 'transitional' | 'turbulent';

/** A duct's laminar Nusselt number and Fanning friction factor at a Reynolds number. */
export type LaminarLaw = (Re: number) => { readonly Nu: Ranged; readonly f: number };

/** A smooth duct at one Reynolds number. */
export interface DuctFlow {
  readonly regime: FlowRegime;
  readonly nusseltNumber: number;
  /** Fanning */
  readonly friction: number;
  readonly range: RangeMark;
}

/**
 * Nusselt number and friction of a smooth duct at any Reynolds number: its laminar law to 2300, Gnielinski and Konakov
 * from 4000, between them a straight line on Nu and on f Re^2.
 *
 * Range: Re > 0, else that of the laws, marked. Both results are continuous.
 *
 * @param Re - Reynolds number on the hydraulic diameter [-]
 * @param Pr - Prandtl number [-]
 * @param diameterOverLength - hydraulic diameter over length [-]
 * @param laminar - the laminar law of the duct's shape [-]
 * @returns regime, Nusselt number and Fanning friction factor, with their mark [-]
 * @throws {OutOfRangeError} when Re or Pr is not above 0
 *
 * @example
 * see tests/sim/correlations/turbulent-ducts.test.ts
 *
 * [1] V. Gnielinski, On heat transfer in tubes, Int. J. Heat Mass Transfer 63, 2013, 134-140.
 */
export function smoothDuct(Re: number, Pr: number, diameterOverLength: number, laminar: LaminarLaw): DuctFlow {
  requirePositive('Reynolds number', Re);
  if (Re <= LAMINAR_TO) {
    const { Nu, f } = laminar(Re);
    return { regime: 'laminar', nusseltNumber: Nu.value, friction: f, range: Nu.range };
  }
  const at = Math.max(Re, TURBULENT_FROM);
  const Nu = nusseltGnielinski(at, Pr, diameterOverLength);
  const friction = frictionKonakov(at).value / 4;
  if (Re >= TURBULENT_FROM) return { regime: 'turbulent', nusseltNumber: Nu.value, friction, range: Nu.range };
  const low = laminar(LAMINAR_TO);
  const dropGroup = bridgedTransition(Re, low.f * LAMINAR_TO ** 2, friction * TURBULENT_FROM ** 2);
  return {
    regime: 'transitional',
    nusseltNumber: bridgedTransition(Re, low.Nu.value, Nu.value),
    friction: dropGroup / Re ** 2,
    range: joinedMark([low.Nu.range, Nu.range]),
  };
}

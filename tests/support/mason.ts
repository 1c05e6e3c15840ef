/**
 * Effectiveness of a single-pass cross-flow exchanger, both fluids unmixed, exactly.
 *
 *     eps = 1/(Cr NTU) sum over n of P(n+1, NTU) P(n+1, Cr NTU),     P(n+1, x) = 1 - e^-x sum over m <= n of x^m/m!
 *
 * and 1 - e^-NTU at Cr = 0. Good to rounding for NTU up to 20: the terms fall off like the tail of a Poisson
 * distribution of mean NTU.
 *
 * Source: J. L. Mason, Heat transfer in crossflow, Proc. 2nd U.S. National Congress of Applied Mechanics, 1955,
 * 801-803.
 */
export function exactEffectiveness(NTU: number, Cr: number): number {
  if (Cr === 0) return 1 - Math.exp(-NTU);
  let sum = 0;
  for (let n = 0; n < 100; n++) sum += poissonTail(n, NTU) * poissonTail(n, Cr * NTU);
  return sum / (Cr * NTU);
}

/** Chance that a Poisson variable of the given mean exceeds n, summed from the small end. */
function poissonTail(n: number, mean: number): number {
  let term = Math.exp(-mean);
  for (let m = 1; m <= n + 1; m++) term *= mean / m;
  let sum = 0;
  for (let m = n + 1; m < n + 120; m++) {
    sum += term;
    term *= mean / (m + 1);
  }
  return sum;
}

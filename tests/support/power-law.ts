/** A law that a scenario gives by a test point and an exponent, as such. */
export function powerOf<Law extends { readonly kind: string }>(law: Law): Extract<Law, { readonly kind: 'power' }> {
  if (law.kind !== 'power') throw new Error(`the law is a ${law.kind}`);
  return law as Extract<Law, { readonly kind: 'power' }>;
}

import type { ComponentChildren } from 'preact';

/** What can go wrong in the workshop, said where the part is chosen. */
export function Caution({ children }: { readonly children: ComponentChildren }) {
  return (
    <p class="caution small">
      <b>Caution.</b> {children}
    </p>
  );
}

/** What may take the focus, the likeliest to be worked on next first. */
const STOPS = ['input:not([type=range])', 'select', 'summary', 'button'];

/**
 * Keeps the focus near a button that is pressed by key and goes away with what it does: "Put back" leads to its box.
 * A pointer needs no focus, and on a phone a box that took it would open the keyboard.
 */
export function keepFocusNear(event: MouseEvent): void {
  if (event.detail > 0) return;
  // The way that the event takes: the button itself may be gone already.
  const around = event.composedPath().filter((part) => part instanceof HTMLElement);
  requestAnimationFrame(() => {
    if (document.activeElement !== document.body) return;
    const left = around.find((part) => part.isConnected && part.querySelector(STOPS.join()) !== null);
    const [stop] = STOPS.flatMap((kind) => left?.querySelector<HTMLElement>(kind) ?? []);
    stop?.focus();
  });
}

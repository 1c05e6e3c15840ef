import type { PageProps } from '../page.tsx';

/** Starts and stops the clock: in the band, and on a phone in the dock at the foot. */
export function PlayButton({ session, clock }: Pick<PageProps, 'session' | 'clock'>) {
  const isPlaying = clock.isPlaying.value;
  return (
    <button
      type="button"
      class="primary play"
      disabled={session.inHandRun.value.series === undefined}
      onClick={() => {
        clock.isPlaying.value = !isPlaying;
      }}
    >
      {isPlaying ? 'Pause' : 'Play'}
    </button>
  );
}

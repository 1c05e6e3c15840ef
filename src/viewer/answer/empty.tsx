import { DEMO_SCENARIOS } from '../files/demo-scenarios.ts';
import type { PageProps } from '../page.tsx';

/** Nothing is open: what to start from. */
export function Empty({ session }: PageProps) {
  return (
    <section class="answer one empty" aria-label="Answer" tabIndex={-1}>
      <section class="car">
        <p class="verdict">No run yet</p>
      </section>
      <section class="alone">
        <p class="sentence">
          Start from a demo car and change it, or open a file. The answer stands here: how many pulls stay under your
          limit, and which part stops the rest.
        </p>
        <p class="acts">
          {DEMO_SCENARIOS.map(({ name, text }) => (
            <button type="button" key={name} onClick={() => session.open(text)}>
              {name}
            </button>
          ))}
        </p>
      </section>
      <section class="causes">
        <h2>What holds it back</h2>
        <p class="small">Listed after the first run.</p>
      </section>
    </section>
  );
}

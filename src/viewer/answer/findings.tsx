import './findings.css';
import { useMemo } from 'preact/hooks';
import { ESTIMATE_CAUTION, type Finding, type FindingKind, type FindingRank, findings } from '../../sim/index.ts';
import { onScreen, wordingIn } from '../format.ts';
import type { PageProps } from '../page.tsx';

/** Rows that are always there; the others are folded away. */
const ALWAYS = 3;
const RANK_WORDS: Record<FindingRank, string> = { stop: 'Stop', check: 'Check', note: 'Note' };
/** The designer lists what the measures of a core are beyond. */
const SAID_ELSEWHERE: ReadonlySet<FindingKind> = new Set(['core mark']);

/** What the run of the car in hand tells besides its answer, gravest first. */
export function Findings({ session, display }: PageProps) {
  const { series, of } = session.inHandRun.value;
  const units = display.units.value;
  const found = useMemo(
    () =>
      series && of
        ? findings(of.config, series, wordingIn(units)).filter(({ kind }) => !SAID_ELSEWHERE.has(kind))
        : undefined,
    [series, of, units],
  );
  if (session.inHand.value === undefined || found === undefined) return null;
  const [shown, folded] = [found.slice(0, ALWAYS), found.slice(ALWAYS)];
  const title = session.after.value === undefined ? 'Also in this run' : 'Also in After';
  return (
    <section class="findings" aria-label={title}>
      {shown.length > 0 && (
        <>
          <h2>{title}</h2>
          <div>
            <Rows findings={shown} />
            {folded.length > 0 && (
              <details>
                <summary>{folded.length} more</summary>
                <Rows findings={folded} />
              </details>
            )}
          </div>
        </>
      )}
      <p class="small">{ESTIMATE_CAUTION}</p>
    </section>
  );
}

function Rows({ findings }: { readonly findings: readonly Finding[] }) {
  return (
    <ul>
      {findings.map(({ rank, text }) => (
        <li key={text} class={rank}>
          <b>{RANK_WORDS[rank]}</b>
          <span>{onScreen(text)}</span>
        </li>
      ))}
    </ul>
  );
}

import { ESTIMATE_CAUTION } from '../../sim/index.ts';

/** What every answer carries, and what else is to be heeded. */
export function Estimate({ cautions = [] }: { readonly cautions?: readonly string[] }) {
  return (
    <>
      {[...cautions, ESTIMATE_CAUTION].map((caution) => (
        <p key={caution} class="small">
          {caution}
        </p>
      ))}
    </>
  );
}

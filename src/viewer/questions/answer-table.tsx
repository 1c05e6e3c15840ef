import './answer-table.css';
import type { ComponentChild } from 'preact';
import { onScreen } from '../format.ts';

/** A cell of so many letters stands on one line: "0 of 8", "×0.85 to ×1.15". */
const ONE_LINE = 14;

interface AnswerTableProps {
  readonly name: string;
  readonly heads: readonly string[];
  /** what stands above each head */
  readonly marks?: readonly ComponentChild[];
  /** what stands before the name of each row */
  readonly rowMarks?: readonly ComponentChild[];
  /** one cell a head, the first is the name of the row */
  readonly rows: readonly (readonly string[])[];
}

/** Numbers of an answer; what is wider than the page is scrolled sideways. */
export function AnswerTable({ name, heads, marks, rowMarks, rows }: AnswerTableProps) {
  return (
    <div class="answer-table">
      <h4>{onScreen(name)}</h4>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keys */}
      <section aria-label={onScreen(name)} tabIndex={0}>
        <table class="numbers">
          <thead>
            <tr>
              {heads.map((head, k) => (
                <th key={head} scope="col">
                  {marks?.[k]}
                  {onScreen(head)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(([title, ...cells], row) => (
              <tr key={title}>
                <th scope="row">
                  {rowMarks === undefined ? (
                    onScreen(title)
                  ) : (
                    <span class="row-name">
                      {rowMarks[row]} <span>{onScreen(title)}</span>
                    </span>
                  )}
                </th>
                {cells.map((cell, k) => (
                  <td key={heads[k + 1]} class={cell.length > ONE_LINE ? undefined : 'short'}>
                    {onScreen(cell)}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </div>
  );
}

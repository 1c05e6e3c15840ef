/**
 * Rows of cells as lines in which every column stands under its heading.
 *
 * @param left - places of the columns that stand to the left, the first alone where left out; the others stand to the right
 */
export function aligned(rows: readonly (readonly string[])[], left: readonly number[] = [0]): string[] {
  const widths = (rows.at(0) ?? []).map((_, column) => Math.max(...rows.map((row) => row[column].length)));
  const isLeft = widths.map((_, column) => left.includes(column));
  return rows.map((row) =>
    row
      .map((cell, column) => (isLeft[column] ? cell.padEnd(widths[column]) : cell.padStart(widths[column])))
      .join('  ')
      .trimEnd(),
  );
}

/** Lines that stand below a heading. */
export const indented = (lines: readonly string[]): string[] => lines.map((line) => `  ${line}`);

/** Rows of cells as lines in which every column stands under its heading: the first to the left, the others to the right. */
export function aligned(rows: readonly (readonly string[])[]): string[] {
  const widths = rows[0].map((_, column) => Math.max(...rows.map((row) => row[column].length)));
  return rows.map((row) =>
    row
      .map((cell, column) => (column === 0 ? cell.padEnd(widths[0]) : cell.padStart(widths[column])))
      .join('  ')
      .trimEnd(),
  );
}

/** Rows as lines of equal columns for a terminal; `right` names the columns of figures, counted from 0. */
export function textTable(rows: readonly (readonly string[])[], right: ReadonlySet<number> = new Set()): string[] {
  const columns = Math.max(0, ...rows.map((row) => row.length));
  const widths = Array.from({ length: columns }, (_, column) => Math.max(...rows.map((row) => (row[column] ?? '').length)));
  return rows.map((row) => row.map((cell, column) => (right.has(column) ? cell.padStart(widths[column]) : cell.padEnd(widths[column]))).join('  ').trimEnd());
}

/** Rows as lines with columns as wide as their widest cell; the last column of a row is not filled up. */
export function columns(rows: readonly (readonly string[])[]): string[] {
  const widths = (rows[0] ?? []).map((_, column) =>
    rows.reduce((wide, row) => Math.max(wide, (row[column] ?? '').length), 0),
  );
  return rows.map((row) =>
    row
      .map((cell, column) => cell.padEnd(widths[column] ?? 0))
      .join('  ')
      .trimEnd(),
  );
}

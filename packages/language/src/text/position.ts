/** Line and column of an offset, both zero-based, columns in UTF-16 units as editors count. */
export interface Position {
  readonly line: number;
  readonly character: number;
}

export function positionAt(text: string, offset: number): Position {
  const end = Math.min(Math.max(0, offset), text.length);
  let line = 0;
  let start = 0;
  for (let i = 0; i < end; i += 1) {
    const code = text.charCodeAt(i);
    if (code === 10 || (code === 13 && text.charCodeAt(i + 1) !== 10)) {
      line += 1;
      start = i + 1;
    }
  }
  return { line, character: end - start };
}

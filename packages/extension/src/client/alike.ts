/** Share of its lines that a text must have in common with another to count as the same file renamed: as git counts. */
const enough = 0.5;

/** The text that shares most lines with `now`, if it shares enough; blank lines tell nothing. */
export function mostAlike(now: string, texts: readonly string[]): string | undefined {
  let best: { readonly text: string; readonly share: number } | undefined;
  for (const text of texts) {
    const share = likeness(now, text);
    if (share >= enough && share > (best?.share ?? 0)) {
      best = { text, share };
    }
  }
  return best?.text;
}

/** Lines in common over the lines of the longer text, 0 to 1. */
function likeness(one: string, other: string): number {
  const [lines, others] = [linesOf(one), linesOf(other)];
  const left = new Map<string, number>();
  for (const line of others) {
    left.set(line, (left.get(line) ?? 0) + 1);
  }
  let common = 0;
  for (const line of lines) {
    const count = left.get(line) ?? 0;
    if (count > 0) {
      left.set(line, count - 1);
      common += 1;
    }
  }
  return common / Math.max(1, lines.length, others.length);
}

const linesOf = (text: string): readonly string[] =>
  text
    .split(/\r?\n/)
    .map((line) => line.trim())
    .filter((line) => line !== '');

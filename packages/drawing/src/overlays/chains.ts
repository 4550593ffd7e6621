/** Elements of a run as chains of nodes: a run may be broken where a part ends. */
export function chains(
  run: readonly { readonly i: number; readonly j: number }[],
): readonly (readonly number[])[] {
  const all: number[][] = [];
  for (const { i, j } of run) {
    const last = all.at(-1);
    if (last?.at(-1) === i) last.push(j);
    else all.push([i, j]);
  }
  return all;
}

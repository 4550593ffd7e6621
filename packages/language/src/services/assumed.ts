/** Writing assumed values into the text, where the language has a fact that says them. */
import type { System } from '@tautline/quantity';
import type { Assumed, SpecEdit, SpecValue } from '@tautline/shelter';
import { applySpecEdits, editsByFile } from '../edit/apply-spec-edits.ts';
import type { TextChange } from '../problems/problem.ts';

/**
 * Text changes that write these assumed values down. Values no fact of their block can say (positions the
 * program worked out, properties of items) are left out: the report still lists them.
 */
export function writeAssumed(
  text: string,
  uri: string,
  assumed: readonly Assumed[],
  system: System,
): readonly TextChange[] {
  const edits: SpecEdit[] = [];
  const seen = new Set<string>();
  for (const { fact, value, kind, origin } of assumed) {
    const key = `${origin} ${fact}`;
    if (seen.has(key)) continue;
    seen.add(key);
    const slot: SpecValue =
      typeof value === 'number' && kind !== 'word' && kind !== 'item'
        ? { type: 'quantity', si: value, kind, origin }
        : kind === 'item'
          ? { type: 'item', id: `${value}`, origin }
          : { type: 'word', word: `${value}`, origin };
    const name = kind === 'item' ? 'item' : 'value';
    const edit: SpecEdit = { type: 'set', block: origin, word: fact, slots: { [name]: slot } };
    if (editsByFile([edit]).has(uri) && changesOf(text, [edit], system)) edits.push(edit);
  }
  return changesOf(text, edits, system) ?? [];
}

function changesOf(
  text: string,
  edits: readonly SpecEdit[],
  system: System,
): readonly TextChange[] | undefined {
  try {
    const result = applySpecEdits(text, edits, system);
    return result.ok ? result.changes : undefined;
  } catch {
    // A value that cannot be written in any unit stays unwritten.
    return undefined;
  }
}

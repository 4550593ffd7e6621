/** Changing a spec without its text: what fixes, variants and exploring act on. */
import type { SpecDefinition, SpecEdit, SpecNode } from './spec.ts';

export type Definitions = ReadonlyMap<string, SpecDefinition>;

/**
 * The definitions after the edits, one after the other. `set` and `replace` keep the slots they do not
 * name. A new fact takes the origin of its block, since it stands nowhere yet. What an edit does not reach
 * stays the very same object. An edit whose origin is nowhere changes nothing: see `unmatchedEdits`.
 */
export function applyEdits(definitions: Definitions, edits: readonly SpecEdit[]): Definitions {
  if (edits.length === 0) return definitions;
  const after = new Map<string, SpecDefinition>();
  for (const [name, definition] of definitions) {
    let edited: SpecNode | undefined = definition;
    for (const edit of edits) edited = edited && editNode(edited, edit);
    if (edited === definition) after.set(name, definition);
    else if (edited) after.set(name, { ...definition, ...edited });
  }
  return after;
}

/** The edits that would change nothing because the place they name is not there. */
export function unmatchedEdits(definitions: Definitions, edits: readonly SpecEdit[]): readonly SpecEdit[] {
  return edits.filter((edit) => ![...definitions.values()].some((node) => editNode(node, edit) !== node));
}

/** The node after an edit; undefined when the edit takes it away. */
function editNode(node: SpecNode, edit: SpecEdit): SpecNode | undefined {
  if ('node' in edit && edit.type !== 'add' && node.origin === edit.node) {
    return edit.type === 'remove' ? undefined : { ...node, slots: { ...node.slots, ...edit.slots } };
  }
  if ('block' in edit && node.origin === edit.block) return editBlock(node, edit);
  let changed = false;
  const children: SpecNode[] = [];
  for (const child of node.children) {
    const after = editNode(child, edit);
    if (after !== child) changed = true;
    if (after) children.push(after);
  }
  return changed ? { ...node, children } : node;
}

function editBlock(block: SpecNode, edit: Extract<SpecEdit, { readonly block: unknown }>): SpecNode {
  if (edit.type === 'add') return { ...block, children: [...block.children, edit.node] };
  const index = block.children.findIndex((child) => child.word === edit.word);
  const there = block.children[index];
  if (!there) {
    const added: SpecNode = { word: edit.word, slots: edit.slots, children: [], origin: block.origin };
    return { ...block, children: [...block.children, added] };
  }
  const children = [...block.children];
  children[index] = { ...there, slots: { ...there.slots, ...edit.slots } };
  return { ...block, children };
}

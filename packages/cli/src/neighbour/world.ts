/** A shelter as a neighbour would build it: its own spec, and the stock, prices and items of their file. */
import { newNotes, type OnHand, readYard, type SpecDefinition, type SpecWorld } from '@tautline/shelter';

export interface NeighbourWorld {
  readonly world: SpecWorld;
  readonly have: readonly OnHand[];
  /** Items that both files describe differently; those of the shelter's own file hold. */
  readonly twice: readonly string[];
}

/** Of their file only what can be bought or lies there is taken, not their shelters and settings. */
const notTheirs = new Set(['shelter', 'variant', 'range', 'site', 'project']);

export function neighbourWorld(own: SpecWorld, theirs: SpecWorld): NeighbourWorld {
  const definitions = new Map<string, SpecDefinition>();
  const twice: string[] = [];
  for (const [key, definition] of theirs.definitions) {
    if (notTheirs.has(definition.word)) continue;
    // Blocks without a name are numbered in each file.
    definitions.set(definition.name === '' ? `their ${key}` : key, definition);
  }
  for (const [key, definition] of own.definitions) {
    // What lies in the co-op's own yard is not at the neighbour's.
    if (definition.word === 'yard') continue;
    const other = definitions.get(key);
    if (other !== undefined && other.origin !== definition.origin) twice.push(key);
    definitions.set(key, definition);
  }
  return { world: { ...own, definitions }, have: readYard(theirs, newNotes()), twice };
}

/** Looking things up in the world of definitions, with likeness followed. */
import type { Origin } from '../model/origin.ts';
import type { SpecDefinition, SpecNode, SpecWorld } from '../spec/spec.ts';
import { type Notes, problem } from './notes.ts';

/** The definition with the facts of everything it is like laid under its own. */
export function definitionWithLikeness(
  definition: SpecDefinition,
  world: SpecWorld,
  notes: Notes,
  seen: readonly string[] = [],
): SpecDefinition | undefined {
  if (definition.like === undefined) return definition;
  const chain = [...seen, definition.name];
  if (chain.includes(definition.like)) {
    const round = [...chain.slice(chain.indexOf(definition.like)), definition.like].join(' like ');
    return problem(notes, 'like-cycle', `${round}: one of them must stand on its own`, definition.origin);
  }
  const parent = world.definitions.get(definition.like);
  if (!parent) {
    return problem(
      notes,
      'unknown-name',
      `there is no ${definition.word} '${definition.like}'`,
      definition.origin,
    );
  }
  if (parent.word !== definition.word) {
    const message = `${definition.name} is a ${definition.word} and cannot be like ${parent.name}, a ${parent.word}`;
    return problem(notes, 'wrong-kind', message, definition.origin);
  }
  const whole = definitionWithLikeness(parent, world, notes, chain);
  if (!whole) return undefined;
  const own = new Set(definition.children.map((child) => child.word));
  const inherited: readonly SpecNode[] = whole.children.filter((child) => !own.has(child.word));
  return { ...definition, children: [...inherited, ...definition.children] };
}

/** The definition of a name, of one of the kinds asked for; anything else is a problem at the reference. */
export function lookUp(
  name: string,
  kinds: readonly string[],
  world: SpecWorld,
  notes: Notes,
  origin: Origin,
): SpecDefinition | undefined {
  const definition = world.definitions.get(name);
  if (!definition) {
    return problem(notes, 'unknown-name', `there is no ${kinds.join(' or ')} '${name}' here`, origin);
  }
  if (!kinds.includes(definition.word)) {
    const message = `${name} is a ${definition.word}; a ${kinds.join(' or ')} is needed here`;
    return problem(notes, 'wrong-kind', message, origin);
  }
  return definition;
}

const byWord = new WeakMap<SpecWorld['definitions'], ReadonlyMap<string, readonly SpecDefinition[]>>();

/** All definitions of a word, in the order of the world; sorted out once for each world. */
export function definitionsOf(word: string, { definitions }: SpecWorld): readonly SpecDefinition[] {
  let sorted = byWord.get(definitions);
  if (sorted === undefined) {
    const words = new Map<string, SpecDefinition[]>();
    for (const definition of definitions.values()) {
      const alike = words.get(definition.word);
      if (alike) alike.push(definition);
      else words.set(definition.word, [definition]);
    }
    sorted = words;
    byWord.set(definitions, sorted);
  }
  return sorted.get(word) ?? [];
}

/** First line of a doc comment, up to its source. */
export function titleOf(definition: SpecDefinition): string {
  const first = definition.doc.trim().split('\n')[0] ?? '';
  const title = first
    .replace(/\bSource:.*$/, '')
    .trim()
    .replace(/\.$/, '');
  return title === '' ? definition.name : title;
}

/** What a doc comment says after 'Source:', to its end or an empty line. */
export function sourceOf(definition: SpecDefinition): string {
  const after = /Source:\s*([\s\S]*?)(?:\n\s*\n|$)/.exec(definition.doc)?.[1];
  return after?.replace(/\s+/g, ' ').trim() || 'not said';
}

/** The definitions that a shelter is made of: itself, its site and its stock, with likeness followed. */
import { itemIn, type SpecDefinition, type SpecNode, varied } from '@tautline/shelter';
import type { Written } from './revision.ts';

export interface Sources {
  /** The shelter itself; a variant with what it varies laid under it. */
  readonly shelter: SpecDefinition | undefined;
  readonly site: SpecDefinition | undefined;
  /** Stock items and materials by name, each with everything it is like laid under its own facts. */
  readonly stock: ReadonlyMap<string, SpecDefinition>;
}

export function sourcesOf(written: Pick<Written, 'name' | 'world'>): Sources {
  const { definitions } = written.world;
  const shelter = whole(written.name, definitions, []);
  const siteName = itemIn(shelter, 'site');
  const site = siteName === undefined ? undefined : definitions.get(siteName);
  const stock = new Map<string, SpecDefinition>();
  if (shelter) gather(shelter, definitions, stock);
  return { shelter, site: site?.word === 'site' ? site : undefined, stock };
}

type Definitions = ReadonlyMap<string, SpecDefinition>;

/** A variant laid over what it varies; a circle of variants ends where it closes. */
function whole(name: string, definitions: Definitions, seen: readonly string[]): SpecDefinition | undefined {
  const definition = definitions.get(name);
  if (definition?.word !== 'variant') return definition;
  const of = itemIn(definition, 'shelter');
  const base = of === undefined || seen.includes(name) ? undefined : whole(of, definitions, [...seen, name]);
  return base ? varied(base, definition) : definition;
}

const notStock = new Set(['site', 'shelter', 'variant', 'range', 'project', 'prices', 'yard']);

function gather(node: SpecNode, definitions: Definitions, found: Map<string, SpecDefinition>): void {
  for (const value of Object.values(node.slots)) {
    const definition = value.type === 'item' ? definitions.get(value.id) : undefined;
    if (!definition || notStock.has(definition.word) || found.has(definition.name)) continue;
    found.set(definition.name, definition);
    const likened = withLikeness(definition, definitions, []);
    found.set(definition.name, likened);
    gather(likened, definitions, found);
  }
  for (const child of node.children) gather(child, definitions, found);
}

/** The facts of what it is like under its own; the like itself is then said in full and left out. */
function withLikeness(
  definition: SpecDefinition,
  definitions: Definitions,
  seen: readonly string[],
): SpecDefinition {
  const parent = definition.like === undefined ? undefined : definitions.get(definition.like);
  if (!parent || seen.includes(parent.name)) return definition;
  const under = withLikeness(parent, definitions, [...seen, definition.name]);
  const own = new Set(definition.children.map((child) => child.word));
  const { like: _like, ...slots } = definition.slots;
  return {
    ...definition,
    slots,
    children: [...under.children.filter((child) => !own.has(child.word)), ...definition.children],
  };
}

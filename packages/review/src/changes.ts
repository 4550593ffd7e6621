/** The changed facts of a shelter, sorted by what they mean to its reader. */
import type { SpecDefinition, SpecNode } from '@tautline/shelter';
import { blockChanges, type FactChange, sameFacts } from './facts.ts';
import type { Written } from './revision.ts';
import { sourcesOf } from './written.ts';

export interface Changes {
  /** What is built. */
  readonly design: readonly FactChange[];
  /** The place it stands in. */
  readonly site: readonly FactChange[];
  /** Facts of stock items and materials it is made of. */
  readonly stock: readonly FactChange[];
  /** What is required of it, and accepted. */
  readonly claims: readonly FactChange[];
  /** Dates, log and remarks: no other design. */
  readonly keeping: readonly FactChange[];
  /** Whether prices, stock on hand or the currency differ. */
  readonly buying: boolean;
}

const claimWords = new Set(['require', 'withstand', 'accept']);
const keepingWords = new Set(['note', 'vary', 'installed', 'built', 'inspected']);

export function changesOf(before: Written, after: Written): Changes {
  const old = sourcesOf(before);
  const now = sourcesOf(after);
  const facts =
    old.shelter && now.shelter
      ? [...headChanges(old.shelter, now.shelter), ...blockChanges(old.shelter, now.shelter)]
      : [];
  const stock = [...now.stock].flatMap(([name, item]) => {
    const earlier = old.stock.get(name);
    return earlier ? blockChanges(earlier, item, [name]) : [];
  });
  return {
    design: facts.filter(({ word }) => !claimWords.has(word) && !keepingWords.has(word)),
    site: old.site && now.site ? blockChanges(old.site, now.site, [now.site.name]) : [],
    stock: stock.filter(({ path }) => path[1] !== 'price'),
    claims: facts.filter(({ word }) => claimWords.has(word)),
    keeping: facts.filter(({ word }) => keepingWords.has(word)),
    buying: stock.some(({ path }) => path[1] === 'price') || !sameBuying(before, after),
  };
}

/** Whether the design, its site, its stock or what is asked of it differ: then its verdict may, too. */
export function designDiffers(changes: Changes): boolean {
  return changes.design.length + changes.site.length + changes.stock.length > 0;
}

/** Whether anything at all differs that a verdict or a cost follows from. */
export function anythingDiffers(changes: Changes): boolean {
  return designDiffers(changes) || changes.claims.length + changes.keeping.length > 0 || changes.buying;
}

/** The site it stands on, by name. */
function headChanges(before: SpecDefinition, after: SpecDefinition): FactChange[] {
  const [old, now] = [before, after].map((one) => one.slots['site']);
  if (old?.type !== 'item' || now?.type !== 'item' || old.id === now.id) return [];
  return [{ path: ['on'], word: 'on', change: 'changed', before: [old.id], after: [now.id] }];
}

const buyingWords = ['prices', 'yard', 'project'];

function sameBuying(before: Written, after: Written): boolean {
  return buyingWords.every((word) => {
    const [old, now] = [before, after].map(({ world }) => blocksOf(world.definitions.values(), word));
    return (
      old!.length === now!.length && old!.every((block, index) => sameFacts(block, now![index] as SpecNode))
    );
  });
}

function blocksOf(definitions: Iterable<SpecDefinition>, word: string): SpecDefinition[] {
  return [...definitions].filter((definition) => definition.word === word);
}

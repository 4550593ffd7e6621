/** The stock item that is named at a place of a shelter, and how a swap of it is put into words. */
import { AstUtils, CstUtils, type LangiumDocument } from 'langium';
import type { Swapped } from '../analyst/swap.ts';
import { isDefinition, isName } from '../generated/ast.ts';
import { isReferenceRole, matchOf } from '../match/match-file.ts';
import { costChange } from './amount.ts';
import { fileOf } from './scope.ts';

/** So many stand-ins are tried, the nearest first: enough to see which way to go, and a menu that can be read. */
export const mostSwaps = 5;
/** Checks named in a title; how many more there are is counted. */
const mostNamed = 2;

export interface NamedStock {
  readonly from: string;
  /** Shelter or variant in which it is named. */
  readonly shelter: string;
}

/** Definitions that a shelter refers to and that are not bought. */
const notStock = new Set(['site', 'shelter', 'variant', 'range', 'material', 'project', 'prices', 'yard']);

/** Undefined where no stock item is named, or not in a shelter. */
export function stockAt(document: LangiumDocument, offset: number): NamedStock | undefined {
  const file = fileOf(document);
  const root = file?.$cstNode;
  if (!file || !root) return undefined;
  for (const at of [offset, offset - 1]) {
    const name = AstUtils.getContainerOfType(CstUtils.findLeafNodeAtOffset(root, at)?.astNode, isName);
    const item = name && isReferenceRole(matchOf(file).roles.get(name)) ? name.ref?.ref : undefined;
    let around = AstUtils.getContainerOfType(name, isDefinition);
    while (around?.$container && around.$container !== file)
      around = AstUtils.getContainerOfType(around.$container, isDefinition);
    if (!isDefinition(item) || item.name === undefined || notStock.has(item.kind)) continue;
    if (around?.name === undefined || !['shelter', 'variant'].includes(around.kind)) continue;
    return { from: item.name, shelter: around.name };
  }
  return undefined;
}

/** e.g. 'Use `pvc40-32` for `pvc40-25`: over-span goes, nothing new, +XTS 12.40'. */
export function swapTitle(from: string, swapped: Swapped): string {
  const { to, gone, came, eased, worsened, along, left, failing, cost } = swapped;
  const parts = [
    gone.length === 0 ? 'no finding goes' : `${listed(gone)} ${gone.length === 1 ? 'goes' : 'go'}`,
    ...(came.length > 0 ? [`new: ${listed(came)}`] : worsened.length === 0 ? ['nothing new'] : []),
    ...(eased.length === 0 ? [] : [`no longer failing: ${listed(eased)}`]),
    ...(worsened.length === 0 ? [] : [`now failing: ${listed(worsened)}`]),
    failing === 0 ? 'nothing fails then' : `${failing} ${failing === 1 ? 'fails' : 'fail'} then`,
    ...(cost ? [costChange(cost)] : []),
    ...(along.length === 0 ? [] : [`with ${along.join(', ')}`]),
    ...(left.length === 0 ? [] : [`nothing in stock for ${left.join(', ')}`]),
  ];
  return `Use \`${to}\` for \`${from}\`: ${parts.join(', ')}`;
}

function listed(ids: readonly string[]): string {
  const more = ids.length - mostNamed;
  const named = ids.slice(0, mostNamed).join(' and ');
  return more > 0 ? `${ids.slice(0, mostNamed).join(', ')} and ${more} more` : named;
}

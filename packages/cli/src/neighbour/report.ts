/** The neighbour's list as a document, and for another program. */
import { cautionLine } from '@tautline/book';
import { format, type System } from '@tautline/quantity';
import { findingLine } from '@tautline/review';
import {
  buyText,
  handText,
  type MaterialLine,
  type Materials,
  materialsPlain,
  moneyText,
} from '@tautline/takeoff';
import type { Document, Part } from '../report/document.ts';
import { cutLines } from '../report/materials-text.ts';
import type { Built, Need, Neighbour, StandIn } from './stand-ins.ts';

export interface NeighbourList extends Neighbour {
  readonly shelter: string;
  /** File with what the neighbour has. */
  readonly file: string;
  readonly twice: readonly string[];
}

/** `wide` sets the items out as a table; a terminal has no room for it. */
export function neighbourDocument(list: NeighbourList, system: System, wide: boolean): Document {
  const { shelter, file, twice, needs, before, together } = list;
  return {
    title: `${shelter} from what the neighbour has`,
    parts: [
      `On hand: ${file}. An item of theirs was tried for each that would have to be bought, the nearest in stuff and size first, and every check run again.`,
      ...twice.map((id) => `Both files describe '${id}', differently: the shelter's own was used.`),
      wide ? tableOf(needs, before, system) : { lines: linesOf(needs, before, system) },
      ...togetherParts(before, together, system),
      cautionLine,
    ],
  };
}

const verdictOf = ({ problem, fails }: StandIn): string =>
  problem !== undefined ? `cannot be built: ${problem}` : fails ? 'fails' : 'stands in';

function tableOf(needs: readonly Need[], before: Built, system: System): Part {
  return {
    head: ['item', 'needed', 'on hand', 'theirs', 'verdict', 'what changes', 'from hand', 'buy', 'cost'],
    rows: needs.flatMap((need) => {
      const own = [need.item.id, neededText(need, system), need.has];
      if (need.tried.length === 0)
        return [
          [
            ...own,
            need.has === 'all' ? need.item.id : 'nothing like it',
            '',
            '',
            handOf(need.lines, system),
            buyOf(need.lines, system),
            '',
          ],
        ];
      return need.tried.map((one) => {
        const lines = linesFor(one.built?.materials, one.to.id);
        return [
          ...own,
          one.to.id,
          verdictOf(one),
          changesOf(one, system).join('; '),
          handOf(lines, system),
          buyOf(lines, system),
          costChange(before.materials, one.built?.materials),
        ];
      });
    }),
  };
}

function linesOf(needs: readonly Need[], before: Built, system: System): string[] {
  return needs.flatMap((need) => {
    const { item, has, tried, lines } = need;
    const head = `${item.id}  ${item.title}: ${neededText(need, system)}`;
    const said = {
      all: 'all of it on hand',
      some: `some on hand (${handOf(lines, system)}), the rest to buy: ${buyOf(lines, system)}`,
      none: 'none on hand',
    }[has];
    const nothing = has !== 'all' && tried.length === 0 ? ['    nothing of theirs is like it'] : [];
    return [head, `    ${said}`, ...nothing, ...tried.flatMap((one) => standInLines(one, before, system))];
  });
}

function standInLines(one: StandIn, before: Built, system: System): string[] {
  const lines = linesFor(one.built?.materials, one.to.id);
  const buy = buyOf(lines, system);
  const stock = one.built
    ? [
        `        from hand ${handOf(lines, system) || 'nothing'}, buy ${buy || 'nothing'}, ${costChange(before.materials, one.built.materials)}`,
      ]
    : [];
  return [
    `    ${one.to.id}  ${one.to.title}: ${verdictOf(one)}`,
    ...stock,
    ...changesOf(one, system).map((line) => `        ${line}`),
  ];
}

/** Fittings that go along or are missing, and findings that came, went or moved. */
function changesOf({ along, without, findings }: StandIn, system: System): string[] {
  return [
    ...along.map(({ from, to }) => `${to} goes in for ${from}`),
    ...without.map((id) => `${id} does not fit it, and nothing in stock does the same`),
    ...findings.map((one) => findingLine(one, system)),
  ];
}

function togetherParts(before: Built, together: Neighbour['together'], system: System): Part[] {
  if (together === undefined)
    return [
      { heading: 'All together' },
      'None of their items stands in for one that would have to be bought.',
    ];
  const { swaps, problem, findings, built } = together;
  const said = swaps.map(({ from, to }) => `${to} for ${from}`).join(', ');
  if (built === undefined)
    return [{ heading: 'All together' }, `${said}: cannot be built so: ${problem ?? ''}.`];
  const cut = built.materials.cutList.flatMap((list) => cutLines(list, system)).map((line) => line.slice(2));
  return [
    { heading: 'All together' },
    `${said}: ${together.fails ? 'something fails that did not before' : 'nothing fails that did not before'}; ${costChange(before.materials, built.materials)}.`,
    ...(findings.length === 0 ? [] : [{ lines: findings.map((one) => findingLine(one, system)) }]),
    { heading: 'Cutting, with what stands in' },
    { lines: cut },
    'To say so in the text: tautline swap FILE --from ITEM --to ITEM --write, once for each.',
  ];
}

const linesFor = (materials: Materials | undefined, id: string): readonly MaterialLine[] =>
  materials?.lines.filter((line) => line.item?.id === id) ?? [];

const neededText = ({ lines }: Need, system: System): string =>
  lines.map((line) => format(line.total, line.kind, system)).join(' and ');

const handOf = (lines: readonly MaterialLine[], system: System): string =>
  lines
    .map((line) => handText(line, system))
    .filter(Boolean)
    .join('; ');

function buyOf(lines: readonly MaterialLine[], system: System): string {
  return lines
    .map((line) => {
      if (line.cuts || line.pack !== undefined) return buyText(line, system);
      const bought = line.buy ?? line.total;
      return bought === 0 ? '' : format(bought, line.kind, system);
    })
    .filter(Boolean)
    .join('; ');
}

/** Only where the same things lack a price: a total with gaps cannot be set against another. */
function costChange(before: Materials, after: Materials | undefined): string {
  if (after === undefined) return '';
  const lacking = ({ cost }: Materials): string => [...cost.missing, ...cost.tooLong].sort().join();
  const rest = after.cost.complete ? '' : ' so far';
  const total = `${moneyText(after.cost.total, after.currency)}${rest} in all`;
  if (lacking(before) !== lacking(after))
    return `${total}, not to be compared: not all of it has a price in both`;
  const more = after.cost.total - before.cost.total;
  if (Math.abs(more) < 0.005) return `${total}, no change`;
  return `${total}, ${moneyText(Math.abs(more), after.currency)} ${more > 0 ? 'more' : 'less'}`;
}

export function neighbourJson(list: NeighbourList, system: System): string {
  const { shelter, file, twice, before, needs, together } = list;
  const outcome = ({
    findings,
    fails,
    problem,
    built,
  }: Pick<StandIn, 'findings' | 'fails' | 'problem' | 'built'>) => ({
    fails,
    problem: problem ?? null,
    findings: findings.map(({ change, id, part, before: was, after: is }) => ({
      change,
      id,
      part,
      before: was?.utilisation ?? null,
      after: is?.utilisation ?? null,
      severity: (is ?? was)?.severity ?? null,
    })),
    cost: built?.materials.cost.total ?? null,
  });
  const plain = {
    shelter,
    file,
    describedTwice: twice,
    cost: before.materials.cost.total,
    currency: before.materials.currency ?? null,
    items: needs.map(({ item, has, tried, best, lines }) => ({
      item: item.id,
      needed: neededText({ lines } as Need, system),
      onHand: has,
      best: best?.to.id ?? null,
      tried: tried.map((one) => ({
        item: one.to.id,
        along: one.along,
        without: one.without,
        fromHand: handOf(linesFor(one.built?.materials, one.to.id), system),
        buy: buyOf(linesFor(one.built?.materials, one.to.id), system),
        ...outcome(one),
      })),
    })),
    together:
      together === undefined
        ? null
        : {
            swaps: together.swaps,
            ...outcome(together),
            materials: together.built ? materialsPlain(together.built.materials) : null,
          },
  };
  return `${JSON.stringify(plain, null, 2)}\n`;
}

import { type CutBar, cutBars } from '@tautline/drawing';
import { format, type System } from '@tautline/quantity';
import {
  buyText,
  cutText,
  handText,
  type MaterialLine,
  type Materials,
  moneyText,
  tell,
} from '@tautline/takeoff';
import type { BookContext, Chapter } from '../context.ts';
import { html, kept, list, type Markup, table } from '../html/markup.ts';
import { figure } from './drawings.ts';

export const parts: Chapter = {
  id: 'parts',
  title: 'Parts and cost',
  body: (context) => {
    const { materials, system } = context;
    const money = (amount: number): string => moneyText(amount, materials.currency);
    const rows = materials.lines.map((line) => [
      line.title,
      format(line.total, line.kind, system),
      kept(handText(line, system)),
      kept(buyText(line, system)) || (line.buy === undefined ? '' : `${line.buy}`),
      line.cost === undefined ? 'no price' : money(line.cost),
    ]);
    return html`${table(['part', 'needed', 'on hand', 'buy', 'cost'], rows, [1, 4])}
${costs(context, money)}
<h3>How it was counted</h3>
${table(
  ['part', 'how'],
  materials.lines.map((line) => [line.title, line.steps.map((step) => tell(step, system)).join('; ')]),
)}`;
  },
};

function costs(
  { materials, system, priceLists = [] }: BookContext,
  money: (amount: number) => string,
): Markup {
  const { cost, currency } = materials;
  const [unit, each] = system === 'us' ? ['ft²', cost.perArea * 0.3048 ** 2] : ['m²', cost.perArea];
  if (cost.shares.length === 0) return html`<p>Nothing that has to be bought has a price.</p>`;
  const most = cost.shares
    .slice(0, 3)
    .map((one) => `${one.title} (${format(one.share, 'percent', system)})`)
    .join('; ');
  const asked = priceLists.flatMap(({ from, asked: day }) =>
    from === undefined && day === undefined ? [] : [[from, day && `asked ${day}`].filter(Boolean).join(', ')],
  );
  return html`<p><strong>${cost.complete ? 'All together' : 'What has a price, together'} ${money(cost.total)}</strong>: ${money(each as number)} for each ${unit as string} under cover.
${cost.renewalsPerYear > 0 ? `Renewing what wears out costs ${money(cost.renewalsPerYear)} a year.` : ''}
${cost.perYear === undefined ? '' : `With everything else spread over the life of the frame, ${money(cost.perYear)} a year.`}
${most === '' ? '' : `Most of it is for: ${most}.`}
${currency === undefined ? 'The project names no currency.' : ''}
${asked.length === 0 ? '' : `Prices: ${asked.join('; ')}.`}</p>
${cost.tooLong.length === 0 ? undefined : html`<p class="boxed">No length sold is long enough for pieces of: ${cost.tooLong.join('; ')}.</p>`}`;
}

export const cutting: Chapter = {
  id: 'cutting',
  title: 'Cut sheet',
  body: ({ materials, system }) => {
    const cut = materials.lines.filter((line) => line.cuts !== undefined && line.cuts.bars.length > 0);
    if (cut.length === 0) return undefined;
    return html`<p>Cut the long pieces first. Lengths are to the ${system === 'us' ? 'sixteenth of an inch' : 'millimetre'}; what a saw cut takes is allowed for, what a fitting takes up is not.</p>
${cut.map((line) => sheet(line, system))}`;
  },
};

function sheet(line: MaterialLine, system: System): Markup {
  const plan = line.cuts as NonNullable<MaterialLine['cuts']>;
  const length = (value: number): string => cutText(value, system);
  const proof = plan.optimal
    ? `No plan takes less: proven by the ${plan.least} of what is bought.`
    : `Not proven least${plan.note ? ` (${plan.note})` : ''}.`;
  const wide = line.width === undefined ? '' : `, ${format(line.width, 'length', system)} wide`;
  return html`<div class="finding together"><h3>${line.title}${wide}</h3>
<p>${proof} ${format(plan.waste, 'percent', system)} is left over.</p>
${table(
  ['bars', 'of', 'cut into', 'left'],
  plan.bars.map((bar) => [
    `${bar.count}`,
    `${length(bar.length)}${bar.onHand ? ', on hand' : ''}`,
    kept(runs(bar.cuts.map((cut) => `${length(cut)} ${noteOf(line, cut)}`.trim()))),
    length(bar.offcut),
  ]),
  [0, 3],
)}
${plan.impossible.length === 0 ? undefined : list(plan.impossible.map((piece) => `${piece.count} of ${length(piece.length)}: longer than any sold`))}
${figure(cutBars({ title: line.title, kerf: line.kerf ?? 0, bars: barsOf(line, plan) }, { system }))}</div>
`;
}

/** `3 x a + b` instead of `a + a + a + b`. */
function runs(words: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const word of words) counts.set(word, (counts.get(word) ?? 0) + 1);
  return [...counts].map(([word, count]) => (count === 1 ? word : `${count} x ${word}`)).join(' + ');
}

/** What a piece of this length is; a cut is rounded up to the tenth of a millimetre. */
function noteOf(line: MaterialLine, cut: number): string {
  return pieceOf(line, cut)?.note ?? '';
}

const pieceOf = (line: MaterialLine, cut: number) =>
  line.pieces?.find((piece) => Math.abs(piece.length - cut) < 2e-4);

function barsOf(line: MaterialLine, plan: Materials['cutList'][number]['plan']): readonly CutBar[] {
  return plan.bars.map((bar) => ({
    item: line.item?.id ?? line.id,
    title: bar.onHand ? `${line.title} (on hand)` : line.title,
    stock: bar.length,
    count: bar.count,
    pieces: bar.cuts.map((cut) => {
      const piece = pieceOf(line, cut);
      return { part: piece?.part ?? line.id, label: piece?.note ?? '', length: cut };
    }),
  }));
}

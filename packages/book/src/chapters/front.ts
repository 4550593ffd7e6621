import { stormOff } from '@tautline/checks';
import { coverView } from '@tautline/drawing';
import { format } from '@tautline/quantity';
import { moneyText } from '@tautline/takeoff';
import { cautionLine } from '../cautions.ts';
import type { BookContext, Chapter } from '../context.ts';
import { html, type Markup } from '../html/markup.ts';
import { drawingRoom } from '../html/style.ts';
import { plural } from '../words.ts';
import { figure } from './drawings.ts';

/** First page: what it is, how it looks, what the checks say. */
export function front(context: BookContext, chapters: readonly Chapter[]): Markup {
  const { shelter, system, on, materials } = context;
  const { cost, currency } = materials;
  const size = `${format(shelter.width, 'length', system)} by ${format(shelter.length, 'length', system)}, ${format(shelter.width * shelter.length, 'area', system)} under cover`;
  const links = chapters.map(({ id, title }) => html`<li><a href="#${id}">${title}</a></li>\n`);
  return html`<section class="front">
<p>${context.project ?? 'Build book'}</p>
<h1>${shelter.name}</h1>
<p class="lead">${context.title}</p>
<dl class="facts">
<dt>Size</dt><dd>${size}</dd>
<dt>Site</dt><dd>${shelter.site.id}, design gust ${format(shelter.site.gust, 'speed', system)} once in ${shelter.site.gustReturnPeriod} years, ${shelter.site.soil}</dd>
<dt>${stormOff(shelter).head}</dt><dd>${filmOff(context)}</dd>
<dt>Cost</dt><dd>${cost.shares.length === 0 ? 'no prices' : `${moneyText(cost.total, currency)}${cost.complete ? '' : ', not everything has a price'}`}</dd>
<dt>Made</dt><dd>${on}, from the spec as it stood on that day</dd>
</dl>
${verdict(context)}
${figure(coverView(shelter, { system, ...drawingRoom(context.paper, 'cover') }))}
<ol class="contents">\n${links}</ol>
<p class="quiet">${cautionLine}</p>
</section>
`;
}

function filmOff({ evaluation, system }: BookContext): string {
  const { gusts } = evaluation;
  if (!gusts) return 'the gust was not worked out: see the storm card';
  if (gusts.withoutWind) return 'it does not stand without wind: see the storm card';
  return gusts.filmOff
    ? `before a gust of ${format(gusts.filmOff.gust, 'speed', system)}: see the storm card`
    : 'see the storm card';
}

function verdict({ failing, evaluation }: BookContext): Markup {
  const near = evaluation.findings.filter((finding) => finding.verdict === 'near its limit').length;
  if (failing.length > 0) {
    const ids = [...new Set(failing.map((finding) => finding.id))].join(', ');
    return html`<p class="boxed stop">Do not build from this book as it is: ${plural(failing.length, 'check')} ${failing.length === 1 ? 'fails' : 'fail'} (${ids}). The calculation sheets say why.</p>`;
  }
  return html`<p class="boxed">No check fails; ${near === 0 ? 'none is' : near === 1 ? 'one is' : `${near} are`} near its limit. ${plural(evaluation.notChecked.length, 'thing')} ${evaluation.notChecked.length === 1 ? 'was' : 'were'} not checked: see the list before you build.</p>`;
}

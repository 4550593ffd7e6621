import { messageText } from '@tautline/checks';
import { format } from '@tautline/quantity';
import type { BookContext, Chapter } from '../context.ts';
import { html, list, type Markup, table } from '../html/markup.ts';

/** One page to hang by the door. */
export const storm: Chapter = {
  id: 'storm',
  onePage: true,
  title: 'Storm card',
  body: (context) => {
    const { shelter, system } = context;
    const site = format(shelter.site.gust, 'speed', system);
    return html`<p class="lead">${shelter.name}. A shelter is no refuge in a storm: nobody stays under it.</p>
${filmOff(context)}
<p>Design gust of the site: <strong>${site}</strong>, a 3-second gust at 10 m in open country, once in ${shelter.site.gustReturnPeriod} years. A forecast tells such gusts; a mean wind of a forecast is a third to a half lower (common practice, no source).</p>
<h3>The day before</h3>
${list(before(context), 'ol')}
<h3>In the storm</h3>
${list(['Stay away. Film, straps and wire that let go whip.', 'Do not go out to mend or cut anything.'])}
<h3>After</h3>
${list(['Walk round it before anybody goes under: the inspection list, windward side first.', 'Film goes back in still air only.'])}
<div class="two"><div class="line">Whom to call:</div><div class="line">Where knife, ladder and ropes hang:</div></div>`;
  },
};

function filmOff({ evaluation, system, shelter }: BookContext): Markup {
  const { gusts } = evaluation;
  const speed = (value: number): string => format(value, 'speed', system);
  if (!gusts) {
    return html`<div class="boxed"><p><strong>The gust at which the film must come off was not worked out</strong> for this shelter. Until somebody qualified says otherwise, take it off whenever a gust anywhere near the design gust is forecast.</p></div>`;
  }
  const { filmOff: off, failures, unranked, upTo } = gusts;
  const takeOff = shelter.roof.type === 'cap' ? 'Caps in' : 'Film off';
  const unknown = unranked.filter((one) => one.unknown);
  const told = !off
    ? html`<div class="boxed"><p>Up to ${speed(upTo)} no part reached its limit that was not meant to go first. What was not checked may still go earlier.</p></div>`
    : off.gust <= 0
      ? html`<div class="boxed stop"><p>A part is past its limit without any wind (${off.first.what}): do not cover this shelter.</p></div>`
      : html`<div class="boxed"><p>${takeOff} before a gust of</p><p class="big">${speed(off.gust)}</p>
<p>is forecast: ${format(off.margin, 'percent', system)} (common practice, no source) of the gust that brings the first part not meant to go first to its limit, ${speed(off.first.gust)}: ${off.first.what}.</p></div>`;
  const shown = failures.slice(0, 5);
  return html`${told}
${
  shown.length === 0
    ? undefined
    : html`<h3>What goes first</h3>\n${table(
        ['order', 'what', 'limit reached at', ''],
        shown.map((one, index) => [
          `${index + 1}`,
          one.what,
          `${one.estimated ? 'about ' : ''}${speed(one.gust)}`,
          one.sacrificial ? 'meant to go first' : '',
        ]),
        [0, 2],
      )}`
}${
  unknown.length === 0
    ? undefined
    : html`<p>Not in this order, and so not in the gust above: ${unknown.map(({ noun, why }) => `${noun} (${messageText(why, system)})`).join('; ')}.</p>`
}${shelter.roof.sacrificial === true ? html`<p>The upper frame is meant to go before what carries it.</p>` : undefined}`;
}

function before({ shelter }: BookContext): readonly string[] {
  const has = (place: string): boolean => shelter.covers.some((cover) => cover.place === place);
  const straps = shelter.covers.some((cover) => cover.straps);
  return [
    'Everything loose out of the house and from around it.',
    'Gutters and drains clear.',
    ...(has('roof')
      ? [
          `In still air, before the wind rises: ${straps ? 'straps off; ' : ''}${has('ends') ? 'ends off; ' : ''}free one long edge, roll the film towards the other, and tie the roll down every arm's length, or carry it away.`,
        ]
      : []),
    ...(has('sides') ? ['Sides: roll up and tie, or take off, so that the wind goes through.'] : []),
    'If there is no still air left, leave the film on and stay away: it cannot be taken off in wind.',
  ];
}

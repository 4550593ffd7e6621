import { format } from '@tautline/quantity';
import type { BookContext, Chapter } from '../context.ts';
import { html, list, type Markup, table } from '../html/markup.ts';

/** One page to hang by the door. */
export const storm: Chapter = {
  id: 'storm',
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
<div class="line">Whom to call:</div><div class="line">Where the knife, ladder and ropes hang:</div>`;
  },
};

function filmOff({ storm: known, system, shelter }: BookContext): Markup {
  if (!known) {
    return html`<div class="boxed"><p><strong>The gust at which the film must come off was not worked out</strong> for this shelter. Until somebody qualified says otherwise, take it off whenever a gust anywhere near the design gust is forecast.</p></div>`;
  }
  const first = known.order[0];
  return html`<div class="boxed"><p>Film off before a gust of</p><p class="big">${format(known.filmOff, 'speed', system)}</p>
<p>is forecast: ${format(known.margin, 'percent', system)} of the gust at which the first part reaches its limit${first ? ` (${first.what}, ${format(first.gust, 'speed', system)})` : ''}.</p></div>
${
  known.order.length === 0
    ? undefined
    : html`<h3>What goes first</h3>\n${table(
        ['order', 'part', 'limit reached at', ''],
        known.order
          .slice(0, 6)
          .map((one, index) => [
            `${index + 1}`,
            one.what,
            format(one.gust, 'speed', system),
            one.sacrificial ? 'meant to go first' : '',
          ]),
        [0, 2],
      )}`
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

import { messageText, type StormOff, stormOff } from '@tautline/checks';
import { format } from '@tautline/quantity';
import type { Cover, CoverPlace } from '@tautline/shelter';
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
${list([`Stay away. ${loose[stormOff(shelter).what]}`, 'Do not go out to mend or cut anything.'])}
<h3>After</h3>
${list(['Walk round it before anybody goes under: the inspection list, windward side first.', ...after[stormOff(shelter).what]])}
<div class="two"><div class="line">Whom to call:</div><div class="line">Where knife, ladder and ropes hang:</div></div>`;
  },
};

function filmOff({ evaluation, system, shelter }: BookContext): Markup {
  const { gusts } = evaluation;
  const speed = (value: number): string => format(value, 'speed', system);
  const { what, head } = stormOff(shelter);
  if (!gusts) return html`<div class="boxed"><p>${notWorkedOut[what]}</p></div>`;
  const { filmOff: off, withoutWind, failures, unranked, upTo } = gusts;
  const stays = what === 'sheet' || what === 'nothing' ? html`<p>${nothingOff[what]}</p>\n` : undefined;
  const unknown = unranked.filter((one) => one.unknown);
  const told = withoutWind
    ? html`<div class="boxed stop"><p>It does not stand without wind: ${withoutWind.what} under ${withoutWind.loadCase}. Do not ${what === 'caps' ? 'set out these caps' : 'cover this shelter'}.</p></div>`
    : !off
      ? html`<div class="boxed">${stays}<p>Up to ${speed(upTo)} no part reached its limit that was not meant to go first. What was not checked may still go earlier.</p></div>`
      : html`<div class="boxed">${stays}<p>${head} before a gust of</p><p class="big">${speed(off.gust)}</p>
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
          one.gust > 0 ? `${one.estimated ? 'about ' : ''}${speed(one.gust)}` : 'without wind',
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

type What = StormOff['what'];

const nothingOff = {
  sheet: 'There is no film to take off: the sheets are screwed on and stay.',
  nothing: 'There is no film to take off.',
} as const;

const until = 'was not worked out for this shelter. Until somebody qualified says otherwise,';
const forecast = 'whenever a gust anywhere near the design gust is forecast.';

const notWorkedOut: Readonly<Record<What, string>> = {
  film: `The gust at which the film must come off ${until} take it off ${forecast}`,
  mesh: `The gust at which the mesh must come off ${until} take it off ${forecast}`,
  caps: `The gust at which the caps must be lifted off ${until} lift them off and stack them ${forecast}`,
  sheet: `${nothingOff.sheet} The gust that is too much ${until} keep clear of it ${forecast}`,
  nothing: `${nothingOff.nothing} The gust that is too much ${until} keep clear of it ${forecast}`,
};

const whips = (what: string): string => `${what}, straps and wire that let go whip.`;
const cuts = (what: string): string => `${what} that let go fly far, and their edges cut.`;

const loose: Readonly<Record<What, string>> = {
  film: whips('Film'),
  mesh: whips('Mesh'),
  caps: cuts('Caps'),
  sheet: cuts('Sheets'),
  nothing: 'Parts that let go fly far.',
};

const after: Readonly<Record<What, readonly string[]>> = {
  film: ['Film goes back in still air only.'],
  mesh: ['Mesh goes back in still air only.'],
  caps: ['Caps go back in still air only; leave out any that is cracked.'],
  sheet: [
    'Sheets: look for screws that have pulled through and for edges that have lifted, before the next wind.',
  ],
  nothing: [],
};

/** What is done the day before: what comes off, or is made fast where nothing does. */
function before({ shelter }: BookContext): readonly string[] {
  const { what } = stormOff(shelter);
  const at = (place: CoverPlace): Cover | undefined => shelter.covers.find((cover) => cover.place === place);
  const soft = (place: CoverPlace): boolean => (at(place)?.skin.kind ?? 'sheet') !== 'sheet';
  const straps = shelter.covers.some((cover) => cover.straps);
  const off = `${straps ? 'straps off; ' : ''}${soft('ends') ? 'ends off; ' : ''}`;
  return [
    'Everything loose out of the house and from around it.',
    'Gutters and drains clear.',
    ...(what === 'caps'
      ? [
          'In still air, before the wind rises: two people lift each cap off, rims level; stack them inside one another in a shed, or tie the stack down flat on the ground with what held their rims on top.',
          'If there is no still air left, leave the caps on and stay away: they cannot be carried in wind.',
        ]
      : []),
    ...(soft('roof')
      ? [
          `In still air, before the wind rises: ${off}free one long edge, roll the ${what} towards the other, and tie the roll down every arm's length, or carry it away.`,
        ]
      : soft('ends')
        ? ['Ends off, in still air, before the wind rises.']
        : []),
    ...(soft('sides') ? ['Sides: roll up and tie, or take off, so that the wind goes through.'] : []),
    ...(shelter.covers.some(({ skin }) => skin.kind === 'sheet')
      ? [
          'Sheets: every screw tight, no loose edge; a sheet that cannot be made fast is unscrewed in still air and carried away.',
        ]
      : []),
    ...(soft('roof')
      ? [`If there is no still air left, leave the ${what} on and stay away: it cannot be taken off in wind.`]
      : []),
  ];
}

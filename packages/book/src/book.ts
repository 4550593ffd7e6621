/** The whole build book from its input. Pure: same input, same bytes. */
import { sectionView, settingOutView, toDxf, toSvg, views } from '@tautline/drawing';
import { isDay } from '@tautline/quantity';
import { materialsCsv, materialsJson } from '@tautline/takeoff';
import { dueDates } from './calendar/dates.ts';
import { calendarText } from './calendar/ics.ts';
import { assumed, cautions } from './chapters/before.ts';
import { cutting, parts } from './chapters/buying.ts';
import { calculations } from './chapters/calculations.ts';
import { bends, end, plan, section, settingOut, side } from './chapters/drawings.ts';
import { front } from './chapters/front.ts';
import { review } from './chapters/review.ts';
import { storm } from './chapters/storm.ts';
import { calendar, inspection, order } from './chapters/work.ts';
import type { BookContext, Chapter } from './context.ts';
import { fullSizeTemplate } from './full-size.ts';
import { html, ready } from './html/markup.ts';
import { bookStyle } from './html/style.ts';
import type { BookInput } from './input.ts';

/** Every chapter, in the order of the book. */
const chapters: readonly Chapter[] = [
  cautions,
  assumed,
  section,
  plan,
  side,
  end,
  parts,
  settingOut,
  bends,
  cutting,
  order,
  inspection,
  storm,
  calendar,
  calculations,
  review,
];

export interface BookFile {
  readonly name: string;
  readonly text: string;
}

export interface Book {
  /** The book itself, one page that needs nothing beside it. */
  readonly html: string;
  /** RFC 5545 calendar. */
  readonly ics: string;
  /** Everything else that belongs in the folder: drawings, lists, the bow at full size. */
  readonly files: readonly BookFile[];
}

/** Throws RangeError when `on` is no day, or the model holds a number that is none. */
export function buildBook(input: BookInput): Book {
  if (!isDay(input.on)) throw new RangeError(`'${input.on}' is no day like 2027-03-01`);
  const { shelter } = input.evaluation;
  const context: BookContext = {
    ...input,
    shelter,
    dates: dueDates(input.duties, input.on, input.system),
    failing: input.evaluation.findings.filter((finding) => finding.severity === 'error'),
  };
  const written = chapters.flatMap((chapter) => {
    const body = chapter.body(context);
    return body ? [{ chapter, body }] : [];
  });
  const foot = `${shelter.name}, ${input.on}. A screening aid: local codes, permits and a licensed engineer decide.`;
  const page = html`<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8"/>
<meta name="viewport" content="width=device-width"/>
<title>${shelter.name}: build book</title>
<style>${ready(bookStyle(input.paper, foot))}</style>
</head>
<body>
${front(
  context,
  written.map(({ chapter }) => chapter),
)}${written.map(
  ({ chapter, body }) =>
    html`<section id="${chapter.id}" class="${chapter.wide ? 'wide' : chapter.onePage ? 'chapter close' : 'chapter'}">
${chapter.drawn ? undefined : html`<h2>${chapter.title}</h2>\n`}${body}</section>
`,
)}</body>
</html>
`;
  return {
    html: page.markup,
    ics: calendarText(shelter.name, context.dates, input.on),
    files: [...drawings(context), ...lists(context)],
  };
}

function drawings({ shelter, system, paper }: BookContext): readonly BookFile[] {
  const svg = Object.entries(views).flatMap(([name, draw]) => {
    const drawing = draw(shelter, { system });
    return drawing ? [{ name: `${name}.svg`, text: toSvg(drawing, 'paper') }] : [];
  });
  const template = fullSizeTemplate(shelter, system, paper);
  return [
    ...svg,
    { name: 'section.dxf', text: toDxf(sectionView(shelter, { system })) },
    { name: 'setting-out.dxf', text: toDxf(settingOutView(shelter, { system })) },
    ...(template ? [{ name: 'bow-full-size.html', text: template.html }] : []),
  ];
}

const lists = ({ materials, system }: BookContext): readonly BookFile[] => [
  { name: 'materials.csv', text: materialsCsv(materials, system) },
  { name: 'materials.json', text: materialsJson(materials) },
];

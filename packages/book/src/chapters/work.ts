import { undated } from '../calendar/dates.ts';
import type { Chapter } from '../context.ts';
import { html, list, table } from '../html/markup.ts';
import { plural } from '../words.ts';
import { inspections } from '../work/inspection.ts';
import { workSteps } from '../work/steps.ts';

export const order: Chapter = {
  id: 'steps',
  title: 'Order of work',
  body: ({ shelter, system }) => html`<p>Orders, tools and hands are common practice, no source.</p>
${workSteps(shelter, system).map(
  (step, index) => html`<div class="step"><h3>${index + 1}. ${step.title}</h3>
${list(step.does)}
<p><strong>Tools:</strong> ${step.tools.join(', ')}. <strong>Hands:</strong> ${plural(step.hands, 'person').replace('persons', 'people')}.${step.caution === undefined ? undefined : html` <strong>Mind:</strong> ${step.caution}`}</p></div>
`,
)}`,
};

export const inspection: Chapter = {
  id: 'inspection',
  title: 'Inspection list',
  body: ({ shelter }) => html`<p>Day: ____________________  Looked at by: ____________________</p>
${inspections(shelter).map(
  ({ when, points }) => html`<h3>${when}</h3>
<ul class="tick">${points.map((point) => html`<li>${point}</li>\n`)}</ul>
`,
)}`,
};

export const calendar: Chapter = {
  id: 'calendar',
  title: 'Renewal calendar',
  body: ({ dates, duties, system }) => {
    const open = undated(duties, system);
    return html`<p>The same dates are in the calendar file beside this book.</p>
${table(
  ['day', 'what', 'why'],
  dates.map((date) => [html`<span style="white-space: nowrap">${date.day}</span>`, date.what, date.why]),
)}
${
  open.length === 0
    ? undefined
    : html`<h3>Without a day yet</h3>\n${table(
        ['what', 'why'],
        open.map((one) => [one.what, one.why]),
      )}`
}`;
  },
};

import type { Chapter } from '../context.ts';
import { html } from '../html/markup.ts';

/** Room for somebody licensed to say what they have looked at. Empty as it comes. */
export const review: Chapter = {
  id: 'review',
  title: 'Review by a licensed professional',
  body: ({
    shelter,
    on,
  }) => html`<p>Left empty where nobody has looked at it. This book is a screening aid and replaces neither the review nor a permit.</p>
<p>Shelter: <strong>${shelter.name}</strong>. Book made: <strong>${on}</strong>.</p>
<h3>Looked at</h3>
<ul class="tick">${['site values and load basis', 'frame and joints', 'feet and ground', 'film and fastenings', 'bracing along the house', 'what is listed as assumed and not checked'].map((line) => html`<li>${line}</li>\n`)}</ul>
<div class="line tall">Remarks and conditions:</div>
${['Name:', 'Licence and where it holds:', 'Day:', 'Signature and seal:'].map((line) => html`<div class="line">${line}</div>\n`)}
<h3>Decided</h3>
<ul class="tick">${['may be built as it is', 'may be built with the remarks above', 'not to be built'].map((line) => html`<li>${line}</li>\n`)}</ul>`,
};

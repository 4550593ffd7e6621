/** A review as one page: the same words as the comment, with drawings before and after. */
import { type Drawing, highlightPart, toSvg, views } from '@tautline/drawing';
import type { System } from '@tautline/quantity';
import type { Shelter } from '@tautline/shelter';
import type { Review, ShelterReview } from '../review.ts';
import { escaped, htmlPage } from './html.ts';
import { headline, type ToldChange, type ToldShelter, tellShelter, worthASection } from './told.ts';

export interface PageOptions {
  /** Units to show everything in; each shelter in its own when absent. */
  readonly system?: System;
  readonly caution: string;
}

/** Complete HTML without scripts and without anything fetched. Throws RangeError as the drawings do. */
export function reviewPage(review: Review, { system, caution }: PageOptions): string {
  const told = review.shelters.filter(worthASection).map((shelter) => tellShelter(shelter, system));
  const quiet = review.shelters.filter((shelter) => !worthASection(shelter));
  return htmlPage(
    'Shelter review',
    `<p>${escaped(headline(review))} Compared <code>${escaped(review.before)}</code> with <code>${escaped(review.after)}</code>.</p>
<p class="quiet">${escaped(caution)}</p>`,
    `${told.map((one) => sectionOf(one)).join('\n')}
${quiet.length === 0 ? '' : `<section><h2>Unchanged</h2><p>${quiet.map(({ name }) => escaped(name)).join(', ')}</p></section>`}`,
  );
}

function sectionOf(told: ToldShelter): string {
  const { review, system } = told;
  const figures: readonly (readonly [string, string])[] = [
    ['Findings', told.findingTally],
    ['Most used', told.governing],
    ['First failure at', told.firstFailure],
    ['Cost', told.cost],
  ];
  return `<section>
<h2>${escaped(review.name)}</h2>
<p>${escaped(told.outcome)} <code>${escaped(review.file)}</code></p>
<dl>${figures.map(([name, text]) => (text === '' ? '' : `<dt>${name}</dt><dd>${escaped(text)}</dd>`)).join('')}</dl>
${told.facts.map(({ title, changes }) => table(title, changes)).join('')}
${list('Findings', told.findings)}${list('Acceptances', told.acceptances)}${list('Problems', told.problems)}
${list('Parts', told.parts)}
${drawings(review, system)}
${table('Materials', told.materials)}
</section>`;
}

function table(title: string, changes: readonly ToldChange[]): string {
  if (changes.length === 0) return '';
  const rows = changes.map(
    ({ what, before, after }) =>
      `<tr><th scope="row">${escaped(what)}</th><td><del>${escaped(before)}</del></td><td><ins>${escaped(after)}</ins></td></tr>`,
  );
  return `<h3>${title}</h3><table><thead><tr><th>what</th><th>before</th><th>after</th></tr></thead><tbody>${rows.join('')}</tbody></table>`;
}

function list(title: string, lines: readonly string[]): string {
  return lines.length === 0
    ? ''
    : `<h3>${title}</h3><ul>${lines.map((line) => `<li>${escaped(line)}</li>`).join('')}</ul>`;
}

const shown = ['section', 'side', 'plan'] as const;

/** Where a part was changed, all views before and after with it marked; nothing where nothing was. */
function drawings({ pair, parts }: ShelterReview, system: System): string {
  const before = pair.before?.evaluation?.shelter;
  const after = pair.after?.evaluation?.shelter;
  if (before && after && parts.length === 0) return '';
  const ids = parts.map(({ part }) => part);
  const figures = shown.flatMap((view) => [
    before ? figure(before, view, ids, 'before', system) : '',
    after ? figure(after, view, ids, 'after', system) : '',
  ]);
  const note = ids.length === 0 ? '' : '<p class="quiet">Changed parts are outlined with a dotted line.</p>';
  return figures.join('') === ''
    ? ''
    : `<h3>Drawings</h3>${note}<div class="pairs">${figures.join('')}</div>`;
}

function figure(
  shelter: Shelter,
  view: (typeof shown)[number],
  parts: readonly string[],
  when: 'before' | 'after',
  system: System,
): string {
  const plain: Drawing = views[view](shelter, { system });
  const drawing = parts.reduce((marked, part) => highlightPart(marked, part), plain);
  return `<figure><figcaption>${view}, ${when}</figcaption>${toSvg(drawing, 'paper')}</figure>`;
}

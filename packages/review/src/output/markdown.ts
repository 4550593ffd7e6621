/** A review as a comment on a pull request: short, the same for the same change, details folded away. */
import type { System } from '@tautline/quantity';
import type { Review } from '../review.ts';
import { markdownRow, markdownText } from './markdown-text.ts';
import { headline, type ToldChange, type ToldShelter, tellShelter, worthASection } from './told.ts';

/** First line of the comment, by which a later run finds the one to write over. */
export const commentMark = '<!-- tautline review -->';

/** Characters: forges take comments of up to 65 536 (from memory); some room is left. */
const longest = 60_000;

export interface MarkdownOptions {
  /** Units to show everything in; each shelter in its own when absent. */
  readonly system?: System;
  /** The line that every report carries. */
  readonly caution: string;
}

export function reviewMarkdown(review: Review, { system, caution }: MarkdownOptions): string {
  const told = review.shelters.filter(worthASection).map((shelter) => tellShelter(shelter, system));
  const lines = [
    commentMark,
    '### Shelter review',
    '',
    `${headline(review)} Compared ${code(review.before)} with ${code(review.after)}.`,
    '',
  ];
  if (told.length > 0) lines.push(...overview(told), '');
  let room = longest - lines.join('\n').length;
  let left = 0;
  for (const shelter of told) {
    const section = details(shelter);
    room -= section.join('\n').length + 1;
    if (room < 0) left += 1;
    else lines.push(...section);
  }
  if (left > 0) lines.push(`The details of ${left} more would make this comment too long.`, '');
  lines.push(`<sub>${markdownText(caution)}</sub>`);
  return `${lines.join('\n')}\n`;
}

function overview(told: readonly ToldShelter[]): string[] {
  const gusts = told.some(({ firstFailure }) => firstFailure !== '');
  const head = ['shelter', 'change', 'findings', 'most used', ...(gusts ? ['first failure at'] : []), 'cost'];
  return [
    markdownRow(head),
    markdownRow(head.map(() => '---')),
    ...told.map((one) =>
      markdownRow(
        [
          one.review.name,
          one.outcome,
          one.findingTally,
          one.governing,
          ...(gusts ? [one.firstFailure] : []),
          one.cost,
        ].map(markdownText),
      ),
    ),
  ];
}

function details(told: ToldShelter): string[] {
  const body = [
    ...told.facts.flatMap(({ title, changes }) => section(title, changes.map(changeLine))),
    ...section('Parts', told.parts.map(markdownText)),
    ...section('Findings', findingsOf(told).map(markdownText)),
    ...section('Acceptances', told.acceptances.map(markdownText)),
    ...section('Materials', told.materials.map(changeLine)),
    ...section('Problems', told.problems.map(markdownText)),
  ];
  if (body.length === 0) return [];
  const open = told.findings.some((line) => line.startsWith('came (fails)')) ? ' open' : '';
  const summary = `<summary><b>${markdownText(told.review.name)}</b>: ${markdownText(told.outcome)}</summary>`;
  return [`<details${open}>${summary}`, '', ...body, '</details>', ''];
}

/** All of them; of a new shelter only what fails, and how much else there is to watch. */
function findingsOf({ review, findings }: ToldShelter): readonly string[] {
  if (review.change !== 'added') return findings;
  const failing = findings.filter((_, index) => review.findings[index]?.after?.severity === 'error');
  const watched = findings.length - failing.length;
  return watched === 0 ? failing : [...failing, `${watched} more to watch`];
}

function section(title: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : [`**${title}**`, '', ...lines.map((line) => `- ${line}`), ''];
}

function changeLine({ what, before, after }: ToldChange): string {
  if (before === '') return `${markdownText(what)}: added ${markdownText(after)}`;
  if (after === '') return `${markdownText(what)}: removed, was ${markdownText(before)}`;
  return `${markdownText(what)}: ${markdownText(before)} → ${markdownText(after)}`;
}

const code = (text: string): string => `<code>${markdownText(text)}</code>`;

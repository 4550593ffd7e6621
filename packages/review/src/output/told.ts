/** A review in words, each shelter in one system of units: what the Markdown and the page both set out. Not escaped. */
import { messageText } from '@tautline/checks';
import { format, type System, usedText } from '@tautline/quantity';
import { unitsOf } from '@tautline/shelter';
import { moneyText } from '@tautline/takeoff';
import type { FactChange } from '../facts.ts';
import type { CostSide, Governing } from '../figures.ts';
import type { AcceptanceChange, FindingChange } from '../findings.ts';
import { partWords } from '../parts.ts';
import type { Review, ShelterReview, Sides } from '../review.ts';
import type { FirstFailure } from '../revision.ts';
import { saidText, saidTexts } from '../said.ts';

/** `before` or `after` is empty where there is none. */
export interface ToldChange {
  readonly what: string;
  readonly before: string;
  readonly after: string;
}

export interface ToldShelter {
  readonly review: ShelterReview;
  readonly system: System;
  /** What happened to it, e.g. `3 facts changed, was plug-house`. */
  readonly outcome: string;
  /** Counts of errors and warnings that came and went, e.g. `2 came, 1 went`; empty when none did. */
  readonly findingTally: string;
  readonly governing: string;
  readonly firstFailure: string;
  readonly cost: string;
  readonly facts: readonly { readonly title: string; readonly changes: readonly ToldChange[] }[];
  readonly parts: readonly string[];
  readonly findings: readonly string[];
  readonly acceptances: readonly string[];
  readonly materials: readonly ToldChange[];
  readonly problems: readonly string[];
}

/** Units a shelter's review is shown in when none are asked for: its own, after the change where it is still there. */
export function unitsOfReview({ pair }: ShelterReview): System {
  const shown = pair.after ?? pair.before;
  return shown === undefined ? 'metric' : unitsOf(shown.world);
}

export function tellShelter(review: ShelterReview, asked?: System): ToldShelter {
  const system = asked ?? unitsOfReview(review);
  const { facts } = review;
  const groups = [
    ['Design', facts.design],
    ['Site', facts.site],
    ['Stock', facts.stock],
    ['Claims', facts.claims],
    ['Dates and remarks', facts.keeping],
  ] as const;
  return {
    review,
    system,
    outcome: outcomeOf(review),
    findingTally: tallyOf(review.findings),
    governing: sidesText(review, review.governing, governingText),
    firstFailure: sidesText(review, review.firstFailure, (one) => gustText(one, system)),
    cost: sidesText(review, review.cost, costText),
    facts: groups.flatMap(([title, changes]) =>
      changes.length === 0 ? [] : [{ title, changes: changes.map((change) => factTold(change, system)) }],
    ),
    parts: partLines(review, system),
    findings: review.findings.map((finding) => findingLine(finding, system)),
    acceptances: review.acceptances.map((acceptance) => acceptanceLine(acceptance, system)),
    materials: review.materials.map(({ title, kind, before, after }) => ({
      what: title,
      before: before === undefined ? '' : format(before, kind, system),
      after: after === undefined ? '' : format(after, kind, system),
    })),
    problems: [
      ...(review.problems.before ?? []).map((text) => `Before: ${text}`),
      ...(review.problems.after ?? []).map((text) => `After: ${text}`),
    ],
  };
}

function outcomeOf(review: ShelterReview): string {
  const { design, site, stock } = review.facts;
  const count = design.length + site.length + stock.length;
  const main =
    review.change === 'changed' ? `${count} ${count === 1 ? 'fact' : 'facts'} changed` : review.change;
  return [
    main,
    ...(review.renamedFrom === undefined ? [] : [`was called ${review.renamedFrom}`]),
    ...(review.movedFrom === undefined ? [] : [`moved from ${review.movedFrom}`]),
  ].join(', ');
}

function tallyOf(findings: readonly FindingChange[]): string {
  return (['came', 'worse', 'accepted', 'better', 'went'] as const)
    .flatMap((change) => {
      const count = findings.filter((finding) => finding.change === change).length;
      return count === 0 ? [] : [`${count} ${change}`];
    })
    .join(', ');
}

function factTold(fact: FactChange, system: System): ToldChange {
  const what = fact.path.join(' › ');
  const { before, after } = fact;
  if (before && after) {
    const [was, is] = saidTexts(before, after, system);
    return { what, before: was, after: is };
  }
  // A fact without values, such as `sacrificial`, is said by its word alone.
  const text = (said: FactChange['before']): string =>
    said === undefined ? '' : saidText(said, system) || 'said';
  return { what, before: text(before), after: text(after) };
}

function partLines({ parts, pair }: ShelterReview, system: System): string[] {
  const before = pair.before?.evaluation?.shelter;
  const after = pair.after?.evaluation?.shelter;
  if (!before || !after) return [];
  return parts.flatMap(({ part, change }) => {
    const was = change === 'added' ? '' : partWords(before, part, system);
    const is = change === 'removed' ? '' : partWords(after, part, system);
    if (change === 'added') return [`new: ${is}`];
    if (change === 'removed') return [`gone: ${was}`];
    return [was === is ? `changed: ${is}` : `${was} → ${is}`];
  });
}

/** A finding that came, went or moved, in one line. */
export function findingLine({ change, id, part, before, after }: FindingChange, system: System): string {
  const used = fromTo(before?.utilisation, after?.utilisation, usedText);
  const side = after ?? before;
  const level = side?.severity === 'error' ? 'fails' : side?.severity === 'warning' ? 'watch' : '';
  const told = change === 'went' ? '' : `: ${messageText(side?.message ?? [], system)}`;
  const reason = change === 'accepted' ? ` Accepted: ${after?.accepted ?? ''}` : '';
  const head = [change, ...(level === '' || change === 'went' ? [] : [`(${level})`]), id, `of ${part}`];
  return `${head.join(' ')}${used === '' ? '' : `, ${used}`}${told}${reason}`;
}

function acceptanceLine(
  { change, check, because, until, message }: AcceptanceChange,
  system: System,
): string {
  const why = because === undefined ? '' : ` because "${because}"`;
  const end = until === undefined ? '' : ` until ${until}`;
  const told = message === undefined ? '' : `: ${messageText(message, system)}`;
  return `acceptance of ${check} ${change}${why}${end}${told}`;
}

const governingText = ({ id, utilisation }: Governing): string => `${usedText(utilisation)} ${id}`;
const gustText = ({ gust, part, beyond }: FirstFailure, system: System): string =>
  beyond ? `over ${format(gust, 'speed', system)}` : `${format(gust, 'speed', system)} ${part}`;
const costText = ({ total, complete, currency }: CostSide): string =>
  `${moneyText(total, currency)}${complete ? '' : ' so far'}`;

/** `84 % → 91 %`; one text where both are the same or the other side never was; '' without any. */
function fromTo<T>(before: T | undefined, after: T | undefined, text: (value: T) => string): string {
  const [was, is] = [before, after].map((value) => (value === undefined ? '' : text(value)));
  if (was === '' || is === '' || was === is) return is || was || '';
  return `${was} → ${is}`;
}

/** The same for a shelter that stands on both sides, where a side without a figure is told by a dash. */
function sidesText<T>(
  { pair }: ShelterReview,
  { before, after }: Sides<T>,
  text: (value: T) => string,
): string {
  if (!pair.before || !pair.after || (before === undefined) === (after === undefined))
    return fromTo(before, after, text);
  return before === undefined ? `– → ${text(after as T)}` : `${text(before)} → –`;
}

/** One sentence over all shelters. */
export function headline({ shelters }: Review): string {
  const counts = (['changed', 'added', 'removed', 'no design change', 'unchanged'] as const).flatMap(
    (change) => {
      const count = shelters.filter((shelter) => shelter.change === change).length;
      return count === 0
        ? []
        : [`${count} ${change === 'no design change' ? 'without design change' : change}`];
    },
  );
  const real = shelters.some(({ change }) => ['changed', 'added', 'removed'].includes(change));
  if (shelters.length === 0) return 'No shelters.';
  return `${real ? '' : 'No design change. '}Of ${shelters.length} ${shelters.length === 1 ? 'shelter' : 'shelters'}: ${counts.join(', ')}.`;
}

/** Whether a shelter has anything to tell beyond being there. */
export function worthASection({ change, renamedFrom, movedFrom, problems }: ShelterReview): boolean {
  return (
    change !== 'unchanged' ||
    renamedFrom !== undefined ||
    movedFrom !== undefined ||
    problems.after !== undefined
  );
}

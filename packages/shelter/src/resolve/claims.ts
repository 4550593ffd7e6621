/** Crops, requirements and accepted findings. */
import type { Acceptance, Crop, Requirement } from '../model/shelter.ts';
import { dateIn, factNode, factNodes, numberIn, textIn, wordIn } from '../spec/nodes.ts';
import type { SpecNode } from '../spec/spec.ts';
import type { Context } from './context.ts';
import { assume, type Notes, numberFact, problem } from './notes.ts';

/** Standard gravity, m/s2: a defined value. */
const gravity = 9.80665;

export function readCrop(block: SpecNode, context: Context): Crop {
  const { notes } = context;
  const name = wordIn(block, 'name') ?? 'crop';
  const id = `crop-${name}`;
  const or = (word: string, value: number, why: string) =>
    numberFact(notes, block, word, { least: 0, most: 100 }) ??
    assume(notes, id, word, value, 'length', why, block.origin);
  const hung =
    numberFact(notes, block, 'hung', { least: 0, most: 200 }) ??
    assume(notes, id, 'hung', 0, 'mass-per-area', 'nothing is said to hang from the frame', block.origin);
  return {
    id,
    origin: block.origin,
    name,
    hung: hung * gravity,
    height: or('height', 0, 'no height is said, so none is checked'),
    fromSide: or('from', 0, 'it may stand right at the side'),
  };
}

export function readRequirements(context: Context): readonly Requirement[] {
  const { shelter, notes } = context;
  const said = factNodes(shelter, 'require').flatMap((fact, index): Requirement[] => {
    const subject = wordIn(fact, 'subject');
    const comparison = wordIn(fact, 'comparison');
    const value = numberIn(fact);
    const at = numberIn(fact, 'at');
    if (subject === undefined || value === undefined || !isComparison(comparison)) return [];
    if (at !== undefined && !(at >= 0 && at <= context.width)) {
      problem(notes, 'out-of-range', 'that place lies outside the footprint', fact.origin);
      return [];
    }
    const id = `require-${index + 1}`;
    return [{ id, origin: fact.origin, subject, comparison, value, ...(at === undefined ? {} : { at }) }];
  });
  const gust = numberFact(notes, shelter, 'withstand', { above: 0, most: 120 });
  const origin = factNode(shelter, 'withstand')?.origin;
  if (gust === undefined || origin === undefined) return said;
  return [...said, { id: 'withstand', origin, subject: 'gust', comparison: '>=', value: gust }];
}

function isComparison(word: string | undefined): word is Requirement['comparison'] {
  return word !== undefined && ['>=', '<=', '>', '<'].includes(word);
}

/** What an offered `accept` line says until somebody writes a reason: it accepts nothing. */
export const reasonToCome = 'say why';

/** The `accept` lines of a shelter or a range. */
export function readAcceptances(block: SpecNode, notes: Notes): readonly Acceptance[] {
  return factNodes(block, 'accept').flatMap((fact, index): Acceptance[] => {
    const check = wordIn(fact, 'check');
    const because = textIn(fact, 'reason')?.trim();
    const until = dateIn(fact, 'until');
    if (check === undefined) return [];
    if (!because) {
      problem(notes, 'reason-missing', `say why you accept ${check}`, fact.origin);
      return [];
    }
    if (because === reasonToCome) {
      problem(notes, 'reason-missing', `say why you accept ${check}`, fact.origin, 'warning');
      return [];
    }
    const id = `accept-${index + 1}`;
    return [{ id, origin: fact.origin, check, because, ...(until === undefined ? {} : { until }) }];
  });
}

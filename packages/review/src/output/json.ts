/** A review for another program: SI numbers, and the facts in words. */
import { messageText } from '@tautline/checks';
import type { System } from '@tautline/quantity';
import type { FactChange } from '../facts.ts';
import type { FindingSide } from '../findings.ts';
import type { Review, ShelterReview } from '../review.ts';
import { saidText } from '../said.ts';
import { headline, unitsOfReview } from './told.ts';

export function reviewJson(review: Review, system?: System): string {
  const plain = {
    before: review.before,
    after: review.after,
    headline: headline(review),
    shelters: review.shelters.map((shelter) => shelterJson(shelter, system ?? unitsOfReview(shelter))),
  };
  return `${JSON.stringify(plain, rounded, 2)}\n`;
}

function shelterJson({ pair: _pair, facts, findings, acceptances, ...rest }: ShelterReview, system: System) {
  const told = ({ path, change, before, after }: FactChange) => ({
    path,
    change,
    ...(before ? { before: saidText(before, system, { digits: 6 }) } : {}),
    ...(after ? { after: saidText(after, system, { digits: 6 }) } : {}),
  });
  const side = (one: FindingSide) => ({ ...one, message: messageText(one.message, system) });
  return {
    ...rest,
    facts: Object.fromEntries(Object.entries(facts).map(([area, changes]) => [area, changes.map(told)])),
    findings: findings.map(({ before, after, ...finding }) => ({
      ...finding,
      ...(before ? { before: side(before) } : {}),
      ...(after ? { after: side(after) } : {}),
    })),
    acceptances: acceptances.map(({ message, ...one }) => ({
      ...one,
      ...(message ? { message: messageText(message, system) } : {}),
    })),
  };
}

/** Six significant digits: what is past them is no knowledge, and differs from machine to machine. */
function rounded(_key: string, value: unknown): unknown {
  return typeof value === 'number' ? Number(value.toPrecision(6)) : value;
}

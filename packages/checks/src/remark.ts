import type { Step } from '@tautline/loads';
import type { Part } from '@tautline/shelter';
import type { Found, MessagePiece } from './finding.ts';

/**
 * A fault of kind rather than of degree: two things that must not meet, a material in the wrong place. It has
 * no utilisation, and is a warning, since it shortens a life and does not bring the house down.
 */
export function remark(
  part: Pick<Part, 'id' | 'origin'>,
  verdict: 'fails' | 'near its limit' | 'passes',
  message: readonly MessagePiece[],
  source: string,
  steps: readonly Step[] = [],
): Found {
  return {
    verdict,
    severity: verdict === 'passes' ? 'information' : 'warning',
    part: part.id,
    origin: part.origin,
    related: [],
    message,
    source,
    steps,
  };
}

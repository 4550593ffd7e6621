import { format, type KindName, type System } from '@tautline/quantity';
import type { Measured, MessagePiece } from './finding.ts';

/** A message in the user's own units. */
export function messageText(pieces: readonly MessagePiece[], system: System): string {
  return pieces.map((piece) => (typeof piece === 'string' ? piece : measuredText(piece, system))).join('');
}

/** One number with its unit. */
export function measuredText(measured: Measured, system: System): string {
  return format(measured.value, measured.kind as KindName, system);
}

import { format, type System } from '@tautline/quantity';

/** A length for the tape: to the millimetre, or to a sixteenth of an inch, however long it is. */
export function exactLength(si: number, system: System): string {
  if (si === 0) return '0';
  const whole = Math.max(1, Math.ceil(Math.log10(Math.max(1, Math.abs(si)) + 1e-9)));
  // Digits before the point plus three behind it show millimetres.
  return format(si, 'length', system, { digits: whole + 3, inchParts: 16 });
}

import { format, type System } from '@tautline/quantity';

/** A length for the tape: to the millimetre, or to a sixteenth of an inch, however long it is. */
export function exactLength(si: number, system: System): string {
  if (si === 0) return '0';
  // Digits before the point plus three behind it show millimetres.
  const whole = Math.floor(Math.log10(Math.abs(si))) + 1;
  return format(si, 'length', system, { digits: Math.max(1, whole + 3), inchParts: 16 });
}

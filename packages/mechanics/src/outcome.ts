/** Why a calculation gives no answer: a plain sentence, never an exception and never a NaN. */
export interface Refusal {
  readonly ok: false;
  readonly reason: string;
}

export const refuse = (reason: string): Refusal => ({ ok: false, reason });

/** True for a number that can be a length, stiffness or load: finite and above zero. */
export const positive = (value: number | undefined): value is number =>
  value !== undefined && Number.isFinite(value) && value > 0;

/** Why something broke off, in words. */
export const reason = (error: unknown): string => (error instanceof Error ? error.message : String(error));

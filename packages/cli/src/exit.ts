/** Exit codes of every command: nothing to report, findings at or above the asked level, could not run. */
export const exit = { clean: 0, findings: 1, failed: 2 } as const;

/** A reason why a command could not run, told without a stack trace. */
export class CannotRun extends Error {}

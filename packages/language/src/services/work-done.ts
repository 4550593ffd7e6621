/** Progress of long work, as the editor shows it: of its own accord, or under the token of a question. */
import { type Connection, WorkDoneProgress } from 'vscode-languageserver';
import type { Doing } from '../analyst/long-work.ts';

interface Shown {
  readonly tell: Doing['progress'];
  readonly end: () => void;
}

const whole = (share: number): number => Math.round(100 * Math.min(1, Math.max(0, share)));

/** Shows a title with a share done; does nothing in an editor that cannot. */
export async function workShown(connection: Connection, can: boolean, title: string): Promise<Shown> {
  if (!can) return { tell: () => undefined, end: () => undefined };
  const reporter = await connection.window.createWorkDoneProgress();
  reporter.begin(title, 0);
  return {
    tell: (share, next) => reporter.report(whole(share), next),
    end: () => reporter.done(),
  };
}

/** Tells progress to whoever asked; without a token it is not told. */
export function workAsked(connection: Connection, token: string | number | undefined, title: string): Shown {
  if (token === undefined) return { tell: () => undefined, end: () => undefined };
  const send = (value: object): void =>
    void connection.sendProgress(WorkDoneProgress.type, token, value as never).catch(() => undefined);
  send({ kind: 'begin', title, percentage: 0 });
  return {
    tell: (share, message) => send({ kind: 'report', percentage: whole(share), message }),
    end: () => send({ kind: 'end' }),
  };
}

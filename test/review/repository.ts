/** A git repository of its own for a test, with commits made by a script. */
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';

export const day = '2026-11-25';

/** Nothing of the machine's own git settings reaches the test. */
export const environment = () => ({
  ...process.env,
  GIT_CONFIG_GLOBAL: '/dev/null',
  GIT_CONFIG_NOSYSTEM: '1',
  GIT_AUTHOR_NAME: 'Test',
  GIT_AUTHOR_EMAIL: 'test@example.org',
  GIT_COMMITTER_NAME: 'Test',
  GIT_COMMITTER_EMAIL: 'test@example.org',
});

export class ScriptedRepository {
  readonly folder = mkdtempSync(join(tmpdir(), 'tautline-review-'));

  constructor() {
    this.git('init', '-q', '-b', 'main');
  }

  git(...words: string[]): string {
    return execFileSync('git', words, { cwd: this.folder, env: environment(), encoding: 'utf8' });
  }

  write(path: string, text: string): void {
    mkdirSync(dirname(join(this.folder, path)), { recursive: true });
    writeFileSync(join(this.folder, path), text);
  }

  /** Replaces words of a file; fails when they are not there, so that no step of a test does nothing. */
  change(path: string, from: string, to: string): void {
    const text = readFileSync(join(this.folder, path), 'utf8');
    if (!text.includes(from)) throw new Error(`${path} does not say '${from}'`);
    writeFileSync(join(this.folder, path), text.replace(from, to));
  }

  move(from: string, to: string): void {
    renameSync(join(this.folder, from), join(this.folder, to));
  }

  remove(path: string): void {
    rmSync(join(this.folder, path));
  }

  commit(message: string): void {
    this.git('add', '-A');
    this.git('commit', '-q', '-m', message);
  }

  dispose(): void {
    rmSync(this.folder, { recursive: true, force: true });
  }
}

export { tell as tautline } from '../../packages/cli/test/tell.ts';

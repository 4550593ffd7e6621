/** The recipes of packages/cli/ci, run as scripts: the check against a bare repository, the hook in a clone. */
import { execFileSync, spawnSync } from 'node:child_process';
import {
  chmodSync,
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { formatText as laidOut } from '../../packages/language/src/index.ts';
import { commentMark } from '../../packages/review/src/index.ts';
import { environment, ScriptedRepository } from '../review/repository.ts';
import { buildBundle, tautlinePath } from './bundle.ts';
import { runAction } from './composite-action.ts';
import { shelterText, siteText, soundText } from './generated.ts';

const recipes = fileURLToPath(new URL('../../packages/cli/ci/', import.meta.url));
const tautline = `${process.execPath} ${tautlinePath}`;
let source: ScriptedRepository;
let bare: string;
const reports = mkdtempSync(join(tmpdir(), 'tautline-reports-'));

function recipe(...words: string[]) {
  return spawnSync('sh', [join(recipes, 'check.sh'), ...words], {
    cwd: bare,
    encoding: 'utf8',
    env: { ...process.env, TAUTLINE: tautline, TAUTLINE_OUT: reports, TAUTLINE_ON: '2026-11-25' },
  });
}

beforeAll(() => {
  buildBundle();
  source = new ScriptedRepository();
  source.write('site.shelter', laidOut(siteText));
  source.write('house.shelter', shelterText(0).replace('rise 6 ft 0 in', 'rise 5 ft'));
  source.commit('start');
  source.git('checkout', '-q', '-b', 'wider');
  source.change('house.shelter', '12 ft by', '15 ft by');
  source.commit('wider');
  source.git('checkout', '-q', '-b', 'sound', 'main');
  source.remove('house.shelter');
  source.write('sound.shelter', laidOut(soundText));
  source.commit('sound');
  source.git('checkout', '-q', 'main');
  bare = join(reports, 'bare.git');
  source.git('clone', '-q', '--bare', source.folder, bare);
}, 60_000);
afterAll(() => {
  source.dispose();
  rmSync(reports, { recursive: true, force: true });
});

describe('check.sh', () => {
  it('writes all reports of a branch in a bare repository, with the review against where it parted', () => {
    const ran = recipe('wider', 'main');
    expect(ran.stderr).not.toContain('wrong');
    expect(ran.status).toBe(1);
    expect(readFileSync(join(reports, 'review.md'), 'utf8')).toContain(
      'footprint: 12 ft by 20 ft → 15 ft by 20 ft',
    );
    expect(readFileSync(join(reports, 'review.html'), 'utf8')).toContain('</html>');
    expect(readFileSync(join(reports, 'junit.xml'), 'utf8')).toMatch(/<testsuites .*failures="[1-9]/);
    const sarif = JSON.parse(readFileSync(join(reports, 'shelters.sarif'), 'utf8'));
    expect(JSON.stringify(sarif)).toContain('"uri":"house.shelter"');
  }, 120_000);

  it('says with exit code 2 that a revision is not there', () => {
    const ran = recipe('nowhere');
    expect([ran.status, ran.stderr]).toEqual([2, expect.stringContaining("no revision 'nowhere'")]);
  });
});

describe('pre-commit', () => {
  it('lets through what holds and what is no shelter, stops what fails, and what was pushed holds there, too', () => {
    const clone = join(reports, 'grower');
    source.git('clone', '-q', '-b', 'main', bare, clone);
    const hooks = join(clone, '.git/hooks');
    mkdirSync(hooks, { recursive: true });
    copyFileSync(join(recipes, 'pre-commit'), join(hooks, 'pre-commit'));
    chmodSync(join(hooks, 'pre-commit'), 0o755);
    const commit = (message: string) => {
      execFileSync('git', ['add', '-A'], { cwd: clone });
      return spawnSync('git', ['commit', '-q', '-m', message], {
        cwd: clone,
        encoding: 'utf8',
        env: { ...environment(), TAUTLINE: tautline },
      });
    };
    writeFileSync(join(clone, 'notes.txt'), 'nothing to check');
    expect(commit('notes').status).toBe(0);
    rmSync(join(clone, 'house.shelter'));
    writeFileSync(join(clone, 'sound.shelter'), laidOut(soundText));
    expect(commit('sound').status).toBe(0);
    execFileSync('git', ['push', '-q', 'origin', 'main:grown'], { cwd: clone });
    expect(recipe('grown').status).toBe(0);
    writeFileSync(join(clone, 'sound.shelter'), laidOut(soundText).replace('13 ft by', '40 ft by'));
    const stopped = commit('far too wide');
    expect([stopped.status, stopped.stdout + stopped.stderr]).toEqual([
      1,
      expect.stringContaining('sound-arch'),
    ]);
    // Not laid out as `tautline format` does.
    writeFileSync(join(clone, 'sound.shelter'), soundText);
    expect(commit('crooked').status).not.toBe(0);
    const last = execFileSync('git', ['log', '-1', '--format=%s'], { cwd: clone, encoding: 'utf8' });
    expect(last.trim()).toBe('sound');
  }, 120_000);
});

describe('action.yml', () => {
  const action = join(recipes, 'action.yml');
  /** A checkout as the runner makes it: a clone of the bare repository at one commit. */
  const checkout = (name: string, branch: string): string => {
    const folder = join(reports, name);
    source.git('clone', '-q', '-b', branch, bare, folder);
    return folder;
  };

  it('checks and reviews a pull request: annotations, SARIF, JUnit, comment, exit code', () => {
    const folder = checkout('pull-request', 'wider');
    const ran = runAction(action, folder, { base: 'origin/main', tautline });
    expect(ran.err).not.toContain('wrong');
    expect(ran.code).toBe(1);
    const annotations = ran.out.split('\n').filter((line) => line.startsWith('::'));
    const errors = annotations.filter((line) => line.startsWith('::error file=house.shelter,line='));
    expect(errors.length).toBeGreaterThan(0);
    for (const line of annotations)
      expect(line).toMatch(
        /^::(error|warning) file=house\.shelter,line=\d+,col=\d+,.*title=[a-z-]+::house-0: /,
      );
    const sarif = JSON.parse(readFileSync(join(folder, 'tautline-reports/shelters.sarif'), 'utf8'));
    const results: { level: string; ruleId: string }[] = sarif.runs[0].results;
    expect(sarif.version).toBe('2.1.0');
    // The same findings beside the lines and in the report.
    const ids = (lines: readonly string[]) => lines.map((line) => /title=([a-z-]+)::/.exec(line)?.[1]).sort();
    const told = results.filter(({ level }) => level === 'error').map(({ ruleId }) => ruleId);
    expect(ids(errors)).toEqual(told.sort());
    const comment = readFileSync(join(folder, 'tautline-reports/review.md'), 'utf8');
    expect(comment.split('\n')[0]).toBe(commentMark);
    expect(comment).toContain('footprint: 12 ft by 20 ft → 15 ft by 20 ft');
    expect(ran.summary).toBe(comment);
    expect(readFileSync(join(folder, 'tautline-reports/junit.xml'), 'utf8')).toMatch(/failures="[1-9]/);
  }, 120_000);

  it('passes what holds, with no review where nothing is compared, and minds the level', () => {
    const folder = checkout('sound-push', 'sound');
    const ran = runAction(action, folder, { tautline, reports: 'told' });
    expect([ran.code, ran.summary, ran.out.includes('::error')]).toEqual([0, '', false]);
    expect(existsSync(join(folder, 'told/review.md'))).toBe(false);
    expect(existsSync(join(folder, 'told/shelters.sarif'))).toBe(true);
    expect(ran.out).toContain('::warning');
    expect(runAction(action, folder, { tautline, 'fail-on': 'warning' }).code).toBe(1);
  }, 120_000);

  it('ends with 2 where it cannot run', () => {
    const ran = runAction(action, checkout('no-base', 'sound'), { tautline, base: 'nowhere' });
    expect([ran.code, ran.err]).toEqual([2, expect.stringContaining("no revision 'nowhere'")]);
  }, 120_000);
});

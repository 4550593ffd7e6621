/** The recipes of packages/cli/ci, run as scripts: the check against a bare repository, the hook in a clone. */
import { execFileSync, spawnSync } from 'node:child_process';
import { chmodSync, copyFileSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { formatText as laidOut } from '../../packages/language/src/index.ts';
import { ScriptedRepository } from '../review/repository.ts';
import { buildBundle, tautlinePath } from './bundle.ts';
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
  it('lets through what holds and what is no shelter, and stops what fails', () => {
    const hooks = join(source.folder, '.git/hooks');
    mkdirSync(hooks, { recursive: true });
    copyFileSync(join(recipes, 'pre-commit'), join(hooks, 'pre-commit'));
    chmodSync(join(hooks, 'pre-commit'), 0o755);
    process.env['TAUTLINE'] = tautline;
    try {
      source.write('notes.txt', 'nothing to check');
      source.commit('notes');
      source.remove('house.shelter');
      source.write('sound.shelter', laidOut(soundText));
      source.commit('sound');
      source.change('sound.shelter', '13 ft by', '40 ft by');
      expect(() => source.commit('far too wide')).toThrow(/sound-arch/);
      expect(source.git('log', '-1', '--format=%s').trim()).toBe('sound');
    } finally {
      delete process.env['TAUTLINE'];
    }
  }, 60_000);
});

describe('action.yml', () => {
  it('names the recipe that lies beside it, and only inputs that it declares', () => {
    const text = readFileSync(join(recipes, 'action.yml'), 'utf8');
    const declared = [
      ...text.slice(text.indexOf('inputs:'), text.indexOf('runs:')).matchAll(/^ {2}([a-z-]+):/gm),
    ].map(([, name]) => name);
    const used = [...text.matchAll(/inputs\.([a-z-]+)/g)].map(([, name]) => name);
    expect(used.length).toBeGreaterThan(0);
    expect(declared).toEqual(expect.arrayContaining(used));
    expect(existsSync(join(recipes, 'check.sh'))).toBe(true);
    // Its script is one that sh can read.
    const script = text.slice(text.indexOf('run: |') + 7).replace(/^ {8}/gm, '');
    execFileSync('sh', ['-n', '-c', script]);
  });
});

import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const here = new URL('..', import.meta.url);
const manifest = JSON.parse(readFileSync(new URL('package.json', here), 'utf8'));
const { contributes } = manifest;
const client = readdirSync(new URL('src/client/', here))
  .map((name) => readFileSync(new URL(`src/client/${name}`, here), 'utf8'))
  .join('\n');

describe('the manifest', () => {
  it('contributes exactly the commands that the client registers for the palette', () => {
    const registered = [...client.matchAll(/registerCommand\(\s*'(tautline\.\w+)'/g)].map(
      (match) => match[1],
    );
    const inner = ['tautline.menu', 'tautline.reveal'];
    const contributed = contributes.commands.map((one: { command: string }) => one.command);
    expect(registered.filter((id) => !inner.includes(id ?? '')).sort()).toEqual(contributed.sort());
  });

  it('has fewer than fifteen settings, each described and with a default', () => {
    const settings = Object.values(contributes.configuration.properties) as Record<string, unknown>[];
    expect(settings.length).toBeLessThan(15);
    for (const setting of settings) {
      expect(setting['default']).not.toBeUndefined();
      expect(setting['description'] ?? setting['markdownDescription']).toMatch(/\w/);
    }
  });

  it('has a walkthrough of at most five steps', () => {
    expect(contributes.walkthroughs[0].steps.length).toBeLessThanOrEqual(5);
  });

  it('names only files that are there', () => {
    const named =
      JSON.stringify(manifest).match(/"(\.\/)?(media|syntaxes)\/[^"]+"|"\.\/language[^"]+"/g) ?? [];
    expect(named.length).toBeGreaterThan(5);
    for (const quoted of named) {
      expect(existsSync(new URL(JSON.parse(quoted), here)), quoted).toBe(true);
    }
  });

  it('works without trust and in virtual folders', () => {
    expect(manifest.capabilities.untrustedWorkspaces.supported).toBe(true);
    expect(manifest.capabilities.virtualWorkspaces).toBe(true);
    expect(manifest.browser).toBeDefined();
  });

  it('reads problems and findings of the command-line tool', () => {
    const patterns = new Map<string, Pattern[]>(
      contributes.problemPatterns.map((one: Pattern & { name: string; patterns?: Pattern[] }) => [
        one.name,
        one.patterns ?? [one],
      ]),
    );
    expect(
      read(patterns.get('tautline') ?? [], ['site.shelter:3:9  error  Expected a speed.  [wrong-kind]']),
    ).toEqual({
      file: 'site.shelter',
      line: '3',
      column: '9',
      severity: 'error',
      message: 'Expected a speed.',
      code: 'wrong-kind',
    });
    const told = [
      '  fails     pull-out  249 % used',
      '            Wind pulls the foot up.',
      '            plots/a.shelter:16:5',
    ];
    expect(read(patterns.get('tautline-fails') ?? [], told)).toEqual({
      code: 'pull-out',
      message: 'Wind pulls the foot up.',
      file: 'plots/a.shelter',
      line: '16',
      column: '5',
    });
    expect(read(patterns.get('tautline-watch') ?? [], told)).toBeUndefined();
  });
});

interface Pattern {
  readonly regexp: string;
  readonly [part: string]: string | number;
}

/** What the editor's problem matcher takes from these lines, or undefined. */
function read(patterns: readonly Pattern[], lines: readonly string[]): Record<string, string> | undefined {
  const found: Record<string, string> = {};
  for (const [index, { regexp, name: _name, ...parts }] of patterns.entries()) {
    const match = new RegExp(regexp).exec(lines[index] ?? '');
    if (match === null) {
      return undefined;
    }
    for (const [part, group] of Object.entries(parts)) {
      found[part] = match[Number(group)] ?? '';
    }
  }
  return found;
}

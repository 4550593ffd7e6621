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

  it('reads a line of the command-line tool as a problem', () => {
    const [pattern] = contributes.problemPatterns;
    const line = 'plots/stub-arch.shelter:12:5: error Stub pulls out at 31 m/s. [pull-out]';
    const match = new RegExp(pattern.regexp).exec(line);
    expect(match?.[pattern.file]).toBe('plots/stub-arch.shelter');
    expect(match?.[pattern.line]).toBe('12');
    expect(match?.[pattern.column]).toBe('5');
    expect(match?.[pattern.severity]).toBe('error');
    expect(match?.[pattern.message]).toBe('Stub pulls out at 31 m/s.');
    expect(match?.[pattern.code]).toBe('pull-out');
  });
});

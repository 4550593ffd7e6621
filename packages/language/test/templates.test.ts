import { readdirSync, readFileSync } from 'node:fs';
import { resolveRange, resolveShelter } from '@tautline/shelter';
import { describe, expect, it } from 'vitest';
// @ts-expect-error a script without types
import { templateOf } from '../scripts/templates.mjs';
import { formatText, loadWorkspace, shelterTemplates, templateFor, textOfTemplate } from '../src/index.ts';

const folder = new URL('../templates/', import.meta.url);
const site = 'site plot {\n  gust 30 m/s\n}';

describe('templates', () => {
  it('are there for each of the 24 structural kinds, in files and embedded', () => {
    expect(shelterTemplates).toHaveLength(24);
    expect(readdirSync(folder).sort()).toEqual(shelterTemplates.map(({ id }) => `${id}.snippet`).sort());
    for (const { id, snippet } of shelterTemplates)
      expect(readFileSync(new URL(`${id}.snippet`, folder), 'utf8')).toBe(snippet);
  });

  it('read without a problem as they stand, laid out and resolved', async () => {
    const files = shelterTemplates.map((template) => ({
      uri: `file:///${template.id}.shelter`,
      text: textOfTemplate(template),
    }));
    const { problems, shelters } = await loadWorkspace(files);
    expect(problems).toEqual([]);
    for (const { name, world, kind } of shelters) {
      const resolved = kind === 'range' ? resolveRange(name, world) : resolveShelter(name, world);
      expect(resolved.problems, name).toEqual([]);
    }
    for (const [index, { id, title, description }] of shelterTemplates.entries()) {
      const { uri, text } = files[index]!;
      expect(formatText(text), id).toBe(text);
      expect(shelters.find((one) => one.uri === uri)?.name).toBe(id);
      expect(title).toMatch(/^\S.+[^:.]$/);
      expect(description).toMatch(/ by /);
    }
  });

  it('take a name and a site of your own', async () => {
    const text = textOfTemplate(templateFor('row-arch')!, { name: 'lettuce', site: 'plot' });
    const { problems, shelters } = await loadWorkspace(
      [{ uri: 'file:///new/new.shelter', text: `import "plot.shelter"\n\n${text}` }],
      (uri) => (uri === 'file:///new/plot.shelter' ? site : undefined),
    );
    expect(problems).toEqual([]);
    expect(shelters.map(({ name }) => name)).toEqual(['lettuce', 'salad-rows']);
    expect(text).not.toContain('site ');
  });

  it('keep signs of the text that mean something in a snippet', () => {
    const made = templateOf(
      'a',
      '/** Costs $5: cheap \\ good. */\nshelter a on plot {\n  footprint 3 m by 9 m\n}\n',
      { name: 'plot', text: site },
    );
    expect(textOfTemplate(made)).toContain('Costs $5: cheap \\ good.');
  });
});

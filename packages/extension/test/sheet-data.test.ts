import { readdirSync, readFileSync } from 'node:fs';
import { evaluate } from '@tautline/checks';
import { loadWorkspace } from '@tautline/language';
import type { PreviewShelter } from '@tautline/language/protocol';
import { resolveShelter } from '@tautline/shelter';
import { describe, expect, it } from 'vitest';
import { partOf } from '../src/preview/parts.ts';
import { sheetData } from '../src/server/sheet-data.ts';

const folder = new URL('../../../examples/', import.meta.url);
const names = readdirSync(folder).filter((name) => name.endsWith('.shelter'));

async function sheetsOf(name: string): Promise<{ text: string; sheets: PreviewShelter[] }> {
  const text = readFileSync(new URL(name, folder), 'utf8');
  const uri = `file:///growers/${name}`;
  const workspace = await loadWorkspace([{ uri, text }], (wanted) =>
    readFileSync(new URL(wanted.split('/').at(-1) ?? '', folder), 'utf8'),
  );
  const placeOf: Parameters<typeof sheetData>[0]['placeOf'] = (origin) => {
    const place = workspace.placeOf(origin);
    return place && { uri: place.uri, range: { start: place.from, end: place.to } };
  };
  const sheets = workspace.shelters
    .filter(({ kind }) => kind !== 'range')
    .map((loaded) => {
      const { shelter, problems } = resolveShelter(loaded.name, loaded.world);
      expect(shelter, problems.map((problem) => problem.message).join('; ')).toBeDefined();
      const range = placeOf(loaded.origin)?.range;
      return sheetData({
        name: loaded.name,
        title: loaded.title,
        uri,
        range: range ?? { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } },
        evaluation: evaluate(shelter!),
        system: 'metric',
        currency: '',
        placeOf,
      });
    });
  return { text, sheets };
}

describe('the sheet of an example', () => {
  it.each(['stub-arch.shelter', 'cable-house.shelter', 'timber-gable-flawed.shelter'])(
    'draws %s with every part on a line of the text',
    async (name) => {
      const { text, sheets } = await sheetsOf(name);
      expect(sheets.length).toBeGreaterThan(0);
      const lines = text.split('\n');
      for (const sheet of sheets) {
        expect(sheet.drawings.map(({ view }) => view)).toEqual(['section', 'plan', 'side', 'setting-out']);
        expect(sheet.parts.length).toBeGreaterThan(2);
        for (const part of sheet.parts) {
          expect(part.place.range.start.line, part.id).toBeLessThan(lines.length);
        }
        // What is drawn as a part can be clicked: its id leads to a line.
        const section = sheet.drawings[0]?.svg ?? '';
        const drawn = [...section.matchAll(/data-part="([^"]+)" data-kind="part"/g)].map(
          (match) => match[1] ?? '',
        );
        const clickable = drawn.filter((id) => partOf(sheet, id) !== undefined);
        expect(clickable.length).toBeGreaterThan(1);
        expect(sheet.materials.length).toBeGreaterThan(3);
        expect(sheet.notChecked.length).toBeGreaterThan(0);
        expect(JSON.stringify(sheet)).not.toMatch(/NaN|undefined|Infinity/);
      }
    },
  );

  it('shows the flaws of a flawed example where they were written', async () => {
    expect(names).toContain('stub-arch-flawed.shelter');
    const { text, sheets } = await sheetsOf('stub-arch-flawed.shelter');
    const fails = sheets[0]?.findings.filter((finding) => finding.verdict === 'fails') ?? [];
    expect(fails.length).toBeGreaterThan(0);
    for (const finding of fails) {
      expect(text.split('\n')[finding.place.range.start.line]?.trim()).not.toBe('');
    }
  });
});

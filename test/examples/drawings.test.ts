import { views } from '@tautline/drawing';
import { resolveShelter } from '@tautline/shelter';
import { describe, expect, it } from 'vitest';
import { load, shelterFiles } from '../../packages/cli/src/files.ts';
import { overlappingTexts } from '../../packages/drawing/test/overlapping-texts.ts';
import { textsOverLines } from '../../packages/drawing/test/texts-over-lines.ts';

const root = new URL('../../examples', import.meta.url).pathname;
const { shelters } = await load(await shelterFiles([root]));

describe('every drawing of the examples', () => {
  for (const { kind, name, world } of shelters) {
    if (kind === 'range') continue;
    it(`keeps its words off one another and off what is built: ${name}`, () => {
      const { shelter } = resolveShelter(name, world);
      if (!shelter) throw new Error(`${name} does not resolve`);
      const problems = Object.values(views).flatMap((view) => {
        const drawing = view(shelter, { system: 'metric' });
        return drawing
          ? [...overlappingTexts(drawing), ...textsOverLines(drawing)].map(
              (what) => `${drawing.view}: ${what}`,
            )
          : [];
      });
      expect(problems).toEqual([]);
    });
  }
});

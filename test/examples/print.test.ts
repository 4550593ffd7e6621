/**
 * The book as paper: printed by a browser, every word inside the margins of its page. Runs where Chromium and
 * pdftotext are installed, and is skipped elsewhere.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { run } from '@tautline/cli';
import { afterAll, describe, expect, it } from 'vitest';

function there(command: string, flag: string): boolean {
  try {
    execFileSync(command, [flag], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

const canPrint = there('chromium', '--version') && there('pdftotext', '-v');
const folder = mkdtempSync(join(tmpdir(), 'print-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Word {
  readonly page: number;
  readonly text: string;
}

/** Words that stand nearer to the edge of their page than 12 mm at the sides or 6 mm at top and bottom. */
function outside(boxes: string): { readonly pages: number; readonly words: readonly Word[] } {
  const words: Word[] = [];
  let pages = 0;
  for (const [, width, height, body] of boxes.matchAll(
    /<page width="([\d.]+)" height="([\d.]+)">(.*?)<\/page>/gs,
  )) {
    pages += 1;
    for (const [, x0, y0, x1, y1, text] of (body ?? '').matchAll(
      /xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">(.*?)<\/word>/g,
    )) {
      const side = Math.min(Number(x0), Number(width) - Number(x1));
      const end = Math.min(Number(y0), Number(height) - Number(y1));
      if (side < 34 || end < 17) words.push({ page: pages, text: text ?? '' });
    }
  }
  return { pages, words };
}

describe.skipIf(!canPrint)('the printed book', () => {
  it.each([
    ['conduit-arch', 'metric', 'a4', 842],
    ['cable-house', 'us', 'letter', 792],
  ])(
    'of %s in %s on %s keeps every word on its page',
    async (name, units, paper, tall) => {
      const out = join(folder, name);
      const file = new URL(`../../examples/${name}.shelter`, import.meta.url).pathname;
      const words = [
        'book',
        file,
        '--out',
        out,
        '--on',
        '2026-11-25',
        '--units',
        units,
        '--paper',
        paper,
        '--pdf',
      ];
      expect(await run(words, { out: () => {}, err: () => {} })).toBe(0);
      execFileSync('pdftotext', ['-bbox', join(out, 'book.pdf'), join(out, 'words.html')]);
      const boxes = readFileSync(join(out, 'words.html'), 'utf8');
      const { pages, words: beyond } = outside(boxes);
      expect(beyond).toEqual([]);
      expect(pages).toBeGreaterThan(12);
      // Upright pages of the paper asked for, and drawings that lie on their side.
      const heights = new Set(
        [...boxes.matchAll(/<page width="[\d.]+" height="([\d.]+)"/g)].map((one) =>
          Math.round(Number(one[1])),
        ),
      );
      expect(heights).toContain(tall);
      expect(heights.size).toBe(2);
    },
    120_000,
  );
});

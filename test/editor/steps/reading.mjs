import assert from 'node:assert/strict';
import { columnOf, example, flawed, itemOn, lineOf } from '../places.mjs';

const squiggles = '.editor-instance .view-overlays .cdr:is(.squiggly-error, .squiggly-warning)';

export const reading = [
  [
    'open a shelter file and see it coloured',
    async (window) => {
      await window.openFile(example);
      await window.until('coloured words', async () => {
        const classes = await window.page.$$eval('.view-lines .view-line span span', (spans) => [
          ...new Set(spans.map((span) => span.className)),
        ]);
        return classes.length > 2;
      });
      assert.equal(await window.page.locator('#status\\.editor\\.mode').textContent(), 'Shelter');
    },
  ],
  [
    'see squiggles under what would fail',
    async (window) => {
      await window.openFile(flawed);
      await window.page.locator(squiggles).first().waitFor({ state: 'attached', timeout: 30_000 });
    },
  ],
  [
    'find the findings in the list of problems',
    async (window) => {
      await window.page.keyboard.press('Control+Shift+M');
      const rows = window.page.locator('.markers-panel .monaco-list-row');
      await rows.first().waitFor();
      const text = await window.until('a finding of our own in the list', async () => {
        const all = (await rows.allTextContents()).join('\n');
        return /tautline/i.test(all) && all;
      });
      assert.match(text, /stub-arch-flawed/);
    },
  ],
  [
    'hover an item and read about it',
    async (window, workbench) => {
      const text = await workbench.read(flawed);
      const line = lineOf(text, 'of ');
      await window.goTo(line, columnOf(text, line, itemOn(text, line)));
      await window.page.keyboard.press('Control+K');
      await window.page.keyboard.press('Control+I');
      const hover = window.page.locator('.monaco-hover .hover-contents');
      await hover.first().waitFor();
      const said = (await hover.allTextContents()).join('\n');
      assert.match(said, /mm/, 'metric');
      assert.match(said, / in\b|"/, 'and inches');
      await window.shot('hover');
      await window.page.keyboard.press('Escape');
    },
  ],
  [
    'complete a fact and an item',
    async (window, workbench) => {
      const text = await workbench.read(flawed);
      await window.goTo(lineOf(text, 'crop'), 3);
      await window.page.keyboard.press('End');
      await window.page.keyboard.press('Enter');
      await window.page.keyboard.type('gu');
      await window.page.keyboard.press('Control+Space');
      const rows = window.page.locator('.suggest-widget.visible .monaco-list-row');
      await window.until('words that can be said here', async () => {
        return (await rows.allTextContents()).some((row) => /guy|gutter/.test(row));
      });
      await window.shot('complete');
      await window.page.keyboard.press('Escape');
      await window.page.keyboard.press('Backspace');
      await window.page.keyboard.press('Backspace');
      await window.page.keyboard.type('purlins 1 of pvc40-2');
      await window.page.keyboard.press('Control+Space');
      await window.until('items of the catalogue', async () => {
        return (await rows.allTextContents()).some((row) => row.includes('pvc40-25'));
      });
      await window.page.keyboard.press('Escape');
      await window.restore();
    },
  ],
  [
    'apply a quick fix and see its finding go',
    async (window) => {
      await window.openFile(flawed);
      await window.focusEditor();
      const problems = window.page.locator('.markers-panel .monaco-list-row .codicon-light-bulb');
      const rows = window.page.locator('.markers-panel .monaco-list-row');
      const rowsOf = async (word) =>
        (await rows.allTextContents()).filter((row) => row.toLowerCase().includes(word.toLowerCase()));
      const count = async () => (await rowsOf('tautline')).length;
      /** Its first words tell a finding from others of the same check. */
      const said = (row, text) => row.replaceAll('\u00a0', ' ').includes(text.slice(0, 24));
      const before = await count();
      assert.ok(before > 0);
      const applied = await window.applyFirstFix(before + 2);
      assert.ok(applied, `one of ${before} findings offers a fix (${await problems.count()} bulbs)`);
      await window.shot('fixed');
      const check = /tautline\(?([\w-]+)\)?$/i.exec(applied.said.trim())?.[1];
      assert.ok(check, `the problem names its check: ${applied.said}`);
      const left = async () => (await rowsOf(check)).filter((row) => said(row, applied.said)).length;
      await window.until('this finding gone', async () => (await left()) === 0, 30_000);
      await window.restore();
      await window.until('the findings as they were', async () => (await count()) === before, 30_000);
    },
  ],
  [
    'go from an item to the catalogue, which cannot be written',
    async (window, workbench) => {
      const text = await workbench.read(flawed);
      const line = lineOf(text, 'of ');
      await window.goTo(line, columnOf(text, line, itemOn(text, line)));
      await window.page.keyboard.press('F12');
      await window.until('the item in the catalogue', async () => {
        const shown = await window.page.locator('.editor-instance .view-lines').first().textContent();
        return shown.includes(itemOn(text, line)) && /outside/.test(shown);
      });
      const title = await window.page.locator('.tab.active').first().getAttribute('aria-label');
      await window.page.keyboard.type('x');
      await window.page.locator('.monaco-editor-overlaymessage').waitFor();
      await window.shot('catalogue');
      assert.ok(!title?.includes(flawed), title ?? '');
    },
  ],
];

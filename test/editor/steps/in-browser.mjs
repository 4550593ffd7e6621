import assert from 'node:assert/strict';
import { example, flawed, lineOf } from '../places.mjs';

const squiggle = '.editor-instance .view-overlays .cdr:is(.squiggly-error, .squiggly-warning)';

/** The same extension as a web extension: client and server are workers of the browser. */
export const inBrowser = [
  [
    'no process is started, and findings come',
    async (window, workbench) => {
      await window.openFile(flawed);
      await window.page.locator(squiggle).first().waitFor({ state: 'attached', timeout: 30_000 });
      assert.equal(await workbench.languageServer(), undefined);
    },
  ],
  [
    'the drawing sheet is drawn and follows the cursor',
    async (window, workbench) => {
      const text = await workbench.read(example);
      await window.openFile(example);
      const frame = await window.openSheet();
      await frame.locator('.paper svg').waitFor({ timeout: 30_000 });
      await window.goTo(lineOf(text, 'bows'), 5);
      await frame.locator('.paper [data-part="bows"].marked').first().waitFor({ state: 'attached' });
    },
  ],
];

/** The same in a workspace of another scheme: every text comes from the editor, and so do imports. */
export const inMemory = [
  [
    'findings come, and what is imported is found',
    async (window, workbench) => {
      await window.openListed(flawed);
      await window.page.locator(squiggle).first().waitFor({ state: 'attached', timeout: 30_000 });
      assert.equal(await workbench.languageServer(), undefined);
      await window.page.keyboard.press('Control+Shift+M');
      const rows = window.page.locator('.markers-panel .monaco-list-row');
      const all = await window.until('findings of checks', async () => {
        const texts = await rows.allTextContents();
        return texts.some((row) => row.includes('over-span')) && texts;
      });
      assert.ok(!all.some((row) => /unknown-name|import/.test(row)), all.join('\n'));
      await window.page.keyboard.press('Control+J');
    },
  ],
  [
    'the sheet is drawn, and a fix goes into the text',
    async (window, workbench) => {
      const text = await workbench.read(flawed);
      const frame = await window.openSheet();
      await frame.locator('.paper svg').waitFor({ timeout: 30_000 });
      await window.goTo(lineOf(text, 'bows'), 5);
      await frame.locator('.paper [data-part="bows"].marked').first().waitFor({ state: 'attached' });
      assert.match(await window.takeFix(/% used after/), /used after/);
      await window.restore();
    },
  ],
];

import assert from 'node:assert/strict';
import { example, flawed, lineOf } from '../places.mjs';

/** The same extension as a web extension: client and server are workers of the browser. */
export const inBrowser = [
  [
    'no process is started, and findings come',
    async (window, workbench) => {
      await window.openFile(flawed);
      await window.page
        .locator('.editor-instance .view-overlays .cdr:is(.squiggly-error, .squiggly-warning)')
        .first()
        .waitFor({ state: 'attached', timeout: 30_000 });
      assert.equal(await workbench.languageServer(), undefined);
    },
  ],
  [
    'the drawing sheet is drawn and follows the cursor',
    async (window, workbench) => {
      const text = await workbench.read(example);
      await window.openFile(example);
      await window.command('Tautline: Open Drawing Sheet Beside');
      const frame = await window.sheet();
      await frame.locator('.paper svg').waitFor({ timeout: 30_000 });
      await window.goTo(lineOf(text, 'bows'), 5);
      await frame.locator('.paper [data-part="bows"].marked').first().waitFor({ state: 'attached' });
    },
  ],
];

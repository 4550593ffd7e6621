import assert from 'node:assert/strict';
import { example } from '../places.mjs';

const editorText = async (window) =>
  (await window.page.locator('.editor-instance .view-lines').first().textContent()).replaceAll('\u00a0', ' ');

export const commands = [
  [
    'show the calculation behind a finding',
    async (window) => {
      await window.openFile(example);
      const frame = await window.sheet();
      await frame.locator('[role=tab]', { hasText: 'Findings' }).click();
      await frame.locator('.finding .link', { hasText: 'calculation' }).first().click();
      await window.until('a page with formula and source', async () => {
        for (const page of window.page.frames()) {
          const text = await page
            .locator('body')
            .textContent({ timeout: 500 })
            .catch(() => '');
          if (/Source:/.test(text) && /% used/.test(text) && !/role="tablist"/.test(text)) {
            return true;
          }
        }
        return false;
      });
      await window.shot('calculation');
      await window.focusEditor();
      await window.command('View: Close All Editors');
    },
  ],
  [
    'write assumed values into the text',
    async (window) => {
      await window.openFile(example);
      await window.goTo(6, 3);
      await window.command('Tautline: Write Assumed Values into the Text');
      await window.page.locator('.tab.active.dirty').waitFor();
      await window.shot('assumed');
      await window.restore();
    },
  ],
  [
    'start a new shelter from a kind, and see it drawn',
    async (window) => {
      await window.command('View: Close All Editors');
      await window.command('Tautline: New Shelter');
      const rows = window.page.locator('.quick-input-list .monaco-list-row');
      await window.until('kinds to pick from', async () => (await rows.count()) > 4);
      await window.shot('wizard');
      await window.page.keyboard.press('Enter');
      await window.until('the text of the kind', async () => /shelter /.test(await editorText(window)));
      const frame = await window.sheet();
      await frame.locator('.paper svg').waitFor({ timeout: 30_000 });
      assert.equal(await frame.locator('.stale').count(), 0);
    },
  ],
];

import assert from 'node:assert/strict';
import { columnOf, example, itemOn, lineOf } from '../places.mjs';

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
    'check the whole house, and read how it stands',
    async (window) => {
      await window.openFile(example);
      await window.command('Tautline: Check the Whole House');
      const said = await window.message(/stub-arch: .*whole house/i, 60_000);
      assert.match(said, /whole house/i);
      await window.until('the status of the whole house', async () =>
        /whole house in space/i.test(
          (await window.page.locator('[id*="tautline.status"]').first().getAttribute('aria-label')) ?? '',
        ),
      );
      await window.shot('whole-house');
      await window.command('Notifications: Clear All Notifications');
    },
  ],
  [
    'use other stock where an item is named, with what it does in the title',
    async (window, workbench) => {
      const text = await workbench.read(example);
      const line = lineOf(text, 'of ');
      const from = itemOn(text, line);
      await window.goTo(line, columnOf(text, line, from));
      const list = window.page.locator('.context-view .action-widget .monaco-list-row.action');
      const offered = await window.until('other stock', async () => {
        await window.page.keyboard.press('Control+.');
        await list.first().waitFor({ timeout: 4000 });
        const titles = await list.allTextContents();
        const at = titles.findIndex((title) => title.includes(`for \`${from}\``));
        return at < 0 ? undefined : { at, title: titles[at] };
      });
      assert.match(offered.title, /(goes?|no finding goes), (nothing new|new: |now failing: )/);
      await window.shot('other-stock');
      for (let down = 0; down < offered.at; down += 1) {
        await window.page.keyboard.press('ArrowDown');
      }
      await window.page.keyboard.press('Enter');
      await window.page.locator('.tab.active.dirty').waitFor();
    },
  ],
  [
    'see what that changes since the last commit',
    async (window) => {
      await window.command('Tautline: Show What Changed since the Last Commit');
      const { text } = await window.frameWith(/Shelter review/, 60_000);
      assert.match(text, /stub-arch/);
      assert.match(text, /the last commit, [0-9a-f]{8}/);
      assert.match(text, /bows › of/);
      await window.shot('changes');
      // Neither saved text nor page may get lost when the window is loaded again.
      await window.focusEditor();
      await window.reload();
      const again = await window.frameWith(/Shelter review/, 60_000);
      assert.match(again.text, /the last commit, [0-9a-f]{8}/);
      await window.openFile(example);
      await window.focusEditor();
      await window.restore();
      await window.command('View: Close Other Editors in Group');
    },
  ],
  [
    'explore what may vary, and write one of the variants',
    async (window, workbench) => {
      const text = await workbench.read(example);
      const line = lineOf(text, 'footprint');
      await window.goTo(line, text.split('\n')[line - 1].length + 1);
      await window.page.keyboard.insertText('\nvary bows spaced from 12 in to 24 in by 3 in');
      await window.command('Tautline: Explore What May Vary');
      await window.message(/5 variants of stub-arch/, 90_000);
      const { text: page } = await window.frameWith(/Variants of stub-arch/);
      assert.match(page, /Held fixed/);
      await window.shot('variants');
      await window.page.locator('.notification-toast .monaco-button', { hasText: 'Write a Variant' }).click();
      const rows = window.page.locator('.quick-input-list .monaco-list-row');
      await window.until('variants to pick from', async () => (await rows.count()) >= 5);
      await window.shot('pick-variant');
      await window.page.keyboard.press('Enter');
      // The first of them is not the spacing that stands there.
      await window.until(
        'the variant in the text',
        async () => !(await window.text()).includes('bows spaced 20 in'),
      );
      assert.match(await window.text(), /bows spaced \d/);
      await window.focusEditor();
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
      await window.until('the text of the kind', async () => /shelter /.test(await window.text()));
      const frame = await window.sheet();
      await frame.locator('.paper svg').waitFor({ timeout: 30_000 });
      assert.equal(await frame.locator('.stale').count(), 0);
      await window.shot('new-shelter');
      await window.focusEditor();
      await window.command('View: Revert and Close Editor');
    },
  ],
];

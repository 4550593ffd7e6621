import assert from 'node:assert/strict';
import { example } from '../places.mjs';

/** Where the focus is in the sheet, how it shows, and what a screen reader calls it. */
const focused = (frame) =>
  frame.evaluate(() => {
    const at = document.activeElement;
    if (at === null || at === document.body) {
      return undefined;
    }
    const { outlineStyle, outlineWidth } = getComputedStyle(at);
    return {
      key: at.getAttribute('data-key') ?? at.getAttribute('data-part-button') ?? at.className ?? at.tagName,
      name: (at.getAttribute('aria-label') ?? at.textContent ?? '').trim(),
      shows: outlineStyle !== 'none' && Number.parseFloat(outlineWidth) > 0,
    };
  });

/** The drawing sheet without a mouse, and without eyes. */
export const keyboard = [
  [
    'go through the whole sheet with the tab key and always see where one is',
    async (window) => {
      await window.command('View: Close All Editors');
      if (await window.page.locator('.part.panel').isVisible()) {
        await window.page.keyboard.press('Control+J');
      }
      await window.openFile(example);
      const frame = await window.openSheet();
      await frame.locator('.paper svg').waitFor();
      await frame.locator('[role=tab]', { hasText: 'Section' }).click();
      await frame.locator('[data-key=overlay]').selectOption('none');
      await frame.locator('[data-key=save]').focus();
      await window.page.keyboard.press('Shift+Tab');
      const order = [];
      for (let step = 0; step < 40; step += 1) {
        await window.page.keyboard.press('Tab');
        const now = await focused(frame);
        if (now === undefined || (order.length > 0 && now.key === order[0].key)) {
          break;
        }
        order.push(now);
      }
      const keys = order.map(({ key }) => key);
      for (const wanted of ['save', 'tab-section', 'overlay', 'paper', 'bows', 'tally']) {
        assert.ok(keys.includes(wanted), `${wanted} among ${keys.join(', ')}`);
      }
      assert.ok(keys.indexOf('tab-section') < keys.indexOf('bows'), 'from the top down');
      for (const { key, name, shows } of order) {
        assert.ok(shows, `one sees that ${key} has the focus`);
        assert.notEqual(name, '', `${key} has a name`);
      }
    },
  ],
  [
    'land on the line of a part, and come back, without a mouse',
    async (window) => {
      const frame = await window.sheet();
      await frame.locator('[data-part-button="bows"]').focus();
      await window.page.keyboard.press('Enter');
      await window.until('the cursor on the line of the bows', async () => (await window.cursor())?.line > 1);
      // The cursor may have stood there before: the text has it when the sheet has lost the focus.
      await window.until(
        'the focus in the text',
        async () => !(await frame.evaluate(() => document.hasFocus())),
      );
      await window.page.keyboard.press('Control+2');
      await window.until('the focus in the sheet again', async () =>
        frame.evaluate(() => document.hasFocus()),
      );
    },
  ],
  [
    'hear what the sheet is made of: every part of it has a role and a name',
    async (window) => {
      const frame = await window.sheet();
      const said = await frame.locator('#sheet').ariaSnapshot();
      for (const wanted of [
        /tablist "Views"/,
        /tab "Section" \[selected\]/,
        /tabpanel "Section"/,
        /combobox "Show"/,
        /img "stub-arch: section.*"/i,
        /list "Parts in this drawing"/,
        /button ".*Bows: \d+ of PVC pipe.*to watch"/,
        /button "Larger"/,
        /button "\d+ fail · \d+ to watch · \d+ not checked"/,
      ]) {
        assert.match(said, wanted);
      }
      assert.doesNotMatch(
        said,
        /- (button|tab|combobox|slider|img|link)( \[|:|$)/m,
        'nothing without a name',
      );
    },
  ],
  [
    'read it where colours are forced, with no part told by colour alone',
    async (window) => {
      await window.page.emulateMedia({ forcedColors: 'active' });
      await window.page.waitForTimeout(400);
      await window.shot('forced-colours');
      const frame = await window.sheet();
      await frame.locator('.parts .flag', { hasText: '!' }).first().waitFor();
      await window.page.emulateMedia({ forcedColors: 'none' });
    },
  ],
];

import assert from 'node:assert/strict';

export const sheet = [
  [
    'open the drawing sheet beside the text',
    async (window) => {
      await window.goTo(11, 5);
      await window.command('Tautline: Open Drawing Sheet Beside');
      const frame = await window.sheet();
      await frame.locator('.paper svg').waitFor();
      const tabs = await frame.locator('[role=tab]').allInnerTexts();
      assert.ok(tabs.length >= 4, `tabs: ${tabs.join(', ')}`);
    },
  ],
];

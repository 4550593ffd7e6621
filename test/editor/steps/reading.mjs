import assert from 'node:assert/strict';
import { example } from './sheet.mjs';

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
      const mode = await window.page.locator('#status\\.editor\\.mode').textContent();
      assert.equal(mode, 'Shelter');
    },
  ],
];

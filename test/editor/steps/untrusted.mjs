import assert from 'node:assert/strict';
import { flawed } from '../places.mjs';

/** A spec cannot run anything, so it is read, checked and drawn before anybody trusts the folder. */
export const untrusted = [
  [
    'findings come and the sheet is drawn in restricted mode',
    async (window) => {
      await window.page.locator('.statusbar-item', { hasText: 'Restricted Mode' }).waitFor();
      await window.openFile(flawed);
      await window.page
        .locator('.editor-instance .view-overlays .cdr:is(.squiggly-error, .squiggly-warning)')
        .first()
        .waitFor({ state: 'attached', timeout: 30_000 });
      const frame = await window.openSheet();
      await frame.locator('.paper svg').waitFor({ timeout: 30_000 });
      assert.equal(await frame.locator('.stale').count(), 0);
    },
  ],
];

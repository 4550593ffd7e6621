import assert from 'node:assert/strict';
import { lineOf } from '../places.mjs';

const place = 'lower-terrace.shelter';
/** Of the posts of the ginger house. */
const foot = 'foot concrete { deep 1 m';
const houses = [
  'plug-house',
  'long-plug-house',
  'ginger-house',
  'ginger-house-new-film',
  'flower-house',
  'salad-row',
  'salad-block',
  'packing-corner',
];

const choice = (frame) => frame.locator('select[aria-label="Shelter"]');
/** Waits until the sheet shows a house, with nothing about it old. */
const shows = async (window, frame, name) => {
  await window.until(`the sheet of ${name}`, async () => {
    const drawn = await frame.locator('.paper svg').first().getAttribute('aria-label');
    return drawn?.startsWith(`${name}:`) && (await frame.locator('.stale').count()) === 0;
  });
  assert.equal(await choice(frame).inputValue(), name);
};

/** A file that describes a whole place: one sheet, turned to one house after the other. */
export const several = [
  [
    'turn the sheet from house to house by its list and by the cursor',
    async (window, workbench) => {
      const text = await workbench.read(place);
      await window.command('View: Close All Editors');
      await window.openFile(place);
      const frame = await window.openSheet();
      await shows(window, frame, 'plug-house');
      assert.deepEqual((await choice(frame).locator('option').allTextContents()).sort(), [...houses].sort());
      await window.shot('several-first');
      await choice(frame).selectOption('packing-corner');
      await shows(window, frame, 'packing-corner');
      await window.shot('several-chosen');
      await window.goTo(lineOf(text, foot), 5);
      await shows(window, frame, 'ginger-house');
      await frame.locator('.paper .marked').first().waitFor({ state: 'attached' });
      await window.shot('several-by-cursor');
    },
  ],
  [
    'stay at the house that was chosen while another is edited and fails',
    async (window, workbench) => {
      const text = await workbench.read(place);
      const frame = await window.sheet();
      await window.goTo(lineOf(text, foot), 5);
      await choice(frame).selectOption('flower-house');
      await shows(window, frame, 'flower-house');
      await window.focusEditor();
      await window.page.keyboard.press('Shift+End');
      await window.page.keyboard.type('foot concrete { deep 0.4 m; across 0.3 m }');
      await window.until(
        'a finding of the foot',
        async () => (await window.page.locator('.squiggly-error').count()) > 0,
      );
      assert.equal(await choice(frame).inputValue(), 'flower-house');
      await choice(frame).selectOption('ginger-house');
      await frame.locator('.tally .fails', { hasText: /[1-9] fail/ }).waitFor({ timeout: 20_000 });
      await shows(window, frame, 'ginger-house');
      await window.shot('several-edited');
      await window.restore();
      await frame.locator('.tally', { hasText: '0 fail' }).waitFor({ timeout: 20_000 });
    },
  ],
  [
    'lose the name of the house on show for a moment, and keep its last good drawing',
    async (window, workbench) => {
      const text = await workbench.read(place);
      const frame = await window.sheet();
      await choice(frame).selectOption('flower-house');
      await shows(window, frame, 'flower-house');
      await window.goTo(lineOf(text, 'shelter flower-house'), 9);
      await window.page.keyboard.type('"');
      await frame.locator('.stale').first().waitFor();
      assert.equal(await choice(frame).inputValue(), 'flower-house');
      await window.shot('several-broken');
      await window.restore();
      await shows(window, frame, 'flower-house');
    },
  ],
];

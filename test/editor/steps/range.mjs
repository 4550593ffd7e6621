import assert from 'node:assert/strict';
import { columnOf, example, lineOf } from '../places.mjs';

const rows = 'row-arch.shelter';
const tab = (frame, title) => frame.locator('[role=tab]', { hasText: title });

/** The page of the sheet of one file, where sheets of several are open. */
const sheetOf = (window, file) =>
  window.until(`the sheet of ${file}`, async () => {
    for (const frame of window.page.frames()) {
      const title = await frame
        .locator('.title-block dt')
        .first()
        .textContent({ timeout: 300 })
        .catch(() => '');
      if (title === file) {
        return frame;
      }
    }
    return undefined;
  });

/** Shelters side by side, and two files at once. */
export const range = [
  [
    'stand in a range and see its plan and what all of it takes',
    async (window, workbench) => {
      const text = await workbench.read(rows);
      await window.command('View: Close All Editors');
      await window.openFile(rows);
      const frame = await window.openSheet();
      await tab(frame, 'Section').waitFor();
      await window.goTo(lineOf(text, 'gap'), 3);
      await tab(frame, 'Section').waitFor({ state: 'detached' });
      assert.deepEqual(await frame.locator('[role=tab]').allTextContents(), [
        'Plan',
        'Findings',
        'Materials',
      ]);
      await frame.locator('.paper svg', { hasText: '6  row-arch' }).waitFor();
      await window.shot('range-plan');
      await window.goTo(lineOf(text, 'tied'), 3);
      await frame.locator('.paper [data-part="tied"].marked').first().waitFor({ state: 'attached' });
      await tab(frame, 'Materials').click();
      await frame.locator('tfoot td', { hasText: /^\d+\.\d\d XTS$/ }).waitFor();
      await window.shot('range-materials');
    },
  ],
  [
    'save the materials of the range as a list',
    async (window, workbench) => {
      const frame = await window.sheet();
      await frame.locator('[data-key=save]').click();
      await window.pick('Materials as CSV');
      const name = await window.saveAs('.csv');
      const list = await window.until('the file', () => workbench.read(name));
      assert.equal(name, 'salad-rows-materials.csv');
      assert.ok(list.split('\n').length > 5, list);
    },
  ],
  [
    'see a gap that is too narrow, and take the gap that was worked out',
    async (window, workbench) => {
      const text = await workbench.read(rows);
      const line = lineOf(text, 'gap');
      await window.goTo(line, columnOf(text, line, '1 m') - 2);
      await window.page.keyboard.press('Shift+End');
      await window.page.keyboard.type('0.3 m');
      const frame = await window.sheet();
      await frame.locator('.tally .near', { hasText: /[1-9] to watch/ }).waitFor({ timeout: 20_000 });
      await tab(frame, 'Findings').click();
      await frame.locator('.finding', { hasText: 'neighbour-gap' }).first().waitFor();
      await window.shot('range-fails');
      await window.goTo(lineOf(text, 'range'), 2);
      const fix = await window.takeFix(/^Keep .* between neighbours/);
      assert.match(fix, /% used after/);
      await frame.locator('.tally', { hasText: '0 fail' }).waitFor({ timeout: 20_000 });
      await window.restore();
    },
  ],
  [
    'have the sheets of two files open, each with its own',
    async (window, workbench) => {
      await window.focusEditor();
      await window.openFile(example);
      await window.command('Tautline: Open Drawing Sheet Beside');
      const other = await sheetOf(window, example);
      await other.locator('[role=tab]', { hasText: 'Section' }).click();
      await other.locator('.paper svg').waitFor();
      const text = await workbench.read(example);
      await window.goTo(lineOf(text, 'bows'), 5);
      await other.locator('.paper [data-part="bows"].marked').first().waitFor({ state: 'attached' });
      await window.shot('two-files');
      await window.command('View: Close All Editors');
    },
  ],
];

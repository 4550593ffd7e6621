import assert from 'node:assert/strict';
import { example, lineOf } from '../places.mjs';

const tab = (frame, title) => frame.locator('[role=tab]', { hasText: title });

/** What is worked out only when it is looked at. */
export const results = [
  [
    'draw results over the section under a chosen load',
    async (window) => {
      const frame = await window.sheet();
      await tab(frame, 'Section').click();
      await frame.locator('[data-key=overlay]').selectOption('use');
      await frame.locator('.note', { hasText: 'Greatest share of a limit' }).waitFor();
      assert.match(await frame.locator('.paper svg').textContent(), /\d+ %/);
      await window.shot('overlay-use');
      await frame.locator('[data-key=overlay]').selectOption('deflected');
      await frame.locator('.note', { hasText: 'Greatest movement' }).waitFor();
      const before = await frame.locator('.note').first().textContent();
      await window.shot('overlay-movement');
      // By keyboard: the next load in the list.
      await frame.locator('[data-key=load]').focus();
      const chosen = await frame.locator('[data-key=load]').inputValue();
      await frame.locator('[data-key=load]').press('Home');
      await frame.locator('[data-key=load]').press('Enter');
      await window.until('another load', async () => {
        const text = await frame.locator('.note').first().textContent();
        return text !== before && (await frame.locator('[data-key=load]').inputValue()) !== chosen;
      });
      await frame.locator('[data-key=overlay]').selectOption('bending');
      await frame.locator('.paper .tl-moment').first().waitFor({ state: 'attached' });
      await window.shot('overlay-bending');
      await frame.locator('[data-key=overlay]').selectOption('water');
      await frame.locator('.note', { hasText: /water/i }).waitFor();
      await window.shot('overlay-water');
      await frame.locator('[data-key=overlay]').selectOption('none');
      // Nothing of the results is left behind.
      await frame.locator('.paper .tl-water').first().waitFor({ state: 'detached' });
    },
  ],
  [
    'read which gust brings each part to its limit',
    async (window) => {
      const frame = await window.sheet();
      await tab(frame, 'Gusts').click();
      await frame.locator('.paper svg', { hasText: 'first to fail' }).waitFor({ timeout: 20_000 });
      assert.match(await frame.locator('.paper svg').textContent(), /film-off gust \d/);
      assert.match(await frame.locator('.title-block').textContent(), /First to fail/);
    },
  ],
  [
    'turn the house in space by keyboard, and land on the line of what is clicked',
    async (window, workbench) => {
      const text = await workbench.read(example);
      const frame = await window.sheet();
      await tab(frame, '3D').click();
      await frame.locator('.space canvas').waitFor({ timeout: 20_000 });
      await window.page.waitForTimeout(600);
      const look = () => frame.locator('.space canvas').screenshot();
      const before = await look();
      await window.shot('space');
      await frame.locator('.space').focus();
      for (let step = 0; step < 4; step += 1) {
        await window.page.keyboard.press('ArrowRight');
      }
      await window.page.waitForTimeout(400);
      assert.notDeepEqual(await look(), before, 'the arrow keys turn the house');
      await window.goTo(lineOf(text, 'bows'), 5);
      await window.page.waitForTimeout(400);
      await window.shot('space-marked');
      await window.goTo(1);
      const box = await frame.locator('.space canvas').boundingBox();
      await window.page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
      await window.until('the cursor on the line of a part', async () => (await window.cursor())?.line > 1);
    },
  ],
  [
    'save the section as a drawing for print',
    async (window, workbench) => {
      const frame = await window.sheet();
      await tab(frame, 'Section').click();
      await frame.locator('[data-key=save]').click();
      const first = window.page.locator('.quick-input-list .monaco-list-row').first();
      await first.waitFor();
      await window.shot('save');
      assert.match(await first.textContent(), /Section as SVG/);
      await window.page.keyboard.press('Enter');
      const path = window.page.locator('.quick-input-widget input.input');
      await window.until('where to', async () => (await path.inputValue()).endsWith('.svg'));
      const name = (await path.inputValue()).split('/').at(-1);
      await window.page.keyboard.press('Enter');
      const saved = await window.until('the file', () => workbench.read(name));
      assert.match(saved, /^<(\?xml|svg)/);
      assert.ok(!/var\(/.test(saved), "colours of its own, not the page's");
      await window.focusEditor();
    },
  ],
  [
    'nothing of the sheet was refused by its content policy',
    async (_window, workbench) => {
      const refused = workbench.messages.filter((line) => /Content Security Policy/i.test(line));
      assert.deepEqual(refused, []);
    },
  ],
];

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
    'slide through the gusts by keyboard and see what reaches its limit',
    async (window) => {
      const frame = await window.sheet();
      await tab(frame, 'Section').click();
      await frame.locator('[data-key=overlay]').selectOption('deflected');
      const slider = frame.locator('[data-key=gust]');
      await slider.waitFor();
      await slider.focus();
      await slider.press('Home');
      await frame.locator('.uses', { hasText: 'none of' }).waitFor();
      const calm = await frame.locator('.paper .tl-deflected').first().getAttribute('points');
      await slider.press('End');
      await frame.locator('.uses tr.fails').first().waitFor();
      assert.match(await slider.getAttribute('aria-valuetext'), /^\d+(\.\d+)? (m\/s|mph)/);
      assert.match(await frame.locator('.uses tr.fails').first().textContent(), /\d+ %, limit reached/);
      assert.notEqual(await frame.locator('.paper .tl-deflected').first().getAttribute('points'), calm);
      assert.ok(
        await slider.evaluate((one) => one === document.activeElement),
        'the keyboard stays on the slider',
      );
      await frame.locator('.gust-marks button', { hasText: 'first to fail' }).click();
      await frame.locator('.uses', { hasText: '1 of' }).waitFor();
      await window.shot('gust-slider');
      const value = await frame.locator('.gust-value').textContent();
      await tab(frame, 'Materials').click();
      await tab(frame, 'Section').click();
      assert.equal(await frame.locator('.gust-value').textContent(), value, 'kept over another tab');
      await frame.locator('.gust button', { hasText: 'back to the checks' }).click();
      await frame.locator('.uses').waitFor({ state: 'detached' });
      await frame.locator('[data-key=overlay]').selectOption('none');
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
      // A picture of its own in each look: its colours are read off the page.
      const seen = [await look()];
      for (const [theme, body] of [
        ['Dark Modern', 'vscode-dark'],
        ['Dark High Contrast', 'vscode-high-contrast'],
      ]) {
        await window.theme(theme);
        await frame.locator(`body.${body}`).waitFor();
        await window.page.waitForTimeout(500);
        await window.shot(`space-${body}`);
        const now = await look();
        assert.ok(
          seen.every((one) => !one.equals(now)),
          `drawn anew for ${theme}`,
        );
        seen.push(now);
      }
      await window.theme('Light Modern');
      await frame.locator('body.vscode-light').waitFor();
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
      await window.page.locator('.quick-input-widget').waitFor({ state: 'hidden' });
      await window.focusEditor();
    },
  ],
  [
    'save the section as a picture and the house in space as a model',
    async (window, workbench) => {
      const frame = await window.sheet();
      for (const [label, ending, start] of [
        ['Section as PNG', '.png', 'PNG'],
        ['House in space as glTF', '.glb', 'glTF'],
      ]) {
        await frame.locator('[data-key=save]').click();
        const input = window.page.locator('.quick-input-widget input.input');
        await input.waitFor();
        await input.fill(label);
        await window.page.locator('.quick-input-list .monaco-list-row.focused', { hasText: label }).waitFor();
        await window.page.keyboard.press('Enter');
        await window.until('where to', async () => (await input.inputValue()).endsWith(ending), 20_000);
        const name = (await input.inputValue()).split('/').at(-1);
        await window.page.keyboard.press('Enter');
        const saved = await window.until('the file', () => workbench.read(name));
        assert.ok(saved.slice(0, 8).includes(start), `${name} begins as its format asks`);
        assert.ok(saved.length > 5000, `${name} holds something`);
        await window.page.locator('.quick-input-widget').waitFor({ state: 'hidden' });
      }
      await window.focusEditor();
    },
  ],
  [
    'explore what may vary, and write one of the variants',
    async (window, workbench) => {
      const text = await workbench.read(example);
      await window.goTo(lineOf(text, 'require'));
      await window.page.keyboard.type('vary bows spaced from 18 in to 22 in by 2 in\n');
      const frame = await window.sheet();
      await tab(frame, 'Variants').click();
      await frame.locator('[data-key=explore]').click();
      await frame.locator('[data-variant]').first().waitFor({ timeout: 60_000 });
      assert.equal(await frame.locator('[data-variant]').count(), 3);
      await frame.locator('.chart svg', { hasText: 'no other beats it' }).waitFor();
      await window.shot('variants');
      await frame.locator('[data-variant="1"] button').click();
      await window.until('the variant in the text', async () => {
        const shown = await window.text();
        return shown.includes('bows spaced 18 in') && !shown.includes('bows spaced 20 in');
      });
      await tab(frame, 'Section').click();
      await window.focusEditor();
      await window.restore();
    },
  ],
  [
    'reload the window and find the variants, marked as those of another text',
    async (window) => {
      await window.reload();
      const frame = await window.sheet(40_000);
      await frame.locator('.paper svg').waitFor({ timeout: 30_000 });
      await tab(frame, 'Variants').click();
      await frame.locator('[data-variant]').first().waitFor();
      assert.equal(await frame.locator('[data-variant]').count(), 3);
      await frame.locator('.stale', { hasText: 'since these variants were worked out' }).waitFor();
      await window.shot('variants-kept');
      await tab(frame, 'Section').click();
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

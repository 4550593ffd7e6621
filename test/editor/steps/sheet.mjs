import assert from 'node:assert/strict';
import { columnOf, example, lineOf } from '../places.mjs';

/** A point of the window where a click hits a mark of this part in the drawing. */
async function pointOn(frame, part) {
  const point = await frame.evaluate((id) => {
    for (const shape of document.querySelectorAll(
      `.paper [data-part="${id}"][data-kind="part"] :is(path,line,polyline,polygon)`,
    )) {
      const length = shape.getTotalLength();
      for (let share = 0.03; share < 1; share += 0.03) {
        const at = shape.getPointAtLength(length * share).matrixTransform(shape.getScreenCTM());
        const hit = document.elementFromPoint(at.x, at.y)?.closest('[data-part]');
        if (hit?.getAttribute('data-part') === id) {
          return { x: at.x, y: at.y };
        }
      }
    }
    return null;
  }, part);
  assert.ok(point, `the drawing has a mark of ${part} that can be clicked`);
  const box = await (await frame.frameElement()).boundingBox();
  return { x: box.x + point.x, y: box.y + point.y };
}

export const sheet = [
  [
    'open the drawing sheet beside the text',
    async (window) => {
      await window.command('View: Close All Editors');
      if (await window.page.locator('.part.panel').isVisible()) {
        await window.page.keyboard.press('Control+J');
      }
      await window.openFile(example);
      await window.goTo(1);
      const frame = await window.openSheet();
      await frame.locator('.paper svg').waitFor();
      const tabs = await frame.locator('[role=tab]').allTextContents();
      for (const wanted of ['Section', 'Plan', 'Findings', 'Materials']) {
        assert.ok(
          tabs.some((tab) => tab.startsWith(wanted)),
          `a tab ${wanted} among ${tabs.join(', ')}`,
        );
      }
      assert.match(await frame.locator('.cautions summary').textContent(), /screening aid/i);
    },
  ],
  [
    'click a bow and land on its line',
    async (window, workbench) => {
      const text = await workbench.read(example);
      await window.goTo(1);
      const { x, y } = await pointOn(await window.sheet(), 'bows');
      await window.page.mouse.click(x, y);
      await window.until('the cursor on the line of the bows', async () => {
        return (await window.cursor())?.line === lineOf(text, 'bows');
      });
    },
  ],
  [
    'move the cursor and see the part marked',
    async (window, workbench) => {
      const text = await workbench.read(example);
      const line = lineOf(text, 'purlins');
      await window.goTo(line, 5);
      const frame = await window.sheet();
      await frame.locator('.paper [data-part^="purlins"].marked').first().waitFor({ state: 'attached' });
      assert.equal(await frame.locator('.paper [data-part="bows"].marked').count(), 0);
      await window.page.waitForTimeout(500);
      assert.equal((await window.cursor()).line, line, 'the mark does not move the text');
    },
  ],
  [
    'reach a part by keyboard alone',
    async (window, workbench) => {
      const text = await workbench.read(example);
      const frame = await window.sheet();
      await frame.locator('[data-part-button="bows"]').focus();
      await frame.locator('.paper [data-part="bows"].pointed').first().waitFor({ state: 'attached' });
      await window.page.keyboard.press('Enter');
      await window.until('the cursor on the line of the bows', async () => {
        return (await window.cursor())?.line === lineOf(text, 'bows');
      });
    },
  ],
  [
    'go through the tabs with the arrow keys',
    async (window) => {
      const frame = await window.sheet();
      await frame.locator('[role=tab][aria-selected=true]').focus();
      const seen = new Set();
      const count = await frame.locator('[role=tab]').count();
      for (let step = 0; step < count; step += 1) {
        const name = await frame.locator('[role=tab][aria-selected=true]').textContent();
        seen.add(name);
        assert.ok((await frame.locator('.body').textContent()).trim() !== '', `${name} shows something`);
        await window.shot(`tab-${name.replaceAll(/[^a-z]+/gi, '-').toLowerCase()}`);
        await window.page.keyboard.press('ArrowRight');
      }
      assert.equal(seen.size, count);
    },
  ],
  [
    'read the cautions',
    async (window) => {
      const frame = await window.sheet();
      await frame.locator('.cautions summary').click();
      const text = await frame.locator('.cautions').textContent();
      for (const word of [
        'ladders',
        'sail',
        'buried',
        'power lines',
        'whip',
        'fumes',
        'dust',
        'hot',
        'refuge',
      ]) {
        assert.ok(text.includes(word), `cautions speak of ${word}`);
      }
      await window.shot('cautions');
      await frame.locator('.cautions summary').click();
    },
  ],
  [
    'switch to a dark theme and back',
    async (window) => {
      const frame = await window.sheet();
      const ground = () => frame.evaluate(() => getComputedStyle(document.body).backgroundColor);
      const before = await ground();
      await window.theme('Dark Modern');
      await frame.locator('body.vscode-dark').waitFor();
      assert.notEqual(await ground(), before);
      await window.page.waitForTimeout(300);
      await window.shot('dark');
      await window.theme('Dark High Contrast');
      await frame.locator('body.vscode-high-contrast').waitFor();
      await window.page.waitForTimeout(300);
      await window.shot('high-contrast');
      await window.theme('Light Modern');
      await frame.locator('body.vscode-light').waitFor();
    },
  ],
  [
    'break the text and see the last good drawing marked stale',
    async (window, workbench) => {
      const text = await workbench.read(example);
      const frame = await window.sheet();
      const line = lineOf(text, 'footprint');
      await window.goTo(line, columnOf(text, line, ' by '));
      await window.page.keyboard.press('Shift+End');
      await window.page.keyboard.press('Delete');
      await frame.locator('.stale').waitFor();
      assert.ok((await frame.locator('.paper svg').count()) === 1, 'the last good drawing is kept');
      await window.shot('stale');
      await window.restore();
      await frame.locator('.stale').waitFor({ state: 'detached' });
    },
  ],
  [
    'reload the window and find the sheet as it was',
    async (window) => {
      const frame = await window.sheet();
      await frame.locator('[role=tab]', { hasText: 'Section' }).click();
      await frame.locator('[data-key=overlay]').selectOption('bending');
      await frame.locator('.paper .tl-moment').first().waitFor({ state: 'attached' });
      const slider = frame.locator('[data-key=gust]');
      await slider.focus();
      await slider.press('Home');
      await slider.press('PageUp');
      await frame.locator('.uses').waitFor();
      const gust = await frame.locator('.gust-value').textContent();
      await frame.locator('[role=tab]', { hasText: 'Plan' }).click();
      await window.reload();
      const restored = await window.sheet(40_000);
      await restored.locator('.paper svg').waitFor({ timeout: 30_000 });
      assert.match(await restored.locator('[role=tab][aria-selected=true]').textContent(), /^Plan/);
      await restored.locator('[role=tab]', { hasText: 'Section' }).click();
      await restored.locator('.paper .tl-moment').first().waitFor({ state: 'attached' });
      assert.equal(await restored.locator('.gust-value').textContent(), gust, 'the gust is kept');
      await restored.locator('.uses').waitFor();
      await window.shot('restored-bending');
      await restored.locator('.gust button', { hasText: 'back to the checks' }).click();
      await restored.locator('.uses').waitFor({ state: 'detached' });
      await restored.locator('[data-key=overlay]').selectOption('none');
    },
  ],
  [
    'kill the language server and see it come back',
    async (window, workbench) => {
      await window.focusEditor();
      const first = await window.until('a language server', () => workbench.languageServer());
      process.kill(first, 'SIGKILL');
      const second = await window.until('another language server', async () => {
        const now = await workbench.languageServer();
        return now !== first && now;
      });
      assert.notEqual(second, first);
      const frame = await window.sheet();
      await frame.locator('.stale').waitFor({ state: 'detached', timeout: 20_000 });
      await window.until('the status item ready again', async () => {
        const text = await window.status();
        return text !== '' && !/starting|stopped/.test(text);
      });
      await window.until('lenses with what fails first and what it costs', async () => {
        const lenses = await window.page.locator('.codelens-decoration').allTextContents();
        return /first to fail: the .* gust .*cost: XTS/.test(lenses.join(' '));
      });
    },
  ],
];

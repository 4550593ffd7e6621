import assert from 'node:assert/strict';
import { columnOf, example, flawed, lineOf } from '../places.mjs';

/** What the editor offers around the words: all fixes at once, reasons, settings, the status bar, the walkthrough. */
export const words = [
  [
    'put right every slip of writing at once',
    async (window, workbench) => {
      const text = await workbench.read(example);
      await window.command('View: Close All Editors');
      await window.openFile(example);
      for (const [word, wrong] of [
        ['purlins', 'purlinss'],
        ['ends', 'endss'],
      ]) {
        const line = lineOf(text, word);
        await window.goTo(line, columnOf(text, line, word) - 2);
        await window.page.keyboard.press('Control+Shift+ArrowRight');
        await window.page.keyboard.type(wrong);
      }
      await window.until('both slips in the count of problems', async () =>
        /Errors: [2-9]/.test(
          (await window.page.locator('#status\\.problems a').first().getAttribute('aria-label')) ?? '',
        ),
      );
      await window.command('Fix All');
      await window.until('the words as they were', async () => !/purlinss|endss/.test(await window.text()));
      await window.restore();
    },
  ],
  [
    'accept a finding with a reason',
    async (window, workbench) => {
      const text = await workbench.read(flawed);
      await window.openFile(flawed);
      const line = lineOf(text, 'purlins');
      await window.goTo(line, 3);
      const title = await window.takeFix(/^Accept `[\w-]+` here, with a reason/);
      const check = /`([\w-]+)`/.exec(title)[1];
      await window.until('the line that accepts it', async () =>
        (await window.text()).includes(`accept ${check} because`),
      );
      // The words that stand for the reason are selected.
      await window.until('a selection', async () =>
        /7 selected/.test(await window.page.locator('#status\\.editor\\.selection').textContent()),
      );
      await window.page.keyboard.type('the crown is lashed as well');
      await window.until('the reason', async () =>
        (await window.text()).includes('because "the crown is lashed as well"'),
      );
      await window.shot('accepted');
      const frame = await window.openSheet();
      await frame.locator('[role=tab]', { hasText: 'Findings' }).click();
      await frame.locator('.body', { hasText: /the crown is lashed as well/ }).waitFor({ timeout: 20_000 });
      await window.focusEditor();
      await window.restore();
    },
  ],
  [
    'turn a check into information, and off, by the settings',
    async (window, workbench) => {
      await window.openFile(flawed);
      const rows = window.page.locator('.markers-panel .monaco-list-row');
      const all = async () =>
        (await rows.allTextContents()).filter((row) => row.includes('locked-in-stress')).length;
      await window.page.keyboard.press('Control+Shift+M');
      await window.until('the finding', async () => (await all()) > 0);
      await workbench.set({ 'tautline.severity': { 'locked-in-stress': 'off' } });
      await window.until('the finding gone', async () => (await all()) === 0);
      // Informations come last in the list, below what it shows: the count tells of them.
      const count = () => window.page.locator('#status\\.problems a').first().getAttribute('aria-label');
      const without = await count();
      await workbench.set({ 'tautline.severity': { 'locked-in-stress': 'information' } });
      await window.until('one more in the count', async () => (await count()) !== without);
      await window.shot('severity');
      await workbench.set({});
      await window.page.keyboard.press('Control+J');
    },
  ],
  [
    'find everything in the menu of the status bar',
    async (window) => {
      await window.openFile(example);
      await window.until('what fails first', async () => /first to fail/.test(await window.status()));
      await window.page.locator('[id*="tautline.status"] a').first().click();
      const rows = window.page.locator('.quick-input-list .monaco-list-row');
      await window.until('the menu', async () => (await rows.count()) > 5);
      await window.shot('status-menu');
      await window.page.keyboard.press('Escape');
    },
  ],
  [
    'take the walkthrough, of five steps at most',
    async (window) => {
      await window.command('Welcome: Open Walkthrough');
      await window.pick('From idea to a shelter that stands');
      const steps = window.page.locator('.gettingStartedDetailsContent .getting-started-step');
      await window.until('its steps', async () => (await steps.count()) > 0);
      assert.ok((await steps.count()) <= 5);
      await window.page.waitForTimeout(500);
      await window.shot('walkthrough');
      await window.command('View: Close All Editors');
    },
  ],
  [
    'fold, select by growing, and reach words by the outline',
    async (window, workbench) => {
      const text = await workbench.read(example);
      await window.openFile(example);
      const line = lineOf(text, 'bows');
      await window.goTo(line, 5);
      for (let step = 0; step < 3; step += 1) {
        await window.page.keyboard.press('Shift+Alt+ArrowRight');
      }
      await window.until('a selection', async () =>
        /selected/.test(await window.page.locator('#status\\.editor\\.selection').textContent()),
      );
      await window.goTo(1);
      await window.page.keyboard.press('Control+Shift+O');
      const rows = window.page.locator('.quick-input-list .monaco-list-row');
      await window.until('the outline', async () =>
        (await rows.allTextContents()).some((row) => row.includes('bows')),
      );
      await window.page.keyboard.press('Escape');
    },
  ],
];

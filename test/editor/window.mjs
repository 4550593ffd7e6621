// What a person does in the workbench's window, by keyboard and mouse.
import { mkdir } from 'node:fs/promises';

const artefacts = new URL('artefacts/', import.meta.url);

export class Window {
  constructor(page, prefix) {
    this.page = page;
    this.prefix = prefix;
  }

  async open(url) {
    await this.page.goto(url);
    await this.ready();
  }

  /** As a person reloads, so that the workbench may write down what is open. */
  async reload() {
    const gone = this.page.waitForEvent('framenavigated', (frame) => frame === this.page.mainFrame());
    await this.command('Developer: Reload Window');
    await gone;
    await this.ready();
  }

  async ready() {
    await this.page.waitForSelector('.monaco-workbench .explorer-viewlet, .monaco-workbench .part.editor', {
      timeout: 60_000,
    });
    await this.page.waitForSelector('.explorer-folders-view .monaco-list-row', { timeout: 60_000 });
  }

  async shot(name) {
    await mkdir(artefacts, { recursive: true });
    // What is fading in is shown as it will be.
    const path = new URL(`${this.prefix}${name}.png`, artefacts).pathname;
    await this.page.screenshot({ path, animations: 'disabled' });
  }

  /** Runs a command of the palette by its title. */
  async command(title) {
    await this.page.keyboard.press('F1');
    const input = this.page.locator('.quick-input-widget input.input');
    await input.waitFor({ state: 'visible' });
    await input.fill(`>${title}`);
    await this.page
      .locator('.quick-input-list .monaco-list-row.focused', { hasText: title })
      .first()
      .waitFor({ state: 'visible', timeout: 15_000 });
    await this.page.keyboard.press('Enter');
    await this.page
      .locator('.quick-input-widget')
      .waitFor({ state: 'hidden' })
      .catch(() => undefined);
  }

  async theme(name) {
    await this.focusEditor();
    await this.page.keyboard.press('Control+K');
    await this.page.keyboard.press('Control+T');
    const input = this.page.locator('.quick-input-widget input.input');
    await input.waitFor({ state: 'visible' });
    await input.fill(name);
    await this.page.locator('.quick-input-list .monaco-list-row', { hasText: name }).first().waitFor();
    await this.page.waitForTimeout(400);
    await this.page.keyboard.press('Enter');
    await input.waitFor({ state: 'hidden' });
  }

  async openFile(name) {
    await this.page.keyboard.press('Control+P');
    const input = this.page.locator('.quick-input-widget input.input');
    await input.waitFor({ state: 'visible' });
    await input.fill(name);
    await this.page
      .locator('.quick-input-list .monaco-list-row.focused', { hasText: name })
      .first()
      .waitFor({ state: 'visible', timeout: 15_000 });
    await this.page.keyboard.press('Enter');
    await this.page.locator(`.tab.active[aria-label*="${name}"]`).first().waitFor({ timeout: 15_000 });
    await this.editor().first().waitFor();
  }

  /** The same by the list of files: a folder that lies on no disk cannot be searched. */
  async openListed(name) {
    await this.page
      .locator('.explorer-folders-view .monaco-list-row')
      .getByText(name, { exact: true })
      .dblclick({ timeout: 30_000 });
    await this.page.locator(`.tab.active[aria-label*="${name}"]`).first().waitFor({ timeout: 15_000 });
    await this.editor().first().waitFor();
  }

  /** Opens the drawing sheet of the file on show; gives the page in it. */
  async openSheet() {
    await this.command('Tautline: Open Drawing Sheet Beside');
    return this.sheet();
  }

  /** Text of the first editor, as far as it is in view, hints among it. */
  async text() {
    const shown = await this.page.locator('.editor-instance .view-lines').first().textContent();
    return shown.replaceAll('\u00a0', ' ');
  }

  /** Takes back every unsaved change of the file on show. */
  async restore() {
    await this.command('File: Revert File');
    await this.until(
      'the file as it was',
      async () => (await this.page.locator('.tab.active.dirty').count()) === 0,
    );
  }

  /** Walks through the problems of the file until one offers a fix of its own, and applies it. */
  async applyFirstFix(most) {
    const list = this.page.locator('.context-view .action-widget .monaco-list-row.action');
    for (let problem = 0; problem < most; problem += 1) {
      await this.focusEditor();
      await this.page.keyboard.press('Alt+F8'); // in this file only
      await this.page.waitForTimeout(300);
      const said = await this.page
        .locator('.marker-widget .descriptioncontainer')
        .first()
        .textContent({ timeout: 2000 })
        .catch(() => '');
      await this.page.keyboard.press('Escape'); // closes the peek, stays on the problem
      await this.page.keyboard.press('Control+.');
      const offered = await list
        .first()
        .waitFor({ timeout: 5000 })
        .then(() => list.allTextContents())
        .catch(() => []);
      if (problem === 0) {
        await this.shot('fixes');
      }
      const index = offered.findIndex((title) => !/accept|learn|explain|no code actions/i.test(title));
      if (index >= 0) {
        for (let down = 0; down < index; down += 1) {
          await this.page.keyboard.press('ArrowDown');
        }
        await this.page.keyboard.press('Enter');
        return { title: offered[index], said: said.replaceAll('\u00a0', ' ') };
      }
      await this.page.keyboard.press('Escape');
    }
    return undefined;
  }

  /** Takes the first fix at the cursor whose title matches; gives its title. */
  async takeFix(pattern, timeout = 30_000) {
    const list = this.page.locator('.context-view .action-widget .monaco-list-row.action');
    const { index, title } = await this.until(
      `a fix ${pattern}`,
      async () => {
        await this.page.keyboard.press('Control+.');
        await list.first().waitFor({ timeout: 5000 });
        const titles = await list.allTextContents();
        const found = titles.findIndex((one) => pattern.test(one));
        if (found >= 0) {
          return { index: found, title: titles[found] };
        }
        await this.page.keyboard.press('Escape');
        return undefined;
      },
      timeout,
    );
    for (let down = 0; down < index; down += 1) {
      await this.page.keyboard.press('ArrowDown');
    }
    await this.page.keyboard.press('Enter');
    await this.page.locator('.tab.active.dirty').waitFor();
    return title;
  }

  /** Picks an entry of the list that is open. */
  async pick(label) {
    const input = this.page.locator('.quick-input-widget input.input');
    await input.waitFor({ state: 'visible' });
    await input.fill(label);
    await this.page
      .locator('.quick-input-list .monaco-list-row.focused', { hasText: label })
      .first()
      .waitFor();
    await this.page.keyboard.press('Enter');
  }

  /** Agrees with where a file is to be saved; gives its name. */
  async saveAs(ending) {
    const input = this.page.locator('.quick-input-widget input.input');
    await this.until('where to', async () => (await input.inputValue()).endsWith(ending), 20_000);
    const name = (await input.inputValue()).split('/').at(-1);
    await this.page.keyboard.press('Enter');
    await this.page.locator('.quick-input-widget').waitFor({ state: 'hidden' });
    return name;
  }

  editor() {
    return this.page.locator('.editor-instance .monaco-editor[role="code"], .editor-instance .monaco-editor');
  }

  async focusEditor() {
    await this.command('View: Focus First Editor Group');
  }

  async goTo(line, column = 1) {
    await this.focusEditor();
    await this.page.keyboard.press('Control+G');
    const input = this.page.locator('.quick-input-widget input.input');
    await input.waitFor({ state: 'visible' });
    await input.fill(`:${line},${column}`);
    await this.page.keyboard.press('Enter');
    await this.page.locator('.quick-input-widget').waitFor({ state: 'hidden' });
  }

  /** Line and column of the cursor, as the status bar says. */
  async cursor() {
    const text = await this.page.locator('#status\\.editor\\.selection').textContent();
    const match = /Ln (\d+), Col (\d+)/.exec(text);
    return match === null ? undefined : { line: Number(match[1]), column: Number(match[2]) };
  }

  async status() {
    const item = this.page
      .locator('#tautline\\.tautline\\.tautline\\.status, [id*="tautline.status"]')
      .first();
    return (await item.count()) === 0 ? '' : (await item.textContent()).trim();
  }

  /** The page inside the drawing sheet, found by its root element. */
  async sheet(timeout = 20_000) {
    const end = Date.now() + timeout;
    while (Date.now() < end) {
      for (const frame of this.page.frames()) {
        const found = await frame
          .locator('#sheet')
          .count()
          .catch(() => 0);
        if (found > 0) {
          return frame;
        }
      }
      await this.page.waitForTimeout(200);
    }
    throw new Error('no drawing sheet is open');
  }

  /** The first page inside the window whose text matches, and that text. */
  async frameWith(pattern, timeout = 20_000) {
    return this.until(
      `a page with ${pattern}`,
      async () => {
        for (const frame of this.page.frames()) {
          const text = await frame
            .locator('body')
            .textContent({ timeout: 500 })
            .catch(() => '');
          if (frame !== this.page.mainFrame() && pattern.test(text)) {
            return { frame, text };
          }
        }
        return undefined;
      },
      timeout,
    );
  }

  /** Text of a message in the corner that matches; it stays there. */
  async message(pattern, timeout = 30_000) {
    return this.until(
      `a message with ${pattern}`,
      async () => {
        const all = await this.page.locator('.notification-toast .notification-list-item').allTextContents();
        return all.find((text) => pattern.test(text));
      },
      timeout,
    );
  }

  /** Asks again until `probe` gives something truthy. */
  async until(what, probe, timeout = 15_000) {
    const end = Date.now() + timeout;
    let last;
    while (Date.now() < end) {
      last = await Promise.resolve()
        .then(probe)
        .catch((error) => {
          last = error;
        });
      if (last) {
        return last;
      }
      await this.page.waitForTimeout(150);
    }
    throw new Error(`waited ${timeout / 1000} s for: ${what}`);
  }
}

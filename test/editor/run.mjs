// Drives the packaged extension in a real workbench. Each step is a named test; steps run in order in one
// window, as a person would. Screenshots go to artefacts/. `node run.mjs WORD` runs steps up to the last
// whose name holds the word.
import { readdir } from 'node:fs/promises';
import { chromium } from 'playwright-core';
import { steps } from './steps/index.mjs';
import { Window } from './window.mjs';
import { startWorkbench } from './workbench.mjs';

const here = new URL('.', import.meta.url);
const built = new URL('../../packages/extension/dist/', here);
const vsix = (await readdir(built)).find((name) => name.endsWith('.vsix'));
if (vsix === undefined) {
  console.error('No .vsix in packages/extension/dist: run `npm run package` first.');
  process.exit(2);
}

const workbench = await startWorkbench(new URL(vsix, built).pathname, [new URL('../../examples/', here)]);
let browser;
let passed = 0;
let failed = 0;
try {
  browser = await chromium.launch({
    executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  page.setDefaultTimeout(15_000);
  page.on('console', (message) => workbench.messages.push(message.text()));
  page.on('pageerror', (error) => workbench.messages.push(`error: ${error.message}`));
  const window = new Window(page);
  await window.open(workbench.url);
  const last = process.argv[2]
    ? steps.findLastIndex(([name]) => name.includes(process.argv[2]))
    : steps.length - 1;
  for (const [index, [name, step]] of steps.slice(0, last + 1).entries()) {
    const began = Date.now();
    const number = String(index + 1).padStart(2, '0');
    try {
      await step(window, workbench);
      passed += 1;
      console.log(`pass  ${name} (${((Date.now() - began) / 1000).toFixed(1)} s)`);
      await window.shot(`${number}-${name.replaceAll(/[^a-z]+/gi, '-')}`);
    } catch (error) {
      failed += 1;
      console.log(
        `FAIL  ${name}: ${error instanceof Error ? error.message.split('\n').slice(0, 6).join(' ') : error}`,
      );
      await window.shot(`${number}-FAILED-${name.replaceAll(/[^a-z]+/gi, '-')}`).catch(() => undefined);
      await page.keyboard.press('Escape').catch(() => undefined);
    }
  }
} finally {
  await browser?.close();
  await workbench.stop();
}
if (process.env.TALK) console.log(workbench.messages.join('\n'));
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 || passed === 0 ? 1 : 0;

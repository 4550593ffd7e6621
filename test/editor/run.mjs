// Drives the packaged extension in a real workbench. Each step is a named test; steps run in order in one
// window, as a person would. Screenshots go to artefacts/. `node run.mjs WORD` runs steps up to the last
// whose name holds the word.
import { readdir, rm } from 'node:fs/promises';
import { chromium } from 'playwright-core';
import { rounds } from './steps/index.mjs';
import { Window } from './window.mjs';
import { startWorkbench } from './workbench.mjs';

const here = new URL('.', import.meta.url);
const built = new URL('../../packages/extension/dist/', here);
const vsix = (await readdir(built).catch(() => [])).find((name) => name.endsWith('.vsix'));
if (vsix === undefined) {
  console.error('No .vsix in packages/extension/dist: run `npm run package` first.');
  process.exit(2);
}
await rm(new URL('artefacts/', here), { recursive: true, force: true });
const upTo = process.argv[2] ?? '';
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
  args: [
    '--no-sandbox',
    '--disable-gpu',
    // Drawing in space without a graphics card.
    '--use-angle=swiftshader',
    '--enable-unsafe-swiftshader',
    '--disable-quic',
    '--no-first-run',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
  ],
});
let passed = 0;
let failed = 0;
try {
  for (const round of rounds) {
    const last = round.steps.findLastIndex(([name]) => name.includes(upTo));
    if (last >= 0) {
      await play(round, round.steps.slice(0, last + 1));
    }
  }
} finally {
  await browser.close();
}
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 || passed === 0 ? 1 : 0;

async function play({ name: place, settings, prefix, virtual }, steps) {
  const workbench = await startWorkbench(
    new URL(vsix, built).pathname,
    [new URL('../../examples/', here)],
    settings,
    virtual,
  );
  try {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    page.setDefaultTimeout(15_000);
    page.on('console', (message) => workbench.messages.push(message.text()));
    page.on('pageerror', (error) => workbench.messages.push(`error: ${error.stack ?? error.message}`));
    const window = new Window(page, prefix);
    await window.open(workbench.url);
    for (const [index, [name, step]] of steps.entries()) {
      const began = Date.now();
      const picture = `${String(index + 1).padStart(2, '0')}-${name.replaceAll(/[^a-z]+/gi, '-')}`;
      try {
        await step(window, workbench);
        passed += 1;
        console.log(`pass  ${place}: ${name} (${((Date.now() - began) / 1000).toFixed(1)} s)`);
        await window.shot(picture);
      } catch (error) {
        failed += 1;
        const why = error instanceof Error ? error.message.split('\n').slice(0, 6).join(' ') : String(error);
        console.log(`FAIL  ${place}: ${name}: ${why}`);
        await window.shot(`FAILED-${picture}`).catch(() => undefined);
        await page.keyboard.press('Escape').catch(() => undefined);
      }
    }
    await page.close();
  } finally {
    await workbench.stop();
  }
}

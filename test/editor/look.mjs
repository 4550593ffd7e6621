// Pictures of the drawing sheet without a workbench: the built page and the built server, in headless Chromium.
// `node look.mjs cable-house timber-gable` looks at every tab in three looks; pictures go to artefacts/look.
// ADD='vary bows spaced from 18 in to 24 in by 2 in' puts a line into the shelter, WIDE=900 makes the page wider.
// Run `node build.mjs` in packages/extension first. A tool for whoever changes the sheet; not part of the tests.
import { spawn } from 'node:child_process';
import { mkdir, readdir, readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { looks } from './looks.mjs';

const require = createRequire(new URL('../../package.json', import.meta.url));
const {
  createProtocolConnection,
  StreamMessageReader,
  StreamMessageWriter,
} = require('vscode-languageserver-protocol/node');
const dist = new URL('../../packages/extension/dist/', import.meta.url);
const examples = new URL('../../examples/', import.meta.url);
const out = new URL('artefacts/look/', import.meta.url);
await mkdir(out, { recursive: true });

const server = spawn(process.execPath, [fileURLToPath(new URL('server.cjs', dist)), '--stdio']);
server.stderr.pipe(process.stderr);
const client = createProtocolConnection(
  new StreamMessageReader(server.stdout),
  new StreamMessageWriter(server.stdin),
);
client.onRequest('workspace/configuration', ({ items }) => items.map(() => null));
client.onRequest('tautline/file/text', ({ uri }) => readFile(new URL(uri), 'utf8').catch(() => null));
client.onRequest('tautline/file/kind', ({ uri }) => (uri.endsWith('.shelter') ? 'file' : 'folder'));
client.onRequest('tautline/file/entries', async () =>
  (await readdir(examples)).map((name) => ({ name, kind: 'file' })),
);
client.listen();
await client.sendRequest('initialize', {
  processId: null,
  rootUri: examples.href,
  workspaceFolders: [{ uri: examples.href, name: 'examples' }],
  capabilities: {},
});
client.sendNotification('initialized', {});

const page = `<!DOCTYPE html><html><head><meta charset="utf-8"><link rel="stylesheet" href="/preview.css">
<style id="look"></style></head><body><main id="sheet" data-space="/space.js" data-state="STATE"></main>
<script nonce="n">window.acquireVsCodeApi = () => ({ getState() {}, setState(s) { window.kept = s; },
postMessage(m) { window.fromSheet(m); } });</script><script nonce="n" src="/preview.js"></script></body></html>`;

const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu', '--use-angle=swiftshader', '--enable-unsafe-swiftshader'],
});
const wide = Number(process.env.WIDE ?? 720);
try {
  for (const name of process.argv.slice(2)) {
    await lookAt(name);
  }
} finally {
  await browser.close();
  server.kill();
}

async function lookAt(name) {
  const uri = new URL(`${name}.shelter`, examples).href;
  const written = await readFile(new URL(uri), 'utf8');
  const text = process.env.ADD ? written.replace(/\}\s*$/, `  ${process.env.ADD}\n}\n`) : written;
  client.sendNotification('textDocument/didOpen', {
    textDocument: { uri, languageId: 'shelter', version: 1, text },
  });
  const tab = await browser.newPage({ viewport: { width: wide, height: 860 } });
  tab.on('pageerror', (error) => console.log(`${name}: ${error.stack}`));
  await tab.route('http://sheet/**', async (route) => {
    const { pathname } = new URL(route.request().url());
    const body =
      pathname === '/'
        ? page.replace('STATE', JSON.stringify({ uri }).replaceAll('"', '&quot;'))
        : await readFile(new URL(pathname.slice(1), dist));
    await route.fulfill({
      body,
      contentType:
        { '.css': 'text/css', '.js': 'text/javascript' }[/\.\w+$/.exec(pathname)?.[0]] ?? 'text/html',
    });
  });
  const post = (message) => tab.evaluate((data) => window.postMessage(data, '*'), message);
  let narrow = {};
  const answer = async () => {
    const sheet = await client.sendRequest('tautline/preview', { uri, ...narrow });
    await post({ type: 'answer', answer: sheet, file: `${name}.shelter` });
  };
  await tab.exposeFunction('fromSheet', async (message) => {
    if (message.type === 'width') {
      const { type: _type, ...told } = message;
      narrow = told;
      await answer();
    } else if (message.type === 'ready') {
      await answer();
    } else if (message.type === 'detail') {
      const { id, shelter, wanted } = message;
      const given = await client.sendRequest('tautline/sheet/detail', { uri, shelter, wanted, ...narrow });
      await post({ type: 'detail', id, answer: given });
    } else if (message.type === 'explore') {
      const given = await client.sendRequest('tautline/explore', { uri, shelter: message.shelter });
      await post({ type: 'explored', shelter: message.shelter, answer: given });
    }
  });
  client.onNotification('tautline/evaluated', (notice) => {
    if (notice.uri === uri && !tab.isClosed()) {
      answer().catch(() => undefined);
    }
  });
  await tab.goto('http://sheet/');
  await tab.locator('.paper svg').waitFor();
  // Until the gusts are there.
  await tab
    .locator('.title-block', { hasText: 'First to fail' })
    .waitFor({ timeout: 20_000 })
    .catch(() => undefined);
  for (const [look, { kind, variables }] of Object.entries(looks)) {
    await tab.evaluate(
      ([css, className]) => {
        document.querySelector('#look').textContent = css;
        document.body.className = className;
      },
      [
        `:root{${Object.entries(variables)
          .map(([key, value]) => `--vscode-${key}:${value};`)
          .join('')}}`,
        kind,
      ],
    );
    const shot = async (what) => {
      await tab.waitForTimeout(250);
      await tab.screenshot({ path: fileURLToPath(new URL(`${name}-${look}-${what}.png`, out)) });
    };
    for (const title of await tab.locator('[role=tab]').allTextContents()) {
      await tab
        .locator('[role=tab]', { hasText: title.replace(/\d+$/, '') })
        .first()
        .click();
      await tab.waitForTimeout(title.startsWith('3D') ? 900 : 400);
      if (title === 'Variants') {
        await tab.locator('[data-key=explore]').click();
        await tab.waitForFunction(() => !/being worked out/.test(document.body.textContent), {
          timeout: 60_000,
        });
      }
      await shot(title.replaceAll(/[^A-Za-z0-9]+/g, '-').replace(/\d+$/, ''));
      if (title === 'Section') {
        for (const overlay of ['use', 'deflected', 'bending', 'along', 'water']) {
          await tab.locator('[data-key=overlay]').selectOption(overlay);
          await tab.waitForTimeout(500);
          await shot(`overlay-${overlay}`);
          const mark = tab.locator('.gust-marks button', { hasText: 'first to fail' });
          if ((await mark.count()) > 0 && overlay !== 'water') {
            await mark.click();
            await tab.waitForTimeout(700);
            await shot(`overlay-${overlay}-at-gust`);
          }
        }
        await tab.locator('[data-key=overlay]').selectOption('none');
      }
    }
  }
  await tab.close();
}

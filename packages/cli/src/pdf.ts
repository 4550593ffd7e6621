/** Printing a page with a browser that is already on the machine. */
import { execFile } from 'node:child_process';
import { access, constants } from 'node:fs/promises';
import { delimiter, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { promisify } from 'node:util';
import { CannotRun } from './exit.ts';

const names = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'chrome',
  'chrome.exe',
  'msedge.exe',
];
const usualPlaces = [
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
];

/** A browser that prints: the one that TAUTLINE_BROWSER names, or the first found on the path. */
export async function browserAt(): Promise<string | undefined> {
  const named = process.env['TAUTLINE_BROWSER'];
  const onPath = (process.env['PATH'] ?? '')
    .split(delimiter)
    .flatMap((folder) => names.map((name) => join(folder, name)));
  for (const path of [...(named ? [named] : []), ...onPath, ...usualPlaces]) {
    const runs = await access(path, constants.X_OK).then(
      () => true,
      () => false,
    );
    if (runs) return path;
  }
  return undefined;
}

/** Throws CannotRun when the browser does not print. */
export async function printPdf(browser: string, page: string, pdf: string): Promise<void> {
  const root = typeof process.getuid === 'function' && process.getuid() === 0;
  const words = [
    '--headless',
    // A browser's own sandbox does not work for root; the page holds no script.
    ...(root ? ['--no-sandbox'] : []),
    '--disable-gpu',
    '--no-pdf-header-footer',
    `--print-to-pdf=${resolve(pdf)}`,
    pathToFileURL(resolve(page)).href,
  ];
  await promisify(execFile)(browser, words, { timeout: 120_000 }).catch((error: Error) => {
    throw new CannotRun(`The browser could not print the book: ${error.message.split('\n')[0] ?? ''}`);
  });
}

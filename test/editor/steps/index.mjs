import { commands } from './commands.mjs';
import { inBrowser } from './in-browser.mjs';
import { reading } from './reading.mjs';
import { results } from './results.mjs';
import { sheet } from './sheet.mjs';

/** In each round, later steps stand on what earlier ones opened. */
export const rounds = [
  {
    name: 'server as a process',
    prefix: '',
    settings: {},
    steps: [...reading, ...sheet, ...results, ...commands],
  },
  {
    name: 'server in the browser',
    prefix: 'browser-',
    settings: { 'remote.extensionKind': { 'tautline.tautline': ['web'] } },
    steps: inBrowser,
  },
];

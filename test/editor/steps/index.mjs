import { example, flawed } from '../places.mjs';
import { commands } from './commands.mjs';
import { inBrowser, inMemory } from './in-browser.mjs';
import { keyboard } from './keyboard.mjs';
import { range } from './range.mjs';
import { reading } from './reading.mjs';
import { results } from './results.mjs';
import { several } from './several.mjs';
import { sheet } from './sheet.mjs';
import { untrusted } from './untrusted.mjs';
import { words } from './words.mjs';

/** In each round, later steps stand on what earlier ones opened. */
export const rounds = [
  {
    name: 'server as a process',
    prefix: '',
    settings: {},
    steps: [...reading, ...sheet, ...results, ...commands],
  },
  {
    name: 'ranges, words and keyboard',
    prefix: 'more-',
    settings: {},
    steps: [...range, ...words, ...keyboard],
  },
  {
    name: 'a place with several houses',
    prefix: 'several-',
    settings: {},
    steps: several,
  },
  {
    name: 'server in the browser',
    prefix: 'browser-',
    settings: { 'remote.extensionKind': { 'tautline.tautline': ['web'] } },
    steps: inBrowser,
  },
  {
    name: 'a folder that lies on no disk',
    prefix: 'virtual-',
    settings: { 'remote.extensionKind': { 'tautline.tautline': ['web'] } },
    virtual: [example, flawed, 'site.shelter', 'yard.shelter'],
    steps: inMemory,
  },
  {
    name: 'a folder nobody trusts',
    prefix: 'untrusted-',
    settings: {
      'security.workspace.trust.enabled': true,
      'security.workspace.trust.startupPrompt': 'never',
    },
    steps: untrusted,
  },
];

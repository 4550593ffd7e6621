// Installs the packaged extension into a throw-away workbench and starts it on loopback.
import { execFile, spawn } from 'node:child_process';
import { cp, mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { promisify } from 'node:util';
import { virtualFolder } from './virtual.mjs';

const run = promisify(execFile);
const here = new URL('.', import.meta.url);
const entry = new URL('.workbench/node_modules/code-server/out/node/entry.js', here).pathname;
const home = new URL('.workbench/run/', here);

const settings = {
  'security.workspace.trust.enabled': false,
  'workbench.startupEditor': 'none',
  'workbench.colorTheme': 'Default Light Modern',
  'workbench.tips.enabled': false,
  'workbench.enableExperiments': false,
  'window.commandCenter': false,
  'chat.commandCenter.enabled': false,
  'telemetry.telemetryLevel': 'off',
  'update.mode': 'none',
  'extensions.autoUpdate': false,
  'extensions.autoCheckUpdates': false,
  'extensions.ignoreRecommendations': true,
  'git.openRepositoryInParentFolders': 'never',
  'scm.diffDecorations': 'none',
  'editor.minimap.enabled': false,
  'editor.fontSize': 13,
  'files.autoSave': 'off',
  'window.restoreWindows': 'all',
  'breadcrumbs.enabled': false,
};

/**
 * Resolves to {url, workspace, stop}. `sources` are copied into the workspace folder; `virtual` names those that lie
 * in a folder in memory instead.
 */
export async function startWorkbench(vsix, sources, moreSettings, virtual) {
  await rm(home, { recursive: true, force: true });
  const workspace = new URL('growers/', home);
  const userData = new URL('user/', home).pathname;
  const extensions = new URL('extensions/', home).pathname;
  await mkdir(new URL('user/User/', home), { recursive: true });
  await mkdir(new URL('extensions/', home), { recursive: true });
  await mkdir(workspace, { recursive: true });
  await writeFile(
    new URL('user/User/settings.json', home),
    JSON.stringify({ ...settings, ...moreSettings }, null, 2),
  );
  for (const source of sources) {
    await cp(source, workspace, { recursive: true });
  }

  await commit(workspace.pathname);

  const common = [
    entry,
    '--auth',
    'none',
    '--config',
    new URL('config.yaml', home).pathname,
    '--user-data-dir',
    userData,
    '--extensions-dir',
    extensions,
    '--disable-telemetry',
    '--disable-update-check',
  ];
  await writeFile(new URL('config.yaml', home), 'auth: none\n');
  await run(process.execPath, [...common, '--install-extension', vsix]);
  const memory = virtual && (await virtualFolder(sources[0], home, virtual));
  if (memory) {
    await run(process.execPath, [...common, '--install-extension', memory.vsix]);
  }
  const trusted = moreSettings['security.workspace.trust.enabled'] !== true;

  const port = await freePort();
  const log = [];
  const child = spawn(
    process.execPath,
    [
      ...common,
      '--bind-addr',
      `127.0.0.1:${port}`,
      ...(trusted ? ['--disable-workspace-trust'] : []),
      workspace.pathname,
    ],
    { stdio: ['ignore', 'pipe', 'pipe'], detached: true },
  );
  child.stdout.on('data', (data) => log.push(String(data)));
  child.stderr.on('data', (data) => log.push(String(data)));
  const url = `http://127.0.0.1:${port}/`;
  await answering(url, child, log);
  return {
    url: memory
      ? `${url}?workspace=${encodeURIComponent(memory.workspace.pathname)}`
      : `${url}?folder=${encodeURIComponent(workspace.pathname.replace(/\/$/, ''))}`,
    workspace,
    log,
    /** What the window's console said; filled by run.mjs. */
    messages: [],
    read: (name) => readFile(new URL(name, workspace), 'utf8'),
    /** Settings of the folder. */
    set: async (own) => {
      await mkdir(new URL('.vscode/', workspace), { recursive: true });
      await writeFile(new URL('.vscode/settings.json', workspace), JSON.stringify(own));
    },
    /** Process id of our language server, started by the extension host below the workbench. */
    languageServer: () => descendant(child.pid, /tautline[^ ]*\/dist\/server\.cjs/),
    stop: async () => {
      const ended = new Promise((resolve) => child.once('exit', resolve));
      try {
        process.kill(-child.pid, 'SIGTERM');
      } catch {
        return; // already gone
      }
      await Promise.race([ended, new Promise((resolve) => setTimeout(resolve, 5000).unref())]);
    },
  };
}

/** The growers keep their specs in a repository: everything is committed as it lies there. */
async function commit(folder) {
  const git = (...args) => run('git', ['-C', folder, ...args]);
  await git('init', '--quiet', '--initial-branch=main');
  await git('add', '.');
  const who = ['-c', 'user.name=Kestrel Gully Growers', '-c', 'user.email=growers@example.invalid'];
  await git(...who, 'commit', '--quiet', '--message', 'Write down the shelters as they stand');
}

async function answering(url, child, log) {
  for (let tries = 0; tries < 150; tries += 1) {
    if (child.exitCode !== null) {
      break;
    }
    const answer = await fetch(url).catch(() => undefined);
    if (answer?.ok) {
      return;
    }
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
  throw new Error(`The workbench did not come up:\n${log.join('')}`);
}

function freePort() {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address();
      probe.close(() => resolve(port));
    });
  });
}

/** The newest process below `root` whose command line matches, or undefined. */
async function descendant(root, pattern) {
  const { stdout } = await run('ps', ['-eo', 'pid=,ppid=,args=']);
  const rows = stdout
    .split('\n')
    .map((line) => /^\s*(\d+)\s+(\d+)\s+(.*)$/.exec(line))
    .filter((match) => match !== null)
    .map(([, pid, parent, args]) => ({ pid: Number(pid), parent: Number(parent), args }));
  const below = new Set([root]);
  for (let grew = true; grew; ) {
    grew = false;
    for (const row of rows) {
      if (below.has(row.parent) && !below.has(row.pid)) {
        below.add(row.pid);
        grew = true;
      }
    }
  }
  return rows.filter((row) => below.has(row.pid) && pattern.test(row.args)).at(-1)?.pid;
}

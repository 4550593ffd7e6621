/**
 * How `tautline check` grows with the number of files: time and memory of the bundled command for 100, 300
 * and 1,000 generated specs, in one process with a thread a core, and the ratios that show whether it is linear.
 *
 *   node packages/cli/bench/many-files.mjs [COUNT...]
 *
 * Exits 1 when a command fails, when memory passes 1 GB, or when time grows by more than half again what the
 * number of files does.
 */
import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const cli = fileURLToPath(new URL('../dist/tautline.mjs', import.meta.url));
const asked = process.argv.slice(2).map(Number);
const counts = asked.length > 0 ? asked : [100, 300, 1000];
const limit = 1024;

const site = `site test-field { gust 24 m/s once per 50 yr; exposure sheltered; elevation 100 m; rain 80 mm/h; soil loam; basis asce7-asd }\n`;

/** Houses that differ in what decides the work: bow shape, spacing, length. No two have the same bow. */
function house(index) {
  const rise = 66 + (index % 97) * 0.25;
  const spaced = 24 + (index % 5) * 6;
  const long = 20 + (index % 9) * 4;
  return `import "site.shelter"
/** House ${index}. */
shelter house-${index} on test-field {
  footprint ${11 + (index % 4)} ft by ${long} ft
  bows spaced ${spaced} in of ${index % 3 === 0 ? 'pvc40-32' : 'pvc40-25'} { shape elastic; rise ${rise} in; foot stub of rebar-16 { length 5 ft; driven 3 ft } }
  ridge rail of lumber-2x4 { frames tied; posts of lumber-4x4 spaced 8 ft { foot hole { driven 2 ft; across 10 in } } }
  cover roof with film-uv-150 { fastened by board-1x3; tension 150 N/m; installed 2026-03-01 }
}
`;
}

/** Memory of a process now, or its largest so far, MB; undefined where the system does not tell. */
function memoryOf(pid) {
  try {
    const status = readFileSync(`/proc/${pid}/status`, 'utf8');
    const kilobytes = /^VmHWM:\s+(\d+) kB/m.exec(status)?.[1] ?? /^VmRSS:\s+(\d+) kB/m.exec(status)?.[1];
    return kilobytes === undefined ? undefined : Number(kilobytes) / 1024;
  } catch {
    return undefined;
  }
}

function check(folder) {
  return new Promise((resolve, reject) => {
    const start = performance.now();
    const child = spawn(process.execPath, [cli, 'check', folder, '--format', 'json', '--on', '2026-11-25'], {
      stdio: ['ignore', 'pipe', 'ignore'],
    });
    let bytes = 0;
    let peak;
    const watch = setInterval(() => {
      const now = memoryOf(child.pid);
      if (now !== undefined) peak = Math.max(peak ?? 0, now);
    }, 50);
    child.stdout.on('data', (chunk) => {
      bytes += chunk.length;
    });
    child.on('exit', (code) => {
      clearInterval(watch);
      const seconds = (performance.now() - start) / 1000;
      // 1 means findings, which some of these houses have.
      if (code === 0 || code === 1) resolve({ seconds, peak, bytes });
      else reject(new Error(`tautline check ended with ${code}`));
    });
  });
}

const root = mkdtempSync(join(tmpdir(), 'tautline-bench-'));
const rows = [];
try {
  for (const count of counts) {
    const folder = join(root, String(count));
    mkdirSync(folder);
    writeFileSync(join(folder, 'site.shelter'), site);
    for (let index = 0; index < count; index += 1)
      writeFileSync(join(folder, `house-${String(index).padStart(5, '0')}.shelter`), house(index));
    rows.push({ count, ...(await check(folder)) });
    const { seconds, peak } = rows.at(-1);
    console.log(
      `check of ${count} specs on ${availableParallelism()} cores: ${seconds.toFixed(1)} s, ${((1000 * seconds) / count).toFixed(0)} ms each, ${peak === undefined ? 'memory not told' : `${peak.toFixed(0)} MB at most`}`,
    );
  }
} finally {
  rmSync(root, { recursive: true, force: true });
}

let failed = false;
for (const [at, row] of rows.entries()) {
  if (row.peak !== undefined && row.peak > limit) {
    console.log(`${row.count} specs took more than ${limit} MB`);
    failed = true;
  }
  const before = rows[at - 1];
  if (before === undefined) continue;
  const more = row.count / before.count;
  const longer = row.seconds / before.seconds;
  console.log(
    `${before.count} to ${row.count} specs: ${more.toFixed(2)} times as many, ${longer.toFixed(2)} times as long`,
  );
  if (longer > 1.5 * more) failed = true;
}
process.exitCode = failed ? 1 : 0;

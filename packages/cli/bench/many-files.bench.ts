/**
 * How `tautline check` grows with the number of files: time and memory of the bundled command for 100, 300
 * and 1,000 generated specs, with a thread a core, and the ratios that show whether it is linear. Target: time
 * grows as the number of files does, and memory stays under 1 GB. TAUTLINE_BENCH_COUNTS=10,30 asks for less.
 */
import { execFileSync, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';

const folderOfCli = join(process.cwd(), 'packages', 'cli');
const cli = join(folderOfCli, 'dist', 'tautline.mjs');
const counts = (process.env['TAUTLINE_BENCH_COUNTS'] ?? '100,300,1000').split(',').map(Number);
const limit = 1024;

interface Run {
  readonly count: number;
  readonly seconds: number;
  /** MB; undefined where the system does not tell. */
  readonly peak: number | undefined;
}

const site = `site test-field { gust 24 m/s once per 50 yr; exposure sheltered; elevation 100 m; rain 80 mm/h; soil loam; basis asce7-asd }\n`;

/** Houses that differ in what decides the work: bow shape, spacing, length. No two have the same bow. */
function house(index: number): string {
  const rise = 66 + (index % 97) * 0.25;
  const spaced = 24 + (index % 5) * 6;
  const long = 20 + (index % 9) * 4;
  return `import "site.shelter"
/** House ${index}. */
shelter house-${index} on test-field {
  footprint ${11 + (index % 4)} ft by ${long} ft
  bows spaced ${spaced} in of ${index % 3 === 0 ? 'pvc40-32' : 'pvc40-25'} { shape elastic; rise ${rise} in; foot stub of rebar-16 { length 5 ft; deep 3 ft } }
  ridge rail of lumber-2x4 { frames tied; posts of lumber-4x4 spaced 8 ft { foot hole { deep 2 ft; across 10 in } } }
  cover roof with film-uv-150 { fastened by board-1x3; tension 150 N/m; installed 2026-03-01 }
}
`;
}

/** Memory of a process now, or its largest so far, MB; undefined where the system does not tell. */
function memoryOf(pid: number): number | undefined {
  try {
    const status = readFileSync(`/proc/${pid}/status`, 'utf8');
    const kilobytes = /^VmHWM:\s+(\d+) kB/m.exec(status)?.[1] ?? /^VmRSS:\s+(\d+) kB/m.exec(status)?.[1];
    return kilobytes === undefined ? undefined : Number(kilobytes) / 1024;
  } catch {
    return undefined;
  }
}

function check(folder: string): Promise<Omit<Run, 'count'>> {
  return new Promise((resolve, reject) => {
    const start = performance.now();
    const child = spawn(process.execPath, [cli, 'check', folder, '--format', 'json', '--on', '2026-11-25'], {
      stdio: ['ignore', 'pipe', 'ignore'],
    });
    let peak: number | undefined;
    const watch = setInterval(() => {
      const now = child.pid === undefined ? undefined : memoryOf(child.pid);
      if (now !== undefined) peak = Math.max(peak ?? 0, now);
    }, 50);
    child.stdout.resume();
    child.on('exit', (code) => {
      clearInterval(watch);
      const seconds = (performance.now() - start) / 1000;
      // 1 means findings, which some of these houses have.
      if (code === 0 || code === 1) resolve({ seconds, peak });
      else reject(new Error(`tautline check ended with ${code}`));
    });
  });
}

execFileSync(process.execPath, [join(folderOfCli, 'build.mjs')]);
const root = mkdtempSync(join(tmpdir(), 'tautline-bench-'));
let before: Run | undefined;
try {
  for (const count of counts) {
    const folder = join(root, String(count));
    mkdirSync(folder);
    writeFileSync(join(folder, 'site.shelter'), site);
    for (let index = 0; index < count; index += 1)
      writeFileSync(join(folder, `house-${String(index).padStart(5, '0')}.shelter`), house(index));
    const run: Run = { count, ...(await check(folder)) };
    const each = ((1000 * run.seconds) / count).toFixed(0);
    const memory = run.peak === undefined ? 'memory not told' : `${run.peak.toFixed(0)} MB at most`;
    const over = run.peak !== undefined && run.peak > limit ? `, OVER ${limit} MB` : '';
    console.log(
      `check of ${count} specs on ${availableParallelism()} cores: ${run.seconds.toFixed(1)} s, ${each} ms each, ${memory}${over}`,
    );
    if (before !== undefined) {
      const more = (count / before.count).toFixed(2);
      const longer = (run.seconds / before.seconds).toFixed(2);
      console.log(`${before.count} to ${count} specs: ${more} times as many, ${longer} times as long`);
    }
    before = run;
  }
} finally {
  rmSync(root, { recursive: true, force: true });
}

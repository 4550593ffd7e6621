/**
 * Runs the independent general-purpose finite element solver `ccx` (Debian package calculix-ccx) on a plane
 * frame of round tubes: quadratic beam elements B32R with SECTION=PIPE, mid nodes on the member's line.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export interface TubeFrame {
  /** points of the line, ends and mid nodes alternating: element k spans points 2k, 2k+1, 2k+2 */
  readonly lines: readonly (readonly { x: number; y: number }[])[];
  readonly outside: number;
  readonly wall: number;
  readonly E: number;
  readonly poisson: number;
  /** point held: index of line, of point, and which of x, y, r */
  readonly held: readonly { line: number; point: number; dofs: string }[];
  readonly loads: readonly { line: number; point: number; fx: number; fy: number }[];
  readonly nonlinear: boolean;
}

export interface TubeAnswer {
  /** dx, dy of every point of every line */
  readonly moved: readonly (readonly { dx: number; dy: number }[])[];
  /** fx, fy of the supports on the frame, in the order of `held` */
  readonly reactions: readonly { fx: number; fy: number }[];
}

export const ccxInstalled = (): boolean => {
  const asked = spawnSync('ccx', ['-v'], { encoding: 'utf8' });
  return asked.error === undefined && /version/i.test(asked.stdout);
};

/** Where two lines share a point they share the node, as a rigid corner. */
function numbering(frame: TubeFrame) {
  const nodes: { x: number; y: number }[] = [];
  const ids = frame.lines.map((line) =>
    line.map((p) => {
      const known = nodes.findIndex((n) => Math.hypot(n.x - p.x, n.y - p.y) < 1e-9);
      return known >= 0 ? known + 1 : nodes.push(p);
    }),
  );
  return { nodes, ids };
}

export function ccxInput(frame: TubeFrame): string {
  const { nodes, ids } = numbering(frame);
  const out = ['*NODE, NSET=ALL'];
  for (const [n, p] of nodes.entries()) out.push(`${n + 1}, ${p.x.toFixed(12)}, ${p.y.toFixed(12)}, 0.`);
  out.push('*ELEMENT, TYPE=B32R, ELSET=TUBES');
  let element = 1;
  for (const line of ids)
    for (let k = 0; k + 2 < line.length; k += 2)
      out.push(`${element++}, ${line[k]}, ${line[k + 1]}, ${line[k + 2]}`);
  out.push('*MATERIAL, NAME=TUBE', '*ELASTIC', `${frame.E}, ${frame.poisson}`);
  out.push('*BEAM SECTION, ELSET=TUBES, MATERIAL=TUBE, SECTION=PIPE');
  out.push(`${frame.outside / 2}, ${frame.wall}`, '0., 0., 1.');
  out.push('*NSET, NSET=HELD', ...frame.held.map((h) => `${ids[h.line]![h.point]}`));
  out.push('*BOUNDARY', 'ALL, 3, 3, 0.');
  for (const h of frame.held)
    for (const [letter, dof] of [
      ['x', 1],
      ['y', 2],
      ['r', 6],
    ] as const)
      if (h.dofs.includes(letter)) out.push(`${ids[h.line]![h.point]}, ${dof}, ${dof}, 0.`);
  out.push(frame.nonlinear ? '*STEP, NLGEOM, INC=1000' : '*STEP', '*STATIC');
  if (frame.nonlinear) out.push('0.1, 1.');
  out.push('*CLOAD');
  for (const l of frame.loads) {
    const node = ids[l.line]![l.point]!;
    if (l.fx !== 0) out.push(`${node}, 1, ${l.fx}`);
    if (l.fy !== 0) out.push(`${node}, 2, ${l.fy}`);
  }
  out.push(
    '*NODE PRINT, NSET=ALL, FREQUENCY=1000',
    'U',
    '*NODE PRINT, NSET=HELD, FREQUENCY=1000',
    'RF',
    '*END STEP',
    '',
  );
  return out.join('\n');
}

export function runCcx(frame: TubeFrame): TubeAnswer {
  const folder = mkdtempSync(join(tmpdir(), 'frame-'));
  try {
    writeFileSync(join(folder, 'frame.inp'), ccxInput(frame));
    const run = spawnSync('ccx', ['-i', 'frame'], {
      cwd: folder,
      encoding: 'utf8',
      env: { ...process.env, OMP_NUM_THREADS: '1' },
    });
    const text = readFileSync(join(folder, 'frame.dat'), 'utf8');
    if (run.status !== 0 || /\*ERROR/.test(run.stdout))
      throw new Error(`ccx failed: ${run.stdout.slice(-800)}`);
    return parse(frame, text);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function parse(frame: TubeFrame, text: string): TubeAnswer {
  const { ids } = numbering(frame);
  const tables = { displacements: new Map<number, number[]>(), forces: new Map<number, number[]>() };
  let table: Map<number, number[]> | undefined;
  for (const line of text.split('\n')) {
    if (/displacements/.test(line)) table = tables.displacements;
    else if (/forces/.test(line)) table = tables.forces;
    const words = line.trim().split(/\s+/).map(Number);
    // later steps of the same table overwrite earlier ones
    if (table && words.length === 4 && words.every(Number.isFinite)) table.set(words[0]!, words.slice(1));
  }
  const of = (map: Map<number, number[]>, id: number) => {
    const found = map.get(id);
    if (!found) throw new Error(`ccx printed nothing for node ${id}`);
    return found;
  };
  return {
    moved: ids.map((line) =>
      line.map((id) => ({ dx: of(tables.displacements, id)[0]!, dy: of(tables.displacements, id)[1]! })),
    ),
    reactions: frame.held.map((h) => {
      const [fx, fy] = of(tables.forces, ids[h.line]![h.point]!);
      return { fx: fx!, fy: fy! };
    }),
  };
}

import { readFile, stat, writeFile } from 'node:fs/promises';
import { relative, resolve, sep } from 'node:path';
import { cautionLine } from '@tautline/book';
import {
  type RenamedFiles,
  type Review,
  reviewJson,
  reviewMarkdown,
  reviewOf,
  reviewPage,
} from '@tautline/review';
import { buyingFlags } from '../buying.ts';
import { CannotRun, exit } from '../exit.ts';
import { shelterFiles } from '../files.ts';
import {
  commitOf,
  filesAt,
  filesInTree,
  partingOf,
  renamesBetween,
  repositoryAt,
  type TextFile,
} from '../revisions/git.ts';
import { type ReadRevision, workedOut } from '../revisions/worked-out.ts';
import type { Command } from './command.ts';
import { dayOf, needPaths, oneOf, reportsOf, threadsOf, unitsAsked } from './flags.ts';

const formats = ['markdown', 'html', 'json'] as const;

export const review: Command = {
  name: 'review',
  usage:
    'review BASE [HEAD] [--format markdown|html|json] [--out FILE] [--reports FORMAT=FILE,...] [--fail-on error|warning] [--repository DIR] [--threads N] [--prices FILE.csv] [--units metric|us] [--on DATE]',
  does: 'Tells what a change means for the shelters: two revisions of a git repository (BASE...HEAD for where they parted; HEAD left out is the working tree), or two folders. Exit code 1 when a finding came, an acceptance went stale or a shelter can no longer be worked out.',
  options: {
    format: { type: 'string' },
    out: { type: 'string' },
    reports: { type: 'string' },
    'fail-on': { type: 'string' },
    repository: { type: 'string' },
    threads: { type: 'string' },
    units: { type: 'string' },
    on: { type: 'string' },
    ...buyingFlags,
  },
  async run(args, output, machine) {
    const format = oneOf(args, 'format', formats, 'markdown');
    const reports = reportsOf(args, formats);
    const level = oneOf(args, 'fail-on', ['error', 'warning'] as const, 'error');
    const asked = unitsAsked(args);
    const units = asked === undefined ? {} : { system: asked };
    const day = dayOf(args);
    const out = args.flags['out'];
    const [base, head, ...rest] = needPaths(args, 'which revision or folder to compare with');
    if (base === undefined || rest.length > 0)
      throw new CannotRun('Review takes one or two revisions, or two folders.');
    const { before, after, renamed } =
      head !== undefined && (await isFolder(base)) && (await isFolder(head))
        ? await foldersOf(base, head)
        : await revisionsOf(base, head, args.flags['repository']);
    const threaded = { ...machine, threads: threadsOf(args, machine) };
    const made = reviewOf(...(await workedOut(before, after, renamed, args, day, threaded)), renamed);
    const options = { ...units, caution: cautionLine };
    const told: Readonly<Record<(typeof formats)[number], () => string>> = {
      markdown: () => reviewMarkdown(made, options),
      html: () => reviewPage(made, options),
      json: () => reviewJson(made, asked),
    };
    for (const report of reports) await writeFile(report.file, told[report.format]());
    const text = told[format]();
    if (typeof out === 'string') {
      await writeFile(out, text);
      output.out(`Wrote the review of ${made.shelters.length} shelters into ${out}.\n`);
    } else output.out(text);
    return failsReview(made, level) ? exit.findings : exit.clean;
  },
};

interface BothSides {
  readonly before: ReadRevision;
  readonly after: ReadRevision;
  readonly renamed: RenamedFiles;
}

async function revisionsOf(
  base: string,
  head: string | undefined,
  folder: string | boolean | undefined,
): Promise<BothSides> {
  const repository = await repositoryAt(typeof folder === 'string' ? folder : process.cwd());
  const parted = /^(.*)\.\.\.(.*)$/.exec(base);
  if (parted && head !== undefined) throw new CannotRun('Say BASE...HEAD, or BASE and HEAD, not both.');
  const [from, to] = parted ? [parted[1] || 'HEAD', parted[2] || 'HEAD'] : [base, head];
  const toCommit = to === undefined ? undefined : await commitOf(repository, to);
  const named = await commitOf(repository, from);
  const fromCommit = parted && toCommit !== undefined ? await partingOf(repository, named, toCommit) : named;
  return {
    before: { label: from, files: await filesAt(repository, fromCommit) },
    after:
      toCommit === undefined
        ? { label: 'working tree', files: await filesInTree(repository) }
        : { label: to ?? '', files: await filesAt(repository, toCommit) },
    renamed: await renamesBetween(repository, fromCommit, toCommit),
  };
}

async function foldersOf(base: string, head: string): Promise<BothSides> {
  return {
    before: { label: base, files: await filesIn(base) },
    after: { label: head, files: await filesIn(head) },
    renamed: new Map(),
  };
}

async function filesIn(folder: string): Promise<TextFile[]> {
  const files = await shelterFiles([folder]);
  return Promise.all(
    files.map(async (file) => ({
      path: relative(resolve(folder), file).split(sep).join('/'),
      text: (await readFile(file)).toString('utf8'),
    })),
  );
}

async function isFolder(path: string): Promise<boolean> {
  return (await stat(path).catch(() => undefined))?.isDirectory() === true;
}

/** Whether the change made anything worse at or above the level. */
function failsReview({ shelters }: Review, level: 'error' | 'warning'): boolean {
  const counts = (severity: string | undefined): boolean =>
    severity === 'error' || (level === 'warning' && severity === 'warning');
  return shelters.some(
    ({ findings, acceptances, problems, pair }) =>
      findings.some(
        ({ change, before, after }) =>
          counts(after?.severity) &&
          (change === 'came' || (change === 'worse' && after?.severity !== before?.severity)),
      ) ||
      acceptances.some(({ change }) => change === 'went stale') ||
      (pair.after !== undefined && problems.after !== undefined && problems.before === undefined),
  );
}

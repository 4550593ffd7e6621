import { readdir, readFile, writeFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { shelterTemplates, templateFor, textOfTemplate } from '@tautline/language';
import { CannotRun, exit } from '../exit.ts';
import type { Command } from './command.ts';

export const newShelter: Command = {
  name: 'new',
  usage: 'new [KIND] [--name NAME] [--site NAME] [--out FILE]',
  does: 'Writes the spec of a shelter of one of the structural kinds, to start from; without a kind, lists them.',
  options: { name: { type: 'string' }, site: { type: 'string' }, out: { type: 'string' } },
  async run(args, output) {
    const kind = args.paths[0];
    if (kind === undefined) {
      const width = Math.max(...shelterTemplates.map(({ id }) => id.length));
      for (const { id, title, description } of shelterTemplates)
        output.out(`${id.padEnd(width)}  ${title} (${description})\n`);
      return exit.clean;
    }
    const template = templateFor(kind);
    if (template === undefined) {
      const kinds = shelterTemplates.map(({ id }) => id).join(', ');
      throw new CannotRun(`There is no kind '${kind}'. The kinds are ${kinds}.`);
    }
    const out = text(args.flags['out']);
    const name = nameIn(args.flags['name'], '--name');
    const site = nameIn(args.flags['site'], '--site');
    const folder = out === undefined ? process.cwd() : dirname(resolve(out));
    const imported = site === undefined ? '' : `import "${await fileWithSite(site, folder)}"\n\n`;
    const made =
      imported +
      textOfTemplate(template, {
        ...(name === undefined ? {} : { name }),
        ...(site === undefined ? {} : { site }),
      });
    if (out === undefined) {
      output.out(made);
      return exit.clean;
    }
    // 'wx': what is there already is never written over.
    await writeFile(out, made, { flag: 'wx' }).catch((error: NodeJS.ErrnoException) => {
      throw new CannotRun(
        error.code === 'EEXIST'
          ? `${out} is there already: say another file with --out.`
          : `${out} cannot be written: ${error.message}`,
      );
    });
    output.out(
      `Wrote ${template.title.toLowerCase()} into ${out}. Change the numbers to yours, then check it.\n`,
    );
    return exit.clean;
  },
};

const text = (flag: string | boolean | undefined): string | undefined =>
  typeof flag === 'string' ? flag : undefined;

function nameIn(flag: string | boolean | undefined, what: string): string | undefined {
  const name = text(flag);
  if (name !== undefined && !/^[a-z][a-z0-9_-]*$/i.test(name))
    throw new CannotRun(`${what} takes a name of letters, digits and dashes; it got '${name}'.`);
  return name;
}

/** The file beside the new one that says this site. */
async function fileWithSite(site: string, folder: string): Promise<string> {
  const said = new RegExp(`^\\s*site\\s+${site}(?![\\w-])`, 'm');
  const beside = await readdir(folder).catch(() => []);
  for (const file of beside.filter((name) => name.endsWith('.shelter')).sort()) {
    if (said.test(await readFile(join(folder, file), 'utf8').catch(() => ''))) return file;
  }
  throw new CannotRun(
    `No file in ${folder} has a site '${site}'. Leave --site out, and a site is written into the new file.`,
  );
}

// Makes the starting points of the new-shelter wizard, and the snippets, from the examples: site and shelter
// in one file, with stops for the name, the ground and the weather.
import { readdir, readFile } from 'node:fs/promises';

const examples = new URL('../../examples/', import.meta.url);

/** Every sound example as a template. */
export async function templates() {
  const names = (await readdir(examples)).filter((name) => name.endsWith('.shelter')).sort();
  const sites = sitesOf(await readFile(new URL('site.shelter', examples), 'utf8'));
  const made = [];
  for (const name of names) {
    const text = await readFile(new URL(name, examples), 'utf8');
    if (!name.endsWith('-flawed.shelter') && /^shelter /m.test(text)) {
      const on = /^shelter [\w-]+ on ([\w-]+)/m.exec(text)?.[1];
      const site = sites.find((one) => one.name === on) ?? sites[0];
      made.push(templateOf(name.replace('.shelter', ''), text, site));
    }
  }
  return made;
}

/** The site blocks of a file, and their names. */
function sitesOf(text) {
  const blocks = [...text.matchAll(/^site ([\w-]+) \{[\s\S]*?^\}/gm)];
  if (blocks.length === 0) {
    throw new Error('site.shelter has no site block');
  }
  return blocks.map(([block, name]) => ({ name, text: block }));
}

/** Pure: one example's text to one template. */
export function templateOf(id, text, site) {
  const own = /^site ([\w-]+) \{[\s\S]*?^\}/m.test(text);
  const body = text.replaceAll(/^import .*\n/gm, '').trim();
  const doc = /\/\*\*\s*([\s\S]*?)\s*\*\/\s*shelter /.exec(body)?.[1] ?? id;
  const first = doc.split('\n')[0].replace(/\.$/, '');
  const [title, ...rest] = first.split(': ');
  let stop = 0;
  const place = (value) => {
    stop += 1;
    return `\${${stop}:${value}}`;
  };
  const marked = (source, pattern, ...groups) =>
    source.replace(pattern, (whole, ...found) =>
      groups.reduce((line, group) => line.replace(found[group], () => place(found[group])), whole),
    );
  let shelter = literal(body);
  shelter = marked(shelter, /^shelter ([\w-]+)/m, 0);
  shelter = marked(shelter, /^ {2}footprint (.+?) by ([^\n{;]+)$/m, 0, 1);
  let ground = own ? '' : literal(site.text);
  ground = marked(ground, /^ {2}gust ([\d.]+ \S+)/m, 0);
  ground = marked(ground, /^ {2}rain ([\d.]+ \S+)/m, 0);
  const size = /^ {2}footprint (.+)$/m.exec(body)?.[1] ?? '';
  return {
    id,
    title,
    description: [rest.join(': '), size].filter((part) => part !== '').join(', '),
    snippet: `${ground}${ground === '' ? '' : '\n\n'}${shelter}\n`,
  };
}

/** As the editor's snippet file wants them. */
export function snippets(made) {
  return Object.fromEntries(
    made.map(({ id, title, description, snippet }) => [
      title,
      {
        prefix: id,
        description: description === '' ? title : `${title}: ${description}`,
        body: snippet.split('\n'),
      },
    ]),
  );
}

function literal(text) {
  return text.replaceAll('\\', '\\\\').replaceAll('$', '\\$');
}

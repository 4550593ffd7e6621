/**
 * Every calculation that the tool shows: the findings of all examples, templates and specs beside the checks, on
 * each basis, with and without snow, soaked or drained, with somebody on the frame or nobody.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { type EvaluateOptions, evaluate, evaluateRange, type Finding } from '@tautline/checks';
import { loadWorkspace, shelterTemplates, textOfTemplate } from '@tautline/language';
import { resolveRange, resolveShelter, type Shelter, type Site } from '@tautline/shelter';

/** A finding, and the house it is about. */
export interface Shown {
  readonly where: string;
  readonly finding: Finding;
}

interface Tried {
  readonly name: string;
  readonly of: Partial<Site>;
  readonly person?: boolean;
}

/** What else the sites are tried as; rare steps come up in one of them. */
const sites: readonly Tried[] = [
  { name: 'as written', of: {} },
  { name: 'ASD with snow', of: { basis: 'asce7-asd', groundSnow: 700 }, person: true },
  { name: 'strength, ordinary hazard', of: { basis: 'asce7-strength', lowHazard: false, soaked: false } },
  { name: 'strength with snow', of: { basis: 'asce7-strength', groundSnow: 1200, soil: 'sand' } },
  { name: 'Eurocode', of: { basis: 'eurocode', soil: 'clay', gustReturnPeriod: 20 }, person: true },
  { name: 'Eurocode with snow', of: { basis: 'eurocode', groundSnow: 700, soil: 'rock' } },
];

const folder = (path: string): { uri: string; text: string }[] => {
  const at = new URL(`../../${path}/`, import.meta.url);
  return readdirSync(at)
    .filter((name) => name.endsWith('.shelter'))
    .map((name) => ({ uri: new URL(name, at).href, text: readFileSync(new URL(name, at), 'utf8') }));
};

/** The files that are walked, by where they come from, and what their sites are tried as. */
export const corpora: readonly {
  readonly name: string;
  readonly files: () => { readonly uri: string; readonly text: string }[];
  readonly tried: readonly Tried[];
}[] = [
  { name: 'examples', files: () => folder('examples'), tried: [sites[1]!] },
  { name: 'specs beside the checks', files: () => folder('packages/checks/specs'), tried: [sites[0]!] },
  {
    name: 'templates',
    files: () =>
      shelterTemplates.map((template) => ({
        uri: `memory:/${template.id}.shelter`,
        text: textOfTemplate(template),
      })),
    tried: sites,
  },
];

/** The day of the walk; ages are counted to it. */
const on = '2026-11-25';

/** Findings of every shelter of the texts. */
export async function* walk(
  files: readonly { readonly uri: string; readonly text: string }[],
  tried: readonly Tried[],
  options: EvaluateOptions = {},
): AsyncGenerator<Shown> {
  const workspace = await loadWorkspace(files);
  for (const { name, world, kind, uri } of workspace.shelters) {
    const place = `${uri.split('/').at(-1)} ${name}`;
    if (kind === 'range') {
      const { range } = resolveRange(name, world);
      for (const finding of range === undefined ? [] : evaluateRange(range, on).findings)
        yield { where: place, finding };
      continue;
    }
    const { shelter } = resolveShelter(name, world);
    if (shelter === undefined) continue;
    for (const site of tried) {
      const { findings } = evaluate(at(shelter, site.of), {
        on,
        ...(site.person === undefined ? {} : { person: site.person }),
        ...options,
      });
      for (const finding of findings) yield { where: `${place}, ${site.name}`, finding };
    }
  }
}

const at = (shelter: Shelter, of: Partial<Site>): Shelter => ({
  ...shelter,
  site: { ...shelter.site, ...of },
});

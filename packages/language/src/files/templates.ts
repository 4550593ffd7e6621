/** Starting points for each structural kind: whole files in the language, in snippet syntax. */
import { shelterTemplates } from '../generated/templates.ts';
import type { ShelterTemplate } from '../protocol.ts';

export { shelterTemplates };

/** Stops that every template uses for the same thing. */
const nameStop = '1';
const siteStop = '2';

export interface TemplateNames {
  /** Name of the new shelter; the template's own id when left out. */
  readonly name?: string;
  /** Name of its site. With one, the template's own site is left out and the text needs an import of yours. */
  readonly site?: string;
}

/** The template of a kind, by its id. */
export function templateFor(id: string): ShelterTemplate | undefined {
  return shelterTemplates.find((template) => template.id === id);
}

/** What is in the file when every stop is left as it stands, apart from the names given. */
export function textOfTemplate({ snippet }: ShelterTemplate, { name, site }: TemplateNames = {}): string {
  const given: Readonly<Record<string, string | undefined>> = { [nameStop]: name, [siteStop]: site };
  const text = snippet
    .replaceAll(/\$\{(\d+):([^}]*)\}/g, (_, stop: string, usual: string) => given[stop] ?? usual)
    .replaceAll(/\\([\\$])/g, '$1');
  return site === undefined ? text : withoutSite(text);
}

/** The text from the first block that is no site on, with the comment over it. */
function withoutSite(text: string): string {
  const end = text.indexOf('\n}\n');
  return text.slice(end + 3).trimStart();
}

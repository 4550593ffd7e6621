/** The built-in catalogue: files in the language itself, always in scope, opened read-only. */
import { catalogueTexts } from '../generated/catalogue.ts';
import { catalogueScheme } from '../protocol.ts';

export interface SourceFile {
  readonly uri: string;
  readonly text: string;
}

export const catalogueUri = (name: string): string => `${catalogueScheme}:/${name}`;

export const builtInCatalogue: readonly SourceFile[] = Object.entries(catalogueTexts).map(([name, text]) => ({
  uri: catalogueUri(name),
  text,
}));

/** The text of a catalogue file, or undefined when there is none of that address. */
export function catalogueText(uri: string): string | undefined {
  return builtInCatalogue.find((file) => file.uri === uri)?.text;
}

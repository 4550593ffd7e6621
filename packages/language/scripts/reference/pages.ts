/** Every generated page, by its path from the root of the repository. */
import { cataloguePage } from './catalogue-page.ts';
import { cookbookPage, examplesPage } from './examples.ts';
import { languagePage } from './language-page.ts';

export async function pages(): Promise<Readonly<Record<string, string>>> {
  return {
    'packages/language/LANGUAGE.md': languagePage(),
    'packages/language/CATALOGUE.md': await cataloguePage(),
    'packages/language/COOKBOOK.md': cookbookPage(),
    'examples/README.md': examplesPage(),
  };
}

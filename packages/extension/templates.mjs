// The starting points of the new-shelter wizard, and the snippets: made from the examples by the language package.
export { templateOf, templates } from '../language/scripts/templates.mjs';

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

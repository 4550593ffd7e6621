import type { Posts, Rail, Shelter } from './shelter.ts';

/** Rails that hold the roof up between its sides: the ridge, and the inner lines of a grid. */
export function railsUnder({
  ridge,
  inner = [],
}: {
  readonly ridge?: Rail | undefined;
  readonly inner?: Shelter['inner'];
}): readonly Rail[] {
  return ridge === undefined ? inner : [ridge, ...inner];
}

/** Every row of posts: at the sides, under the ridge and under inner lines. */
export function postRows(
  shelter: Parameters<typeof railsUnder>[0] & { readonly sidePosts?: Posts | undefined },
): readonly Posts[] {
  return [shelter.sidePosts, ...railsUnder(shelter).map(({ posts }) => posts)].filter(
    (posts) => posts !== undefined,
  );
}

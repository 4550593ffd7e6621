/**
 * Where something was written, as an opaque key. Only the language layer can turn it back into a place
 * in a text; everything else passes it along. `undefined` text positions never occur: parts that the
 * program added itself carry the origin of the block that made them necessary.
 */
export type Origin = string & { readonly __origin: unique symbol };

export function originOf(key: string): Origin {
  return key as Origin;
}

/** Door for pages that carry the cautions and must not load the whole book to know them. */
export * from './cautions.ts';

/** A shelter's name as a reader is shown it. */
export const shownName = (name: string): string => name.replaceAll('_', ' ');

/** Puts an entry last, and drops the one that was not asked for longest where there are more than `most`. */
export function kept<T>(entries: Map<string, T>, key: string, value: T, most: number): void {
  entries.delete(key);
  entries.set(key, value);
  const [oldest] = entries.keys();
  if (entries.size > most && oldest !== undefined) entries.delete(oldest);
}

/** Builds elements without HTML strings: text can never turn into markup. */
type Child = Node | string | undefined | false;
interface Attributes {
  readonly [name: string]: string | boolean | number | ((event: Event) => void) | undefined;
}

export function element<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Attributes,
  ...children: readonly Child[]
): HTMLElementTagNameMap[K] {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (typeof value === 'function') {
      made.addEventListener(name, value);
    } else if (value !== undefined && value !== false) {
      made.setAttribute(name, value === true ? '' : String(value));
    }
  }
  for (const child of children) {
    if (child !== undefined && child !== false) {
      made.append(child);
    }
  }
  return made;
}

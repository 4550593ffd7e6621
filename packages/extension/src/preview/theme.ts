import { themeVariables } from '@tautline/drawing';

/** Tones that follow the editor's own colours, whatever its theme is. */
const editors = new Set(
  ['ink', 'paper', 'soft', 'member', 'dimension', 'highlight', 'near', 'fails'].map(
    (tone) => `--tautline-${tone}`,
  ),
);

/** Gives the drawings the tones for a light, dark or high-contrast editor, and again when it changes. */
export function followTheme(): void {
  apply();
  new MutationObserver(apply).observe(document.body, { attributes: true, attributeFilter: ['class'] });
}

function apply(): void {
  const kinds = document.body.classList;
  const theme =
    kinds.contains('vscode-high-contrast') && !kinds.contains('vscode-high-contrast-light')
      ? 'contrast'
      : kinds.contains('vscode-dark')
        ? 'dark'
        : 'light';
  for (const [name, colour] of themeVariables(theme)) {
    if (!editors.has(name)) {
      document.documentElement.style.setProperty(name, colour);
    }
  }
}

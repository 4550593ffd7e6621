/**
 * Colours. Hues are from the colour-blind-safe palette of Okabe and Ito (Color Universal Design, 2008:
 * orange E69F00, sky blue 56B4E9, bluish green 009E73, blue 0072B2, vermilion D55E00, reddish purple
 * CC79A7), darkened on light grounds until strokes reach 3:1 and texts 4.5:1 (WCAG 2.1, 1.4.3 and 1.4.11).
 */
import type { Tone } from './pens.ts';

export type ThemeName = 'paper' | 'light' | 'dark' | 'contrast' | 'editor';
export type Theme = Readonly<Record<Tone, string>>;

const light: Theme = {
  ink: '#1a1a1a',
  paper: '#ffffff',
  soft: '#6b6b6b',
  member: '#2b2b2b',
  'member-fill': '#f3dfae',
  film: '#0072b2',
  mesh: '#8a4f77',
  earth: '#6f5428',
  foot: '#5a4a32',
  crop: '#00795a',
  dimension: '#3d3d3d',
  joint: '#a84600',
  water: '#0072b2',
  'water-fill': '#cfe6f5',
  deflected: '#c05000',
  moment: '#8f4a78',
  highlight: '#0072b2',
  near: '#b97f00',
  fails: '#d55e00',
  'bar-fill': '#e4e4e4',
  'offcut-fill': '#ffffff',
};

const dark: Theme = {
  ink: '#ececec',
  paper: '#1e1e1e',
  soft: '#9a9a9a',
  member: '#e3e3e3',
  'member-fill': '#5a4a20',
  film: '#56b4e9',
  mesh: '#cc79a7',
  earth: '#b8925a',
  foot: '#d2bb92',
  crop: '#2fc79a',
  dimension: '#c4c4c4',
  joint: '#f08a3c',
  water: '#56b4e9',
  'water-fill': '#163a52',
  deflected: '#f0803a',
  moment: '#d891b7',
  highlight: '#56b4e9',
  near: '#e69f00',
  fails: '#f0702a',
  'bar-fill': '#3a3a3a',
  'offcut-fill': '#1e1e1e',
};

/** For print: the same lines, readable when the printer has black only. */
const paper: Theme = {
  ...light,
  ink: '#000000',
  member: '#000000',
  'member-fill': '#ececec',
  dimension: '#222222',
  soft: '#5a5a5a',
  film: '#004f7c',
};

const contrast: Theme = {
  ...dark,
  ink: '#ffffff',
  paper: '#000000',
  soft: '#d0d0d0',
  member: '#ffffff',
  'member-fill': '#000000',
  dimension: '#ffffff',
  film: '#7fd0ff',
  crop: '#5fe8c0',
  earth: '#ffd9a0',
  foot: '#ffe9c8',
  near: '#ffc233',
  fails: '#ff8a4a',
  'water-fill': '#00304a',
  'bar-fill': '#222222',
  'offcut-fill': '#000000',
};

/**
 * Tones left to the page that shows the drawing: `--tautline-<tone>` wins, then a colour of the editor
 * where one says the same, then the light theme. A page that knows whether its ground is dark does best
 * to set all `--tautline-` variables from `themeVariables`.
 */
const editorColours: Partial<Record<Tone, string>> = {
  ink: '--vscode-editor-foreground',
  paper: '--vscode-editor-background',
  member: '--vscode-editor-foreground',
  dimension: '--vscode-descriptionForeground',
  soft: '--vscode-descriptionForeground',
  highlight: '--vscode-focusBorder',
  near: '--vscode-editorWarning-foreground',
  fails: '--vscode-editorError-foreground',
  film: '--vscode-charts-blue',
  crop: '--vscode-charts-green',
  deflected: '--vscode-charts-orange',
  moment: '--vscode-charts-purple',
  mesh: '--vscode-charts-purple',
  earth: '--vscode-charts-yellow',
  foot: '--vscode-editor-foreground',
  joint: '--vscode-charts-orange',
  water: '--vscode-charts-blue',
  'water-fill': '--vscode-editor-background',
  'member-fill': '--vscode-editorWidget-background',
  'bar-fill': '--vscode-editorWidget-background',
  'offcut-fill': '--vscode-editor-background',
};

const editor: Theme = Object.fromEntries(
  (Object.entries(light) as [Tone, string][]).map(([tone, plain]) => {
    const own = editorColours[tone];
    return [tone, `var(--tautline-${tone}, ${own ? `var(${own}, ${plain})` : plain})`];
  }),
) as Record<Tone, string>;

export const themes: Readonly<Record<ThemeName, Theme>> = {
  paper,
  light,
  dark,
  contrast,
  editor,
};

/** The colours of a theme as CSS custom properties, for a page that embeds drawings in the 'editor' theme. */
export function themeVariables(name: Exclude<ThemeName, 'editor'>): readonly (readonly [string, string])[] {
  return Object.entries(themes[name]).map(([tone, colour]) => [`--tautline-${tone}`, colour] as const);
}

/** Colours like those an editor gives its pages, for a light, a dark and a high-contrast look. */
const font = {
  'font-family': 'system-ui, sans-serif',
  'font-size': '13px',
  'editor-font-family': 'monospace',
};

export const looks = {
  light: {
    kind: 'vscode-light',
    variables: {
      ...font,
      foreground: '#3b3b3b',
      'editor-foreground': '#3b3b3b',
      'editor-background': '#ffffff',
      descriptionForeground: '#3b3b3b',
      'editorError-foreground': '#e51400',
      'editorWarning-foreground': '#bf8803',
      'textLink-foreground': '#005fb8',
      focusBorder: '#005fb8',
      'button-secondaryForeground': '#3b3b3b',
      'button-secondaryBackground': '#e5e5e5',
      'editorWidget-background': '#f8f8f8',
    },
  },
  dark: {
    kind: 'vscode-dark',
    variables: {
      ...font,
      foreground: '#cccccc',
      'editor-foreground': '#cccccc',
      'editor-background': '#1f1f1f',
      descriptionForeground: '#9d9d9d',
      'editorError-foreground': '#f14c4c',
      'editorWarning-foreground': '#cca700',
      'textLink-foreground': '#4daafc',
      focusBorder: '#0078d4',
      'button-secondaryForeground': '#cccccc',
      'button-secondaryBackground': '#313131',
      'editorWidget-background': '#202020',
    },
  },
  contrast: {
    kind: 'vscode-high-contrast',
    variables: {
      ...font,
      foreground: '#ffffff',
      'editor-foreground': '#ffffff',
      'editor-background': '#000000',
      descriptionForeground: '#ffffff',
      'editorError-foreground': '#f48771',
      'editorWarning-foreground': '#ffd370',
      'textLink-foreground': '#21a6ff',
      focusBorder: '#f38518',
      'button-secondaryForeground': '#ffffff',
      'button-secondaryBackground': '#000000',
      'editorWidget-background': '#0c141f',
    },
  },
};

import { Uri, type Webview } from 'vscode';
import type { SheetState } from '../preview/messages.ts';

/**
 * The empty page of a drawing sheet. Nothing may be loaded but our one style sheet and, by nonce, our two
 * scripts (the second with the first look at the house in space), and images from the page's own memory, through
 * which a drawing becomes a PNG: no fonts, no inline styles, no connections.
 */
export function sheetPage(webview: Webview, extensionUri: Uri, state: SheetState): string {
  const nonce = newNonce();
  const script = webview.asWebviewUri(Uri.joinPath(extensionUri, 'dist', 'preview.js'));
  const space = webview.asWebviewUri(Uri.joinPath(extensionUri, 'dist', 'space.js'));
  const style = webview.asWebviewUri(Uri.joinPath(extensionUri, 'dist', 'preview.css'));
  const policy = `default-src 'none'; style-src ${webview.cspSource}; script-src 'nonce-${nonce}'; img-src blob:`;
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="UTF-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Drawing sheet</title>
<link rel="stylesheet" href="${style}">
</head>
<body>
<main id="sheet" data-space="${attribute(space.toString())}" data-state="${attribute(JSON.stringify(state))}"></main>
<script nonce="${nonce}" src="${script}"></script>
</body>
</html>`;
}

function newNonce(): string {
  const bytes = globalThis.crypto.getRandomValues(new Uint8Array(18));
  return btoa(String.fromCharCode(...bytes)).replaceAll(/[+/=]/g, '0');
}

function attribute(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('"', '&quot;').replaceAll('<', '&lt;');
}

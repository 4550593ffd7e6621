/** Script of the drawing sheet's page. Draws what it is sent; works nothing out. */
import type { FromSheet, SheetState, ToSheet } from './messages.ts';
import { rasterised } from './raster.ts';
import { Sheet } from './sheet.ts';
import { followTheme } from './theme.ts';
import { tellWidth } from './width.ts';

interface EditorApi {
  getState(): SheetState | undefined;
  setState(state: SheetState): void;
  postMessage(message: FromSheet): void;
}
declare function acquireVsCodeApi(): EditorApi;

const editor = acquireVsCodeApi();
const root = document.getElementById('sheet');
if (root !== null) {
  followTheme();
  const given = JSON.parse(root.getAttribute('data-state') ?? '{}') as SheetState;
  const script = document.querySelector<HTMLScriptElement>('script[nonce]');
  const sheet = new Sheet(
    root,
    { src: root.getAttribute('data-space') ?? '', nonce: script?.nonce ?? '' },
    editor.getState() ?? given,
    (message) => editor.postMessage(message),
    (state) => editor.setState(state),
  );
  window.addEventListener('message', ({ data }: MessageEvent<ToSheet>) => {
    if (data.type === 'answer') {
      sheet.answered(data.answer, data.file);
    } else if (data.type === 'cursor') {
      sheet.cursorAt(data);
    } else if (data.type === 'detail') {
      sheet.detailed(data.id, data.answer);
    } else if (data.type === 'offer-files') {
      sheet.offerFiles();
    } else if (data.type === 'rasterise') {
      const { id } = data;
      void rasterised(data.svg, data.width).then((base64) =>
        editor.postMessage({ type: 'raster', id, ...(base64 === undefined ? {} : { base64 }) }),
      );
    } else if (data.type === 'explored') {
      sheet.explored(data.shelter, data.answer);
    } else if (data.type === 'waiting') {
      sheet.wait(data.reason);
    }
  });
  tellWidth(root, (wide) => editor.postMessage({ type: 'width', ...(wide === undefined ? {} : { wide }) }));
  editor.postMessage({ type: 'ready' });
}

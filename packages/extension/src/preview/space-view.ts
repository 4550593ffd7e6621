import type { DetailAnswer } from '../details.ts';
import { element } from './dom.ts';
import type { Look, PartState, SpaceActions, SpaceView } from './space/contract.ts';

type Space = Extract<DetailAnswer, { kind: 'space' }>;
const firstLook: Look = { turn: 0.7, tilt: 0.35, away: 1.35 };

/** Holds the picture in space across redraws of the page, and loads its script with the first look. */
export class SpaceHolder {
  readonly root: HTMLElement;
  private readonly canvas: HTMLElement;
  private readonly note: HTMLElement;
  private readonly script: { readonly src: string; readonly nonce: string };
  private readonly actions: SpaceActions;
  private readonly look: Look;
  private loading: Promise<void> | undefined;
  private view: SpaceView | undefined;
  private marks: (part: string) => PartState = () => 'plain';

  constructor(script: { src: string; nonce: string }, look: Look | undefined, actions: SpaceActions) {
    this.script = script;
    this.actions = actions;
    this.look = look ?? firstLook;
    this.canvas = element('div', {
      class: 'space',
      tabindex: 0,
      role: 'img',
      'data-key': 'space',
      'aria-roledescription': 'house in space',
    });
    this.note = element('p', { class: 'empty', role: 'status' }, 'Drawing the house in space.');
    this.root = element('div', { class: 'frame' }, this.note, this.canvas);
    new MutationObserver(() => this.view?.recolour()).observe(document.body, {
      attributes: true,
      attributeFilter: ['class'],
    });
  }

  show(answer: Space): void {
    this.canvas.setAttribute(
      'aria-label',
      `${answer.description} Arrow keys turn it, plus and minus change the distance.`,
    );
    this.loading ??= this.load();
    void this.loading.then(() => {
      this.view?.show(answer.scene, answer.grid);
      this.view?.mark(this.marks);
    });
  }

  mark(stateOf: (part: string) => PartState): void {
    this.marks = stateOf;
    this.view?.mark(stateOf);
  }

  private async load(): Promise<void> {
    const { src, nonce } = this.script;
    const loaded = await new Promise<boolean>((resolve) => {
      const script = document.createElement('script');
      script.nonce = nonce;
      script.src = src;
      script.addEventListener('load', () => resolve(true));
      script.addEventListener('error', () => resolve(false));
      document.head.append(script);
    });
    this.view = loaded ? globalThis.tautlineSpace?.(this.canvas, this.look, this.actions) : undefined;
    if (this.view === undefined) {
      this.note.textContent =
        'This window cannot draw in space (no WebGL). The parts of the house are listed below.';
      this.canvas.hidden = true;
    } else {
      this.note.hidden = true;
    }
  }
}

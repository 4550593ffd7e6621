import type { PreviewPart, PreviewShelter } from '@tautline/language/protocol';
import { markPart, worstOf } from './drawing-view.ts';
import { partAt, partOf } from './parts.ts';
import type { TabBodies } from './tab-bodies.ts';

export interface Cursor {
  readonly uri: string;
  readonly line: number;
  readonly character: number;
}

/** The part that is marked (under the cursor, or clicked) and the one that is pointed at. */
export class Marks {
  cursor: Cursor | undefined;
  clicked: PreviewPart | undefined;
  pointed: PreviewPart | undefined;

  /** Puts the marks on what is on show. */
  draw(root: HTMLElement, shelter: PreviewShelter | undefined, bodies: TabBodies): void {
    const { cursor, pointed } = this;
    const under =
      shelter === undefined || cursor === undefined
        ? undefined
        : partAt(shelter, cursor.uri, cursor.line, cursor.character);
    const marked = this.clicked ?? under;
    const paper = root.querySelector('.paper');
    if (paper !== null && shelter !== undefined) {
      markPart(paper, shelter, marked?.id, 'marked');
      markPart(paper, shelter, pointed?.id, 'pointed');
    }
    bodies.markInSpace((id) => {
      const own = shelter === undefined ? undefined : partOf(shelter, id);
      if (shelter === undefined || own === undefined) {
        return 'plain';
      }
      if (own.id === marked?.id) {
        return 'marked';
      }
      return own.id === pointed?.id ? 'pointed' : (worstOf(shelter, own.id)?.className ?? 'plain');
    });
    for (const button of root.querySelectorAll('[data-part-button]')) {
      const id = button.getAttribute('data-part-button');
      const here = id === marked?.id;
      button.classList.toggle('pointed', id === pointed?.id);
      button.classList.toggle('current', here);
      button.setAttribute('aria-current', String(here));
    }
    const caption = root.querySelector('.caption');
    if (caption !== null) {
      const text = (pointed ?? marked)?.title ?? '';
      if (caption.textContent !== text) {
        caption.textContent = text;
      }
    }
  }
}

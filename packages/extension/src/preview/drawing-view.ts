import type { PreviewDrawing, PreviewPart, PreviewShelter } from '@tautline/language/protocol';
import { element } from './dom.ts';
import { partOf } from './parts.ts';
import { standingOf } from './standing.ts';

/** A drawing that was drawn. */
export type DrawnView = Required<PreviewDrawing>;

export interface DrawingActions {
  readonly reveal: (part: PreviewPart) => void;
  /** The pointer is over a part, or over none. */
  readonly point: (part: PreviewPart | undefined) => void;
}

const forbidden = new Set(['script', 'foreignobject', 'iframe', 'image', 'use', 'a', 'animate', 'set']);

/** The drawing itself on its sheet. */
export function drawingView(
  shelter: PreviewShelter,
  drawing: DrawnView,
  actions: DrawingActions,
): HTMLElement {
  const paper = element('div', {
    class: 'paper',
    tabindex: 0,
    role: 'group',
    'aria-label': 'Drawing',
  });
  const svg = adopt(drawing.svg);
  if (svg === undefined) {
    paper.append(element('p', { class: 'empty' }, 'This drawing could not be read.'));
    return paper;
  }
  svg.setAttribute('role', 'img');
  svg.setAttribute('aria-label', drawing.description);
  const over = (event: Event): PreviewPart | undefined => {
    const mark = event.target instanceof Element ? event.target.closest('[data-part]') : null;
    return partOf(shelter, mark?.getAttribute('data-part') ?? '');
  };
  svg.addEventListener('click', (event) => {
    const part = over(event);
    if (part !== undefined) {
      actions.reveal(part);
    }
  });
  svg.addEventListener('pointermove', (event) => actions.point(over(event)));
  svg.addEventListener('pointerleave', () => actions.point(undefined));
  // The bars of a chart have a meaning of their own.
  if (!svg.getAttribute('data-view')?.endsWith('-chart')) {
    colourVerdicts(svg, shelter);
  }
  paper.append(svg);
  return paper;
}

/** Puts a class on every mark of a part; with `undefined`, takes it off all. */
export function markPart(
  root: Element,
  shelter: PreviewShelter,
  partId: string | undefined,
  className: string,
): void {
  for (const mark of root.querySelectorAll('[data-part]')) {
    const own = partOf(shelter, mark.getAttribute('data-part') ?? '');
    mark.classList.toggle(className, own !== undefined && own.id === partId);
  }
}

/** Share of the paper's width below which a drawing is not made to fit its height: one scrolls instead. */
const NARROWEST = 0.55;

/** At zoom 1 the whole drawing is seen, unless it would be too small to read. */
export function sizeOf(svg: SVGSVGElement, zoom: number): void {
  const box = svg.viewBox.baseVal;
  const ratio = box.width > 0 && box.height > 0 ? box.height / box.width : 0.6;
  const paper = svg.parentElement;
  const [wide, tall] = [paper?.clientWidth ?? 0, paper?.clientHeight ?? 0];
  const fits = wide > 0 && tall > 0 ? (tall - MARGIN) / ratio / (wide - MARGIN) : 1;
  const share = Math.min(1, Math.max(NARROWEST, fits));
  svg.style.setProperty('width', `${zoom * share * 100}%`);
  svg.style.setProperty('aspect-ratio', `1 / ${ratio}`);
}

/** Room around the drawing on its paper, px: the padding of `.paper` on both sides. */
const MARGIN = 12;

/**
 * Once the drawing is on the page: shows only the drawing proper, because heading and key stand around it
 * in the page's own letters, and lets small letters grow when the drawing is shown smaller than it is.
 */
export function fitDrawing(svg: SVGSVGElement, zoom: number): void {
  sizeCropped(svg, zoom);
  if (svg.getAttribute('data-view') === 'setting-out') return;
  const shown = svg.clientWidth / svg.viewBox.baseVal.width;
  // Texts of a chart stand in columns that do not grow with them.
  const chart = svg.getAttribute('data-view')?.endsWith('-chart') === true;
  const small = !chart && shown > 0 && shown < 0.85;
  svg.classList.toggle('small', small);
  // Letters that have grown reach further.
  if (small) sizeCropped(svg, zoom);
}

function sizeCropped(svg: SVGSVGElement, zoom: number): void {
  const scaleBar = bounds(svg.querySelector<SVGGElement>('[data-part="scale-bar"][data-kind="part"]'));
  const tops = [...svg.querySelectorAll<SVGGElement>('g[data-part]:not([data-part="sheet"])')]
    .map(bounds)
    .filter((one) => one !== undefined)
    .map((one) => one.y);
  if (svg.getAttribute('data-view') !== 'setting-out' && scaleBar !== undefined && tops.length > 0) {
    const box = svg.viewBox.baseVal;
    const top = Math.min(...tops) - 8;
    box.height = scaleBar.y + scaleBar.height + 8 - top;
    box.y = top;
  }
  sizeOf(svg, zoom);
}

function bounds(group: SVGGElement | null): DOMRect | undefined {
  const box = group?.getBBox();
  return box !== undefined && box.width + box.height > 0 ? box : undefined;
}

/** The number in the balloon that points at a part, as drawn. */
function numberOf(svg: Element, partId: string): string {
  const balloon = svg.querySelector(
    `[data-part="${CSS.escape(partId)}"][data-kind="annotation"] circle.tl-balloon + text`,
  );
  return balloon?.textContent ?? '';
}

/** Takes a drawing in, without anything that could run, load or link. */
function adopt(text: string): SVGSVGElement | undefined {
  const parsed = new DOMParser().parseFromString(text, 'image/svg+xml').documentElement;
  if (parsed.nodeName.toLowerCase() !== 'svg') {
    return undefined;
  }
  const svg = document.importNode(parsed, true) as unknown as SVGSVGElement;
  for (const one of [svg, ...svg.querySelectorAll('*')]) {
    if (forbidden.has(one.nodeName.toLowerCase())) {
      one.remove();
      continue;
    }
    for (const { name } of [...one.attributes]) {
      if (name.startsWith('on') || name.endsWith('href')) {
        one.removeAttribute(name);
      }
    }
  }
  svg.removeAttribute('width');
  svg.removeAttribute('height');
  return svg;
}

function colourVerdicts(svg: SVGSVGElement, shelter: PreviewShelter): void {
  for (const { id } of shelter.parts) {
    const worst = worstOf(shelter, id);
    if (worst !== undefined) {
      markPart(svg, shelter, id, `part-${worst.className}`);
    }
  }
}

/** The parts as a list of buttons: a legend for eyes, and the way in for keyboard and screen reader. */
export function partsList(
  shelter: PreviewShelter,
  isDrawn: (part: string) => boolean,
  svg: Element | null,
  actions: DrawingActions,
): HTMLElement {
  const drawn = shelter.parts.filter(({ id }) => isDrawn(id));
  const list = element('ul', {
    class: 'parts',
    'aria-label': 'Parts in this drawing',
  });
  const numbers = drawn.map(({ id }) => (svg === null ? '' : numberOf(svg, id)));
  const numbered = numbers.some((one) => one !== '');
  for (const [index, part] of drawn.entries()) {
    const worst = worstOf(shelter, part.id);
    list.append(
      element(
        'li',
        {},
        element(
          'button',
          {
            type: 'button',
            'data-part-button': part.id,
            title: 'Go to its line',
            click: () => actions.reveal(part),
            focus: () => actions.point(part),
            blur: () => actions.point(undefined),
            pointerenter: () => actions.point(part),
            pointerleave: () => actions.point(undefined),
          },
          numbered && element('span', { class: 'number' }, numbers[index]),
          worst !== undefined &&
            element('span', { class: `flag ${worst.className}`, title: worst.word }, worst.sign),
          part.title,
          worst !== undefined && element('span', { class: 'unseen' }, `, ${worst.word}`),
        ),
      ),
    );
  }
  return list;
}

/** Whether a drawing shows a part, itself or by one of its own parts. */
export function drawnIn({ svg }: DrawnView): (part: string) => boolean {
  return (part) => svg.includes(`data-part="${part}"`) || svg.includes(`data-part="${part}/`);
}

export function worstOf(
  shelter: PreviewShelter,
  partId: string,
): { word: string; sign: string; className: 'fails' | 'near' } | undefined {
  const own = shelter.findings.filter((one) => one.part === partId).map(standingOf);
  if (own.includes('fails')) {
    return { word: 'fails', sign: '×', className: 'fails' };
  }
  if (own.includes('near')) {
    return { word: 'to watch', sign: '!', className: 'near' };
  }
  return undefined;
}

import type { Explored, PreviewDrawing, PreviewShelter } from '@tautline/language/protocol';
import type { DetailsKept } from './details-kept.ts';
import { element } from './dom.ts';
import {
  type DrawingActions,
  type DrawnView,
  drawingView,
  drawnIn,
  partsList,
  sizeOf,
} from './drawing-view.ts';
import { partOf } from './parts.ts';
import { SectionTab } from './section-tab.ts';
import type { PartState } from './space/contract.ts';
import { SpaceHolder } from './space-view.ts';
import type { TabHost } from './tab-host.ts';
import { zoomButtons } from './zoom.ts';

/** Bodies of the tabs that show a picture: drawings, results over the section, gusts, the house in space. */
export class TabBodies {
  private readonly host: TabHost;
  private readonly details: DetailsKept;
  private readonly spaceScript: { src: string; nonce: string };
  private readonly sectionTab: SectionTab;
  private inSpace: SpaceHolder | undefined;

  constructor(host: TabHost, details: DetailsKept, spaceScript: { src: string; nonce: string }) {
    this.host = host;
    this.details = details;
    this.spaceScript = spaceScript;
    this.sectionTab = new SectionTab(host, details, (shelter, drawing, captions, more) =>
      this.drawing(shelter, drawing, captions, more),
    );
  }

  /** Marks parts of the house in space, if it has been looked at. */
  markInSpace(stateOf: (part: string) => PartState): void {
    this.inSpace?.mark(stateOf);
  }

  private actions(): DrawingActions {
    return { reveal: (part) => this.host.reveal(part), point: (part) => this.host.point(part) };
  }

  drawing(
    shelter: PreviewShelter,
    drawing: DrawnView,
    captions: readonly string[] = [],
    more?: HTMLElement,
  ): HTMLElement[] {
    const actions = this.actions();
    const paper = drawingView(shelter, drawing, actions);
    const zoom = zoomButtons(
      () => this.host.state().zoom ?? 1,
      (wanted) => this.zoomTo(wanted),
    );
    return [
      element('div', { class: 'frame' }, paper, zoom),
      ...captions.map((text) => element('p', { class: 'note' }, text)),
      element('p', { class: 'caption unseen', 'aria-live': 'polite' }),
      more ?? partsList(shelter, drawnIn(drawing), paper.querySelector('svg'), actions),
    ];
  }

  /** The body of a drawing's tab: as it came with the answer, or asked for by itself. */
  view(shelter: PreviewShelter, drawing: PreviewDrawing): HTMLElement[] {
    const drawn = this.drawn(shelter, drawing);
    if (typeof drawn === 'string') {
      return [element('p', { class: 'empty', role: 'status' }, drawn)];
    }
    return drawing.view === 'section' ? this.section(shelter, drawn) : this.drawing(shelter, drawn);
  }

  /** The drawing of this text, or why there is none yet; never that of an earlier one. */
  drawn(shelter: PreviewShelter, { view, description, svg }: PreviewDrawing): DrawnView | string {
    if (svg !== undefined) {
      return { view, description: description ?? '', svg };
    }
    const answer = this.details.now(shelter.name, { kind: 'view', view });
    if (answer?.kind === 'drawing') {
      return { view, ...answer };
    }
    return answer?.kind === 'nothing' ? answer.why : 'Being drawn.';
  }

  section(shelter: PreviewShelter, plain: DrawnView): HTMLElement[] {
    return this.sectionTab.show(shelter, plain);
  }

  /** Whether the section has to be drawn in its place because somebody holds the slider. */
  get busy(): boolean {
    return this.sectionTab.busy;
  }

  refreshSection(shelter: PreviewShelter, plain: DrawnView): void {
    this.sectionTab.refresh(shelter, plain);
  }

  /** The chart of what exploring found. */
  variants(shelter: PreviewShelter, explored: Explored): HTMLElement[] {
    const answer = this.details.of(shelter.name, { kind: 'variants', explored });
    if (answer?.kind !== 'drawing') {
      const why = answer?.kind === 'nothing' ? answer.why : 'Being drawn.';
      return [element('p', { class: 'note', role: 'status' }, why)];
    }
    return [
      element(
        'div',
        { class: 'chart' },
        drawingView(shelter, { view: 'section', ...answer }, this.actions()),
      ),
    ];
  }

  gusts(shelter: PreviewShelter): HTMLElement[] {
    const answer = this.details.of(shelter.name, { kind: 'gusts' });
    if (answer?.kind !== 'drawing') {
      const why = answer?.kind === 'nothing' ? answer.why : 'Being worked out.';
      return [element('p', { class: 'empty', role: 'status' }, why)];
    }
    const old =
      shelter.gustsOld === true ? ['These gusts are those of the text before; new ones follow.'] : [];
    return this.drawing(shelter, { view: 'section', ...answer }, [...answer.captions, ...old]);
  }

  space(shelter: PreviewShelter): HTMLElement[] {
    const answer = this.details.of(shelter.name, { kind: 'space' });
    if (answer?.kind !== 'space') {
      const why = answer?.kind === 'nothing' ? answer.why : 'Being drawn.';
      return [element('p', { class: 'empty', role: 'status' }, why)];
    }
    this.inSpace ??= new SpaceHolder(this.spaceScript, this.host.state().look, {
      pick: (id) => {
        const now = this.host.current();
        const part = now === undefined ? undefined : partOf(now, id ?? '');
        if (part !== undefined) {
          this.host.reveal(part);
        }
      },
      point: (id) => {
        const now = this.host.current();
        this.host.point(now === undefined ? undefined : partOf(now, id ?? ''));
      },
      looked: (look) => {
        this.host.keep({ ...this.host.state(), look });
      },
    });
    this.inSpace.show(answer);
    const shown = new Set([...answer.scene.segments, ...answer.scene.surfaces].map(({ part }) => part));
    const isDrawn = (part: string): boolean =>
      shown.has(part) || [...shown].some((id) => id.startsWith(`${part}/`));
    return [
      this.inSpace.root,
      element('p', { class: 'note' }, answer.description),
      element('p', { class: 'caption note', 'aria-live': 'polite' }),
      partsList(shelter, isDrawn, null, this.actions()),
    ];
  }

  private zoomTo(zoom: number): void {
    this.host.keep({ ...this.host.state(), zoom });
    const svg = document.querySelector<SVGSVGElement>('.paper svg');
    if (svg !== null) {
      sizeOf(svg, zoom);
    }
  }
}

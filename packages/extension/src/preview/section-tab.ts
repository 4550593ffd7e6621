import type { PreviewShelter } from '@tautline/language/protocol';
import type { DetailAnswer } from '../details.ts';
import type { DetailsKept } from './details-kept.ts';
import { element } from './dom.ts';
import type { DrawnView } from './drawing-view.ts';
import { overlayWanted } from './files-of.ts';
import { GustSlider } from './gust-slider.ts';
import { overlayRow } from './overlay-row.ts';
import { partOf } from './parts.ts';
import type { TabHost } from './tab-host.ts';
import { usesView } from './uses-view.ts';

type Drawn = Extract<DetailAnswer, { kind: 'drawing' }>;

/** The section with results over it: which, under which load, at which gust. */
export class SectionTab {
  private readonly host: TabHost;
  private readonly details: DetailsKept;
  private readonly draw: (
    shelter: PreviewShelter,
    drawing: DrawnView,
    captions: readonly string[],
    more?: HTMLElement,
  ) => HTMLElement[];
  private readonly slider: GustSlider;
  private readonly results = element('div', { class: 'results' });
  /** Shown until there is a newer one of the same kind, so that nothing flickers. */
  private last: { readonly of: string; readonly answer: Drawn } | undefined;

  constructor(host: TabHost, details: DetailsKept, draw: SectionTab['draw']) {
    this.host = host;
    this.details = details;
    this.draw = draw;
    this.slider = new GustSlider((gust) => {
      const { gust: _before, ...rest } = host.state();
      host.keep({ ...rest, ...(gust === undefined ? {} : { gust }) });
      host.refresh();
    });
  }

  /** Whether a hand is on the slider: then only `refresh` may be called, or it would lose its hold. */
  get busy(): boolean {
    return this.slider.root.isConnected && this.slider.busy;
  }

  show(shelter: PreviewShelter, plain: DrawnView): HTMLElement[] {
    const { overlay, load } = this.host.state();
    const answer = this.refresh(shelter, plain);
    const row = overlayRow(
      { ...(overlay === undefined ? {} : { overlay }), ...(load === undefined ? {} : { load }) },
      answer?.loads,
      (choice) => {
        const { overlay: _overlay, load: _load, ...rest } = this.host.state();
        this.host.replace({ ...rest, ...choice });
      },
    );
    return [row, ...(answer?.gusts === undefined ? [] : [this.slider.root]), this.results];
  }

  /** Draws the results anew and leaves what they were chosen with in its place. */
  refresh(shelter: PreviewShelter, plain: DrawnView): Drawn | undefined {
    const wanted = overlayWanted(this.host.state());
    const now = wanted && this.details.of(shelter.name, wanted);
    const of = `${shelter.name} ${wanted?.overlay}`;
    if (now?.kind === 'drawing') {
      this.last = { of, answer: now };
    }
    const kept =
      wanted !== undefined && now === undefined && this.last?.of === of ? this.last.answer : undefined;
    const shown = now?.kind === 'drawing' ? now : kept;
    if (shown?.gusts !== undefined) {
      this.slider.show(shown.gusts, shown.uses !== undefined);
    }
    if (shown === undefined) {
      const why = wanted === undefined ? [] : [now?.kind === 'nothing' ? now.why : 'Being worked out.'];
      this.results.replaceChildren(...this.draw(shelter, plain, why));
      return undefined;
    }
    const uses =
      shown.uses &&
      usesView(shown.uses, shown.captions[0] ?? '', (id) => {
        const part = partOf(shelter, id);
        if (part !== undefined) {
          this.host.reveal(part);
        }
      });
    // What is reached is in the list below, with numbers; which load it is stands in the row above.
    const load = shown.loads?.choices.find(({ id }) => id === shown.loads?.shown)?.title;
    const said = (uses === undefined ? shown.captions : shown.captions.slice(1)).map((text) =>
      text.replace(`Load: ${load}. `, ''),
    );
    const captions = kept === undefined ? said : [...said, 'Being worked out anew.'];
    this.results.replaceChildren(...this.draw(shelter, { view: 'section', ...shown }, captions, uses));
    return shown;
  }
}

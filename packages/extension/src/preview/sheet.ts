import type { ExploreAnswer, PreviewAnswer, PreviewPart, PreviewShelter } from '@tautline/language/protocol';
import type { DetailAnswer } from '../details.ts';
import { cautionsView } from './cautions.ts';
import { DetailsKept } from './details-kept.ts';
import { element } from './dom.ts';
import { fitDrawing } from './drawing-view.ts';
import { ExploreTab } from './explore-tab.ts';
import { filesOf } from './files-of.ts';
import { findingsView } from './findings-view.ts';
import { LastGood } from './last-good.ts';
import { type Cursor, Marks } from './marks.ts';
import { materialsView } from './materials-view.ts';
import type { FromSheet, SheetState } from './messages.ts';
import { chooser, sheetHead } from './sheet-head.ts';
import { TabBodies } from './tab-bodies.ts';
import type { TabHost } from './tab-host.ts';
import { tabsOf, viewOfTab } from './tabs-of.ts';
import { titleBlock } from './title-block.ts';

/** The whole page: keeps the last good answer and draws it, with a mark when it is stale. */
export class Sheet {
  private readonly root: HTMLElement;
  private readonly details: DetailsKept;
  private readonly bodies: TabBodies;
  private readonly send: (message: FromSheet) => void;
  private readonly save: (state: SheetState) => void;
  private state: SheetState;
  private readonly good = new LastGood();
  private readonly marks = new Marks();
  private cautionsOpen = false;
  private readonly explore: ExploreTab;

  constructor(
    root: HTMLElement,
    spaceScript: { src: string; nonce: string },
    state: SheetState,
    send: (message: FromSheet) => void,
    save: (state: SheetState) => void,
  ) {
    this.root = root;
    this.details = new DetailsKept((message) => send({ type: 'detail', ...message }));
    this.state = state;
    this.send = send;
    this.save = save;
    const host: TabHost = {
      state: () => this.state,
      keep: (now) => {
        this.state = now;
        save(now);
      },
      replace: (now) => this.replace(now),
      refresh: () => this.refresh(),
      current: () => this.current(),
      reveal: (part) => this.goTo(part),
      point: (part) => this.point(part),
    };
    this.bodies = new TabBodies(host, this.details, spaceScript);
    this.explore = new ExploreTab(this.bodies, send, () => this.draw());
    new ResizeObserver(() => this.fit()).observe(root);
    save(state);
    this.tellView();
    this.draw();
  }

  answered(answer: PreviewAnswer, file: string): void {
    this.details.outdate();
    this.good.answered(answer, file);
    this.draw();
  }

  detailed(id: string, answer: DetailAnswer): void {
    this.details.received(id, answer);
    this.refresh();
  }

  explored(shelter: string, answer: ExploreAnswer): void {
    this.explore.received(shelter, answer);
    this.draw();
  }

  /** Offers what is on show as files; the editor asks which one and where. */
  offerFiles(): void {
    const shelter = this.current();
    if (shelter !== undefined) {
      const files = filesOf(shelter, this.state.tab, this.state);
      this.send({ type: 'save', shelter: shelter.name, files });
    }
  }

  wait(reason: string): void {
    this.good.wait(reason);
    this.draw();
  }

  cursorAt(cursor: Cursor): void {
    const before = this.marks.cursor;
    this.marks.cursor = cursor;
    this.marks.clicked = undefined;
    const there = this.good.names.find(
      ({ range }) =>
        cursor.uri === this.state.uri && range.start.line <= cursor.line && cursor.line <= range.end.line,
    );
    // Where it stood already, it says nothing against another shelter that was chosen since.
    const moved = before
      ? before.uri !== cursor.uri || before.line !== cursor.line
      : this.state.shelter === undefined;
    if (moved && there !== undefined && there.name !== (this.state.shelter ?? this.current()?.name)) {
      this.change({ shelter: there.name });
    } else {
      this.mark();
    }
  }

  private current(): PreviewShelter | undefined {
    return this.good.shown;
  }

  private change(part: Partial<SheetState>): void {
    this.replace({ ...this.state, ...part });
  }

  private replace(state: SheetState): void {
    const other = state.tab !== this.state.tab || state.shelter !== this.state.shelter;
    this.state = state;
    if (other) {
      this.tellView();
    }
    this.save(state);
    this.draw();
  }

  private tellView(): void {
    const { tab, shelter } = this.state;
    this.send({ type: 'view', view: viewOfTab(tab), ...(shelter === undefined ? {} : { shelter }) });
  }

  private draw(): void {
    const shelter = this.current();
    const focus = document.activeElement?.getAttribute('data-key');
    const scroll = this.root.querySelector('.paper');
    const place = scroll === null ? undefined : { left: scroll.scrollLeft, top: scroll.scrollTop };
    this.root.replaceChildren(...(shelter === undefined ? this.nothing() : this.page(shelter)));
    this.fit();
    if (place !== undefined) {
      this.root.querySelector('.paper')?.scrollTo(place);
    }
    if (focus) {
      this.root.querySelector<HTMLElement>(`[data-key="${focus}"]`)?.focus();
    }
    this.mark();
  }

  /** Only the results when a hand is on the slider above them. */
  private refresh(): void {
    const shelter = this.current();
    const section = shelter?.drawings.find(({ view }) => view === 'section');
    const plain = shelter && section && this.bodies.busy ? this.bodies.drawn(shelter, section) : '';
    if (shelter === undefined || typeof plain === 'string') {
      this.draw();
      return;
    }
    this.bodies.refreshSection(shelter, plain);
    this.fit();
    this.mark();
  }

  private fit(): void {
    const svg = this.root.querySelector<SVGSVGElement>('.paper svg');
    if (svg !== null) {
      fitDrawing(svg, this.state.tab === 'explore' ? 1 : (this.state.zoom ?? 1));
    }
  }

  private nothing(): HTMLElement[] {
    this.root.classList.remove('is-stale');
    const why = element('p', { class: 'empty', role: 'status' }, this.good.nothing(this.state.shelter));
    const { names } = this.good;
    const name = this.good.chosen(this.state.shelter);
    const choose = (shelter: string): void => this.change({ shelter });
    return names.length < 2 || name === undefined
      ? [why]
      : [element('header', {}, chooser(name, names, choose)), why];
  }

  private page(shelter: PreviewShelter): HTMLElement[] {
    const stale = this.good.stale(this.state.shelter);
    const tabs = tabsOf(shelter);
    const tab = tabs.find((one) => one.id === this.state.tab) ?? tabs[0];
    this.root.classList.toggle('is-stale', stale !== undefined);
    const chosen = this.good.chosen(this.state.shelter) ?? shelter.name;
    const head = sheetHead(chosen, this.good.names, tabs, tab?.id ?? '', {
      choose: (name) => this.change({ shelter: name }),
      open: (id) => this.change({ tab: id }),
      save: () => this.offerFiles(),
    });
    const body = element('div', {
      class: 'body',
      role: 'tabpanel',
      id: 'panel',
      'aria-labelledby': `tab-${tab?.id}`,
    });
    if (stale !== undefined) {
      body.append(
        element('p', { class: 'stale', role: 'status' }, element('strong', {}, 'Stale'), ` ${stale}`),
      );
    }
    body.append(...this.content(shelter, tab?.id ?? ''));
    const foot = element(
      'footer',
      {},
      titleBlock(shelter, this.good.file, () => this.change({ tab: 'findings' })),
      cautionsView(this.cautionsOpen, (open) => {
        this.cautionsOpen = open;
      }),
    );
    return [head, body, foot];
  }

  private content(shelter: PreviewShelter, tab: string): HTMLElement[] {
    const drawing = shelter.drawings.find((one) => one.view === tab);
    if (drawing !== undefined) {
      return this.bodies.view(shelter, drawing);
    }
    if (tab === 'gusts') {
      return this.bodies.gusts(shelter);
    }
    if (tab === 'space') {
      return this.bodies.space(shelter);
    }
    if (tab === 'materials') {
      return [materialsView(shelter)];
    }
    if (tab === 'explore') {
      return this.explore.show(shelter);
    }
    return [
      findingsView(shelter, {
        go: (target) => this.send({ type: 'reveal', place: target }),
        calculation: ({ place, id }) => this.send({ type: 'calculation', place, check: id }),
        writeAssumed: () => this.send({ type: 'write-assumed' }),
      }),
    ];
  }

  private goTo(part: PreviewPart): void {
    this.marks.clicked = part;
    this.mark();
    this.send({ type: 'reveal', place: part.place });
  }

  private point(part: PreviewPart | undefined): void {
    if (part?.id !== this.marks.pointed?.id) {
      this.marks.pointed = part;
      this.mark();
    }
  }

  private mark(): void {
    this.marks.draw(this.root, this.current(), this.bodies);
  }
}

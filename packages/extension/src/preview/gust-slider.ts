import type { GustScale } from '../details.ts';
import { element } from './dom.ts';

/** How long somebody slides before the frame is worked out at the gust reached, ms. */
const pause = 120;

/**
 * The slider of gusts. It stays the same element across redraws, so that a hand on it is not shaken off. Arrow
 * keys go a step, Page Up and Down ten; what it stands at is spoken in the reader's units.
 */
export class GustSlider {
  readonly root: HTMLElement;
  private readonly input: HTMLInputElement;
  private readonly value: HTMLOutputElement;
  private readonly marks: HTMLElement;
  private readonly back: HTMLElement;
  private readonly choose: (gust: number | undefined) => void;
  private scale: GustScale | undefined;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private held = false;

  /** `choose` is told a gust, or none: then the results are those of the checks, wind or not. */
  constructor(choose: (gust: number | undefined) => void) {
    this.choose = choose;
    this.back = element(
      'button',
      { type: 'button', class: 'link', 'data-key': 'no gust', click: () => this.leave() },
      'back to the checks',
    );
    this.input = element('input', {
      type: 'range',
      min: 0,
      step: 1,
      'data-key': 'gust',
      'aria-label': 'Gust that the results of the frames are drawn at',
      input: () => this.slid(),
      pointerdown: () => {
        this.held = true;
      },
      pointerup: () => {
        this.held = false;
      },
      pointercancel: () => {
        this.held = false;
      },
      keydown: (event) => this.paged(event as KeyboardEvent),
    });
    this.value = element('output', { class: 'gust-value' });
    this.marks = element('span', { class: 'gust-marks' });
    this.root = element(
      'div',
      { class: 'gust', role: 'group', 'aria-label': 'Gust' },
      element('span', { class: 'quiet' }, 'frames at a gust of'),
      this.input,
      this.value,
      this.marks,
      this.back,
    );
  }

  /** Whether somebody has a hand on it, or stands on it with the keyboard. */
  get busy(): boolean {
    return this.held || this.timer !== undefined || document.activeElement === this.input;
  }

  /** `chosen`: the results are those of the gust shown, not those of the checks. */
  show(scale: GustScale, chosen: boolean): void {
    this.back.hidden = !chosen;
    const text = JSON.stringify(scale.stops) + JSON.stringify(scale.marks);
    if (this.root.dataset['scale'] !== text) {
      this.root.dataset['scale'] = text;
      this.input.max = String(scale.stops.length - 1);
      this.marks.replaceChildren(
        ...scale.marks.map(({ title, stop }) =>
          element(
            'button',
            {
              type: 'button',
              class: 'link',
              'data-key': `gust ${title}`,
              click: () => this.goTo(stop),
            },
            `${title} ${scale.stops[stop]?.text ?? ''}`,
          ),
        ),
      );
    }
    this.scale = scale;
    // Not from under the hand: what is drawn may be a step behind.
    if (this.timer === undefined && !this.held) {
      this.input.value = String(scale.shown);
    }
    this.say();
  }

  private goTo(stop: number): void {
    this.input.value = String(stop);
    this.slid();
  }

  private leave(): void {
    clearTimeout(this.timer);
    this.timer = undefined;
    this.choose(undefined);
  }

  private slid(): void {
    this.say();
    clearTimeout(this.timer);
    this.timer = setTimeout(() => {
      this.timer = undefined;
      const gust = this.scale?.stops[Number(this.input.value)]?.gust;
      if (gust !== undefined) {
        this.choose(gust);
      }
    }, pause);
  }

  private paged(event: KeyboardEvent): void {
    const by = { PageUp: 10, PageDown: -10 }[event.key];
    if (by !== undefined) {
      event.preventDefault();
      this.goTo(Number(this.input.value) + by);
    }
  }

  private say(): void {
    const stop = Number(this.input.value);
    const text = this.scale?.stops[stop]?.text ?? '';
    const mark = this.scale?.marks.find((one) => one.stop === stop)?.title;
    this.value.textContent = text;
    this.input.setAttribute('aria-valuetext', mark === undefined ? text : `${text}, ${mark}`);
  }
}

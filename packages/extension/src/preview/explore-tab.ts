import type { ExploreAnswer, PreviewShelter } from '@tautline/language/protocol';
import { exploreView } from './explore-view.ts';
import type { FromSheet } from './messages.ts';
import type { TabBodies } from './tab-bodies.ts';

/** What exploring found, by shelter: it stays until it is worked out again. */
export class ExploreTab {
  private readonly found = new Map<string, ExploreAnswer | 'under way'>();
  private readonly bodies: TabBodies;
  private readonly send: (message: FromSheet) => void;
  private readonly draw: () => void;

  constructor(bodies: TabBodies, send: ExploreTab['send'], draw: () => void) {
    this.bodies = bodies;
    this.send = send;
    this.draw = draw;
  }

  received(shelter: string, answer: ExploreAnswer): void {
    this.found.set(shelter, answer);
  }

  show(shelter: PreviewShelter): HTMLElement[] {
    const { name, varied } = shelter;
    const answer = this.found.get(name);
    const chart =
      answer === undefined || answer === 'under way' || 'why' in answer
        ? []
        : this.bodies.variants(shelter, answer);
    const old =
      answer !== undefined && answer !== 'under way' && 'varied' in answer && answer.varied !== varied;
    return exploreView(answer, chart, old, {
      explore: () => {
        this.found.set(name, 'under way');
        this.send({ type: 'explore', shelter: name });
        this.draw();
      },
      write: (number) => this.send({ type: 'write-variant', shelter: name, number }),
    });
  }
}

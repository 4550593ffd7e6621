import type { Explored } from '@tautline/language/protocol';
import type { Memento } from 'vscode';

interface Found {
  readonly uri: string;
  readonly explored: Explored;
}

const key = 'tautline.explored';
/** Explorations that are kept for a workspace: the newest of so many shelters. */
const most = 12;

/** What exploring found, by shelter: kept with the workspace, so that it is there when the window is loaded again. */
export class ExploredKept {
  private readonly store: Memento;
  private readonly listeners: ((found: Found) => void)[] = [];

  constructor(store: Memento) {
    this.store = store;
  }

  onFound(listener: (found: Found) => void): void {
    this.listeners.push(listener);
  }

  found(uri: string, explored: Explored): void {
    const others = this.all().filter((one) => one.uri !== uri || one.explored.shelter !== explored.shelter);
    const found = { uri, explored };
    void this.store.update(key, [found, ...others].slice(0, most));
    for (const listener of this.listeners) {
      listener(found);
    }
  }

  /** Newest first. */
  of(uri: string): readonly Explored[] {
    return this.all().flatMap((one) => (one.uri === uri ? [one.explored] : []));
  }

  private all(): readonly Found[] {
    return this.store.get<readonly Found[]>(key, []);
  }
}

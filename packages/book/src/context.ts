/** What every chapter is given. */
import type { Finding } from '@tautline/checks';
import type { Shelter } from '@tautline/shelter';
import type { DueDate } from './calendar/dates.ts';
import type { Markup } from './html/markup.ts';
import type { BookInput } from './input.ts';

export interface BookContext extends BookInput {
  readonly shelter: Shelter;
  readonly dates: readonly DueDate[];
  readonly failing: readonly Finding[];
}

/** One chapter: where a link finds it, its heading, and what it says. `undefined`: it has nothing to say here. */
export interface Chapter {
  readonly id: string;
  readonly title: string;
  readonly body: (context: BookContext) => Markup | undefined;
  /** Set on pages that lie on their side. */
  readonly wide?: boolean;
  /** Set where the drawing brings its own heading. */
  readonly drawn?: boolean;
  /** Set where all of it must fit on one page: it is set closer. */
  readonly onePage?: boolean;
}

/** What a shelter has that can come off before a storm, and how to speak of it. */
import type { Shelter } from '@tautline/shelter';

export interface StormOff {
  /** What comes off: where it is `sheet`, nothing of the roof does, and people keep clear of it instead. */
  readonly what: 'caps' | 'film' | 'mesh' | 'sheet' | 'nothing';
  /** Over the gust, as a head: `Film off`. */
  readonly head: string;
  /** What is to be done before the gust: `Have the film off`. */
  readonly order: string;
  /** On a chart or a scale, with `before`: `film off`. */
  readonly mark: string;
}

const words: Readonly<Record<StormOff['what'], Omit<StormOff, 'what'>>> = {
  caps: {
    head: 'Caps off and stacked',
    order: 'Have the caps lifted off and stacked',
    mark: 'caps off',
  },
  film: { head: 'Film off', order: 'Have the film off', mark: 'film off' },
  mesh: { head: 'Mesh off', order: 'Have the mesh off', mark: 'mesh off' },
  sheet: {
    head: 'Keep clear of it',
    order: 'There is no film to take off and the sheets stay on: keep clear of it',
    mark: 'keep clear',
  },
  nothing: {
    head: 'Keep clear of it',
    order: 'There is no film to take off: keep clear of it',
    mark: 'keep clear',
  },
};

/** The roof speaks for the house; where it is bare, the film or mesh of the walls. */
export function stormOff({ roof, covers }: Pick<Shelter, 'roof' | 'covers'>): StormOff {
  const over = covers.find(({ place }) => place === 'roof')?.skin.kind;
  const walls = covers.map(({ skin }) => skin.kind);
  const what =
    roof.type === 'cap'
      ? 'caps'
      : (over ?? (['film', 'mesh', 'sheet'] as const).find((kind) => walls.includes(kind)) ?? 'nothing');
  return { what, ...words[what] };
}

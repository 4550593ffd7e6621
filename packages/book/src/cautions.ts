/** The cautions every report carries (usual ones of the trade) and what the program is not. */
export const cautionLine =
  'A screening aid: local codes, permits and a licensed engineer decide. A shelter is no refuge in a storm.';

export interface Caution {
  /** In a word or two, for lists with headings. */
  readonly about: string;
  readonly text: string;
}

export const cautionsAbout: readonly Caution[] = [
  {
    about: 'Height',
    text: 'Work at height and on ladders needs a second person and level ground under the feet.',
  },
  { about: 'Film in wind', text: 'Film is a sail while it goes on: do not cover in wind.' },
  { about: 'Below ground', text: 'Look for buried services before you drive stakes or dig.' },
  { about: 'Overhead', text: 'Keep conduit and rail away from power lines while you carry and raise them.' },
  { about: 'Sprung parts', text: 'Sprung pipe and spring wire whip back: stand aside, wear eye protection.' },
  {
    about: 'Fumes and dust',
    text: 'Cement and primer give off fumes; cut ends and treated timber give dust: ventilate, wear a mask.',
  },
  { about: 'Heat', text: 'It gets hot under film: drink, and rest in the shade.' },
  { about: 'Storm', text: 'A shelter is no refuge in a storm.' },
  {
    about: 'This program',
    text: 'This is a screening aid: local codes, permits and a licensed engineer decide.',
  },
];

export const cautions: readonly string[] = cautionsAbout.map(({ text }) => text);

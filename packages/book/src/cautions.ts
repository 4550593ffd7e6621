/** The cautions every report carries (usual ones of the trade) and what the program is not. */
export const cautionLine =
  'A screening aid: local codes, permits and a licensed engineer decide. A shelter is no refuge in a storm.';

export const cautions: readonly string[] = [
  'Work at height and on ladders needs a second person and level ground under the feet.',
  'Film is a sail while it goes on: do not cover in wind.',
  'Look for buried services before you drive stakes or dig.',
  'Keep conduit and rail away from power lines while you carry and raise them.',
  'Sprung pipe and spring wire whip back: stand aside, wear eye protection.',
  'Cement and primer give off fumes; cut ends and treated timber give dust: ventilate, wear a mask.',
  'It gets hot under film: drink, and rest in the shade.',
  'A shelter is no refuge in a storm.',
  'This is a screening aid: local codes, permits and a licensed engineer decide.',
];

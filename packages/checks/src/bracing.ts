/** What keeps a house from leaning over along its length. */
import type { Brace, Shelter } from '@tautline/shelter';

/** Braces and guys that work along the house. */
export function alongBraces(shelter: Shelter): readonly Brace[] {
  return shelter.braces.filter(
    (brace) => brace.plane === 'along' && (brace.role === 'brace' || brace.role === 'guy'),
  );
}

/** Whether braces or guys hold the tops of posts and bows along the house. */
export function bracedAlong(shelter: Shelter): boolean {
  return alongBraces(shelter).length > 0;
}

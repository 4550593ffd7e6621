/**
 * Where foot and head of a brace in a bay stand, m along the house: braces in every bay lean one way and the other by
 * turns, for a wire holds only the way it is pulled.
 */
export const leaning = (front: number, back: number, bay: number): readonly [foot: number, head: number] =>
  bay % 2 === 0 ? [front, back] : [back, front];

/** Several shelters counted as one purchase: their pieces are cut from the same bars. */
import type { Takeoff, TakeoffLine } from './line.ts';

/** What one of them takes: a shelter, or a range. */
export interface Counted {
  readonly name: string;
  readonly takeoff: Takeoff;
}

/** All of them together. Ids of parts are led in by the name of their shelter (`bed-arch/bow-1`). */
export function takeoffOfSeveral(counted: readonly Counted[]): Takeoff {
  return {
    lines: counted.flatMap(({ name, takeoff }) => takeoff.lines.map((line) => named(line, name))),
    gaps: counted.flatMap(({ name, takeoff }) =>
      takeoff.gaps.map((gap) => ({ ...gap, what: `${name}: ${gap.what}` })),
    ),
  };
}

function named(line: TakeoffLine, name: string): TakeoffLine {
  return {
    ...line,
    parts: line.parts.map((part) => ({ ...part, id: `${name}/${part.id}` })),
    ...(line.pieces
      ? { pieces: line.pieces.map((piece) => ({ ...piece, part: `${name}/${piece.part}` })) }
      : {}),
    steps: line.steps.map((step) => [`${name}: `, ...step]),
  };
}

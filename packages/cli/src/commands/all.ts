import { book } from './book.ts';
import { check } from './check.ts';
import type { Command } from './command.ts';
import { draw } from './draw.ts';
import { due } from './due.ts';
import { explain } from './explain.ts';
import { explore } from './explore.ts';
import { fix } from './fix.ts';
import { format } from './format.ts';
import { materials } from './materials.ts';
import { neighbour } from './neighbour.ts';
import { newShelter } from './new.ts';
import { review } from './review.ts';
import { sheets } from './sheets.ts';
import { stock } from './stock.ts';
import { swap } from './swap.ts';

/** Every command, in the order help shows them. */
export const commands: readonly Command[] = [
  newShelter,
  check,
  fix,
  swap,
  materials,
  stock,
  neighbour,
  book,
  draw,
  explain,
  format,
  review,
  explore,
  due,
  sheets,
];

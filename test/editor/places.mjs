/** The examples that the steps open. */
export const example = 'stub-arch.shelter';
export const flawed = 'stub-arch-flawed.shelter';

/** One-based line of the first fact that begins with the word. */
export function lineOf(text, word) {
  const index = text.split('\n').findIndex((line) => line.trim().startsWith(word));
  if (index < 0) {
    throw new Error(`the example has no line that begins with ${word}`);
  }
  return index + 1;
}

/** One-based column in the middle of a word on a line. */
export function columnOf(text, line, word) {
  const index = text.split('\n')[line - 1].indexOf(word);
  if (index < 0) {
    throw new Error(`line ${line} of the example has no ${word}`);
  }
  return index + 3;
}

/** The item that a line `of ITEM` names. */
export function itemOn(text, line) {
  return text.split('\n')[line - 1].trim().split(/\s+/)[1];
}

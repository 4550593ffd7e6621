/** The `vary` facts of a shelter as axes: values to try, and the edits of the spec that each of them means. */
import type { KindName } from '@tautline/quantity';
import {
  factNode,
  factNodes,
  itemIn,
  itemValue,
  numberIn,
  quantityValue,
  type SpecEdit,
  type SpecNode,
  type SpecValue,
  wordIn,
} from '@tautline/shelter';

export interface Axis {
  /** e.g. `bows spaced`. */
  readonly label: string;
  /** Kind of the quantity, or 'item'. */
  readonly kind: KindName | 'item';
  readonly values: readonly SpecValue[];
  /** Changes that say this value; the other of two facts that size the same thing is taken away. */
  edits(value: SpecValue): readonly SpecEdit[];
}

export interface Axes {
  readonly axes: readonly Axis[];
  /** Why a `vary` cannot be tried. */
  readonly problems: readonly string[];
}

/** Values tried where no step is said. */
const usualCount = 5;
const mostValues = 200;

/** Axes in the order written, of a shelter (a variant laid over what it varies). */
export function axesOf(shelter: SpecNode): Axes {
  const axes: Axis[] = [];
  const problems: string[] = [];
  for (const vary of factNodes(shelter, 'vary')) {
    const part = wordIn(vary, 'part') ?? '';
    const blocks = blocksOf(shelter, part);
    const found = [...rangesOf(vary, problems), ...choicesOf(vary)];
    if (blocks.length === 0) problems.push(`vary ${part}: the shelter has no ${part.replace('-', ' ')}`);
    else if (found.length === 0)
      problems.push(`vary ${part}: say what to try, as in \`vary bows spaced from 3 ft to 5 ft by 6 in\``);
    else
      axes.push(
        ...found.map(
          ({ word, slot, kind, values }): Axis => ({
            label: `${part} ${word}`,
            kind,
            values,
            edits: (value) => blocks.flatMap((block) => editsOf(block, word, slot, value)),
          }),
        ),
      );
  }
  const twice = axes.find(({ label }, index) => axes.findIndex((other) => other.label === label) < index);
  if (twice) problems.push(`vary ${twice.label}: said twice`);
  return { axes, problems };
}

/** Every block the words of a `vary` mean. */
function blocksOf(shelter: SpecNode, part: string): readonly SpecNode[] {
  if (part === 'ridge-posts') return factNodes(factNode(shelter, 'ridge'), 'posts');
  if (part === 'roof')
    return factNodes(shelter, 'cover').filter((cover) => wordIn(cover, 'place') === 'roof');
  if (part === 'foot') {
    const ofBows = factNodes(factNode(shelter, 'bows'), 'foot');
    return ofBows.length > 0
      ? ofBows
      : factNodes(shelter, 'posts').flatMap((posts) => factNodes(posts, 'foot'));
  }
  return factNodes(shelter, part);
}

interface Tried {
  readonly word: string;
  readonly slot: string;
  readonly kind: KindName | 'item';
  readonly values: readonly SpecValue[];
}

function rangesOf(vary: SpecNode, problems: string[]): Tried[] {
  const word = wordIn(vary, 'fact');
  return [
    ...(word === undefined ? [] : range(vary, word, 'length', ['from', 'to', 'step'], problems)),
    ...range(vary, 'pitch', 'angle', ['flattest', 'steepest', 'angle'], problems),
  ];
}

function range(
  vary: SpecNode,
  word: string,
  kind: KindName,
  [low, high, by]: readonly [string, string, string],
  problems: string[],
): Tried[] {
  const from = numberIn(vary, low);
  const to = numberIn(vary, high);
  if (from === undefined || to === undefined) return [];
  const step = numberIn(vary, by) ?? (to - from) / (usualCount - 1);
  const count = to === from ? 1 : Math.floor((to - from) / step + 1e-9) + 1;
  const name = `vary ${wordIn(vary, 'part') ?? ''} ${word}`;
  if (to < from || !(step > 0 || to === from)) {
    problems.push(`${name}: go from the smaller to the larger value, by a step of more than nothing`);
    return [];
  }
  if (count > mostValues) {
    problems.push(`${name}: ${count} values are more than the ${mostValues} that can be tried`);
    return [];
  }
  // Twelve digits: so that adding up steps gives the number that would be written.
  const values = Array.from({ length: count }, (_, index) =>
    quantityValue(Number((from + index * step).toPrecision(12)), kind, vary.origin),
  );
  return [{ word, slot: 'value', kind, values }];
}

const choices = [
  ['of', ['first', 'second', 'third', 'fourth', 'fifth']],
  ['with', ['skin', 'secondSkin', 'thirdSkin', 'fourthSkin', 'fifthSkin']],
] as const;

function choicesOf(vary: SpecNode): Tried[] {
  return choices.flatMap(([word, slots]): Tried[] => {
    const ids = [...new Set(slots.flatMap((slot) => itemIn(vary, slot) ?? []))];
    const values = ids.map((id) => itemValue(id, vary.origin));
    return values.length === 0 ? [] : [{ word, slot: 'item', kind: 'item', values }];
  });
}

/** Facts that say the same in another way. */
const instead: Readonly<Record<string, readonly string[]>> = {
  rise: ['length', 'pitch'],
  length: ['rise'],
  pitch: ['rise'],
};

function editsOf(block: SpecNode, word: string, slot: string, value: SpecValue): readonly SpecEdit[] {
  // A foot has its own length, which goes with no rise.
  const others = block.word === 'bows' || block.word === 'rafters' ? (instead[word] ?? []) : [];
  return [
    ...others
      .flatMap((other) => factNodes(block, other))
      .map((node): SpecEdit => ({ type: 'remove', node: node.origin })),
    { type: 'set', block: block.origin, word, slots: { [slot]: value } },
  ];
}

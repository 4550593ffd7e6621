import { originOf, type SpecNode, type SpecValue, specNode } from '@tautline/shelter';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blockChanges, saidText, saidTexts, sameFacts } from '../src/index.ts';

const here = originOf('here');
const length = (si: number): SpecValue => ({ type: 'quantity', si, kind: 'length', origin: here });
const word = (text: string): SpecValue => ({ type: 'word', word: text, origin: here });
const item = (id: string): SpecValue => ({ type: 'item', id, origin: here });
const shelter = (...facts: SpecNode[]): SpecNode => specNode('shelter', here, {}, facts);
const cover = (place: string, skin: string): SpecNode =>
  specNode('cover', here, { place: word(place) }, [specNode('with', here, { item: item(skin) })]);
const spaced = (si: number): SpecNode => specNode('spaced', here, { value: length(si) });

const told = (before: SpecNode, after: SpecNode): string[] =>
  blockChanges(before, after).map(
    ({ path, change, before: was = [], after: is = [] }) =>
      `${path.join('/')} ${change} ${saidText(was, 'metric')}>${saidText(is, 'metric')}`,
  );

/** Specs of few words, so that equal and like facts come up. */
const nested: (depth?: number) => fc.Arbitrary<SpecNode> = fc.memo((depth) =>
  fc
    .record({
      word: fc.constantFrom('bows', 'purlins', 'cover', 'joint', 'at'),
      value: fc.option(fc.integer({ min: 1, max: 3 }), { nil: undefined }),
      children: depth <= 1 ? fc.constant<SpecNode[]>([]) : fc.array(nested(depth - 1), { maxLength: 3 }),
    })
    .map((made) =>
      specNode(made.word, here, made.value === undefined ? {} : { value: length(made.value) }, made.children),
    ),
);
const facts = nested(3);

function shuffled(node: SpecNode, order: number): SpecNode {
  const children = node.children.map((child) => shuffled(child, order));
  return {
    ...node,
    children: order % 2 === 0 ? children.reverse() : [...children.slice(1), ...children.slice(0, 1)],
  };
}

describe('changes of facts', () => {
  it('finds none between a spec and itself in another order', () => {
    fc.assert(
      fc.property(fc.array(facts, { maxLength: 5 }), fc.integer({ min: 0, max: 1 }), (children, order) => {
        const spec = shelter(...children);
        expect(blockChanges(spec, shuffled(spec, order))).toEqual([]);
        expect(sameFacts(spec, shuffled(spec, order))).toBe(true);
      }),
      { seed: 1, numRuns: 200 },
    );
  });

  it('finds one wherever a value differs, and the same one with sides swapped', () => {
    fc.assert(
      fc.property(facts, facts, (a, b) => {
        const forth = blockChanges(shelter(a), shelter(b));
        const back = blockChanges(shelter(b), shelter(a));
        expect(forth.length === 0).toBe(sameFacts(a, b));
        expect(back.length).toBe(forth.length);
      }),
      { seed: 2, numRuns: 200 },
    );
  });

  it('tells facts of the same word apart by what they are about', () => {
    const before = shelter(cover('roof', 'film-a'), cover('sides', 'mesh-a'));
    const after = shelter(cover('sides', 'mesh-b'), cover('roof', 'film-a'));
    expect(told(before, after)).toEqual(['cover sides/with changed mesh-a>mesh-b']);
  });

  it('tells what came and went with all it says', () => {
    const bows = specNode('bows', here, {}, [spaced(1.2), specNode('of', here, { item: item('pipe-a') })]);
    expect(told(shelter(), shelter(bows))).toEqual(['bows added >{ spaced 1.2 m; of pipe-a }']);
    expect(told(shelter(bows), shelter())).toEqual(['bows removed { spaced 1.2 m; of pipe-a }>']);
  });

  it('shows as many digits as tell two values apart', () => {
    const [fact] = blockChanges(
      shelter(specNode('bows', here, {}, [spaced(1.2)])),
      shelter(specNode('bows', here, {}, [spaced(1.2000001)])),
    );
    const [was, is] = saidTexts(fact?.before ?? [], fact?.after ?? [], 'us');
    expect(was).not.toBe(is);
  });
});

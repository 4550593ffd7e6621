/** Levers that several checks share. */
import {
  type Bows,
  type Foot,
  itemValue,
  type MemberItem,
  quantityValue,
  type Rafters,
  type Shelter,
  type SpecEdit,
  sharpestOf,
  specNode,
  wordValue,
} from '@tautline/shelter';
import { sectionOf } from '@tautline/structure';
import type { Lever, Stock } from './check.ts';
import { length } from './judge.ts';
import { setItem, setQuantity } from './slots.ts';

/** m: by definition. */
const inch = 0.0254;
const handy = { metric: 0.05, us: inch };

/** A flatter bow: a lower rise, or a shorter pipe where the spec says the length. */
export function flatter(bows: Bows): Lever {
  return sized(bows, { rise: bows.span * 0.25, length: bows.span * 1.05 });
}

/** A higher bow: the other way round. */
export function higher(bows: Bows): Lever {
  return sized(bows, { rise: bows.rise * 1.6, length: bows.length * 1.5 });
}

/** Moves the one of rise and length that the spec says, so that the two never contradict each other. */
function sized(bows: Bows, towards: { readonly rise: number; readonly length: number }): Lever {
  const word = bows.sizedBy ?? 'rise';
  return {
    type: 'number',
    from: bows[word],
    towards: towards[word],
    steps: handy,
    title: (value) => [
      word === 'rise' ? 'Make the rise ' : 'Make the bows ',
      length(value),
      word === 'rise' ? '' : ' long',
    ],
    edits: (value) => [setQuantity(bows.origin, word, value, 'length')],
  };
}

/** A higher cap or bulge, whose rise is always said. */
export function risen(roof: { readonly origin: Bows['origin']; readonly rise: number }): Lever {
  return {
    type: 'number',
    from: roof.rise,
    // Further up the film would need another roll, which is a change of its own.
    towards: roof.rise * 1.5,
    steps: handy,
    title: (value) => ['Make the rise ', length(value)],
    edits: (value) => [setQuantity(roof.origin, 'rise', value, 'length')],
  };
}

/** More lines along the house that hold the frames, evenly spread; of the frames' own stock where there are none. */
export function morePurlins(shelter: Shelter, frame: Bows | Rafters): Lever {
  const purlin = shelter.purlins.find((rail) => rail.id === 'purlins');
  const { origin } = purlin ?? shelter;
  const now = purlin?.lines.length ?? 0;
  const edits = (count: number): SpecEdit[] => {
    const slots = { count: quantityValue(count, 'count', origin) };
    if (purlin === undefined) {
      const of = specNode('of', origin, { item: itemValue(frame.member.id, origin) });
      return [{ type: 'add', block: origin, node: specNode('purlins', origin, slots, [of]) }];
    }
    // Places that were said for fewer lines no longer hold.
    const places = (purlin.placesSaid ?? []).map((node): SpecEdit => ({ type: 'remove', node }));
    return [{ type: 'replace', node: origin, slots }, ...places];
  };
  return {
    type: 'choice',
    options: [1, 2, 3, 4, 6, 8].map((extra) => ({
      title: [`Hold the frames with ${now + extra} ${now + extra === 1 ? 'purlin' : 'purlins'}`],
      edits: edits(now + extra),
    })),
  };
}

/**
 * Ties between the posts of a blown-up roof just below its inner film, one for each pair, of the posts' own stock:
 * the films pull the posts together. None where there are ties already.
 */
export function tiedHeads(shelter: Shelter): Lever[] {
  const { roof, sidePosts, braces, origin } = shelter;
  if (roof.type !== 'inflated' || sidePosts === undefined) return [];
  if (braces.some((brace) => brace.role === 'tie')) return [];
  const node = specNode('ties', origin, {}, [
    specNode('of', origin, { item: itemValue(sidePosts.member.id, origin) }),
    // Below the inner film, which hangs between the heads.
    specNode('height', origin, {
      value: quantityValue(Math.max(sidePosts.height / 2, sidePosts.height - roof.hang), 'length', origin),
    }),
    specNode('spaced', origin, { value: quantityValue(sidePosts.spacing, 'length', origin) }),
  ]);
  return [
    {
      type: 'choice',
      options: [
        {
          title: [`Tie each pair of posts with ${sidePosts.member.title}`],
          edits: [{ type: 'add', block: origin, node }],
        },
      ],
    },
  ];
}

/** Feet set in concrete instead of what they are, the smallest first, m. */
export function inConcrete(
  foot: Foot,
  acrosses: readonly number[],
  depths: readonly number[],
  { system }: Stock,
): Lever {
  const { origin } = foot;
  // Holes are dug in whole inches where people think in inches.
  const handySize = (size: number): number => (system === 'us' ? Math.round(size / inch) * inch : size);
  return {
    type: 'choice',
    options: acrosses.map(handySize).flatMap((across) =>
      depths.map(handySize).map((depth) => ({
        title: ['Set each foot in concrete, ', length(across), ' across and ', length(depth), ' deep'],
        edits: [
          { type: 'replace' as const, node: origin, slots: { kind: wordValue('concrete', origin) } },
          setQuantity(origin, 'deep', depth, 'length'),
          setQuantity(origin, 'across', across, 'length'),
        ],
      })),
    ),
  };
}

/** A wider footing, where there is one. */
export function wider(foot: Foot): Lever[] {
  if (foot.kind !== 'concrete') return [];
  const across = foot.across ?? 0.25;
  return [
    {
      type: 'number',
      from: across,
      towards: Math.max(0.6, across),
      steps: handy,
      title: (value) => ['Make the footing ', length(value), ' across'],
      edits: (value) => [setQuantity(foot.origin, 'across', value, 'length')],
    },
  ];
}

/** More ballast on each rim of a cap, up to a mass, kg; a rim that only lies there gets its first. */
export function heavierRims(foot: Foot, towards: number): Lever {
  const { origin } = foot;
  const ballasted: SpecEdit[] =
    foot.kind === 'ballast'
      ? []
      : [{ type: 'replace', node: origin, slots: { kind: wordValue('ballast', origin) } }];
  return {
    type: 'number',
    from: foot.mass ?? 0,
    towards,
    // 2 kg, and 5 lb (0.453 592 37 kg each)
    steps: { metric: 2, us: 5 * 0.45359237 },
    title: (value) => ['Weigh each rim of each cap down with ', { value, kind: 'mass' }],
    edits: (value) => [...ballasted, setQuantity(origin, 'weighs', value, 'mass')],
  };
}

/** A foot that goes deeper; a stub keeps its length above the ground. */
export function deeper(foot: Foot): Lever {
  return {
    type: 'number',
    from: foot.driven,
    towards: Math.max(1.5, foot.driven),
    steps: handy,
    title: (value) => ['Go ', length(value), ' into the ground'],
    edits: (value) => [
      setQuantity(foot.origin, 'deep', value, 'length'),
      ...(foot.length === undefined
        ? []
        : [setQuantity(foot.origin, 'length', foot.length + value - foot.driven, 'length')]),
    ],
  };
}

/** What makes the part of this id stand a faster gust. */
export function sturdier(shelter: Shelter, part: string, stock: Stock): Lever[] {
  const { roof, sidePosts: posts } = shelter;
  const frame = roof.type === 'bows' || roof.type === 'rafters' ? roof : undefined;
  if (part === posts?.id) return [stouter(posts, stock), closer(posts, 'posts')];
  if (frame !== undefined && part === frame.id) return [stouter(frame, stock), closer(frame, 'frames')];
  const foot = [posts?.foot, frame?.foot].find((entry) => entry?.id === part);
  return foot === undefined ? [] : [deeper(foot)];
}

/** Closer frames or posts. */
export function closer(
  part: { readonly origin: Bows['origin']; readonly spacing: number },
  what: string,
): Lever {
  return {
    type: 'number',
    from: part.spacing,
    towards: part.spacing / 4,
    steps: handy,
    title: (value) => [`Space the ${what} `, length(value), ' apart'],
    edits: (value) => [setQuantity(part.origin, 'spaced', value, 'length')],
  };
}

/** Members sold as the same sort of thing: same kind and material, and same first word of the id (pvc40, emt...). */
function sameSort(member: MemberItem, stock: Stock): MemberItem[] {
  const sort = (id: string): string => id.split('-')[0] ?? id;
  return stock.items.filter(
    (entry): entry is MemberItem =>
      entry.kind === member.kind &&
      'section' in entry &&
      entry.material.id === member.material.id &&
      sort(entry.id) === sort(member.id),
  );
}

/** Stouter stock of the same sort, the next size first; `edit` writes it where it is not said by `of`. */
export function stouter(
  part: { readonly origin: Bows['origin']; readonly member: MemberItem },
  stock: Stock,
  edit = (id: string): SpecEdit => setItem(part.origin, 'of', id),
): Lever {
  const own = sectionOf(part.member).sectionModulus;
  const options = sameSort(part.member, stock)
    .filter((entry) => sectionOf(entry).sectionModulus > own)
    .sort((a, b) => sectionOf(a).sectionModulus - sectionOf(b).sectionModulus);
  return {
    type: 'choice',
    options: options.map((entry) => ({
      title: [`Use ${entry.title}`],
      edits: [edit(entry.id)],
    })),
  };
}

/** Thinner stock of the same sort, the next size first: less strain when sprung to the same arch. */
export function thinner(bows: Bows, stock: Stock): Lever {
  const own = sectionOf(bows.member).extremeFibre;
  const options = sameSort(bows.member, stock)
    .filter((entry) => sectionOf(entry).extremeFibre < own && sharpestOf(bows.line).curvature !== 0)
    .sort((a, b) => sectionOf(b).extremeFibre - sectionOf(a).extremeFibre);
  return {
    type: 'choice',
    options: options.map((entry) => ({
      title: [`Use ${entry.title}`],
      edits: [setItem(bows.origin, 'of', entry.id)],
    })),
  };
}

/** A tighter film, up to a share of its yield so that it is not stretched out for good. */
export function tighter(
  cover: { readonly origin: Bows['origin']; readonly tension: number },
  most: number,
): Lever {
  return {
    type: 'number',
    from: cover.tension,
    towards: Math.max(most, cover.tension),
    // 10 N/m, and 1 lb/ft (14.593 903 N/m)
    steps: { metric: 10, us: 14.593903 },
    title: (value) => ['Pull the film to ', { value, kind: 'line-load' }],
    edits: (value) => [setQuantity(cover.origin, 'tension', value, 'line-load')],
  };
}

/** Frames wrapped where the film lies on them. */
export function wrappedFrames(frame: Bows | Rafters): Lever {
  const edits: SpecEdit[] = [{ type: 'set', block: frame.origin, word: 'wrapped', slots: {} }];
  return { type: 'choice', options: [{ title: ['Wrap them where the film lies'], edits }] };
}

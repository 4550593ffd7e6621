/** Levers on an anchor that a cable pulls: of a ridge or of a guy. */
import { type AnchorItem, type CableItem, type Foot, type Origin, wordValue } from '@tautline/shelter';
import type { Lever, Stock } from './check.ts';
import { measured } from './judge.ts';
import { deeper } from './levers.ts';
import { setItem, setQuantity } from './slots.ts';

/** m: by definition. */
const inch = 0.0254;
/** Depths a hole for a log is dug to, m. */
const holes = [0.9, 1.2, 1.5];

/** Deeper, a wider anchor, a buried log or a larger one instead; `where` says of which cable, e.g. 'at each end'. */
export function heldFaster(anchor: Foot, where: string, { items, system }: Stock): Lever[] {
  const { origin } = anchor;
  const list: Lever[] = [deeper(anchor)];
  if (anchor.across !== undefined && anchor.kind !== 'screw')
    list.push({
      type: 'number',
      from: anchor.across,
      towards: Math.max(0.6, anchor.across),
      steps: { metric: 0.05, us: inch },
      title: (value) => ['Make the anchor ', measured(value, 'length'), ' across'],
      edits: (value) => [setQuantity(origin, 'across', value, 'length')],
    });
  const buried = anchor.kind === 'deadman';
  const area = (item: AnchorItem | undefined): number => (item?.diameter ?? 0) * (item?.length ?? 0);
  const logs = items
    .filter((item): item is AnchorItem => item.kind === 'anchor' && item.form === 'plate')
    .filter((item) => !buried || area(item) > area(anchor.anchor))
    .sort((a, b) => area(a) - area(b));
  if (logs.length > 0)
    list.push({
      type: 'choice',
      options: holes
        .map((depth) => (system === 'us' ? Math.round(depth / inch) * inch : depth))
        .flatMap((depth) =>
          logs.map(({ id, title }) => ({
            title: [`Bury ${title} `, measured(depth, 'length'), ` deep ${where}`],
            edits: [
              ...(buried
                ? []
                : [
                    { type: 'replace' as const, node: origin, slots: { kind: wordValue('deadman', origin) } },
                  ]),
              setItem(origin, 'of', id),
              setQuantity(origin, 'deep', depth, 'length'),
            ],
          })),
        ),
    });
  return list;
}

/** Less pull put in when it is set up, down to a quarter. */
export function pulledLess(
  { origin, tension }: { readonly origin: Origin; readonly tension?: number },
  what: string,
): Lever[] {
  if (tension === undefined) return [];
  return [
    {
      type: 'number',
      from: tension,
      towards: tension / 4,
      // 0.1 kN, and 25 lbf (111.205 541 N)
      steps: { metric: 100, us: 111.205541 },
      title: (value) => [`Pull the ${what} to only `, measured(value, 'force')],
      edits: (value) => [setQuantity(origin, 'tension', value, 'force')],
    },
  ];
}

/** Wire that breaks at more, the next first. */
export function strongerCable(
  part: { readonly origin: Origin; readonly member: CableItem },
  { items }: Stock,
): Lever {
  const { breakingLoad } = part.member;
  const stouter = items
    .filter((item): item is CableItem => item.kind === 'cable' && item.breakingLoad > breakingLoad)
    .sort((a, b) => a.breakingLoad - b.breakingLoad);
  return {
    type: 'choice',
    options: stouter.map(({ id, title }) => ({
      title: [`Use ${title}`],
      edits: [setItem(part.origin, 'of', id)],
    })),
  };
}

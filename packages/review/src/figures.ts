/** What governs a shelter, and what it takes and costs, before and after. */
import { type Finding, hardestOf } from '@tautline/checks';
import type { MaterialLine, Materials } from '@tautline/takeoff';

/** The check that uses most of its capacity, accepted or not, of those that say whether the house stands. */
export interface Governing {
  readonly id: string;
  readonly part: string;
  /** Demand over capacity. */
  readonly utilisation: number;
}

export function governingOf(findings: readonly Finding[]): Governing | undefined {
  const most = hardestOf(findings);
  return most && { id: most.id, part: most.part, utilisation: most.utilisation };
}

export interface MaterialChange {
  readonly title: string;
  /** Id of the stock item, where one stands for it. */
  readonly item?: string;
  readonly kind: MaterialLine['kind'];
  /** How much of it is built in, SI; absent where it is not used. */
  readonly before?: number;
  readonly after?: number;
}

export interface CostSide {
  readonly total: number;
  /** False when a price is missing or something could not be counted. */
  readonly complete: boolean;
  /** ISO 4217 code. */
  readonly currency?: string;
}

/** Lines whose amount differs, by the order of the later list; what is used no more comes last. */
export function materialChanges(
  before: Materials | undefined,
  after: Materials | undefined,
): readonly MaterialChange[] {
  const old = new Map((before?.lines ?? []).map((line) => [keyOf(line), line]));
  const now = new Map((after?.lines ?? []).map((line) => [keyOf(line), line]));
  const keys = [...now.keys(), ...[...old.keys()].filter((key) => !now.has(key))];
  return keys.flatMap((key): MaterialChange[] => {
    const was = old.get(key);
    const is = now.get(key);
    const line = is ?? was;
    if (!line || (was && is && alike(was.total, is.total))) return [];
    return [
      {
        title: line.title,
        kind: line.kind,
        ...(line.item ? { item: line.item.id } : {}),
        ...(was ? { before: was.total } : {}),
        ...(is ? { after: is.total } : {}),
      },
    ];
  });
}

/** Sums of many lengths differ in their last digits when their order does. */
const alike = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-9 * Math.max(Math.abs(a), Math.abs(b));

const keyOf = (line: MaterialLine): string => `${line.item?.id ?? line.id} ${line.kind} ${line.width ?? ''}`;

export function costOf(materials: Materials | undefined): CostSide | undefined {
  if (!materials) return undefined;
  const { cost, currency } = materials;
  // Nothing has a price: then there is no sum, rather than a sum of nothing.
  if (cost.shares.length === 0 && !cost.complete) return undefined;
  return {
    total: cost.total,
    complete: cost.complete,
    ...(currency === undefined ? {} : { currency }),
  };
}

/** A combination of loads, and how one is written down. */

/** Multipliers of the actions; 0 means the action is left out. */
export interface Factors {
  readonly dead: number;
  /** Hung crop: a variable load that can be away, so it never helps against lift. */
  readonly crop: number;
  readonly snow: number;
  /** Ponded water. */
  readonly rain: number;
  readonly wind: number;
  /** Maintenance point load or a person's push. */
  readonly person: number;
  /** Locked-in bending and pretension. */
  readonly prestress: number;
}

export interface Combination {
  readonly id: string;
  readonly title: string;
  readonly factors: Factors;
  /** 'strength' for members and joints, 'stability' for lift and overturning, 'service' for deflection. */
  readonly use: 'strength' | 'stability' | 'service';
  readonly source: string;
}

const NONE: Factors = {
  dead: 0,
  crop: 0,
  snow: 0,
  rain: 0,
  wind: 0,
  person: 0,
  prestress: 1,
};

export function combination(
  id: string,
  title: string,
  use: Combination['use'],
  source: string,
  factors: Partial<Factors>,
): Combination {
  return { id, title, use, source, factors: { ...NONE, ...factors } };
}

/** A variable load that goes with another one. */
type Companion = 'crop' | 'snow' | 'rain' | 'wind' | 'person';

/**
 * A combination, and the same with each of its companions away, one by one and together: a variable load that relieves
 * counts as none, and none of them need be there (EN 1990 table A1.2, favourable variable actions 0; ASCE 7-16 2.3.1 and
 * 2.4.1, the most unfavourable effect may come when loads do not act; both from memory). So wind that lifts the roof
 * takes nothing off its snow. What is left of one load by itself with a smaller factor than elsewhere is not repeated.
 */
export function withoutWhatRelieves(
  full: Combination,
  companions: readonly Companion[],
): readonly Combination[] {
  let made: readonly Combination[] = [full];
  for (const away of companions)
    made = [
      ...made,
      ...made.map((one) => ({
        ...one,
        id: `${one.id}-no-${away}`,
        title: `${one.title}, without ${away}`,
        factors: { ...one.factors, [away]: 0 },
      })),
    ];
  return made;
}

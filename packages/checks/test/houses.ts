/** Small houses by hand for the tests of the checks. SI units; the stock is that of the structure's fixtures. */
import type { Brace, Cover, FasteningItem, Foot, MemberItem, Posts, Shelter } from '@tautline/shelter';
import { originOf } from '@tautline/shelter';
import { analyseFrame } from '@tautline/structure';
import { pipeRidge, postStock, sprungHouse } from '../../structure/test/fixtures.ts';
import type { CheckInput } from '../src/check.ts';
import type { Finding } from '../src/finding.ts';
import { gustOrder } from '../src/gust.ts';
import { checkOf } from '../src/registry.ts';
import { runCheck } from '../src/run-check.ts';

export { pipe, pipeRidge, postStock, pvc, sprungHouse, steel } from '../../structure/test/fixtures.ts';

export const origin = originOf('test');

/** A sprung house whose crown lies on a pipe ridge. */
export const ridgedHouse = (): Shelter => sprungHouse({ ridge: pipeRidge(2.286, 2.4) });

export function inputOf(shelter: Shelter, gusts = false): CheckInput {
  const frame = analyseFrame(shelter);
  return {
    shelter,
    frame,
    ...(gusts && frame.ok ? { gusts: gustOrder(shelter, frame.analysis) } : {}),
  };
}

/** Findings of one check on a house. */
export function findings(id: string, shelter: Shelter, gusts = false): readonly Finding[] {
  const check = checkOf(id);
  if (check === undefined) throw new Error(`no check ${id}`);
  return runCheck(check, inputOf(shelter, gusts));
}

/** The only finding of a check. */
export function finding(id: string, shelter: Shelter, gusts = false): Finding {
  const [first, ...more] = findings(id, shelter, gusts);
  if (first === undefined || more.length > 0) throw new Error(`${more.length + 1} findings of ${id}`);
  return first;
}

export const use = (id: string, shelter: Shelter): number => finding(id, shelter).utilisation ?? Number.NaN;

/** The house with another foot under its bows. */
export function onFeet(shelter: Shelter, foot: Partial<Foot>): Shelter {
  const { roof } = shelter;
  if (roof.type !== 'bows' || roof.foot === undefined) throw new Error('no feet');
  return { ...shelter, roof: { ...roof, foot: { ...roof.foot, ...foot } } };
}

export function withCover(shelter: Shelter, cover: Partial<Cover>): Shelter {
  return { ...shelter, covers: shelter.covers.map((entry) => ({ ...entry, ...cover })) };
}

export function withMember(shelter: Shelter, member: MemberItem): Shelter {
  const { roof } = shelter;
  if (roof.type !== 'bows') throw new Error('no bows');
  return { ...shelter, roof: { ...roof, member } };
}

export const fastening = (holds: number, per: 'length' | 'piece' = 'length'): FasteningItem => ({
  kind: 'fastening',
  id: 'fastening',
  title: 'fastening',
  source: 'test',
  origin,
  prices: [],
  form: per === 'length' ? 'channel' : 'strap',
  holds,
  per,
  stockLengths: [],
  edgeAllowance: 0.1,
});

export const brace = (more: Partial<Brace> = {}): Brace => ({
  id: 'braces',
  origin,
  role: 'brace',
  member: postStock,
  from: { x: 0, y: 0, z: 0 },
  to: { x: 0, y: 2, z: 2 },
  count: 4,
  plane: 'along',
  ...more,
});

/** Side posts of timber set in the earth. */
export const sidePosts = (height: number, spacing: number, foot: Partial<Foot> = {}): Posts => ({
  id: 'side-posts',
  origin,
  member: postStock,
  where: 'sides',
  lines: [0, 4],
  spacing,
  stations: [0, spacing, 2 * spacing],
  height,
  foot: {
    id: 'side-posts/foot',
    origin,
    kind: 'hole',
    driven: 0.9,
    fixity: 'clamped',
    ...foot,
  },
});

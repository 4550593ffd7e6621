import type { JointItem, MemberItem } from '../model/items.ts';

/** Whether the ends lie side by side in the joint, rather than meeting in its middle. */
export const sideBySide = ({ form }: JointItem): boolean =>
  form === 'lashing' || form === 'bolt' || form === 'clamp';

/**
 * Length two pieces share at an in-line joint, m. Couplers let the ends meet in the middle; a swaged
 * end slides into its neighbour; lashed, bolted and clamped ends lie side by side over what the joint
 * takes in.
 */
export function jointLap(joint: JointItem, { swage = 0 }: Pick<MemberItem, 'swage'>): number {
  if (sideBySide(joint)) return joint.insertion;
  return joint.form === 'socket' || joint.form === 'sleeve' ? swage : 0;
}

/** How far a joint reaches along its member on either side of its place, m: a lap lies half on either side. */
export const jointReach = (joint: JointItem, member: Pick<MemberItem, 'swage'>): number =>
  jointLap(joint, member) / 2 || joint.insertion;

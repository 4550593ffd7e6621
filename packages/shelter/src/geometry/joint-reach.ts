import type { JointItem } from '../model/items.ts';

/** Whether the ends lie side by side in the joint, rather than meeting in its middle. */
export const sideBySide = ({ form }: JointItem): boolean =>
  form === 'lashing' || form === 'bolt' || form === 'clamp';

/** How far a joint reaches along its member on either side of its place, m: a lap lies half on either side. */
export const jointReach = (item: JointItem): number =>
  sideBySide(item) ? item.insertion / 2 : item.insertion;

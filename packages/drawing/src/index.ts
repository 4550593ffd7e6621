export { toSvg } from './output/svg.ts';
export { planView } from './views/plan.ts';
export { sectionView } from './views/section.ts';
export { sideView } from './views/side.ts';

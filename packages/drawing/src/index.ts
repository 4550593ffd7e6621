export { toSvg } from './output/svg.ts';
export { sectionView } from './views/section.ts';

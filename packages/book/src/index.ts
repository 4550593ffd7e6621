export { cautionLine, cautions } from './cautions.ts';

/** Kept out of the front door, so that only who writes a workbook carries the library for it. */
export { materialsWorkbook } from './exports/workbook.ts';

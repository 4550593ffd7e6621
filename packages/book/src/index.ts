export { type Book, type BookFile, buildBook } from './book.ts';
export { type DueDate, dueDates } from './calendar/dates.ts';
export { calendarText } from './calendar/ics.ts';
export { cautionLine, cautions } from './cautions.ts';
export { type FullSize, fullSizeTemplate } from './full-size.ts';
export type { BookInput, KeepingDuty } from './input.ts';
export { type Inspection, inspections } from './work/inspection.ts';
export { workSteps } from './work/steps.ts';
export type { WorkStep } from './work/work-step.ts';

/** What the worker for long work can do. */
import { type Jobs, languageJobs } from '@tautline/language/server';

export const jobs: Jobs = languageJobs;

/** The workers of a server that is a process: threads of it. */
import { serveInThread } from '@tautline/language/node';
import { jobs } from './jobs.ts';

serveInThread(jobs);

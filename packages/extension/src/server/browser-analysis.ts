/** The workers of a server that is a web worker: workers below it. */
import { type FromWorker, serveAnalyst, serveJobs, type ToWorker } from '@tautline/language/server';
import { portOf } from './browser-port.ts';
import { jobs } from './jobs.ts';

const port = portOf<FromWorker, ToWorker>(globalThis as unknown as Worker);
serveAnalyst(port);
serveJobs(port, jobs);

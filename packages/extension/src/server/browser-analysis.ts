/** The analysis worker of a server that is a web worker: a worker below it. */
import { type FromWorker, serveAnalyst, type ToWorker } from '@tautline/language/server';
import { portOf } from './browser-port.ts';

serveAnalyst(portOf<FromWorker, ToWorker>(globalThis as unknown as Worker));

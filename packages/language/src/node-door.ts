/** Door for Node: reading the workspace's files, and the analysis in a thread of its own. */
export { GuardedFiles } from './node/guarded-files.ts';
export { idleCollection } from './node/idle-collection.ts';
export { serveInThread, threadPort } from './node/threads.ts';

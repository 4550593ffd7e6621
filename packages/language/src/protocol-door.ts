/** Door for the editor client and the preview, which must not load the whole language to know its messages. */
export * from './protocol.ts';

/** Server asks, client answers: `{uri}` -> text of the file, or null when it may not or cannot be read. */
export const fileTextRequest = 'tautline/file/text';
/** `{uri}` -> kind, or null when there is nothing or it may not be seen. */
export const fileKindRequest = 'tautline/file/kind';
/** `{uri}` -> `FileEntry[]` of a folder; empty when it may not or cannot be read. */
export const folderEntriesRequest = 'tautline/file/entries';

export interface FileQuestion {
  readonly uri: string;
}
export interface FileEntry {
  readonly name: string;
  readonly kind: 'file' | 'folder' | 'other';
}

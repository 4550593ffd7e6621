/** The files of the workspace, and nothing else: no links that lead out, no files too large for a spec. */
import { promises as files } from 'node:fs';
import type { URI } from 'langium';
import { NodeFileSystemProvider } from 'langium/node';
import { LARGEST_TEXT } from '../text/lexer.ts';

/** Stands for the text of a file that is not read; the lexer refuses it as what it is, too large. */
const tooLarge = ' '.repeat(LARGEST_TEXT + 1);

export class GuardedFiles extends NodeFileSystemProvider {
  /** Text of a file. Rejects for links and what else is no regular file. */
  override async readFile(uri: URI): Promise<string> {
    const about = await files.lstat(uri.fsPath);
    if (!about.isFile()) throw new Error(`${uri.fsPath} is not a regular file`);
    return about.size > 4 * LARGEST_TEXT ? tooLarge : super.readFile(uri);
  }
}

/** What the drawing sheet has done beyond showing: exploring, writing a variant, making a picture. */
import {
  type ExploreAnswer,
  type ExploreQuestion,
  exploreRequest,
  type VariantAnswer,
  type VariantQuestion,
  variantRequest,
} from '@tautline/language/protocol';
import { Uri, window, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { ToSheet } from '../preview/messages.ts';
import { writeEdits } from './commands.ts';
import { askLong } from './long-question.ts';

/** Every variant of a shelter; never rejects. */
export async function exploreShelter(
  client: BaseLanguageClient,
  uri: string,
  shelter: string,
): Promise<ExploreAnswer> {
  try {
    const question: ExploreQuestion = { uri, shelter };
    const answer = await askLong<ExploreQuestion, ExploreAnswer>(
      client,
      `Exploring ${shelter}`,
      exploreRequest,
      question,
    );
    return answer ?? { why: 'Stopped before it was done.' };
  } catch (error) {
    return {
      why: `No answer from the language server (${error instanceof Error ? error.message : error}).`,
    };
  }
}

/** Writes one of the variants explored into the text, or says why not. */
export async function writeVariant(client: BaseLanguageClient, question: VariantQuestion): Promise<void> {
  const document = await workspace.openTextDocument(Uri.parse(question.uri));
  const answer = await client.sendRequest<VariantAnswer>(variantRequest, question);
  if ('why' in answer) {
    void window.showWarningMessage(answer.why);
  } else {
    await writeEdits(document, answer);
  }
}

/** How long the page may take over a picture, ms. */
const patience = 15_000;

/** Pictures that the page was asked for. */
export class Pictures {
  private readonly waiting = new Map<number, (base64: string | undefined) => void>();
  private last = 0;
  private readonly post: (message: ToSheet) => void;

  constructor(post: (message: ToSheet) => void) {
    this.post = post;
  }

  /** Undefined when the page does not make it, or does not answer. */
  ask(svg: string, width: number): Promise<string | undefined> {
    this.last += 1;
    const id = this.last;
    return new Promise((resolve) => {
      const timer = setTimeout(() => this.came(id, undefined), patience);
      this.waiting.set(id, (base64) => {
        clearTimeout(timer);
        resolve(base64);
      });
      this.post({ type: 'rasterise', id, svg, width });
    });
  }

  came(id: number, base64: string | undefined): void {
    const answer = this.waiting.get(id);
    this.waiting.delete(id);
    answer?.(base64);
  }
}

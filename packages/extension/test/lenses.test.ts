/** Lenses must neither hold the editor up nor jump: late ones come with a second question. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';

vi.mock('vscode-languageclient', () => ({ CodeLensRequest: { method: 'textDocument/codeLens' } }));
const { promptLenses } = await import('../src/client/lenses.ts');

type Provide = ReturnType<typeof promptLenses>;
type Document = Parameters<Provide>[0];
type Lenses = Awaited<ReturnType<Provide>>;

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const document = { uri: { toString: () => 'file:///gully/house.shelter' }, version: 1 };
const token = {
  isCancellationRequested: false,
  onCancellationRequested: () => ({ dispose: () => undefined }),
};
const named = (title: string): Lenses => [{ command: { title, command: '' } }] as unknown as Lenses;
const titles = (lenses: Lenses) => lenses?.map(({ command }) => command?.title);

/** The client's side: how often it was told that lenses have changed, and a server that takes its time. */
function clientSide() {
  const fire = vi.fn();
  const client = {
    getFeature: () => ({
      getProvider: () => ({ onDidChangeCodeLensEmitter: { fire } }),
    }),
  };
  const lenses = promptLenses(() => client as unknown as ReturnType<Parameters<typeof promptLenses>[0]>);
  const ask = (server: () => Promise<Lenses>, version: number): Promise<Lenses> => {
    document.version = version;
    return Promise.resolve(
      lenses(document as unknown as Document, token as never, server as never),
    ) as Promise<Lenses>;
  };
  return { ask, asked: () => fire.mock.calls.length };
}

const after = (ms: number, lenses: Lenses) => (): Promise<Lenses> =>
  new Promise((resolve) => setTimeout(() => resolve(lenses), ms));

describe('lenses while typing', () => {
  it('are those of the server where it answers soon', async () => {
    const { ask, asked } = clientSide();
    const answer = ask(after(50, named('one')), 1);
    await vi.advanceTimersByTimeAsync(50);
    expect(titles(await answer)).toEqual(['one']);
    await vi.advanceTimersByTimeAsync(1000);
    expect(asked()).toBe(0);
  });

  it('stay as they were while the server is slow, and change once when it has answered', async () => {
    const { ask, asked } = clientSide();
    const first = ask(after(0, named('one')), 1);
    await vi.advanceTimersByTimeAsync(0);
    await first;
    const second = ask(after(2000, named('two')), 2);
    await vi.advanceTimersByTimeAsync(149);
    let answered = false;
    void second.then(() => {
      answered = true;
    });
    await vi.advanceTimersByTimeAsync(0);
    expect(answered).toBe(false);
    await vi.advanceTimersByTimeAsync(1);
    expect(titles(await second)).toEqual(['one']);
    expect(asked()).toBe(0);
    await vi.advanceTimersByTimeAsync(2000);
    expect(asked()).toBe(1);
    // The editor asks again. While the server is slow, what came late is shown, and the editor is not told again.
    const third = ask(after(2000, named('two')), 2);
    await vi.advanceTimersByTimeAsync(150);
    expect(titles(await third)).toEqual(['two']);
    await vi.advanceTimersByTimeAsync(2000);
    expect(asked()).toBe(1);
  });

  it('are those that the server knows by the time they are asked for again', async () => {
    const { ask, asked } = clientSide();
    const first = ask(after(200, named('before the gusts')), 1);
    await vi.advanceTimersByTimeAsync(150);
    expect(await first).toBe(undefined);
    await vi.advanceTimersByTimeAsync(100);
    expect(asked()).toBe(1);
    const second = ask(after(10, named('with the gusts')), 1);
    await vi.advanceTimersByTimeAsync(10);
    expect(titles(await second)).toEqual(['with the gusts']);
  });

  it('that came late for an older text are not shown', async () => {
    const { ask, asked } = clientSide();
    const first = ask(after(2000, named('old')), 1);
    await vi.advanceTimersByTimeAsync(150);
    expect(await first).toBe(undefined);
    const second = ask(after(10, named('new')), 2);
    await vi.advanceTimersByTimeAsync(10);
    expect(titles(await second)).toEqual(['new']);
    await vi.advanceTimersByTimeAsync(3000);
    expect(asked()).toBe(0);
    const third = ask(after(10, named('newest')), 3);
    await vi.advanceTimersByTimeAsync(10);
    expect(titles(await third)).toEqual(['newest']);
  });
});

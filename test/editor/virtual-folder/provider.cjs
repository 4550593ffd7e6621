// A read-write folder in memory, as an editor in a browser has them: no disk below it. The test puts the files in.
const vscode = require('vscode');

const files = new Map(Object.entries(FILES).map(([name, text]) => [`/growers/${name}`, text]));
const changes = new vscode.EventEmitter();
const missing = (uri) => vscode.FileSystemError.FileNotFound(uri);
const at = { ctime: 0, mtime: 1 };

const provider = {
  onDidChangeFile: changes.event,
  watch: () => ({ dispose: () => undefined }),
  stat: (uri) => {
    const text = files.get(uri.path);
    if (text !== undefined) {
      return { type: vscode.FileType.File, size: text.length, ...at };
    }
    if (uri.path.replace(/\/$/, '') === '/growers') {
      return { type: vscode.FileType.Directory, size: 0, ...at };
    }
    throw missing(uri);
  },
  readDirectory: () =>
    [...files.keys()].map((path) => [path.slice('/growers/'.length), vscode.FileType.File]),
  readFile: (uri) => {
    const text = files.get(uri.path);
    if (text === undefined) {
      throw missing(uri);
    }
    return new TextEncoder().encode(text);
  },
  writeFile: (uri, bytes) => {
    files.set(uri.path, new TextDecoder().decode(bytes));
    changes.fire([{ type: vscode.FileChangeType.Changed, uri }]);
  },
  createDirectory: () => undefined,
  delete: (uri) => files.delete(uri.path),
  rename: (from, to) => {
    files.set(to.path, files.get(from.path));
    files.delete(from.path);
  },
};

exports.activate = (context) => {
  context.subscriptions.push(
    vscode.workspace.registerFileSystemProvider('growers-mem', provider, { isCaseSensitive: true }),
  );
};

/** Where an import leads: only down or sideways inside the workspace, never out of it. */

export type ImportTarget =
  | { readonly ok: true; readonly uri: string }
  | { readonly ok: false; readonly message: string };

const folderOf = (uri: string): string => uri.slice(0, uri.lastIndexOf('/') + 1);

/** The scheme and authority of a URI, and its path segments. */
function split(uri: string): { readonly head: string; readonly segments: readonly string[] } | undefined {
  const match = /^([a-z][a-z0-9+.-]*:(?:\/\/[^/]*)?)\/(.*)$/i.exec(uri);
  return match ? { head: match[1] as string, segments: (match[2] as string).split('/') } : undefined;
}

const decoded = (text: string): string => {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
};

/**
 * Resolves the path of an import against the file it stands in. `roots` are the folders of the workspace
 * (URIs); without any, the folder of the file is the only one. Never throws, reads nothing.
 */
export function resolveImport(from: string, path: string, roots: readonly string[]): ImportTarget {
  const wrong = (message: string): ImportTarget => ({ ok: false, message });
  if (path.trim() === '') return wrong('The path of the file to import is missing.');
  if (path.includes('\\')) return wrong('Write the path with `/`, not with a backslash.');
  if (/^[a-z][a-z0-9+.-]*:/i.test(path) || path.startsWith('/') || path.startsWith('~'))
    return wrong(
      'An import names a file of this workspace by its path from this file, e.g. "prices/yard.shelter".',
    );
  if (!path.endsWith('.shelter')) return wrong('Only files that end in `.shelter` can be imported.');
  const base = split(folderOf(from));
  if (!base) return wrong('This file has no folder yet: save it before importing another.');
  const segments = base.segments.filter((segment) => segment !== '');
  for (const segment of path.split('/')) {
    if (segment === '' || segment === '.') continue;
    if (segment === '..') {
      if (segments.length === 0) return wrong('The import leads out of the workspace.');
      segments.pop();
    } else segments.push(encodeURIComponent(segment));
  }
  const inside = (root: string): boolean => {
    const at = split(root.endsWith('/') ? root : `${root}/`);
    if (!at || at.head.toLowerCase() !== base.head.toLowerCase()) return false;
    return at.segments
      .filter((segment) => segment !== '')
      .every((segment, index) => decoded(segment) === decoded(segments[index] ?? ''));
  };
  if (!(roots.length > 0 ? roots : [folderOf(from)]).some(inside))
    return wrong('The import leads out of the workspace. Only files inside it can be imported.');
  return { ok: true, uri: `${base.head}/${segments.join('/')}` };
}

/** What every page has: complete HTML without scripts and without anything fetched. */

/** `head` stands under the title, `body` below it; both are HTML, the title is text. */
export function htmlPage(title: string, head: string, body: string): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(title)}</title>
<style>${style}</style>
</head>
<body>
<header>
<h1>${escaped(title)}</h1>
${head}
</header>
<main>
${body}
</main>
</body>
</html>
`;
}

export function escaped(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');
}

const style = `
:root { color-scheme: light; --ink: #1b1f24; --quiet: #59636e; --line: #c9d1d9; --paper: #fff; }
body { font: 16px/1.5 system-ui, sans-serif; color: var(--ink); background: var(--paper); margin: 0 auto; max-width: 78rem; padding: 1.5rem; }
h2 { margin: 2.5rem 0 0; border-top: 2px solid var(--ink); padding-top: .75rem; } h3 { margin: 1rem 0 .25rem; }
.quiet { color: var(--quiet); } dl { display: grid; grid-template-columns: max-content 1fr; gap: .25rem 1rem; } dd { margin: 0; }
table { border-collapse: collapse; width: 100%; } th, td { text-align: left; vertical-align: top; padding: .35rem .6rem; border-bottom: 1px solid var(--line); font-weight: normal; }
thead th { color: var(--quiet); } ins { text-decoration: none; font-weight: 700; }
.pairs { display: grid; grid-template-columns: repeat(auto-fit, minmax(24rem, 1fr)); gap: 1rem; } figure { margin: 0; border: 1px solid var(--line); padding: .5rem; } figure svg { width: 100%; height: auto; } figcaption { color: var(--quiet); }
@media print { section { break-before: page; } }
`;

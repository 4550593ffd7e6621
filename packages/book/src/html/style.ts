/** How the book looks on paper: black on white, told apart by weight and line, one chapter a page. */

/** Paper, and the room within its margins upright and lying on its side, mm. */
const sizes = {
  a4: { page: 'A4', tall: 257, wide: 170, across: 267 },
  letter: { page: 'letter', tall: 239, wide: 176, across: 249 },
} as const;

/** What the facts and the contents leave of the cover, mm. */
const COVER = 95;
/** Left under a drawing that has a page to itself, mm. */
const FOOT_ROOM = 10;

/** Units of a drawing in a millimetre of paper at its own size: 96 to the inch. */
const UNITS = 96 / 25.4;

/** The room of a drawing on a page of its own, or on the cover, in units of the drawing: letters print at full size. */
export function drawingRoom(
  paper: 'a4' | 'letter',
  page: 'upright' | 'wide' | 'cover',
): { readonly wide: number; readonly tall: number } {
  const { tall, wide, across } = sizes[paper];
  const [w, h] = {
    upright: [wide, tall - FOOT_ROOM],
    wide: [across, wide + 2],
    cover: [wide, COVER],
  }[page] as [number, number];
  return { wide: w * UNITS, tall: h * UNITS };
}

export function bookStyle(paper: 'a4' | 'letter', foot: string): string {
  const { page, tall, wide } = sizes[paper];
  const quoted = foot.replace(/["\\\n]/g, ' ');
  return `
@page { size: ${page}; margin: 18mm 20mm 22mm; @bottom-left { content: "${quoted}"; font: 8pt Helvetica, Arial, "Liberation Sans", sans-serif; } @bottom-right { content: counter(page) " / " counter(pages); font: 8pt Helvetica, Arial, "Liberation Sans", sans-serif; } }
@page wide { size: ${page} landscape; margin: 15mm 15mm 18mm; }
* { box-sizing: border-box; }
html { color: #000; background: #fff; }
body { font: 10.5pt/1.42 Helvetica, Arial, "Liberation Sans", sans-serif; margin: 0; overflow-wrap: anywhere; }
h1 { font-size: 24pt; line-height: 1.15; margin: 0 0 2mm; }
h2 { font-size: 15pt; margin: 0 0 4mm; padding-bottom: 1.5mm; border-bottom: 0.6mm solid #000; }
h3 { font-size: 11pt; margin: 5mm 0 1.5mm; break-after: avoid; }
p { margin: 0 0 2.5mm; } ul, ol { margin: 0 0 3mm; padding-left: 6mm; } li { margin: 0 0 1mm; }
.chapter { break-before: page; } .lead { font-size: 13pt; } .quiet { font-size: 9pt; } .big { font-size: 30pt; font-weight: 700; line-height: 1.1; margin: 2mm 0; }
.wide { page: wide; break-before: page; }
.boxed { border: 0.4mm solid #000; padding: 3mm 4mm; margin: 0 0.4mm 4mm 0; break-inside: avoid; }
.stop { border-width: 1.2mm; font-weight: 700; }
table { border-collapse: collapse; width: 100%; margin: 0 0 4mm; font-size: 9pt; line-height: 1.3; }
thead { display: table-header-group; } tr { break-inside: avoid; }
th { text-align: left; border-bottom: 0.4mm solid #000; padding: 1mm 2mm 1mm 0; vertical-align: bottom; }
td, th { overflow-wrap: break-word; } td { border-bottom: 0.15mm solid #777; padding: 1mm 2mm 1mm 0; vertical-align: top; }
td.n, th.n { text-align: right; white-space: nowrap; } td:last-child, th:last-child { padding-right: 0; }
figure { margin: 0 0 4mm; break-inside: avoid; } figure svg { display: block; margin: 0 auto; max-width: 100%; height: auto; max-height: ${tall - FOOT_ROOM}mm; }
.wide figure svg { width: 100%; max-height: ${wide + 2}mm; }
.front { display: flex; flex-direction: column; height: ${tall - 3}mm; } .front figure { flex: 1; min-height: 0; } .front figure svg { width: 100%; height: 100%; max-height: none; }
.facts { display: grid; grid-template-columns: max-content 1fr; gap: 0.8mm 6mm; margin: 0 0 4mm; } .facts dt { font-weight: 700; } .facts dd { margin: 0; }
.contents { columns: 2; column-gap: 10mm; font-size: 9.5pt; } a { color: inherit; }
.tick { list-style: none; padding-left: 0; } .tick li { padding-left: 7mm; text-indent: -7mm; break-inside: avoid; } .tick li::before { content: ""; display: inline-block; width: 3.4mm; height: 3.4mm; border: 0.3mm solid #000; margin-right: 3.6mm; vertical-align: -0.4mm; }
.two { display: grid; grid-template-columns: 1fr 1fr; gap: 8mm; } .close { font-size: 10pt; line-height: 1.32; } .close h3 { margin: 3mm 0 1mm; } .close .big { font-size: 24pt; } .close table, .close .boxed, .close p, .close ul, .close ol { margin-bottom: 2mm; }
.line { border-bottom: 0.25mm solid #000; height: 11mm; display: flex; align-items: flex-end; font-size: 9pt; padding-bottom: 0.6mm; } .tall { height: 34mm; align-items: flex-start; border: 0.25mm solid #000; padding: 1.5mm; margin-top: 4mm; }
.step { break-inside: avoid; margin: 0 0 3.5mm; } .step h3 { margin-top: 0; } .finding { margin: 0 0 6mm; } .together { break-inside: avoid; } .finding h3 { border-top: 0.3mm solid #000; padding-top: 2mm; }
.steps { table-layout: fixed; } .steps th:nth-child(1) { width: 27%; } .steps th:nth-child(3) { width: 15%; } .steps th:nth-child(4) { width: 9%; } .steps td.n { white-space: normal; }
.formula { font-family: "Liberation Mono", "Courier New", monospace; font-size: 8.5pt; }
@media screen { .front { height: auto; } body { padding: 8mm; margin: 0 auto; max-width: ${wide + 40}mm; } .chapter, .wide { margin-top: 14mm; } .wide { overflow-x: auto; } }
`;
}

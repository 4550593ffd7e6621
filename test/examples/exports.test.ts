/** Every export is opened again by a reader that has nothing to do with its writer. */

import { sceneGlb } from '@tautline/book/gltf';
import { materialsWorkbook } from '@tautline/book/xlsx';
import { planView, sectionView, toDxf, toSvg, views } from '@tautline/drawing';
import { materials, materialsCsv, materialsJson } from '@tautline/takeoff';
import DxfParser from 'dxf-parser';
import { validateBytes } from 'gltf-validator';
import Papa from 'papaparse';
import readWorkbook from 'read-excel-file/node';
import { SaxesParser } from 'saxes';
import { describe, expect, it } from 'vitest';
import { example } from './loaded.ts';

const names = ['bed-arch', 'cable-house', 'conduit-arch', 'screen-house', 'stub-arch', 'timber-gable'];

describe.each(names)('exports of %s', (name) => {
  it('SVG is well-formed XML', async () => {
    const { shelter } = await example(name);
    for (const draw of Object.values(views)) {
      const drawing = draw(shelter, { system: 'metric' });
      if (!drawing) continue;
      const parser = new SaxesParser({ xmlns: true });
      let shapes = 0;
      parser.on('opentag', () => {
        shapes += 1;
      });
      parser.on('error', (error) => {
        throw error;
      });
      parser.write(toSvg(drawing, 'paper')).close();
      expect(shapes).toBeGreaterThan(10);
    }
  });

  it('DXF is read by dxf-parser, true to size in millimetres', async () => {
    const { shelter } = await example(name);
    const dxf = new DxfParser().parseSync(toDxf(planView(shelter, { system: 'metric' })));
    expect(dxf?.entities.length).toBeGreaterThan(10);
    const reach = dxf!.entities
      .flatMap((entity) => ('vertices' in entity ? (entity.vertices as { x: number; y: number }[]) : []))
      .map((vertex) => vertex.x);
    // The house lies along x in the plan: something as long as it must be there.
    expect(Math.max(...reach) - Math.min(...reach)).toBeGreaterThanOrEqual(shelter.length * 1000 - 1);
    expect(
      new DxfParser().parseSync(toDxf(sectionView(shelter, { system: 'us' })))?.entities.length,
    ).toBeGreaterThan(10);
  });

  it('glTF passes the validator of the format, with the size of the house', async () => {
    const { shelter } = await example(name);
    const report = await validateBytes(await sceneGlb(shelter), { maxIssues: 20 });
    expect(report.issues.messages).toEqual([]);
    expect(report.issues.numErrors + report.issues.numWarnings).toBe(0);
    expect(report.info.totalTriangleCount).toBeGreaterThan(100);
  });

  it('the workbook is read by read-excel-file: the same rows as the list, numbers as numbers', async () => {
    const { shelter } = await example(name);
    const counted = materials(shelter, { currency: 'XTS' });
    const bytes = Buffer.from(await materialsWorkbook(counted, 'metric'));
    const sheets = await readWorkbook(bytes);
    const byName = new Map(sheets.map(({ sheet, data }) => [sheet, data]));
    expect([...byName.keys()]).toEqual(['Materials', 'Cutting', 'Cost']);
    const rows = byName.get('Materials') ?? [];
    expect(rows).toHaveLength(counted.lines.length + 1);
    expect(rows.slice(1).map((row) => row[2])).toEqual(counted.lines.map((line) => line.title));
    for (const [index, line] of counted.lines.entries())
      expect(rows[index + 1]?.[4]).toBeCloseTo(line.total, 6);
    expect(Buffer.from(await materialsWorkbook(counted, 'metric')).equals(bytes)).toBe(true);
  });

  it('CSV is read by papaparse without a fault, JSON by any reader', async () => {
    const { shelter } = await example(name);
    const counted = materials(shelter);
    const { data, errors } = Papa.parse<Record<string, string>>(materialsCsv(counted, 'us'), {
      header: true,
      skipEmptyLines: true,
    });
    expect(errors).toEqual([]);
    expect(data.map((row) => row['title'])).toEqual(counted.lines.map((line) => line.title));
    expect(JSON.parse(materialsJson(counted)).lines).toHaveLength(counted.lines.length);
  });
});

describe('a workbook', () => {
  it('keeps text that looks like a formula as text', async () => {
    const { shelter } = await example('bed-arch');
    const counted = materials(shelter);
    const evil = { ...counted, lines: counted.lines.map((line) => ({ ...line, title: '=1+1' })) };
    const sheets = await readWorkbook(Buffer.from(await materialsWorkbook(evil, 'metric')));
    expect(sheets[0]?.data[1]?.[2]).toBe('=1+1');
  });
});

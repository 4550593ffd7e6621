/** Answers what the drawing sheet asks for on demand. Pure; `detail-request.ts` puts it on the connection. */
import { type AtGust, messageText, stormOff } from '@tautline/checks';
import {
  barChart,
  type Drawing,
  loadChoices,
  overlaysOf,
  rangePlanView,
  responseId,
  responseOf,
  scene3d,
  toDxf,
  toSvg,
  viewOfOverlay,
  views,
} from '@tautline/drawing';
import { countedFor, type ToldEvaluation } from '@tautline/language/server';
import { format, type System } from '@tautline/quantity';
import { variantsChart } from '@tautline/review';
import type { Range, SpecWorld } from '@tautline/shelter';
import { materialsCsv } from '@tautline/takeoff';
import type { DetailAnswer, DetailWanted, FileWanted, Loads, OverlayWanted } from '../details.ts';
import { gustScale, gustSentence, sharesAtGust, usesAtGust } from './at-gust.ts';

/** Side of the squares on the ground, m: a metre or five feet. */
const gridSide: Readonly<Record<System, number>> = { metric: 1, us: 1.524 };

/** `blown` is the frame at the gust of an overlay that names one, `wide` the width of a narrow place it is shown in. */
export function detail(
  evaluation: ToldEvaluation,
  world: SpecWorld,
  wanted: DetailWanted,
  system: System,
  blown?: AtGust,
  wide?: number,
): DetailAnswer {
  switch (wanted.kind) {
    case 'overlay': {
      const loads = loadsOf(evaluation, wanted);
      const { drawing, captions } = overlaid(evaluation, wanted, system, blown, wide);
      return {
        ...shown(drawing, captions),
        ...(loads === undefined ? {} : { loads }),
        ...(evaluation.analysis === undefined || wanted.overlay === 'water'
          ? {}
          : { gusts: gustScale(evaluation, wanted.gust, system) }),
        ...(blown === undefined ? {} : { uses: usesAtGust(blown) }),
      };
    }
    case 'view': {
      const drawing = views[wanted.view](evaluation.shelter, {
        system,
        ...(wide === undefined ? {} : { wide }),
      });
      return drawing === undefined
        ? { kind: 'nothing', why: 'There is nothing to draw from this side.' }
        : shown(drawing);
    }
    case 'variants': {
      const chart = variantsChart(wanted.explored, system);
      return typeof chart === 'string' ? { kind: 'nothing', why: chart } : shown(chart);
    }
    case 'gusts': {
      const chart = gustChart(evaluation, system);
      return typeof chart === 'string'
        ? { kind: 'nothing', why: chart }
        : shown(chart, [gustsInWords(evaluation, system), ...unrankedInWords(evaluation, system)]);
    }
    case 'space': {
      const { shelter } = evaluation;
      const { width, length, roof } = shelter;
      const size = [width, length, roof.springing + roof.rise].map((side) => format(side, 'length', system));
      return {
        kind: 'space',
        scene: scene3d(shelter),
        grid: gridSide[system],
        description: `The whole house in space: ${size[0]} wide, ${size[1]} long, ${size[2]} high. Squares on the ground are ${format(gridSide[system], 'length', system)} wide.`,
      };
    }
    case 'file':
      return file(evaluation, world, wanted.file, system, blown);
  }
}

const shown = (
  drawing: Drawing,
  captions: readonly string[] = [],
): Extract<DetailAnswer, { kind: 'drawing' }> => ({
  kind: 'drawing',
  svg: toSvg(drawing, 'editor'),
  description: `${drawing.title}. ${drawing.description}`,
  captions,
});

function overlaid(
  evaluation: ToldEvaluation,
  { overlay, load }: OverlayWanted,
  system: System,
  blown: AtGust | undefined,
  wide?: number,
): { readonly drawing: Drawing; readonly captions: readonly string[] } {
  const { shelter, analysis, findings } = evaluation;
  const frame = blown?.analysis ?? analysis;
  const uses = blown && sharesAtGust(blown);
  const choice = {
    overlay,
    ...(load === undefined ? {} : { load }),
    ...(blown === undefined || analysis === undefined ? {} : { compared: analysis }),
  };
  // Light, heat and lengths of stock have shares of their own, which are not to be ranked with strength.
  const strength = findings.filter(({ nature }) => nature === undefined);
  const drawn = overlaysOf(shelter, frame, uses ?? strength, choice, system);
  const calm =
    blown !== undefined && overlay !== 'use' && frame && responseOf(frame, load)?.load.wind === undefined
      ? ['There is no wind in this load: the gust changes nothing in the picture.']
      : [];
  const said = blown === undefined ? [] : [gustSentence(blown, system)];
  const captions = [...said, ...(overlay === 'use' && blown ? [] : (drawn.captions ?? [])), ...calm];
  const view = views[viewOfOverlay(overlay)];
  return {
    drawing: view(shelter, {
      system,
      overlays: { ...drawn, captions },
      ...(wide === undefined ? {} : { wide }),
    }),
    captions,
  };
}

/** Loads to choose from, for the overlays that show one. */
function loadsOf({ analysis }: ToldEvaluation, { overlay, load }: OverlayWanted): Loads | undefined {
  if (analysis === undefined || overlay === 'use' || overlay === 'water') {
    return undefined;
  }
  const response = responseOf(analysis, load) ?? responseOf(analysis, undefined);
  return response === undefined ? undefined : { choices: loadChoices(analysis), shown: responseId(response) };
}

function gustsInWords({ shelter, gusts }: Pick<ToldEvaluation, 'shelter' | 'gusts'>, system: System): string {
  const speed = (si: number): string => format(si, 'speed', system);
  const off = gusts?.filmOff;
  const bare = gusts?.withoutWind;
  const film =
    off === undefined
      ? bare === undefined
        ? ''
        : ` It does not stand without wind: ${bare.what} under ${bare.loadCase}.`
      : ` ${stormOff(shelter).order} before ${speed(off.gust)}, ${Math.round(off.margin * 100)} % of the first.`;
  return `3 s gusts at 10 m. The site's gust is ${speed(shelter.site.gust)}.${film}`;
}

/** Parts that the wind loads and that the chart does not show, with the reason. */
function unrankedInWords({ gusts }: Pick<ToldEvaluation, 'gusts'>, system: System): string[] {
  return (gusts?.unranked ?? []).map(
    ({ noun, why }) => `Not in the chart: ${noun}; ${messageText(why, system)}.`,
  );
}

/** Gust that brings each part to its limit, or why there is none to show. */
export function gustChart({ shelter, gusts }: ToldEvaluation, system: System): Drawing | string {
  if (gusts === undefined) {
    return 'The gusts are not worked out: the frame is not calculated, or the result is still to come.';
  }
  const { failures, filmOff, withoutWind, upTo } = gusts;
  const speed = (si: number): string => format(si, 'speed', system);
  if (failures.length === 0) {
    return `No part reaches its limit in gusts up to ${speed(upTo)}.`;
  }
  const first = filmOff?.first ?? withoutWind ?? failures[0];
  return barChart(
    {
      title: `${shelter.name}: gust that brings each part to its limit`,
      description: gustsInWords({ shelter, gusts }, system),
      kind: 'speed',
      reach: 190,
      rows: failures.map((failure) => {
        const notes = [
          ...(failure === first ? ['first to fail'] : []),
          ...(failure.sacrificial ? ['meant to give way'] : []),
          ...(failure.estimated ? ['estimated'] : []),
        ];
        return {
          part: failure.part,
          label: `${failure.what} (${failure.check})`,
          value: failure.gust,
          ...(notes.length === 0 ? {} : { note: notes.join(', ') }),
        };
      }),
      mark:
        filmOff === undefined
          ? { value: shelter.site.gust, label: "site's gust" }
          : { value: filmOff.gust, label: `${stormOff(shelter).mark.replace(' ', '-')} gust` },
    },
    { system },
  );
}

function file(
  evaluation: ToldEvaluation,
  world: SpecWorld,
  wanted: FileWanted,
  system: System,
  blown: AtGust | undefined,
): DetailAnswer {
  const { name } = evaluation.shelter;
  if (wanted.format === 'csv') {
    return {
      kind: 'file',
      name: `${name}-materials.csv`,
      text: materialsCsv(countedFor(evaluation.shelter, world), system),
    };
  }
  if (wanted.format === 'glb') return { kind: 'nothing', why: 'The house in space is written elsewhere.' };
  const drawing =
    wanted.view === 'gusts'
      ? gustChart(evaluation, system)
      : wanted.view === 'section' && wanted.over !== undefined
        ? overlaid(evaluation, wanted.over, system, blown).drawing
        : views[wanted.view](evaluation.shelter, { system });
  if (drawing === undefined || typeof drawing === 'string') {
    return { kind: 'nothing', why: drawing ?? 'There is no such drawing of this shelter.' };
  }
  return drawingFile(`${name}-${wanted.view}`, wanted.format, drawing);
}

/** A drawing on paper; a PNG is made from it by the page. */
function drawingFile(name: string, format: 'svg' | 'dxf' | 'png', drawing: Drawing): DetailAnswer {
  const text = format === 'dxf' ? toDxf(drawing) : toSvg(drawing, 'paper');
  return { kind: 'file', name: `${name}.${format}`, text };
}

/** Of shelters side by side there are files and nothing else to ask for. */
export function rangeDetail(
  range: Range,
  world: SpecWorld,
  wanted: DetailWanted,
  system: System,
): DetailAnswer {
  if (wanted.kind === 'file' && wanted.file.format === 'csv') {
    const text = materialsCsv(countedFor(range, world), system);
    return { kind: 'file', name: `${range.name}-materials.csv`, text };
  }
  if (wanted.kind === 'file' && 'view' in wanted.file && wanted.file.view === 'plan') {
    return drawingFile(`${range.name}-plan`, wanted.file.format, rangePlanView(range, { system }));
  }
  return { kind: 'nothing', why: 'This is worked out for each shelter of a range by itself.' };
}

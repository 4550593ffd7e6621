import type { PreviewShelter } from '@tautline/language/protocol';
import type { FileWanted, OverlayWanted } from '../details.ts';
import type { SheetState } from './messages.ts';

/** Files that can be saved, those of the tab on show first. */
export function filesOf(shelter: PreviewShelter, tab: string | undefined, state: SheetState): FileWanted[] {
  const over = overlayWanted(state);
  const ofOne = shelter.kind !== 'range';
  const views = [...shelter.drawings.map(({ view }) => view), ...(ofOne ? ['gusts' as const] : [])].sort(
    (a, b) => Number(b === tab) - Number(a === tab),
  );
  const drawings = views.flatMap((view) =>
    (['svg', 'png', 'dxf'] as const)
      // A chart is no drawing to scale.
      .filter((format) => format !== 'dxf' || view !== 'gusts')
      .map(
        (format): FileWanted => ({
          format,
          view,
          ...(view === 'section' && over !== undefined ? { over } : {}),
        }),
      ),
  );
  const csv: FileWanted = { format: 'csv' };
  const glb: FileWanted[] = ofOne ? [{ format: 'glb' }] : [];
  if (tab === 'materials') {
    return [csv, ...drawings, ...glb];
  }
  return tab === 'space' ? [...glb, ...drawings, csv] : [...drawings, csv, ...glb];
}

/** What is drawn over the section, as it is asked for; undefined for sizes only. */
export function overlayWanted({ overlay, load, gust }: SheetState): OverlayWanted | undefined {
  if (overlay === undefined) {
    return undefined;
  }
  return {
    kind: 'overlay',
    overlay,
    ...(load === undefined || overlay === 'use' || overlay === 'water' ? {} : { load }),
    // Standing water has no wind in it.
    ...(gust === undefined || overlay === 'water' ? {} : { gust }),
  };
}

import type { PreviewShelter } from '@tautline/language/protocol';
import type { FileWanted, OverlayWanted } from '../details.ts';
import type { SheetState } from './messages.ts';

/** Files that can be saved, those of the tab on show first. */
export function filesOf(shelter: PreviewShelter, tab: string | undefined, state: SheetState): FileWanted[] {
  const { overlay, load } = state;
  const over: OverlayWanted | undefined =
    overlay === undefined ? undefined : { kind: 'overlay', overlay, ...(load === undefined ? {} : { load }) };
  const views = [...shelter.drawings.map(({ view }) => view), 'gusts' as const].sort(
    (a, b) => Number(b === tab) - Number(a === tab),
  );
  const drawings = views.flatMap((view) =>
    (['svg', 'dxf'] as const)
      // A chart is no drawing to scale.
      .filter((format) => format === 'svg' || view !== 'gusts')
      .map(
        (format): FileWanted => ({
          format,
          view,
          ...(view === 'section' && over !== undefined ? { over } : {}),
        }),
      ),
  );
  return tab === 'materials' ? [{ format: 'csv' }, ...drawings] : [...drawings, { format: 'csv' }];
}

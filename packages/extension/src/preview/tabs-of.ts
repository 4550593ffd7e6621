import type { PreviewShelter, PreviewView } from '@tautline/language/protocol';
import { isOpen } from './standing.ts';
import type { Tab } from './tabs.ts';

const viewTitles: Readonly<Record<PreviewView, string>> = {
  section: 'Section',
  plan: 'Plan',
  side: 'Side',
  end: 'Front end',
  'setting-out': 'Setting out',
};

/** The drawing that a tab shows; the first tab without one chosen. */
export const viewOfTab = (tab: string | undefined): PreviewView | 'none' =>
  tab === undefined ? 'section' : tab in viewTitles ? (tab as PreviewView) : 'none';

/** The tabs of a shelter or a range, in order. */
export function tabsOf(shelter: PreviewShelter): Tab[] {
  const open = shelter.findings.filter(isOpen);
  const drawings = shelter.drawings.map(({ view }) => ({ id: view, title: viewTitles[view] }));
  const findings = { id: 'findings', title: 'Findings', count: open.length };
  const materials = { id: 'materials', title: 'Materials' };
  // Each shelter of a range has a sheet of its own for everything else.
  if (shelter.kind === 'range') return [...drawings, findings, materials];
  return [
    ...drawings,
    { id: 'space', title: '3D' },
    findings,
    { id: 'gusts', title: 'Gusts' },
    materials,
    { id: 'explore', title: 'Variants' },
  ];
}

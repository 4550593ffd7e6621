import {
  bendTemplateView,
  type Drawing,
  endView,
  planView,
  sectionView,
  settingOutView,
  sideView,
  toSvg,
} from '@tautline/drawing';
import type { Chapter } from '../context.ts';
import { html, type Markup, ready } from '../html/markup.ts';
import { drawingRoom } from '../html/style.ts';

/** A drawing in black on white for the page. */
export const figure = (drawing: Drawing): Markup =>
  html`<figure>${ready(toSvg(drawing, 'paper').replace(/<\?xml[^>]*\?>/, ''))}</figure>\n`;

export const section: Chapter = {
  id: 'section',
  title: 'Section',
  drawn: true,
  body: ({ shelter, system, paper }) =>
    figure(sectionView(shelter, { system, ...drawingRoom(paper, 'upright') })),
};

export const plan: Chapter = {
  id: 'plan',
  title: 'Plan',
  wide: true,
  drawn: true,
  body: ({ shelter, system, paper }) => figure(planView(shelter, { system, ...drawingRoom(paper, 'wide') })),
};

export const side: Chapter = {
  id: 'side',
  title: 'Side',
  wide: true,
  drawn: true,
  body: ({ shelter, system, paper }) => figure(sideView(shelter, { system, ...drawingRoom(paper, 'wide') })),
};

export const end: Chapter = {
  id: 'end',
  title: 'Front end',
  drawn: true,
  body: ({ shelter, system, paper }) => {
    const drawing = endView(shelter, { system, ...drawingRoom(paper, 'upright') });
    return drawing && figure(drawing);
  },
};

export const settingOut: Chapter = {
  id: 'setting-out',
  title: 'Setting out',
  wide: true,
  drawn: true,
  body: ({ shelter, system, paper }) =>
    figure(settingOutView(shelter, { system, ...drawingRoom(paper, 'wide') })),
};

export const bends: Chapter = {
  id: 'bends',
  title: 'Bend template',
  wide: true,
  drawn: true,
  body: ({ shelter, system, paper }) => {
    const drawing = bendTemplateView(shelter, { system, ...drawingRoom(paper, 'wide') });
    return drawing && figure(drawing);
  },
};

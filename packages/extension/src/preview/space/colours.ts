import { Color } from 'three';
import type { PartState } from './contract.ts';

export interface Colours {
  readonly parts: Readonly<Record<PartState, Color>>;
  readonly film: Color;
  readonly mesh: Color;
  readonly sheet: Color;
  readonly ground: Color;
}

/** The editor's colours as the page has them: read off an element, for only the browser can work them out. */
export function coloursOf(host: HTMLElement): Colours {
  const probe = document.createElement('span');
  host.append(probe);
  const read = (variable: string): Color => {
    probe.style.color = `var(${variable})`;
    const [red = 128, green = 128, blue = 128] =
      /rgba?\(([^)]*)\)/
        .exec(getComputedStyle(probe).color)?.[1]
        ?.split(/[\s,/]+/)
        .map(Number) ?? [];
    return new Color(`rgb(${Math.round(red)}, ${Math.round(green)}, ${Math.round(blue)})`);
  };
  const colours: Colours = {
    parts: {
      plain: read('--vscode-foreground'),
      near: read('--near'),
      fails: read('--fails'),
      pointed: read('--marked'),
      marked: read('--marked'),
    },
    film: read('--tautline-film'),
    mesh: read('--tautline-mesh'),
    sheet: read('--tautline-joint'),
    ground: read('--vscode-descriptionForeground'),
  };
  probe.remove();
  return colours;
}

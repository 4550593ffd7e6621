import type { Look } from './contract.ts';

interface Orbiting {
  readonly look: (now: Look) => void;
  /** A movement has ended. */
  readonly rest: (now: Look) => void;
  readonly click: (event: PointerEvent) => void;
  readonly hover: (event: PointerEvent | undefined) => void;
}

const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));

/** Drag, wheel and keys turn a look around the house: arrows turn, plus and minus come nearer and go back. */
export function orbit(canvas: HTMLCanvasElement, start: Look, { look, rest, click, hover }: Orbiting): void {
  let now = start;
  let from: { readonly x: number; readonly y: number; readonly look: Look } | undefined;
  let moved = false;
  const to = (next: Look): void => {
    now = {
      turn: next.turn,
      tilt: clamp(next.tilt, 0.02, Math.PI / 2 - 0.02),
      away: clamp(next.away, 0.3, 6),
    };
    look(now);
  };
  canvas.addEventListener('pointerdown', (event) => {
    from = { x: event.clientX, y: event.clientY, look: now };
    moved = false;
    canvas.setPointerCapture(event.pointerId);
  });
  canvas.addEventListener('pointermove', (event) => {
    if (from === undefined) {
      hover(event);
      return;
    }
    const [dx, dy] = [event.clientX - from.x, event.clientY - from.y];
    moved ||= Math.hypot(dx, dy) > 4;
    if (moved) {
      to({ ...from.look, turn: from.look.turn - dx / 160, tilt: from.look.tilt + dy / 160 });
    }
  });
  canvas.addEventListener('pointerup', (event) => {
    if (from !== undefined && !moved) {
      click(event);
    } else {
      rest(now);
    }
    from = undefined;
  });
  canvas.addEventListener('pointercancel', () => {
    from = undefined;
  });
  canvas.addEventListener('pointerleave', () => hover(undefined));
  canvas.addEventListener(
    'wheel',
    (event) => {
      event.preventDefault();
      to({ ...now, away: now.away * Math.exp(clamp(event.deltaY, -120, 120) / 600) });
      rest(now);
    },
    { passive: false },
  );
  canvas.parentElement?.addEventListener('keydown', (event) => {
    const step = 0.12;
    const by: Readonly<Record<string, Look>> = {
      ArrowLeft: { ...now, turn: now.turn - step },
      ArrowRight: { ...now, turn: now.turn + step },
      ArrowUp: { ...now, tilt: now.tilt + step },
      ArrowDown: { ...now, tilt: now.tilt - step },
      '+': { ...now, away: now.away / 1.15 },
      '=': { ...now, away: now.away / 1.15 },
      '-': { ...now, away: now.away * 1.15 },
    };
    const next = by[event.key];
    if (next !== undefined) {
      event.preventDefault();
      to(next);
      rest(now);
    }
  });
}

/** The user's settings, as the editor sends them, and the units numbers are shown in. */
import type { KindName } from '@tautline/quantity';
import { format, formatBoth, type System } from '@tautline/quantity';
import { type SpecWorld, unitsOf } from '@tautline/shelter';

export type SeverityChoice = 'error' | 'warning' | 'information' | 'off';

export interface Settings {
  readonly units: 'project' | 'metric' | 'us' | 'both';
  readonly severity: Readonly<Record<string, SeverityChoice>>;
  readonly hintsAssumed: boolean;
  readonly hintsDerived: boolean;
  readonly lenses: boolean;
  /** When the whole house in space is worked out; it can always be asked for. */
  readonly wholeHouse: 'onSave' | 'whenIdle' | 'onCommand';
}

export const defaultSettings: Settings = {
  units: 'project',
  severity: {},
  hintsAssumed: true,
  hintsDerived: true,
  lenses: true,
  wholeHouse: 'onSave',
};

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;

/** Reads what the editor sent; what is missing or of the wrong sort keeps its default. */
export function readSettings(sent: unknown): Settings {
  const at = (...path: readonly string[]): unknown =>
    path.reduce<unknown>((value, key) => (isRecord(value) ? value[key] : undefined), sent);
  const choice = <T extends string>(value: unknown, choices: readonly T[], otherwise: T): T =>
    choices.find((one) => one === value) ?? otherwise;
  const yes = (value: unknown): boolean => value !== false;
  const severities = at('severity');
  const severity: Record<string, SeverityChoice> = {};
  for (const [id, value] of Object.entries(isRecord(severities) ? severities : {})) {
    const known = ['error', 'warning', 'information', 'off'].find((one) => one === value);
    if (known) severity[id] = known as SeverityChoice;
  }
  return {
    units: choice(at('units'), ['project', 'metric', 'us', 'both'], 'project'),
    severity,
    hintsAssumed: yes(at('hints', 'assumed')),
    hintsDerived: yes(at('hints', 'derived')),
    lenses: yes(at('lenses')),
    wholeHouse: choice(at('wholeHouse'), ['onSave', 'whenIdle', 'onCommand'], 'onSave'),
  };
}

/** The system a world is shown in: the setting's, else the project's or the file's own. */
export function systemFor(world: SpecWorld | undefined, settings: Settings): System {
  if (settings.units === 'metric' || settings.units === 'us') return settings.units;
  if (settings.units === 'both') return 'metric';
  return world === undefined ? 'metric' : unitsOf(world);
}

/** A value for a reader; in both systems when the user asked for both. */
export function shown(si: number, kind: KindName, system: System, settings: Settings): string {
  return settings.units === 'both' ? formatBoth(si, kind, system) : format(si, kind, system);
}

import { originOf } from '@tautline/shelter';
import { analyseHouse } from '@tautline/structure';
import { describe, expect, it } from 'vitest';
import { withAcceptances } from '../src/acceptance.ts';
import { evaluate } from '../src/evaluate.ts';
import { checkOf } from '../src/registry.ts';
import { runCheck } from '../src/run-check.ts';
import { inputOf, onFeet, ridgedHouse, sprungHouse } from './houses.ts';

describe('the full tier', () => {
  it('is left out unless asked for', () => {
    const live = evaluate(ridgedHouse(), { gusts: false });
    expect(live.house).toBeUndefined();
    expect(live.findings.some(({ id }) => id === 'whole-house' || id === 'tier-difference')).toBe(false);
  });

  it('tells how the whole house stands, and no longer that end bows are not looked at', () => {
    const full = evaluate(onFeet(ridgedHouse(), { fixity: 'clamped' }), { gusts: false, tier: 'full' });
    expect(full.house?.cost.unknowns).toBeGreaterThan(100);
    expect(full.findings.some(({ id }) => id === 'whole-house')).toBe(true);
    expect(full.notChecked.some(({ reason }) => reason.includes('end bow'))).toBe(false);
  });

  it('is not asked before an acceptance of what only it answers is called stale', () => {
    const accepted = (check: string) => ({
      ...ridgedHouse(),
      acceptances: [{ id: `accept-${check}`, origin: originOf(''), check, because: 'ends are walls' }],
    });
    const stale = (check: string, tier: 'live' | 'full') =>
      withAcceptances(accepted(check), [], undefined, tier === 'full' ? () => false : undefined).some(
        ({ id }) => id === 'stale-acceptance',
      );
    expect(stale('whole-house', 'live')).toBe(false);
    expect(stale('whole-house', 'full')).toBe(true);
    expect(stale('racking', 'live')).toBe(true);
  });

  it('fails a house that nothing holds along its length', () => {
    const loose = onFeet(sprungHouse(), { fixity: 'pinned' });
    const house = analyseHouse(loose);
    const findings = runCheck(checkOf('whole-house')!, { ...inputOf(loose), house });
    if (house.ok && house.house.racking.unheld) expect(findings[0]?.verdict).toBe('fails');
    else expect(findings[0]?.verdict).toBe('not checked');
  });

  it('names each check on which the two tiers differ by more than a tenth', () => {
    const shelter = onFeet(ridgedHouse(), { fixity: 'clamped' });
    const input = { ...inputOf(shelter), house: analyseHouse(shelter) };
    for (const finding of runCheck(checkOf('tier-difference')!, input)) {
      const { value } = finding.steps[0]!;
      expect(Math.abs(value)).toBeGreaterThan(0.1);
      const [, , , , why] = finding.message;
      expect(String(why)).toMatch(/^ [A-Z]/);
      if (finding.verdict === 'fails') expect(finding.severity).toBe('warning');
    }
  });
});

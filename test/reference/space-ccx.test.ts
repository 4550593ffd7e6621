/**
 * Whole houses against the independent finite element solver ccx (CalculiX, Debian package calculix-ccx): B32R beams
 * with their mid nodes on the members' lines, T3D2 cables, locked-in bending and pretension included, small movements
 * and large. In CI the solver must be there; elsewhere its absence is a reported skip.
 */
import { linearSpaceFrame, solveSpaceFrame } from '@tautline/mechanics';
import { describe, expect, it } from 'vitest';
import { ccxInstalled } from './ccx/ccx.ts';
import { runHouse } from './ccx/house.ts';
import { askedOf, caseOf, houseOf, slackIn } from './ccx/whole-houses.ts';

/** The ends are open, so wind along drags on the skin. Houses are wide for their slender pipes, and the wind light. */
const roof = 'ends open; cover roof with film-uv-150 { tension 200 N/m }';

interface House {
  readonly kind: string;
  readonly text: string;
  readonly winds: readonly RegExp[];
  /** Share of the combination: the houses are slender so that shear, which ours leaves out, does not count. */
  readonly share: number;
  /** Feet give by springs of the soil. */
  readonly soil?: boolean;
}

const houses: readonly House[] = [
  {
    kind: 'sprung PVC on a ridge pipe with posts',
    text: `shelter h on test-plot { footprint 4 m by 4 m
      bows spaced 2 m { of pvc-12; shape elastic; rise 1.6 m; foot stub of rebar-16 { length 1.5 m; deep 1 m; held clamped } }
      ridge pipe of slim-16 { frames tied; joint weld; posts of slim-20 spaced 4 m { joint weld at top; foot concrete { deep 0.6 m; across 0.3 m; held clamped } } }
      ${roof} }`,
    winds: [/across/],
    share: 0.03,
  },
  {
    kind: 'cold-bent steel arches with purlins',
    text: `shelter h on test-plot { footprint 5 m by 5 m
      bows spaced 2.5 m { of slim-20; shape cold-bent; rise 2.4 m; leg 0.5 m; foot driven { deep 0.6 m; held clamped } }
      purlins 3 of slim-16 { joint weld }
      ${roof} }`,
    winds: [/across/, /along/],
    share: 0.3,
  },
  {
    kind: 'steel gable on posts with rails, ties and braces',
    text: `shelter h on test-plot { footprint 6 m by 6 m
      posts sides of slim-32 spaced 3 m { height 2.4 m; joint weld at top; foot concrete { deep 0.6 m; across 0.3 m; held clamped }; rail of slim-25 { joint weld } }
      rafters spaced 3 m { of slim-25; shape gable; pitch 25 deg; joint weld at peak; joint weld at eave; tie of slim-16 at 0.5 m }
      purlins 1 of slim-16 { at 1.6 m; joint weld }
      braces along of slim-16 { at corners }
      ${roof} }`,
    winds: [/across/],
    share: 0.03,
  },
  {
    kind: 'sprung PVC with purlins, held by wire guys at its corners',
    text: `shelter h on test-plot { footprint 4 m by 4 m
      bows spaced 2 m { of pvc-12; shape elastic; rise 1.6 m; foot stub of rebar-16 { length 1.5 m; deep 1 m; held clamped } }
      purlins 2 of pvc-12 { at 1.7 m; at 3.8 m; joint weld }
      guys of wire-4 { at corners; height 1.2 m; out 1.2 m; foot deadman of log-deadman { deep 1 m } }
      ${roof} }`,
    winds: [/across/],
    share: 0.02,
  },
  {
    kind: 'cold-bent steel arches with uprights and a rail in their clad ends',
    text: `shelter h on test-plot { footprint 5 m by 5 m
      bows spaced 2.5 m { of slim-20; shape cold-bent; rise 2.4 m; leg 0.5 m; foot driven { deep 0.6 m; held clamped } }
      purlins 3 of slim-16 { joint weld }
      end-frames of slim-25 { uprights 2; rail of slim-20 at 1.6 m; foot concrete { deep 0.6 m; across 0.3 m; held clamped } }
      ends clad
      cover roof with film-uv-150 { tension 200 N/m }
      cover ends with film-uv-150 }`,
    winds: [/along/],
    share: 0.3,
  },
  {
    kind: 'small bed arches with braces that push and pull',
    text: `shelter h on test-plot { footprint 3 m by 4 m
      bows spaced 2 m { of pvc-12; shape elastic; rise 1 m; foot stub of rebar-16 { length 1 m; deep 0.6 m; held clamped } }
      purlins 1 of pvc-12 { joint weld }
      braces along of slim-16 { at corners; height 0.9 m }
      ${roof} }`,
    winds: [/across/],
    share: 0.02,
  },
  {
    kind: 'laminated timber arches with purlins',
    text: `shelter h on test-plot { footprint 6 m by 4 m
      bows spaced 2 m { of slat; shape laminated; laminations 3; rise 2.6 m; foot concrete { deep 0.8 m; across 0.3 m; held clamped } }
      purlins 2 of slim-16 { at 2.5 m; at 6 m; joint weld }
      ${roof} }`,
    winds: [/across/],
    share: 0.5,
  },
  {
    kind: 'sprung PVC on a cable ridge over posts, run down to anchors',
    text: `shelter h on test-plot { footprint 4 m by 4 m
      bows spaced 2 m { of pvc-12; shape elastic; rise 1.6 m; foot stub of rebar-16 { length 1.5 m; deep 1 m; held clamped } }
      ridge cable of wire-4 { tension 500 N; frames tied; posts of slim-20 spaced 4 m { joint weld at top; foot concrete { deep 0.6 m; across 0.3 m; held clamped } }; foot deadman of log-deadman { deep 1 m } }
      ${roof} }`,
    winds: [/along/],
    share: 0.03,
  },
  {
    kind: 'sprung PVC with couplers and feet that give, on a cable ridge over hinged posts',
    text: `shelter h on test-plot { footprint 4 m by 4 m
      bows spaced 2 m { of pvc-12; shape elastic; rise 1.6 m; joint give-pvc at 1.7 m; joint give-pvc at 3.7 m; foot stub of rebar-16 { length 1.5 m; deep 0.3 m; held clamped } }
      ridge cable of wire-4 { tension 500 N; frames tied; posts of slim-20 spaced 4 m { foot concrete { deep 0.6 m; across 0.3 m; held clamped } }; foot deadman of log-deadman { deep 1 m } }
      ${roof} }`,
    winds: [/across/],
    share: 0.03,
    soil: true,
  },
  {
    kind: 'cold-bent steel arches with sleeves and feet that give, purlins lashed on',
    text: `shelter h on test-plot { footprint 5 m by 2.5 m
      bows spaced 2.5 m { of slim-16; shape cold-bent; rise 2.4 m; leg 0.5 m; joint give-steel at 2.2 m; joint give-steel at 5 m; foot driven { deep 0.6 m; held clamped } }
      purlins 1 of slim-16 { joint lashing }
      ${roof} }`,
    winds: [/across/],
    share: 0.1,
    soil: true,
  },
  {
    kind: 'steel gable in fittings that give, purlins lashed on',
    text: `shelter h on test-plot { footprint 6 m by 6 m
      posts sides of slim-32 spaced 3 m { height 2.4 m; joint give-steel at top; foot concrete { deep 0.6 m; across 0.3 m; held clamped }; rail of slim-25 { joint give-steel } }
      rafters spaced 3 m { of slim-25; shape gable; pitch 25 deg; joint give-steel at peak; joint give-steel at eave; tie of slim-16 at 0.5 m }
      purlins 1 of slim-16 { at 1.6 m; joint lashing }
      braces along of slim-16 { at corners }
      ${roof} }`,
    winds: [/across/],
    share: 0.03,
  },
  {
    kind: 'sprung PVC on posts, tied across by wires at the eave',
    text: `shelter h on test-plot { footprint 4 m by 4 m
      posts sides of slim-32 spaced 2 m { height 1.5 m; joint weld at top; foot concrete { deep 0.6 m; across 0.3 m; held clamped }; rail of slim-25 { joint weld } }
      bows spaced 2 m { of pvc-20; shape elastic; rise 1.6 m }
      ties of wire-4 { height 1.5 m }
      ${roof} }`,
    winds: [/across/],
    share: 0.006,
  },
  {
    kind: 'steel gable on a grid of posts, two inner lines with rails under the rafters',
    text: `shelter h on test-plot { footprint 6 m by 6 m
      posts grid of slim-32 spaced 3 m { lines 4; height 2 m; joint weld at top; foot concrete { deep 0.6 m; across 0.3 m; held clamped }; rail of slim-25 { joint weld } }
      rafters spaced 3 m { of slim-25; shape gable; pitch 25 deg; joint weld at peak; joint weld at eave }
      braces along of slim-16 { at corners }
      ${roof} }`,
    winds: [/across/],
    share: 0.03,
  },
  {
    kind: 'single slope on posts, knee wires across',
    text: `shelter h on test-plot { footprint 4 m by 5 m
      posts sides of slim-32 spaced 2.5 m { height 2 m; joint weld at top; foot concrete { deep 0.6 m; across 0.3 m; held clamped }; rail of slim-25 { joint weld } }
      rafters spaced 2.5 m { of slim-25; shape single-slope; pitch 12 deg; joint weld at eave }
      purlins 1 of slim-16 { at 2 m; joint weld }
      braces across of wire-4 { at ends }
      ${roof} }`,
    winds: [/across|low|high/],
    share: 0.3,
  },
];

describe.skipIf(!ccxInstalled() && !process.env['CI'])('whole houses against ccx (0.1 %)', () => {
  for (const house of houses)
    for (const wind of house.winds)
      it(`${house.kind}, wind ${wind.source}, small movements and large`, { timeout: 60_000 }, async () => {
        expect(ccxInstalled(), 'ccx (Debian package calculix-ccx) is not installed').toBe(true);
        const c = caseOf(await houseOf(house.text), wind, house.share, { soil: house.soil === true });
        expect(c.state.status, c.state.result.reason).toBe('holds');
        const start = c.state.result.state;
        for (const nonlinear of [false, true]) {
          const ours = nonlinear
            ? solveSpaceFrame(c.system.model, c.loads, { start, steps: 2 })
            : linearSpaceFrame(c.system.model, c.loads, { start });
          expect(ours.status, ours.reason).toBe('converged');
          const theirs = runHouse(
            askedOf(c, nonlinear, slackIn(c.system, nonlinear ? ours : c.state.result)),
          );
          let largest = 0;
          let off = 0;
          for (const [n, end] of ours.displacements.entries()) {
            const built = c.state.result.displacements[n]!;
            const moved = [end.dx - built.dx, end.dy - built.dy, end.dz - built.dz];
            largest = Math.max(largest, Math.hypot(...moved));
            off = Math.max(off, Math.hypot(...moved.map((v, k) => v - theirs.moved[n]![k]!)));
          }
          console.log(
            `ccx: ${house.kind}, ${c.title}, ${nonlinear ? 'large movements' : 'linear'}: largest movement ` +
              `${(1000 * largest).toFixed(1)} mm, differs ${((100 * off) / largest).toFixed(4)} %`,
          );
          expect(off / largest).toBeLessThan(1e-3);
        }
      });
});

if (!ccxInstalled() && !process.env['CI']) {
  console.warn(
    'NOT RUN: whole houses against ccx, because ccx (Debian package calculix-ccx) is not installed here.',
  );
  it.skip('whole houses against ccx: not run, ccx (Debian package calculix-ccx) is not installed', () => {});
}

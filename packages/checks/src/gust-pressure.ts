/** Parts whose share of their limit follows from the wind pressure alone: film, its fastenings, sheets, the bracing along. */
import type { Cover, Shelter } from '@tautline/shelter';
import { fasteningUse } from './checks/fastening-pull.ts';
import { filmGustUse } from './checks/film-stress.ts';
import { purlinUses } from './checks/purlin-span.ts';
import { rackingUses } from './checks/racking.ts';
import { sheetUses } from './checks/sheet-hold.ts';
import { wallUses } from './checks/wall-cover.ts';
import { filmLoad } from './film-pull.ts';
import { capUses } from './gust-cap.ts';
import type { Scaled } from './gust-order.ts';
import { type WallCover, wallCovers } from './wall-skin.ts';

/** Every one of them, with how its share grows with the pressure. */
export function scaledByPressure(shelter: Shelter, on: string | undefined): Scaled[] {
  const covers = shelter.covers.filter((cover) => cover.place === 'roof' && cover.skin.kind === 'film');
  const racked = rackingUses(shelter);
  const braces = racked(1).map((finding): Scaled => {
    const brace = shelter.braces.find((entry) => entry.id === finding.part);
    return {
      part: { id: finding.part, origin: finding.origin },
      what:
        brace === undefined
          ? 'the house leans over along its length'
          : `the ${brace.role} along the house gives`,
      check: 'racking',
      sacrificial: brace?.sacrificial === true,
      loadCase: finding.loadCase ?? 'wind along the house',
      use: (factor) => racked(factor).find(({ part }) => part === finding.part)?.utilisation,
    };
  });
  const sheets = purlinUses(shelter).map(
    ({ rail, sheet, use }): Scaled => ({
      part: rail,
      what: `the purlin under ${sheet.title} bends past its strength`,
      check: 'purlin-span',
      sacrificial: rail.sacrificial === true,
      loadCase: 'gust on the sheets',
      use,
    }),
  );
  return [
    ...sheetUses(shelter).flatMap(ofSheet),
    ...covers.flatMap((cover) => ofCover(shelter, cover, on)),
    ...wallCovers(shelter).flatMap((cover) => ofWall(shelter, cover, on)),
    ...sheets,
    ...braces,
    ...capUses(shelter),
  ];
}

function ofSheet({ cover, bends, pulls }: ReturnType<typeof sheetUses>[number]): Scaled[] {
  const base = {
    check: 'sheet-hold',
    sacrificial: cover.sacrificial === true,
    loadCase: 'gust on the sheets',
  };
  const { id, origin } = cover;
  return [
    ...(bends === undefined
      ? []
      : [{ ...base, part: cover, what: `${cover.skin.title} bends past its strength`, use: bends }]),
    ...(pulls === undefined
      ? []
      : [
          {
            ...base,
            part: { id: `${id}/screws`, origin },
            what: `${pulls.screw.title} lets the sheets go`,
            use: pulls.use,
          },
        ]),
  ];
}

function ofWall(shelter: Shelter, cover: WallCover, on: string | undefined): Scaled[] {
  const base = {
    part: cover,
    sacrificial: cover.sacrificial === true,
    check: 'wall-cover',
    loadCase: `gust on the ${cover.place}`,
  };
  const uses = wallUses(shelter, cover, on);
  const skin: Scaled = {
    ...base,
    what: `the ${cover.skin.kind} of the ${cover.place} tears or is stretched for good`,
    use: (factor) => uses(factor).skin,
  };
  const { fastening } = cover;
  if (fastening === undefined) return [skin];
  return [
    skin,
    {
      ...base,
      what: `${fastening.title} lets the ${cover.skin.kind} of the ${cover.place} go`,
      use: (factor) => uses(factor).edge,
    },
  ];
}

function ofCover(shelter: Shelter, cover: Cover, on: string | undefined): Scaled[] {
  const base = { part: cover, sacrificial: cover.sacrificial === true, loadCase: 'gust on the film' };
  const list: Scaled[] = [
    {
      ...base,
      what: 'the film is stretched for good',
      check: 'film-stress',
      use: (factor) => filmGustUse(shelter, cover, factor, on),
    },
  ];
  if (cover.fastening !== undefined)
    list.push({
      ...base,
      what: `${cover.fastening.title} lets the film go`,
      check: 'fastening-pull',
      use: (factor) => fasteningUse(shelter, cover, factor, on)?.edge,
    });
  const load = filmLoad(shelter, cover);
  if (!('reason' in load) && load.straps !== undefined)
    list.push({
      ...base,
      what: `${load.straps.item.title} gives`,
      check: 'fastening-pull',
      use: (factor) => fasteningUse(shelter, cover, factor, on)?.strap,
    });
  return list;
}

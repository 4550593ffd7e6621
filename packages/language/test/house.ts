/** A small project for tests: invented, with items of its own so that it does not hang on the catalogue. */
import { type LoadedWorkspace, type LoadOptions, loadWorkspace } from '../src/index.ts';

export const itemsText = `/** A white pipe. Source: made up for tests. */
material white { family pvc; density 1400 kg/m3; modulus 400 ksi; bending-strength 7 ksi }
material iron { family steel; density 7850 kg/m3; modulus 200 GPa; bending-strength 300 MPa }
pipe white-25 { outside 1.315 in; wall 0.133 in; material white; sold 20 ft long }
rod bar-12 { across 12.7 mm; material iron; sold 20 ft long }
film clear-150 { thickness 150 um; density 925 kg/m3; grade greenhouse; life 4 yr; yields at 12 MPa; modulus 200 MPa }
`;

export const houseText = `import "items.shelter"

let bay = 4 ft

// the upper terrace
site terrace {
  gust 42 m/s once per 50 yr
  soil loam
}

/** Plug house. Stands beside the track. */
shelter plug-house on terrace {
  footprint 14 ft by 40 ft // measured twice
  bows spaced bay of white-25 foot stub of bar-12 lean 85 deg {
    shape elastic
    rise 7 ft 6 in
  }
  cover roof with clear-150 { tension 150 N/m; installed 2026-03-01 }
  crop tomatoes hung 15 kg/m2
  require headroom >= 1.7 m at 0.5 m from side
}
`;

export const itemsUri = 'file:///gully/items.shelter';
export const houseUri = 'file:///gully/house.shelter';

/** Loads one text as the house, next to the items. */
export function load(text: string, options: LoadOptions = {}): Promise<LoadedWorkspace> {
  return loadWorkspace([{ uri: houseUri, text }], (uri) => (uri === itemsUri ? itemsText : undefined), {
    catalogue: [],
    ...options,
  });
}

/** The house with a line of the shelter added at its end. */
export const houseWith = (line: string): string => houseText.replace(/\}\n$/, `  ${line}\n}\n`);

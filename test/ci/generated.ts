/** Made-up shelter texts in any number: the same number gives the same text. */

export const siteText = `site test-field {
  gust 24 m/s once per 50 yr
  exposure sheltered
  elevation 100 m
  rain 80 mm/h
  soil loam
  basis asce7-asd
}
`;

/** Every seventh has a fault of the text, every fifth spans too far. */
export function shelterText(index: number): string {
  const spaced = [24, 30, 36, 42][index % 4];
  const long = 20 + (index % 9) * 4;
  const wide = index % 5 === 4 ? 16 : 12;
  return `import "site.shelter"
/** House ${index}. */
shelter house-${index} on test-field {
  footprint ${wide} ft by ${long} ft
  bows spaced ${spaced} in of pvc40-25 { shape elastic; rise 6 ft ${index % 6} in; foot stub of rebar-16 { length 4 ft; deep 2 ft } }
  cover roof with film-uv-150 { fastened by board-1x3; tension 150 N/m; installed 2026-03-01 }
${index % 7 === 6 ? '  rise of nothing\n' : ''}}
`;
}

/** A shelter in which nothing fails. */
export const soundText = `import "site.shelter"
shelter sound-arch on test-field {
  footprint 13 ft by 40 ft
  bows spaced 2 ft 6 in of pvc40-25 { shape elastic; length 20 ft; foot stub of rebar-16 { length 6 ft; deep 3 ft 6 in; held clamped } }
  ridge rail of lumber-2x4 { frames tied; posts of lumber-4x4 spaced 8 ft { foot hole { deep 2 ft; across 10 in } } }
  purlins 2 of pvc40-20 { at 5 ft; at 15 ft; joint lashing }
  braces along of lumber-1x4 { at corners; height 5 ft }
  baseboards of lumber-1x6 { joint pipe-strap }
  cover roof with film-uv-150 { fastened by board-1x3; strapped by strap-25 every 2 ft 6 in; tension 200 N/m }
}
`;

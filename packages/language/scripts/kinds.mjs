// The structural kinds in the order of the cookbook: which example shows each, what it is, and what usually
// goes wrong with it. Trade facts here are common practice, no source.

const kind = (example, is, wrong) => ({ example, is, wrong });

export const kinds = [
  kind(
    'green-pole',
    'Thin green rods from the hedge, both ends poked into the soil and the film tied on with cord. It costs an afternoon and lasts a season.',
    'Rods as thick as a thumb do not bend to a small arch without cracking, and a rod poked in a hand deep pulls out in the first gust. Bark cuts film: wrap it.',
  ),
  kind(
    'pole-house',
    'A wide roof on a grid of poles joined by rails, its outer posts held by wires to buried logs.',
    'Posts in plain earth holes carry little push at their heads: set them deep and wide, and keep the wires tight. Lashings turn: the stiffness comes from posts, braces and wires.',
  ),
  kind(
    'bamboo-arch',
    'Bamboo arches, shaped over a fire and dried to their curve, on the rails of a post grid with a rail under the crown.',
    'Bamboo bent cold to so small a circle splits. Without the rail under the crown the arch sinks under rain.',
  ),
  kind(
    'bamboo-gable',
    'Straight bamboo pairs over a ridge rail, each rafter tied with a slight camber so that film stays tight on it.',
    'Straight rafters under slack film make a pocket at the eave on every bay.',
  ),
  kind(
    'row-arch',
    'Low arches over one bed each, many side by side with a gap to walk in, tied to each other so that none leans.',
    'Half-inch pipe over a bed of four feet is strained past what it keeps for years: a wider, flatter arch is kinder.',
  ),
  kind(
    'limber-arch',
    'Limber green-wood arches whose crowns rest on a rail over centre posts; wrapped where bark meets film.',
    'Leave the rail out and the arches give way in wind and sink under rain.',
  ),
  kind(
    'bed-arch',
    'Whole PVC pipes sprung over stubs, resting on a board on posts along the middle.',
    'Without the centre post and rail a limber arch ponds and collapses.',
  ),
  kind(
    'cable-arch',
    'The same small arches on a wire rope pulled tight between buried logs, on few posts.',
    'A slack wire sinks with the arch it should hold; clips take a fifth of its strength.',
  ),
  kind(
    'pipe-ridge',
    'The same small arches on a slim galvanised pipe, which is wrapped: hot metal ages film and PVC.',
    'A thin pipe over posts far apart follows the arches down.',
  ),
  kind(
    'cable-house',
    'A wide and high house of stout PVC arches on a strand between braced ends.',
    'A socket near the crown, a wire too thin for the span and a roll too narrow are the usual three.',
  ),
  kind(
    'cross-arch',
    'PVC arches with one crown purlin. The crosses are bored through, so that each arch runs on whole.',
    'Glued into straight crosses, a sprung crown breaks at the socket: the cross wants a straight pipe and the arch is none.',
  ),
  kind(
    'storm-house',
    'Posts that are filled and set in concrete stay; the light top and its film are declared sacrificial and go first.',
    'A top as strong as its posts takes them along.',
  ),
  kind(
    'bench-house',
    'A raised timber frame at head height with small PVC arches strapped to its rails, over benches.',
    'Open sides let wind under the roof: set limber arches close together.',
  ),
  kind(
    'stub-arch',
    'PVC arches slid over rebar that leans outward, so that each pipe leaves its stub in line.',
    'Thick pipe in a tight bow, straight crosses at the crown, short stubs.',
  ),
  kind(
    'inflated-roof',
    'Two films on a post-and-rail frame, blown apart by a small fan, with straps that limit the bulge.',
    'When the fan stops, the films hang down and fill with rain. Somebody has to notice.',
  ),
  kind(
    'conduit-arch',
    'Thin-wall conduit bent on a bender and spliced, with legs driven into the ground: a clear span.',
    'Splices where the bow bends most, legs driven a foot.',
  ),
  kind(
    'equipment-shed',
    'The same with fence rail, high enough for a small tractor.',
    'Frames too far apart; swaged ends bend before the rail does.',
  ),
  kind(
    'screen-house',
    'Straight conduit in welded corner and peak fittings, mesh at the sides.',
    'Fittings are made for one pitch: at another they are forced.',
  ),
  kind(
    'tank-roof',
    'A small gable over one growing tank, mesh at its sides, worked from outside.',
    'Built nearly flat to save a board, it ponds.',
  ),
  kind(
    'timber-gable',
    'Rafters of sawn timber over posts and a ridge on posts, a little cambered so that film stays tight.',
    'Low pitch under slack film, a light eave rail, shallow posts.',
  ),
  kind(
    'laminated-arch',
    'Thin laths bent over a form and screwed together, their butts staggered: a stiff arch from short stock.',
    'Too few laths: the arch is as limber as a pole.',
  ),
  kind(
    'strapped-row',
    'A low roof over one row, film held down by straps over it and taped round a cord at both edges.',
    'Old construction film: the tape outlives it.',
  ),
  kind(
    'lift-frame',
    'Light timber frames with corrugated clear sheet that two people lift; set out for a season and pegged.',
    'Light and flat: what is not pegged leaves.',
  ),
  kind(
    'seedling-cap',
    'A closed clear cap over seedlings, washed and used again. It is not fastened to anything the program knows.',
    'Too low at the sides for what grows there; hot by noon if nobody lifts it.',
  ),
];

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  applyEdits,
  type Bows,
  clearHeightAt,
  factNode,
  newNotes,
  originOf,
  quantityValue,
  type Rafters,
  resolveItem,
  resolveShelter,
  type Shelter,
  type SpecWorld,
} from '../src/index.ts';
import { worldOf } from './reading.ts';

const stock = `
/** Test plastic. Source: made up. */
material plastic { family pvc; density 1400 kg/m3; modulus 2.8 GPa; creep-modulus 0.9 GPa; bending-strength 48 MPa; sustained-strength 14 MPa; shear-strength 20 MPa }
material wood { family timber; density 400 kg/m3; modulus 8 GPa; bending-strength 16 MPa }
/** Thin pipe. Source: made up,
 * table 3. */
pipe thin { outside 33 mm; wall 3.4 mm; material plastic; sold 20 ft long; sold 10 ft long }
pipe thick like thin { wall 5 mm }
pipe wide like thin { outside 40 mm }
lumber board { depth 90 mm; breadth 20 mm; material wood }
rod bar { across 12 mm; material plastic }
cable wire { across 4 mm; breaks at 12 kN; modulus 190 GPa; metal 12 mm2; weighs 99 g/m }
coupler weak { form socket; fits thin; moment 20 N.m; pull 2 kN; takes 1 in }
coupler strong { form sleeve; fits thin; moment 60 N.m; pull 2 kN; takes 4 in }
fitting cross { form cross; moment 20 N.m; pull 2 kN; angle 180 deg; takes 1 in }
fitting peak { form peak; moment 60 N.m; pull 2 kN; angle 130 deg; takes 1 in }
film clear { thickness 200 um; density 925 kg/m3; grade greenhouse; life 4 yr; yields at 10 MPa; modulus 200 MPa; expands 0.2 mm per 1 m per degree; light 0.88 }
fastening channel { form channel; holds 4 kN/m; edge 100 mm }
site field { gust 40 m/s once per 50 yr }
`;

const house = (body: string): SpecWorld => worldOf(stock, `shelter house on field {\n${body}\n}`);
const arch =
  'footprint 4 m by 10 m\nbows spaced 2 m { of thin; shape elastic; length 6 m; foot stub of bar { length 1.2 m; deep 0.6 m } }';

function solved(body: string): Shelter {
  const { shelter, problems } = resolveShelter('house', house(body));
  expect(problems.filter((one) => one.severity === 'error')).toEqual([]);
  return shelter!;
}

function problemsOf(body: string): readonly string[] {
  return resolveShelter('house', house(body)).problems.map((one) => one.id);
}

describe('stock items', () => {
  const world = worldOf(
    stock,
    'pipe loop-a like loop-b { }\npipe loop-b like loop-a { }\npipe lost like nothing { }\npipe odd like board { }\npipe stout like thin { wall 20 mm }',
  );
  const read = (name: string, kinds = ['pipe']) => {
    const notes = newNotes();
    return { item: resolveItem(name, kinds, world, notes, originOf('here')), notes };
  };

  test('are taken hold of by what is made for those that they are like, while the outside is the same', () => {
    const world = worldOf(
      `${stock}\npipe thicker like thick { wall 6 mm }\npipe wider like wide { wall 4 mm }`,
      'lumber plank like board { sold 3 m long }\nlumber thin-plank like board { breadth 15 mm }',
    );
    const takenFor = (name: string, kind = 'pipe'): readonly string[] | undefined => {
      const item = resolveItem(name, [kind], world, newNotes(), originOf('here'));
      return item && 'section' in item ? item.takenFor : undefined;
    };
    expect(takenFor('thin')).toBe(undefined);
    expect(takenFor('thick')).toEqual(['thin']);
    expect(takenFor('thicker')).toEqual(['thick', 'thin']);
    expect(takenFor('wide')).toBe(undefined);
    expect(takenFor('wider')).toEqual(['wide']);
    expect(takenFor('plank', 'lumber')).toEqual(['board']);
    expect(takenFor('thin-plank', 'lumber')).toBe(undefined);
    const jointed = resolveShelter(
      'house',
      worldOf(
        stock,
        `shelter house on field {\n${arch.replace('of thin', 'of thick').replace('6 m', '7 m')}\n}`,
      ),
    );
    expect(jointed.shelter?.roof).toMatchObject({ joints: [{ item: { id: 'strong' }, assumed: true }] });
  });

  test('take over what they are like, and say their own', () => {
    const { item } = read('thick');
    expect(item).toMatchObject({
      kind: 'pipe',
      section: { outside: 0.033, wall: 0.005 },
      stockLengths: [3.048, 6.096],
    });
  });

  test('carry title and source of their doc comment', () => {
    expect(read('thin').item).toMatchObject({ title: 'Thin pipe', source: 'made up, table 3.' });
  });

  test.each([
    ['loop-a', 'like-cycle'],
    ['lost', 'unknown-name'],
    ['odd', 'wrong-kind'],
    ['stout', 'out-of-range'],
    ['board', 'wrong-kind'],
    ['nowhere', 'unknown-name'],
  ])('%s is a problem: %s', (name, id) => {
    const { item, notes } = read(name);
    expect(item).toBeUndefined();
    expect(notes.problems.map((one) => one.id)).toContain(id);
  });

  test('prices come from the item and from every list that names it', () => {
    const priced = worldOf(
      stock,
      'prices { price of thin 6 per 20 ft; price of cross 2 per piece; price of clear 2 per m2 }',
    );
    const of = (name: string, kind: string) =>
      resolveItem(name, [kind], priced, newNotes(), originOf('here'))!.prices.map((price) => [
        price.amount,
        price.per,
      ]);
    expect(of('thin', 'pipe')).toEqual([[6, { unit: 'length', value: 6.096 }]]);
    expect(of('cross', 'fitting')).toEqual([[2, { unit: 'piece', value: 1 }]]);
    expect(of('clear', 'film')).toEqual([[2, { unit: 'area', value: 1 }]]);
  });
});

describe('bows', () => {
  test('of given length take the rise of the elastica: 0.3329 of the length at a span of 0.65 (elliptic integrals)', () => {
    const roof = solved(arch.replace('length 6 m', `length ${4 / 0.65} m`)).roof as Bows;
    expect(roof.rise / roof.length).toBeCloseTo(0.332909, 5);
    expect(roof.line.at(-1)!.x).toBeCloseTo(4, 9);
    expect(roof.stations).toEqual([0, 2, 4, 6, 8, 10]);
  });

  test('longer than the longest stock get joints from the strongest coupler that fits, and say so', () => {
    const shelter = solved(arch.replace('length 6 m', 'length 7 m'));
    const roof = shelter.roof as Bows;
    expect(roof.joints).toMatchObject([{ at: 6.096, assumed: true, item: { id: 'strong' } }]);
    expect(shelter.assumed).toContainEqual(
      expect.objectContaining({ part: 'bows', fact: 'joint', value: 6.096 }),
    );
  });

  test('much longer than stock get a joint at every stock length, each listed', () => {
    const shelter = solved(
      'footprint 8 m by 10 m\nbows spaced 2 m { of thin; shape arc; length 14 m; foot stub of bar }',
    );
    expect((shelter.roof as Bows).joints.map((joint) => joint.at)).toEqual([6.096, 12.192]);
    expect(shelter.assumed.filter((one) => one.fact === 'joint').map((one) => one.value)).toEqual([
      6.096, 12.192,
    ]);
  });

  test('keep the joints that are said, and use a coupler said without a place', () => {
    const said = solved(arch.replace('length 6 m;', 'length 7 m; joint weak at 2 m;')).roof as Bows;
    expect(said.joints).toMatchObject([{ at: 2, assumed: false, item: { id: 'weak' } }]);
    const placed = solved(arch.replace('length 6 m;', 'length 7 m; joint weak;')).roof as Bows;
    expect(placed.joints).toMatchObject([{ at: 6.096, assumed: true, item: { id: 'weak' } }]);
  });

  test('driven legs count with the first length of stock', () => {
    const body =
      'footprint 4 m by 10 m\nbows spaced 2 m { of thin; shape cold-bent; rise 3 m; foot driven { deep 0.5 m } }';
    const roof = solved(body).roof as Bows;
    expect(roof).toMatchObject({ leg: 1, legDriven: 0.5 });
    expect(roof.length).toBeCloseTo(2 + 2 * Math.PI, 9);
    expect(roof.joints[0]!.at).toBeCloseTo(6.096 - 0.5, 9);
  });

  test('legs of a leaning bow go into the ground in line with it, longer than they reach down', () => {
    const body = 'footprint 2.4 m by 8 m\nbows spaced 1 m { of thin; shape elastic; length 3 m; FOOT }';
    const poked = solved(body.replace('FOOT', 'foot poked { deep 0.3 m }'));
    const roof = poked.roof as Bows;
    const lean = roof.line[0]!.angle;
    expect(roof.foot!.lean).toBeCloseTo(lean, 12);
    // By definition: what reaches 0.3 m down at a lean is 0.3 m / sin(lean) long.
    expect(roof.legDriven).toBeCloseTo(0.3 / Math.sin(lean), 12);
    expect(poked.assumed).toContainEqual(expect.objectContaining({ part: 'bows/foot', fact: 'lean' }));
    const said = solved(body.replace('FOOT', 'foot poked { deep 0.3 m; held clamped; lean 60 deg }'))
      .roof as Bows;
    expect(said.legDriven).toBeCloseTo(0.3 / Math.sin(Math.PI / 3), 12);
    expect(said.line[0]!.angle).toBeCloseTo(Math.PI / 3, 6);
  });

  test('a crown fitting is no joint along the bow', () => {
    const roof = solved(arch.replace('length 6 m;', 'length 6 m; joint cross at crown;')).roof as Bows;
    expect(roof.joints).toEqual([]);
    expect(roof.crownFitting).toMatchObject({ at: 3, item: { id: 'cross' } });
  });

  test('on side posts have no foot of their own and start at the rail', () => {
    const shelter = solved(
      'footprint 4 m by 10 m\nposts sides of board spaced 2.5 m { height 2 m; rail of board }\nbows spaced 1 m { of thin; shape elastic; rise 1.2 m }',
    );
    expect(shelter.roof).toMatchObject({ springing: 2 });
    expect((shelter.roof as Bows).foot).toBeUndefined();
    expect(shelter.roof.line[0]).toMatchObject({ x: 0, y: 2 });
    expect(shelter.sidePosts).toMatchObject({ lines: [0, 4], height: 2, spacing: 2.5 });
    expect(shelter.eaveRail).toMatchObject({ role: 'eave', span: 2.5 });
  });

  test('on a grid of posts start at its outer lines; the inner ones reach up under them with their rail', () => {
    const grid = (rest: string) =>
      solved(
        `footprint 4 m by 10 m\nposts grid of board spaced 2.5 m { ${rest}; height 2 m }\nbows spaced 1 m { of thin; shape elastic; rise 1.2 m }`,
      );
    const shelter = grid('lines 5; rail of board');
    expect(shelter.sidePosts).toMatchObject({ where: 'sides', lines: [0, 4], height: 2 });
    expect(shelter.eaveRail!.lines).toEqual([
      { x: 0, y: 2 },
      { x: 4, y: 2 },
    ]);
    // A pair and the middle: under the bow lies the rail, 90 mm deep, and under that the posts end.
    expect(shelter.inner!.map(({ lines }) => lines.map(({ x }) => x))).toEqual([[1, 3], [2]]);
    const [pair, middle] = shelter.inner!;
    expect(middle!.lines[0]!.y).toBeCloseTo(3.2 - 0.0165 - 0.045, 3);
    expect(middle!.posts!.height).toBeCloseTo(3.2 - 0.0165 - 0.09, 3);
    expect(middle!.lines[0]!.s).toBeCloseTo(shelter.roof.line.at(-1)!.s / 2, 3);
    expect(pair!.posts!.height).toBeLessThan(middle!.posts!.height);
    expect(pair!.posts!.height).toBeGreaterThan(2);
    expect(new Set(shelter.inner!.map(({ posts }) => posts!.foot.id)).size).toBe(2);
    expect(shelter.unmodelled).toEqual([]);
    // Without rails on them they hold nothing up, which is said.
    expect(grid('lines 3').inner).toBeUndefined();
    expect(grid('lines 3').unmodelled).toMatchObject([{ what: expect.stringContaining('inner lines') }]);
  });

  test('a line of a grid under a ridge on posts is left to the ridge', () => {
    const shelter = solved(
      'footprint 4 m by 10 m\nposts grid of board spaced 2.5 m { lines 5; height 2 m; rail of board }\nbows spaced 1 m { of thin; shape elastic; rise 1.2 m }\nridge rail of board { posts of board spaced 2.5 m { foot hole } }',
    );
    expect(shelter.inner!.map(({ lines }) => lines.map(({ x }) => x))).toEqual([[1, 3]]);
  });

  test('laminated bows are as deep as their boards together, and lie flat', () => {
    const roof = solved(
      'footprint 4 m by 10 m\nbows spaced 1 m { of board; shape laminated; laminations 4; rise 1.5 m; foot bearing }',
    ).roof as Bows;
    expect(roof.member.section).toEqual({ shape: 'rectangle', depth: 0.08, breadth: 0.09, laminations: 4 });
  });

  test('take their rise from a ridge whose height is said', () => {
    const shelter = solved(
      'footprint 4 m by 10 m\nbows spaced 1 m { of thin; shape elastic; foot stub of bar }\nridge rail of board { height 2.2 m; posts of board spaced 2 m }',
    );
    expect(shelter.roof.rise).toBeCloseTo(2.2, 6);
    // The board of 90 mm lies under the pipe of 33 mm, and the posts end under the board.
    expect(shelter.ridge).toMatchObject({
      span: 2,
      lines: [{ x: expect.closeTo(2, 9), y: expect.closeTo(2.2 - 0.0165 - 0.045, 4) }],
      posts: { height: expect.closeTo(2.2 - 0.0165 - 0.09, 4) },
    });
  });

  test('feel the lean of stubs that hold them', () => {
    const at = (lean: string) =>
      solved(arch.replace('deep 0.6 m', `deep 0.6 m; held clamped; lean ${lean}`)).roof as Bows;
    expect(at('90 deg').line[0]!.angle).toBeCloseTo(Math.PI / 2, 6);
    expect(at('90 deg').rise).not.toBeCloseTo(at('70 deg').rise, 3);
  });
});

describe('rafters', () => {
  const gable =
    'footprint 6 m by 10 m\nposts sides of board { height 2 m }\nrafters spaced 2 m { of board; pitch 30 deg; overhang 0.3 m; joint peak at peak; joint cross at eave }';

  test('rise by their pitch and reach over the eave', () => {
    const roof = solved(gable).roof as Rafters;
    expect(roof.rise).toBeCloseTo(3 * Math.tan(Math.PI / 6), 12);
    expect(roof.length).toBeCloseTo(3 / Math.cos(Math.PI / 6) + 0.3, 9);
    expect(roof.peakJoint).toMatchObject({ item: { id: 'peak' } });
    expect(roof.eaveJoint).toMatchObject({ item: { id: 'cross' } });
    expect(roof.line.at(-1)).toMatchObject({ x: expect.closeTo(6, 9), y: expect.closeTo(2, 9) });
  });

  test('a ridge without posts is carried by them: a purlin', () => {
    const shelter = solved(`${gable}\nridge rail of board`);
    expect(shelter.ridge).toBeUndefined();
    expect(shelter.purlins).toMatchObject([{ role: 'ridge', lines: [{ x: expect.closeTo(3, 9) }] }]);
  });
});

describe('a shelter', () => {
  test('lists every value it took that was not said', () => {
    const facts = solved(`${arch}\ncover roof with clear`).assumed.map((one) => `${one.part}.${one.fact}`);
    for (const fact of [
      'site.exposure',
      'site.rain',
      'site.soil',
      'bows/foot.lean',
      'bows/foot.held',
      'cover-roof.edge',
      'cover-roof.end lap',
      'cover-roof.layers',
      'cover-roof.tension',
      'cover-roof.fitted',
      'shelter.sides',
      'shelter.ends',
      'shelter.orientation',
    ])
      expect(facts).toContain(fact);
    for (const one of solved(arch).assumed) expect(one.why.length).toBeGreaterThan(5);
  });

  test('lists an assumed value once, however often the item is used', () => {
    const parts = solved(`${arch}\nridge rail of board { posts of board spaced 2 m }`).assumed;
    const keys = parts.map((one) => `${one.part} ${one.fact} ${one.origin} ${one.value}`);
    expect(keys.some((key) => key.startsWith('wood '))).toBe(true);
    expect(new Set(keys).size).toBe(keys.length);
  });

  test('assumes nothing of what is said', () => {
    const shelter = solved(
      `${arch}\norientation 20 deg\nsides open\nends clad\ncover roof with clear { fastened by channel; tension 200 N/m; fitted at 15 degC }`,
    );
    const facts = shelter.assumed.map((one) => `${one.part}.${one.fact}`);
    expect(facts.filter((fact) => fact.startsWith('cover') || fact.startsWith('shelter'))).toEqual([
      'cover-roof.end lap',
      'cover-roof.layers',
    ]);
    expect(shelter.opening).toEqual({ sides: 'open', ends: 'clad' });
  });

  test('covers its arc with both edges, its length with both ends', () => {
    const shelter = solved(`${arch}\ncover roof with clear { fastened by channel }`);
    expect(shelter.covers[0]).toMatchObject({
      developedWidth: expect.closeTo(6.2, 9),
      developedLength: expect.closeTo(10.6, 9),
    });
  });

  test('braces run along a side from a foot, or across a frame to the far side', () => {
    const body =
      'footprint 4 m by 10 m\nposts sides of board spaced 2 m { height 2 m }\nrafters spaced 1 m { of board; pitch 20 deg }';
    const { braces } = solved(
      `${body}\nbraces along of board { at corners }\nbraces across of board { at ends }\nguys of wire { at ends; out 1.5 m }\nties of wire { height 2 m; spaced 2 m }`,
    );
    expect(braces).toMatchObject([
      { role: 'brace', count: 4, from: { x: 0, y: 0, z: 0 }, to: { x: 0, y: 2, z: 2 } },
      { role: 'brace', count: 4, from: { x: 0, y: 0, z: 0 }, to: { x: 4, y: 2, z: 0 } },
      { role: 'guy', count: 2, to: { y: 0, z: -1.5 }, foot: { kind: 'screw' } },
      { role: 'tie', count: 6, from: { x: 0, y: 2 }, to: { x: 4, y: 2 } },
    ]);
  });

  test('spreads purlins evenly along the arc', () => {
    const purlins = solved(`${arch}\npurlins 3 of thin { joint cross }`).purlins[0]!;
    expect(purlins.lines.map((line) => line.s)).toEqual([1.5, 3, 4.5]);
    expect(purlins.lines[1]!.x).toBeCloseTo(2, 9);
  });

  test('cable ridges span from end to end and are anchored', () => {
    const shelter = solved(`${arch}\nridge cable of wire { tension 3 kN }`);
    expect(shelter.ridge).toMatchObject({
      form: 'cable',
      span: 10,
      tension: 3000,
      endAnchor: { kind: 'deadman' },
    });
  });

  test('keeps requirements, acceptances and crops', () => {
    const shelter = solved(
      `${arch}\ncrop beans hung 10 kg/m2 { height 1.8 m; from side 0.5 m }\nrequire headroom >= 1.7 m at 0.5 m from side\nwithstand 30 m/s\naccept bow-deflection because "beds are inside" until 2027-06-30`,
    );
    expect(shelter.crops).toMatchObject([
      { name: 'beans', hung: expect.closeTo(98.0665, 9), height: 1.8, fromSide: 0.5 },
    ]);
    expect(shelter.requirements).toMatchObject([
      { subject: 'headroom', comparison: '>=', value: 1.7, at: 0.5 },
      { subject: 'gust', value: 30 },
    ]);
    expect(shelter.acceptances).toMatchObject([{ check: 'bow-deflection', until: '2027-06-30' }]);
  });

  test('names what it does not model', () => {
    const { unmodelled } = solved(`${arch}\nseason from 2026-11-01 to 2027-04-15\ngutter sides`);
    expect(unmodelled.map((one) => one.what)).toEqual(['the season it stands in', 'the pieces of a gutter']);
  });

  test('clear height is under the member', () => {
    const shelter = solved(
      'footprint 4 m by 10 m\nbows spaced 1 m { of thin; shape arc; rise 2 m; foot stub of bar }',
    );
    expect(clearHeightAt(shelter, 2)).toBeCloseTo(2 - 0.0165, 3);
    expect(clearHeightAt(shelter, 1)!).toBeLessThan(Math.sqrt(3));
    expect(clearHeightAt(shelter, -1)).toBeUndefined();
  });

  test('a tie across lowers the clear height between its ends, and nothing else', () => {
    const gable = (rest: string) =>
      solved(
        `footprint 4 m by 10 m\nposts sides of board spaced 2 m { height 2 m; foot hole }\nrafters spaced 1 m { of board; shape gable; rise 1 m; ${rest} }`,
      );
    expect(clearHeightAt(gable(''), 2)!).toBeGreaterThan(2.8);
    expect(clearHeightAt(gable('tie of board at 0 m'), 2)).toBeCloseTo(2 - 0.045, 9);
    const collar = gable('tie of board at 0.5 m');
    expect(clearHeightAt(collar, 2)).toBeCloseTo(2.5 - 0.045, 9);
    expect(clearHeightAt(collar, 0.5)).toBe(clearHeightAt(gable(''), 0.5));
    // The ridge still lies under the rafters, not under the tie.
    const ridged = solved(
      'footprint 4 m by 10 m\nposts sides of board spaced 2 m { height 2 m; foot hole }\nrafters spaced 1 m { of board; shape gable; rise 1 m; tie of board at 0 m }\nridge rail of board { posts of board spaced 2 m { foot hole } }',
    );
    expect(ridged.ridge!.lines[0]!.y).toBeGreaterThan(2.7);
    const tied = solved(`${arch}\nties of wire { height 1 m }`);
    expect(clearHeightAt(tied, 2)).toBeCloseTo(1 - 0.002, 9);
  });

  test('a variant is the shelter with other facts', () => {
    const world = worldOf(
      stock,
      `shelter house on field {\n${arch}\n}`,
      'variant other of house { bows of thick }\nvariant ring of ring { }',
    );
    expect(resolveShelter('other', world).shelter).toMatchObject({
      name: 'other',
      roof: { member: { id: 'thick' }, spacing: 2 },
    });
    expect(resolveShelter('ring', world).problems).toMatchObject([{ id: 'like-cycle' }]);
  });

  test('an edit and the same words typed give the same shelter', () => {
    const world = house(arch);
    const bows = factNode(world.definitions.get('house'), 'bows')!;
    const slots = { value: quantityValue(1, 'length', originOf('fix')) };
    const edited = {
      definitions: applyEdits(world.definitions, [
        { type: 'set', block: bows.origin, word: 'spaced', slots },
      ]),
    };
    const typed = house(arch.replace('spaced 2 m', 'spaced 1 m'));
    expect(resolveShelter('house', edited)).toEqual(resolveShelter('house', typed));
  });
});

describe('what a grower gets wrong is a problem at its place', () => {
  test.each([
    ['no roof', 'footprint 4 m by 10 m', 'no-roof'],
    ['no footprint', 'bows spaced 1 m { of thin; rise 2 m }', 'missing-fact'],
    ['no rise', 'footprint 4 m by 10 m\nbows spaced 1 m { of thin; foot stub of bar }', 'missing-fact'],
    ['no member', 'footprint 4 m by 10 m\nbows spaced 1 m { rise 2 m }', 'missing-fact'],
    ['an unknown pipe', 'footprint 4 m by 10 m\nbows spaced 1 m { of nothing; rise 2 m }', 'unknown-name'],
    ['film for a pipe', 'footprint 4 m by 10 m\nbows spaced 1 m { of clear; rise 2 m }', 'wrong-kind'],
    ['two roofs', `${arch}\nrafters spaced 1 m { of board; pitch 20 deg }`, 'two-roofs'],
    ['pipe shorter than the span', arch.replace('length 6 m', 'length 3 m'), 'bow-impossible'],
    ['nothing between bows', arch.replace('spaced 2 m', 'spaced 0 m'), 'out-of-range'],
    ['a negative rise', arch.replace('length 6 m', 'rise -2 m'), 'out-of-range'],
    ['ten thousand bows', arch.replace('spaced 2 m', 'spaced 1 mm'), 'too-many'],
    ['a kilometre of span', arch.replace('4 m by', '1000 m by'), 'out-of-range'],
    ['a joint beyond the end', arch.replace('length 6 m;', 'length 6 m; joint weak at 9 m;'), 'out-of-range'],
    ['a cable ridge of wood', `${arch}\nridge cable of board`, 'wrong-kind'],
    [
      'a ridge off the crown',
      `${arch}\nridge rail of board { height 1 m; posts of board }`,
      'ridge-off-crown',
    ],
    ['half a purlin', `${arch}\npurlins 0 of thin`, 'out-of-range'],
    [
      'a foot under bows on posts',
      'footprint 4 m by 10 m\nposts sides of board { height 2 m }\nbows spaced 1 m { of thin; rise 1 m; foot driven }',
      'two-seats',
    ],
    [
      'a cover that ends below its start',
      `${arch}\ncover sides with clear { from 1 m; up to 0.5 m }`,
      'out-of-range',
    ],
    ['an accept without a reason', `${arch}\naccept over-span because " "`, 'reason-missing'],
    [
      'no coupler in reach',
      'footprint 4 m by 10 m\nbows spaced 1 m { of wide; length 7 m; foot stub of bar }',
      'no-coupler',
    ],
  ])('%s', (_, body, id) => {
    expect(problemsOf(body)).toContain(id);
  });

  test('a site without a gust, and a shelter on no site', () => {
    const windless = worldOf(stock, `site calm { soil clay }\nshelter house on calm {\n${arch}\n}`);
    expect(resolveShelter('house', windless).problems).toMatchObject([
      { id: 'missing-fact', origin: windless.definitions.get('calm')!.origin },
    ]);
    const lost = worldOf(stock, `shelter house on nowhere {\n${arch}\n}`);
    expect(resolveShelter('house', lost).problems.map((one) => one.id)).toEqual(['unknown-name']);
    expect(resolveShelter('nobody', lost).shelter).toBeUndefined();
  });

  test('messages say what would help', () => {
    const [one] = resolveShelter(
      'house',
      house('footprint 4 m by 10 m\nbows spaced 1 m { of thin; foot stub of bar }'),
    ).problems;
    expect(one!.message).toContain("say 'rise' of the bows, as in `rise 7 ft 6 in`");
  });
});

test('whatever numbers a spec holds, there is a shelter of plain numbers or a problem, never an exception', () => {
  const number = fc.oneof(
    fc.double({ min: -5, max: 50, noNaN: true }),
    fc.constantFrom(0, -0, 1e-12, 1e12, Number.POSITIVE_INFINITY, Number.NaN, 0.5, 4, 6),
  );
  const template = house(
    'footprint 4 m by 10 m\nbows spaced 2 m { of thin; shape elastic; length 6 m; foot stub of bar { length 1.2 m; deep 0.6 m; held clamped; lean 80 deg } }\nridge rail of board { height 2 m; posts of board spaced 2 m }\npurlins 2 of thin { at 1 m; at 2 m }\ncover roof with clear { tension 100 N/m; layers 1 }\nbraces along of thin { height 1 m }\nguys of wire { out 1 m }',
  );
  const shapes = ['elastic', 'arc', 'cold-bent', 'pointed'];
  let whole = 0;
  fc.assert(
    fc.property(
      fc.array(number, { minLength: 40, maxLength: 40 }),
      fc.array(fc.nat(9), { minLength: 40, maxLength: 40 }),
      fc.constantFrom(...shapes),
      (numbers, change, shape) => {
        let index = 0;
        const swap = (key: string, value: unknown): unknown => {
          if (key === 'word' && value === 'elastic') return shape;
          if (key !== 'si') return value;
          index += 1;
          return change[index % 40] === 0 ? `n${index % 40}` : value;
        };
        const text = JSON.stringify(
          [...template.definitions].filter(([name]) => name === 'house'),
          swap,
        );
        const revive = (_: string, value: unknown) =>
          typeof value === 'string' && /^n\d+$/.test(value) ? numbers[Number(value.slice(1))] : value;
        const house = new Map(JSON.parse(text, revive) as [string, never][]);
        const { shelter, problems } = resolveShelter('house', {
          definitions: new Map([...template.definitions, ...house]),
        });
        if (shelter) whole += 1;
        if (shelter) everyNumber(shelter, 'shelter');
        else expect(problems.length).toBeGreaterThan(0);
      },
    ),
    { numRuns: 200 },
  );
  // The sweep is worth something only if it reaches both ends.
  expect(whole).toBeGreaterThan(20);
  expect(whole).toBeLessThan(180);
});

test('a leaning stub that is all in the ground is warned of', () => {
  const low = (length: string) =>
    `footprint 2 m by 6 m\nbows spaced 1 m { of thin; shape elastic; length 2.3 m; foot stub of bar { length ${length}; deep 0.8 m } }`;
  expect(problemsOf(low('1.2 m'))).toContain('stub-short');
  expect(problemsOf(low('1.6 m'))).not.toContain('stub-short');
});

function everyNumber(value: unknown, path: string): void {
  if (typeof value === 'number') expect(Number.isFinite(value), path).toBe(true);
  else if (value && typeof value === 'object')
    for (const [key, inner] of Object.entries(value)) everyNumber(inner, `${path}.${key}`);
}

/** Cables, couplers, fittings, fastenings, anchors and supplies. */
import type {
  AnchorItem,
  CableItem,
  FasteningItem,
  JointItem,
  SupplyForm,
  SupplyItem,
} from '../model/items.ts';
import { factNode, factNodes, itemIn, wordIn } from '../spec/nodes.ts';
import type { SpecDefinition } from '../spec/spec.ts';
import type { ItemCommon } from './item-common.ts';
import { soldLengths } from './members.ts';
import { assume, type Bounds, missing, type Notes, numberFact } from './notes.ts';

type Hardware = CableItem | JointItem | FasteningItem | AnchorItem | SupplyItem;

export function readHardware(
  definition: SpecDefinition,
  common: ItemCommon,
  notes: Notes,
): Hardware | undefined {
  const form = wordIn(factNode(definition, 'form'));
  if (definition.word === 'cable') return readCable(definition, common, notes);
  if (form === undefined) return missing(notes, definition, [definition.word, 'form']);
  if (definition.word === 'fastening') return readFastening(definition, form, common, notes);
  if (definition.word === 'supply') return readSupply(definition, form as SupplyForm, common, notes);
  if (definition.word === 'anchor') {
    const across = numberFact(notes, definition, 'across', { above: 0, most: 10 });
    const length = numberFact(notes, definition, 'length', { above: 0, most: 10 });
    const mass = numberFact(notes, definition, 'weighs', { above: 0 });
    return {
      ...common,
      kind: 'anchor',
      form: form as AnchorItem['form'],
      ...(across === undefined ? {} : { diameter: across }),
      ...(length === undefined ? {} : { length }),
      ...(mass === undefined ? {} : { mass }),
    };
  }
  return readJoint(definition, form, common, notes);
}

function must(definition: SpecDefinition, word: string, notes: Notes, bounds: Bounds = { above: 0 }) {
  const said = numberFact(notes, definition, word, bounds);
  if (said === undefined && !factNode(definition, word)) missing(notes, definition, [definition.word, word]);
  return said;
}

function readCable(definition: SpecDefinition, common: ItemCommon, notes: Notes): CableItem | undefined {
  const diameter = must(definition, 'across', notes);
  const breakingLoad = must(definition, 'breaks', notes);
  const modulus = must(definition, 'modulus', notes);
  const area = must(definition, 'metal', notes);
  const massPerLength = must(definition, 'weighs', notes);
  if (
    diameter === undefined ||
    breakingLoad === undefined ||
    modulus === undefined ||
    area === undefined ||
    massPerLength === undefined
  ) {
    return undefined;
  }
  return { ...common, kind: 'cable', diameter, breakingLoad, modulus, area, massPerLength };
}

function readJoint(
  definition: SpecDefinition,
  form: string,
  common: ItemCommon,
  notes: Notes,
): JointItem | undefined {
  const momentCapacity = must(definition, 'moment', notes, { least: 0 });
  const pullCapacity = must(definition, 'pull', notes, { least: 0 });
  if (momentCapacity === undefined || pullCapacity === undefined) return undefined;
  const stiffness = numberFact(notes, definition, 'stiffness', { least: 0 });
  const angle = numberFact(notes, definition, 'angle', { above: 0, most: Math.PI });
  const within = numberFact(notes, definition, 'angle', { least: 0 }, 'within');
  const cordLength = numberFact(notes, definition, 'cord', { above: 0, most: 100 });
  const fits = factNodes(definition, 'fits').flatMap((fact) => itemIn(fact) ?? []);
  const insertion =
    numberFact(notes, definition, 'takes', { least: 0, most: 5 }) ??
    assume(
      notes,
      definition.name,
      'takes',
      0,
      'length',
      'nothing is said of what it takes in',
      definition.origin,
    );
  return {
    ...common,
    kind: definition.word as JointItem['kind'],
    form: form as JointItem['form'],
    momentCapacity,
    pullCapacity,
    insertion,
    ...(stiffness === undefined ? {} : { stiffness }),
    ...(angle === undefined ? {} : { angle }),
    ...(within === undefined ? {} : { angleTolerance: within }),
    ...(fits.length === 0 ? {} : { fits }),
    ...(cordLength === undefined ? {} : { cordLength }),
  };
}

/** The fact that says how much one bag, roll or can holds, and its slot; what has none is sold by the pack of pieces. */
const packFact: Partial<Readonly<Record<SupplyForm, readonly [string, string]>>> = {
  concrete: ['makes', 'value'],
  glue: ['covers', 'value'],
  cord: ['sold', 'length'],
  wrapping: ['sold', 'length'],
};

function readSupply(
  definition: SpecDefinition,
  form: SupplyForm,
  common: ItemCommon,
  notes: Notes,
): SupplyItem {
  const [word, slot] = packFact[form] ?? ['sold', 'count'];
  const pack = numberFact(notes, definition, word, { above: 0, most: 1e6 }, slot);
  const across = numberFact(notes, definition, 'across', { above: 0, most: 10 });
  const length = numberFact(notes, definition, 'length', { above: 0, most: 10 });
  const usual = wordIn(factNode(definition, 'usual'));
  return {
    ...common,
    kind: 'supply',
    form,
    ...(pack === undefined ? {} : { pack }),
    ...(across === undefined ? {} : { across }),
    ...(length === undefined ? {} : { length }),
    ...(usual === 'metric' || usual === 'us' ? { usualIn: usual } : {}),
  };
}

function readFastening(
  definition: SpecDefinition,
  form: string,
  common: ItemCommon,
  notes: Notes,
): FasteningItem | undefined {
  const line = numberFact(notes, definition, 'holds', { above: 0 });
  const each = numberFact(notes, definition, 'each-holds', { above: 0 });
  const holds = line ?? each;
  if (holds === undefined) return missing(notes, definition, ['fastening', 'holds']);
  const edgeAllowance =
    numberFact(notes, definition, 'edge', { least: 0, most: 5 }) ??
    assume(
      notes,
      definition.name,
      'edge',
      0,
      'length',
      'nothing is said of film taken up at the edge',
      definition.origin,
    );
  const [diameter, long, washer] = ['across', 'long', 'washer'].map((word) =>
    numberFact(notes, definition, word, { above: 0, most: 0.3 }),
  );
  const life = numberFact(notes, definition, 'life', { above: 0 });
  const fibre = wordIn(factNode(definition, 'fibre')) as FasteningItem['fibre'];
  return {
    ...common,
    kind: 'fastening',
    form: form as FasteningItem['form'],
    holds,
    per: line === undefined ? 'piece' : 'length',
    stockLengths: soldLengths(definition),
    edgeAllowance,
    ...(life === undefined ? {} : { life }),
    ...(fibre === undefined ? {} : { fibre }),
    ...(diameter === undefined || long === undefined || washer === undefined
      ? {}
      : { screw: { diameter, length: long, washer } }),
  };
}

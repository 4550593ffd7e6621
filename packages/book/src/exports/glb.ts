/** The house in space as binary glTF 2.0 (Khronos), by the library @gltf-transform/core. */
import { Document, type Material, type Mesh, WebIO } from '@gltf-transform/core';
import { type Scene3d, type Segment, type Surface, scene3d } from '@tautline/drawing';
import type { Shelter } from '@tautline/shelter';

/** Sides of a prism that stands for a round member. */
const SIDES = 8;

interface Faces {
  readonly positions: number[];
  readonly normals: number[];
  readonly indices: number[];
}

type Triple = readonly [number, number, number];

/**
 * Bytes of a .glb file: metres, y up, one named node a part. Members are solid prisms, skins are seen from
 * both sides. Same shelter, same bytes. Throws RangeError on a model with a number that is not finite.
 */
export async function sceneGlb(shelter: Shelter): Promise<Uint8Array> {
  const model = scene3d(shelter);
  const document = new Document();
  document.getRoot().getAsset().generator = 'tautline';
  document.createBuffer();
  const scene = document.createScene(shelter.name);
  const frame = document
    .createMaterial('member')
    .setBaseColorFactor([0.55, 0.55, 0.52, 1])
    .setMetallicFactor(0)
    .setRoughnessFactor(0.8);
  for (const [part, faces] of memberFaces(model)) {
    scene.addChild(document.createNode(part).setMesh(mesh(document, part, faces, frame)));
  }
  const skins = new Map<string, Material>();
  for (const surface of model.surfaces) {
    const material = skins.get(surface.skin) ?? skinMaterial(document, surface.skin);
    skins.set(surface.skin, material);
    const faces = surfaceFaces(surface);
    scene.addChild(document.createNode(surface.part).setMesh(mesh(document, surface.part, faces, material)));
  }
  return new WebIO().writeBinary(document);
}

function skinMaterial(document: Document, skin: Surface['skin']): Material {
  return document
    .createMaterial(skin)
    .setBaseColorFactor([0.75, 0.85, 0.95, skin === 'sheet' ? 0.5 : 0.3])
    .setMetallicFactor(0)
    .setRoughnessFactor(0.4)
    .setAlphaMode('BLEND')
    .setDoubleSided(true);
}

function mesh(document: Document, name: string, faces: Faces, material: Material): Mesh {
  const buffer = document.getRoot().listBuffers()[0] ?? document.createBuffer();
  const accessor = (array: Float32Array<ArrayBuffer> | Uint32Array<ArrayBuffer>, type: 'VEC3' | 'SCALAR') =>
    document.createAccessor().setType(type).setArray(array).setBuffer(buffer);
  const primitive = document
    .createPrimitive()
    .setAttribute('POSITION', accessor(new Float32Array(faces.positions), 'VEC3'))
    .setAttribute('NORMAL', accessor(new Float32Array(faces.normals), 'VEC3'))
    .setIndices(accessor(new Uint32Array(faces.indices), 'SCALAR'))
    .setMaterial(material);
  return document.createMesh(name).addPrimitive(primitive);
}

/** Prisms of all members, gathered by part. */
function memberFaces({ segments }: Scene3d): ReadonlyMap<string, Faces> {
  const parts = new Map<string, Faces>();
  for (const segment of segments) {
    const faces = parts.get(segment.part) ?? { positions: [], normals: [], indices: [] };
    parts.set(segment.part, faces);
    addPrism(faces, segment);
  }
  return parts;
}

const minus = (a: Triple, b: Triple): Triple => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const cross = (a: Triple, b: Triple): Triple => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const unit = (a: Triple): Triple => {
  const size = Math.hypot(...a) || 1;
  return [a[0] / size, a[1] / size, a[2] / size];
};

/** Flat-sided prism round the segment with closed ends; a rectangle lies with its breadth along the house. */
function addPrism(faces: Faces, { from, to, radius, section, halfBreadth }: Segment): void {
  const axis = unit(minus(to, from));
  if (Math.hypot(...minus(to, from)) === 0) return;
  const guide: Triple = Math.abs(axis[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0];
  const deep = unit(cross(guide, axis));
  const broad = cross(axis, deep);
  const corners =
    section === 'round'
      ? Array.from({ length: SIDES }, (_, i) => {
          const turn = (2 * Math.PI * i) / SIDES;
          return [radius * Math.cos(turn), radius * Math.sin(turn)] as const;
        })
      : ([
          [radius, -halfBreadth],
          [radius, halfBreadth],
          [-radius, halfBreadth],
          [-radius, -halfBreadth],
        ] as const);
  const at = (end: Triple, [d, b]: readonly [number, number]): Triple => [
    end[0] + deep[0] * d + broad[0] * b,
    end[1] + deep[1] * d + broad[1] * b,
    end[2] + deep[2] * d + broad[2] * b,
  ];
  const near = corners.map((corner) => at(from, corner));
  const far = corners.map((corner) => at(to, corner));
  corners.forEach((_, i) => {
    const j = (i + 1) % corners.length;
    addFace(faces, [near[i]!, near[j]!, far[j]!, far[i]!]);
  });
  addFace(faces, [...near].reverse());
  addFace(faces, far);
}

/** A flat face of three corners or more, counter-clockwise from outside. */
function addFace(faces: Faces, corners: readonly Triple[]): void {
  const first = faces.positions.length / 3;
  const normal = unit(cross(minus(corners[1]!, corners[0]!), minus(corners[2]!, corners[0]!)));
  for (const corner of corners) {
    faces.positions.push(...corner);
    faces.normals.push(...normal);
  }
  for (let i = 2; i < corners.length; i += 1) faces.indices.push(first, first + i - 1, first + i);
}

/** Triangles of a skin, each with its own flat normal; triangles without area are left out. */
function surfaceFaces({ positions, triangles }: Surface): Faces {
  const faces: Faces = { positions: [], normals: [], indices: [] };
  const corner = (index: number): Triple => [
    positions[3 * index]!,
    positions[3 * index + 1]!,
    positions[3 * index + 2]!,
  ];
  for (let i = 0; i < triangles.length; i += 3) {
    const three = [corner(triangles[i]!), corner(triangles[i + 1]!), corner(triangles[i + 2]!)] as const;
    if (Math.hypot(...cross(minus(three[1], three[0]), minus(three[2], three[0]))) > 1e-12)
      addFace(faces, three);
  }
  return faces;
}

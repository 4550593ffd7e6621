import type { Surface } from '@tautline/drawing';
import {
  BufferGeometry,
  DoubleSide,
  EdgesGeometry,
  Float32BufferAttribute,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshLambertMaterial,
} from 'three';
import type { Colours } from './colours.ts';
import type { PartState } from './contract.ts';

export interface Skins {
  readonly meshes: readonly Mesh<BufferGeometry, MeshLambertMaterial>[];
  readonly edges: readonly LineSegments<BufferGeometry, LineBasicMaterial>[];
  readonly surfaces: readonly Surface[];
  dispose(): void;
}

/** How much of what lies behind a skin it hides. */
const cover = { film: 0.16, mesh: 0.3, sheet: 0.55 } as const;

/** Film, mesh and sheets: one can see through all of them, and their rims are drawn. */
export function skinsOf(surfaces: readonly Surface[]): Skins {
  const meshes = surfaces.map(({ part, skin, positions, triangles }) => {
    const shape = new BufferGeometry().setAttribute(
      'position',
      new Float32BufferAttribute([...positions], 3),
    );
    shape.setIndex([...triangles]);
    shape.computeVertexNormals();
    const look = new MeshLambertMaterial({
      side: DoubleSide,
      transparent: true,
      opacity: cover[skin],
      depthWrite: false,
    });
    const mesh = new Mesh(shape, look);
    mesh.userData['parts'] = [part];
    return mesh;
  });
  const edges = meshes.map(
    (mesh) =>
      new LineSegments(
        new EdgesGeometry(mesh.geometry, 40),
        new LineBasicMaterial({ transparent: true, opacity: 0.7 }),
      ),
  );
  return {
    meshes,
    edges,
    surfaces,
    dispose() {
      for (const { geometry, material } of [...meshes, ...edges]) {
        geometry.dispose();
        material.dispose();
      }
    },
  };
}

export function colourSkins(skins: Skins, colours: Colours, stateOf: (part: string) => PartState): void {
  for (const [index, { part, skin }] of skins.surfaces.entries()) {
    const state = stateOf(part);
    const stands = state === 'pointed' || state === 'marked';
    const mesh = skins.meshes[index];
    mesh?.material.color.copy(state === 'plain' ? colours[skin] : colours.parts[state]);
    mesh?.material.setValues({ opacity: cover[skin] * (stands ? 2 : 1) });
    skins.edges[index]?.material.color.copy(state === 'plain' ? colours[skin] : colours.parts[state]);
  }
}

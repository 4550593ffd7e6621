import type { Segment } from '@tautline/drawing';
import {
  BoxGeometry,
  CylinderGeometry,
  InstancedMesh,
  type Intersection,
  Matrix4,
  MeshLambertMaterial,
  Quaternion,
  Vector3,
} from 'three';
import type { Colours } from './colours.ts';
import type { PartState } from './contract.ts';

export interface Members {
  readonly meshes: readonly InstancedMesh[];
  readonly runs: readonly (readonly Segment[])[];
  dispose(): void;
}

/** All members as two meshes of many instances: round ones and rectangular ones. */
export function membersOf(segments: readonly Segment[]): Members {
  const runs = (['round', 'rectangle'] as const)
    .map((section) => segments.filter((one) => one.section === section))
    .filter((run) => run.length > 0);
  const meshes = runs.map((run) => {
    const round = run[0]?.section === 'round';
    const shape = round ? new CylinderGeometry(1, 1, 1, 10) : new BoxGeometry(2, 1, 2);
    const mesh = new InstancedMesh(shape, new MeshLambertMaterial(), run.length);
    mesh.userData['parts'] = run.map(({ part }) => part);
    mesh.frustumCulled = false;
    return mesh;
  });
  return {
    meshes,
    runs,
    dispose() {
      for (const mesh of meshes) {
        mesh.geometry.dispose();
        mesh.dispose();
      }
    },
  };
}

/** How much thicker a part shows, so that it stands out by more than its colour. */
const thicker: Readonly<Record<PartState, number>> = {
  plain: 1,
  near: 1,
  fails: 1,
  pointed: 1.7,
  marked: 1.9,
};

export function colourMembers(
  members: Members,
  colours: Colours,
  stateOf: (part: string) => PartState,
): void {
  for (const [index, run] of members.runs.entries()) {
    const mesh = members.meshes[index];
    for (const [place, segment] of run.entries()) {
      const state = stateOf(segment.part);
      mesh?.setMatrixAt(place, matrixOf(segment, thicker[state]));
      mesh?.setColorAt(place, colours.parts[state]);
    }
    if (mesh !== undefined) {
      mesh.instanceMatrix.needsUpdate = true;
      if (mesh.instanceColor !== null) {
        mesh.instanceColor.needsUpdate = true;
      }
      mesh.computeBoundingSphere();
    }
  }
}

/** Length along the member, depth in the section's plane, breadth along the house. */
function matrixOf({ from, to, radius, section, halfBreadth }: Segment, scale: number): Matrix4 {
  const start = new Vector3(...from);
  const along = new Vector3(...to).sub(start);
  const length = along.length();
  const up = length > 0 ? along.clone().divideScalar(length) : new Vector3(0, 1, 0);
  const house = Math.abs(up.z) > 0.99 ? new Vector3(1, 0, 0) : new Vector3(0, 0, 1);
  const depth = new Vector3().crossVectors(up, house).normalize();
  const breadth = new Vector3().crossVectors(depth, up);
  const turn = new Quaternion().setFromRotationMatrix(new Matrix4().makeBasis(depth, up, breadth));
  const middle = start.addScaledVector(along, 0.5);
  const wide = (section === 'round' ? radius : halfBreadth) * scale;
  return new Matrix4().compose(middle, turn, new Vector3(radius * scale, length, wide));
}

export function partOfHit(hit: Intersection): string | undefined {
  const parts = hit.object.userData['parts'] as readonly string[] | undefined;
  return parts?.[hit.instanceId ?? 0];
}

/** A frame in space as numbers, right-handed axes, SI. Rotations are small-angle vectors only in what is reported. */
export interface SpaceNode {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** End rotations against the chord, rad: about the member's local y and z axes at ends i and j. */
export interface Bent {
  readonly yI: number;
  readonly zI: number;
  readonly yJ: number;
  readonly zJ: number;
}

export interface SpaceElement {
  readonly i: number;
  readonly j: number;
  readonly EA: number;
  /** bending stiffness about the local y and z axes, N·m2 */
  readonly EIy: number;
  readonly EIz: number;
  /** torsional stiffness, N·m2 */
  readonly GJ: number;
  /**
   * Direction that the local z axis lies nearest to; default the third axis (the second for a member along it).
   * Local x runs from i to j, y = z x x.
   */
  readonly towards?: readonly [number, number, number] | undefined;
  /** developed unstressed length, m; default as drawn */
  readonly restLength?: number | undefined;
  /** bend of the member as drawn, and unstressed (default: as drawn) */
  readonly bent?: Bent | undefined;
  readonly restBent?: Bent | undefined;
  /** axial force only */
  readonly truss?: boolean | undefined;
  /** a truss that goes slack in compression */
  readonly tensionOnly?: boolean | undefined;
  /** rotational spring of the joint at an end about local y and z, N·m/rad; 0 is a hinge, absent is rigid */
  readonly springI?: { readonly y?: number | undefined; readonly z?: number | undefined } | undefined;
  readonly springJ?: { readonly y?: number | undefined; readonly z?: number | undefined } | undefined;
}

export type SpaceDof = 'x' | 'y' | 'z' | 'rx' | 'ry' | 'rz';

export interface SpaceSupport {
  readonly node: number;
  readonly dof: SpaceDof;
  /** a contact (translations only) pushes towards `direction` once the node has moved `gap` against it */
  readonly kind: 'fixed' | 'spring' | 'contact';
  readonly stiffness?: number | undefined;
  readonly gap?: number | undefined;
  readonly direction?: 1 | -1 | undefined;
}

export interface SpaceModel {
  readonly nodes: readonly SpaceNode[];
  readonly elements: readonly SpaceElement[];
  readonly supports: readonly SpaceSupport[];
}

export interface SpaceLoads {
  readonly nodal?:
    | readonly {
        node: number;
        fx: number;
        fy: number;
        fz: number;
        mx?: number | undefined;
        my?: number | undefined;
        mz?: number | undefined;
      }[]
    | undefined;
  /** N per m of unstressed length, fixed direction */
  readonly line?: readonly { element: number; wx: number; wy: number; wz: number }[] | undefined;
}

export interface SpaceState {
  /** dx, dy, dz of every node */
  readonly shifts: Float64Array;
  /** rotation matrix of every node, row by row */
  readonly rotations: Float64Array;
  readonly loads: SpaceLoads;
}

export interface SpaceElementForces {
  /** tension positive, N */
  readonly axial: number;
  /** torque, N·m */
  readonly torsion: number;
  /** bending moments EI·curvature about local y and z at both ends, load between the ends included */
  readonly momentYI: number;
  readonly momentZI: number;
  readonly momentYJ: number;
  readonly momentZJ: number;
  /** resultant bending moment halfway, by statics */
  readonly momentMid: number;
  /** largest resultant shear at the ends, N */
  readonly shear: number;
  readonly slack: boolean;
}

export interface SpaceResult {
  readonly status: 'converged' | 'unstable' | 'diverged' | 'mechanism' | 'invalid' | 'cancelled';
  readonly reason?: string;
  readonly loadFactor: number;
  readonly iterations: number;
  readonly negativePivots: number;
  readonly state: SpaceState;
  readonly displacements: readonly {
    dx: number;
    dy: number;
    dz: number;
    rx: number;
    ry: number;
    rz: number;
  }[];
  readonly elementForces: readonly SpaceElementForces[];
  readonly reactions: readonly number[];
  readonly residual: number;
  /** unknowns, and entries of the factor: what a solution costs */
  readonly unknowns: number;
  readonly entries: number;
}

export interface SpaceOptions {
  readonly start?: SpaceState | undefined;
  readonly steps?: number | undefined;
  readonly maxIterations?: number | undefined;
  readonly cancelled?: (() => boolean) | undefined;
}

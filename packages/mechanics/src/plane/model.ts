/**
 * A plane frame as numbers: x to the right, y up, rotations and moments counterclockwise. SI.
 */
export interface PlaneNode {
  readonly x: number;
  readonly y: number;
  /** tangent of the members' line at the node in the starting shape, rad; absent where members meet at a kink */
  readonly angle?: number | undefined;
}

export interface PlaneElement {
  readonly i: number;
  readonly j: number;
  /** N */
  readonly EA: number;
  /** N·m2; not used by a truss */
  readonly EI: number;
  /** developed length when unstressed, m; default: as drawn */
  readonly restLength?: number | undefined;
  /**
   * d(tangent)/ds when unstressed, 1/m, positive turning left (counterclockwise) from i to j.
   * 0 is a straight pipe sprung into its place. Default: unstressed as drawn.
   */
  readonly restCurvature?: number | undefined;
  /** tangent at end i or j in the starting shape, rad; default the node's angle, else the chord's */
  readonly angleI?: number | undefined;
  readonly angleJ?: number | undefined;
  /** carries axial force only, hinged at both ends */
  readonly truss?: boolean | undefined;
  /** a truss that goes slack instead of taking compression */
  readonly tensionOnly?: boolean | undefined;
  /** rotational spring between node and member end, N·m/rad; 0 is a hinge, absent is rigid */
  readonly springI?: number | undefined;
  readonly springJ?: number | undefined;
}

export interface PlaneSupport {
  readonly node: number;
  readonly dof: 'x' | 'y' | 'r';
  /** contact pushes the node towards `direction` once it has moved `gap` against it */
  readonly kind: 'fixed' | 'spring' | 'contact';
  /** N/m or N·m/rad, for a spring or contact */
  readonly stiffness?: number | undefined;
  /** where the support stands, as displacement from the drawn shape (m or rad); default 0 */
  readonly value?: number | undefined;
  readonly gap?: number | undefined;
  readonly direction?: 1 | -1 | undefined;
}

export interface PlaneModel {
  readonly nodes: readonly PlaneNode[];
  readonly elements: readonly PlaneElement[];
  readonly supports: readonly PlaneSupport[];
}

export interface PlaneLoads {
  readonly nodal?:
    | readonly {
        node: number;
        fx: number;
        fy: number;
        m?: number | undefined;
      }[]
    | undefined;
  /** N per m of unstressed length, direction fixed in space */
  readonly line?: readonly { element: number; wx: number; wy: number }[] | undefined;
  /**
   * N per m of member, normal to it: positive pushes to the LEFT of the way from i to j (outwards and up
   * on an arch described from left to right). `follower`: stays normal as the member turns, on its true
   * length; otherwise direction and amount are those of the drawn chord.
   */
  readonly pressure?: readonly { element: number; p: number; follower?: boolean | undefined }[] | undefined;
}

/** A shape in equilibrium (or a guess of one), from which another load case can start. */
export interface PlaneState {
  /** dx, dy, dr of every node, from the drawn shape */
  readonly displacements: Float64Array;
  /** rotations of member ends behind a hinge or rotational spring, in the order the solver numbers them */
  readonly endRotations: Float64Array;
  /** the loads it stands under */
  readonly loads: PlaneLoads;
}

export interface PlaneElementForces {
  /** mean axial force, tension positive, N; with its values at both ends */
  readonly axial: number;
  readonly axialI: number;
  readonly axialJ: number;
  /** bending moment EI·(curvature - rest curvature), N·m: positive bends the member to turn left from i to j
   *  (sagging in a member drawn from left to right) */
  readonly momentI: number;
  readonly momentJ: number;
  readonly momentMid: number;
  /** force across the chord on the part before the section, N: dM/ds */
  readonly shearI: number;
  readonly shearJ: number;
  /** tension-only member without tension */
  readonly slack: boolean;
}

export type PlaneStatus = 'converged' | 'unstable' | 'diverged' | 'mechanism' | 'invalid' | 'cancelled';

export interface PlaneResult {
  readonly status: PlaneStatus;
  /** a sentence when the status is not 'converged' */
  readonly reason?: string;
  /** part of the load reached in stable equilibrium, 0 to 1 */
  readonly loadFactor: number;
  readonly iterations: number;
  /** negative pivots of the tangent at the reached state (0 when stable) */
  readonly negativePivots: number;
  readonly state: PlaneState;
  readonly displacements: readonly { dx: number; dy: number; dr: number }[];
  readonly elementForces: readonly PlaneElementForces[];
  /** force (N or N·m) of each support on the frame, in the order of `model.supports` */
  readonly reactions: readonly number[];
  /** largest unbalanced force left over the size of the forces at work */
  readonly residual: number;
}

export interface PlaneOptions {
  /** state to start from; its own loads are taken off while the new ones go on */
  readonly start?: PlaneState | undefined;
  /**
   * Least number of load steps; more are taken where the path needs them, one where the frame moves nearly as its
   * first tangent says. Default 1
   */
  readonly steps?: number | undefined;
  /** one linear solution about the starting state */
  readonly linear?: boolean | undefined;
  /** total Newton iterations allowed, default 400 */
  readonly maxIterations?: number | undefined;
  readonly cancelled?: (() => boolean) | undefined;
}

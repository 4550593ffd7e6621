/** Second script of the drawing sheet's page: draws the house in space. Loaded only when it is looked at. */
import type { Scene3d } from '@tautline/drawing';
import {
  AmbientLight,
  DirectionalLight,
  Group,
  PerspectiveCamera,
  Raycaster,
  Scene,
  Vector2,
  Vector3,
  WebGLRenderer,
} from 'three';
import { type Colours, coloursOf } from './colours.ts';
import type { CreateSpace, PartState, SpaceView } from './contract.ts';
import { gridOf } from './grid.ts';
import { colourMembers, type Members, membersOf, partOfHit } from './members.ts';
import { orbit } from './orbit.ts';
import { colourSkins, type Skins, skinsOf } from './skins.ts';

const create: CreateSpace = (host, look, actions) => {
  let renderer: WebGLRenderer;
  try {
    renderer = new WebGLRenderer({ antialias: true, alpha: true });
  } catch {
    return undefined;
  }
  const canvas = renderer.domElement;
  host.append(canvas);
  const space = new Scene();
  const camera = new PerspectiveCamera(35, 1, 0.05, 1000);
  const sun = new DirectionalLight('#ffffff', 1.6);
  space.add(new AmbientLight('#ffffff', 1.9), sun);

  let shown: Scene3d | undefined;
  let house: Group | undefined;
  let members: Members | undefined;
  let skins: Skins | undefined;
  let grid = 1;
  let centre = new Vector3();
  let size = 1;
  let state: (part: string) => PartState = () => 'plain';
  let asked = false;
  let at = look;

  const render = (): void => {
    asked = false;
    const { clientWidth: wide, clientHeight: high } = host;
    if (wide === 0 || high === 0) {
      return;
    }
    renderer.setPixelRatio(Math.min(2, window.devicePixelRatio));
    renderer.setSize(wide, high);
    camera.aspect = wide / high;
    camera.updateProjectionMatrix();
    const far = at.away * size * Math.max(1, 1.3 / camera.aspect);
    camera.position.set(
      centre.x + far * Math.cos(at.tilt) * Math.sin(at.turn),
      centre.y + far * Math.sin(at.tilt),
      centre.z + far * Math.cos(at.tilt) * Math.cos(at.turn),
    );
    camera.lookAt(centre);
    sun.position.copy(camera.position).add(new Vector3(0, size, 0));
    renderer.render(space, camera);
  };
  /** At most once a frame, and only when something has changed. */
  const refresh = (): void => {
    if (!asked) {
      asked = true;
      requestAnimationFrame(render);
    }
  };
  const colour = (colours: Colours): void => {
    if (members !== undefined) {
      colourMembers(members, colours, state);
    }
    if (skins !== undefined) {
      colourSkins(skins, colours, state);
    }
    refresh();
  };

  const ray = new Raycaster();
  /** Thin pipes are hard to hit: looks a few pixels around the pointer, members before skins. */
  const under = ({ clientX, clientY }: MouseEvent): string | undefined => {
    const box = canvas.getBoundingClientRect();
    const near = [
      [0, 0],
      ...[3, 6].flatMap((d) => [
        [d, 0],
        [-d, 0],
        [0, d],
        [0, -d],
      ]),
    ] as const;
    for (const wanted of [members?.meshes ?? [], skins?.meshes ?? []]) {
      for (const [dx = 0, dy = 0] of near) {
        const x = ((clientX + dx - box.left) / box.width) * 2 - 1;
        const y = 1 - ((clientY + dy - box.top) / box.height) * 2;
        ray.setFromCamera(new Vector2(x, y), camera);
        const [hit] = ray.intersectObjects([...wanted], false);
        if (hit !== undefined) {
          return partOfHit(hit);
        }
      }
    }
    return undefined;
  };
  orbit(canvas, look, {
    look: (now) => {
      at = now;
      refresh();
    },
    rest: actions.looked,
    click: (event) => actions.pick(under(event)),
    hover: (event) => actions.point(event === undefined ? undefined : under(event)),
  });
  new ResizeObserver(refresh).observe(host);

  const view: SpaceView = {
    show(scene, step) {
      if (scene === shown && step === grid) {
        return;
      }
      shown = scene;
      grid = step;
      if (house !== undefined) {
        space.remove(house);
        members?.dispose();
        skins?.dispose();
      }
      const colours = coloursOf(host);
      members = membersOf(scene.segments);
      skins = skinsOf(scene.surfaces);
      house = new Group();
      house.add(...members.meshes, ...skins.meshes, ...skins.edges, gridOf(scene, step, colours));
      space.add(house);
      const low = new Vector3(...scene.low).setY(0);
      const high = new Vector3(...scene.high);
      centre = low.clone().add(high).multiplyScalar(0.5);
      size = low.distanceTo(high);
      colour(colours);
    },
    mark(stateOf) {
      state = stateOf;
      colour(coloursOf(host));
    },
    recolour() {
      const scene = shown;
      shown = undefined;
      if (scene !== undefined) {
        view.show(scene, grid);
      }
    },
  };
  return view;
};

globalThis.tautlineSpace = create;

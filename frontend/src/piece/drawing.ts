/** The piece as two buffers: every face, every drawn edge. */

import {
  BufferAttribute,
  BufferGeometry,
  Color,
  DataTexture,
  DoubleSide,
  FloatType,
  GLSL3,
  InstancedBufferAttribute,
  InstancedBufferGeometry,
  Mesh,
  NearestFilter,
  RawShaderMaterial,
  RGBAFormat,
  Scene,
  Vector2,
} from "three";
import type { Solid } from "./model";
import * as shaders from "./shaders";
import { dot, less, type Stand, type Vec } from "./stand";

const YEAR = 6.5; // [mm] between two lines of the grain: wide enough to be drawn, not the wood's own

export interface Wooden extends Stand {
  wood: string;
  cut: string;
  hardware: boolean;
}

export class Drawing {
  readonly scene = new Scene();
  names: string[] = [];
  lines = 0;
  #states = states(0);
  readonly #faces: RawShaderMaterial;
  readonly #edges: RawShaderMaterial;

  /** Shaders are made once: that takes many times as long as exchanging what they draw. */
  constructor() {
    this.#faces = material(shaders.FACES_VERTEX, shaders.FACES_FRAGMENT);
    this.#faces.polygonOffset = true;
    this.#faces.polygonOffsetFactor = 2; // a line is as wide as two points, half of it over a slanting face
    this.#faces.polygonOffsetUnits = 4;
    this.#edges = material(shaders.LINES_VERTEX, shaders.LINES_FRAGMENT);
    this.#edges.side = DoubleSide;
  }

  /** Draw this piece from now on. */
  exchange(solids: readonly Solid[], stands: ReadonlyMap<string, Wooden>): void {
    this.#clear();
    this.names = solids.map((each) => each.name);
    this.#states = states(solids.length);
    for (const each of [this.#faces, this.#edges]) {
      const uniform = each.uniforms["states"];
      if (uniform) uniform.value = this.#states;
    }
    const edges = lines(solids);
    this.lines = edges.instanceCount;
    for (const mesh of [
      new Mesh(faces(solids, stands), this.#faces),
      new Mesh(edges, this.#edges),
    ]) {
      mesh.frustumCulled = false; // its parts are moved where three does not see it
      this.scene.add(mesh);
    }
  }

  coloured(ground: string, ink: string, depth: number): void {
    for (const each of [this.#faces, this.#edges]) {
      (each.uniforms["ground"]?.value as Color).set(ground).convertLinearToSRGB();
      (each.uniforms["ink"]?.value as Color).set(ink).convertLinearToSRGB();
    }
    const uniform = this.#faces.uniforms["depth"];
    if (uniform) uniform.value = depth;
  }

  screen(wide: number, tall: number, thick: number): void {
    (this.#edges.uniforms["screen"]?.value as Vector2).set(wide, tall);
    const uniform = this.#edges.uniforms["thick"];
    if (uniform) uniform.value = thick;
  }

  /** Pulled so far [m, as the room counts], and shown in that state. */
  show(part: number, at: { x: number; y: number; z: number }, state: number): void {
    (this.#states.image.data as Float32Array).set([at.x, at.y, at.z, state], part * 4);
    this.#states.needsUpdate = true;
  }

  dispose(): void {
    this.#clear();
    this.#faces.dispose();
    this.#edges.dispose();
  }

  #clear(): void {
    this.#states.dispose();
    for (const mesh of this.scene.children as Mesh[]) mesh.geometry.dispose();
    this.scene.clear();
  }
}

/** A texel for each part: how far it is pulled, and how it is shown. */
function states(parts: number): DataTexture {
  const wide = Math.max(1, parts);
  const made = new DataTexture(new Float32Array(wide * 4), wide, 1, RGBAFormat, FloatType);
  made.minFilter = made.magFilter = NearestFilter;
  return made;
}

function material(vertex: string, fragment: string): RawShaderMaterial {
  return new RawShaderMaterial({
    glslVersion: GLSL3,
    vertexShader: vertex,
    fragmentShader: fragment,
    uniforms: {
      states: { value: null },
      ground: { value: new Color() },
      ink: { value: new Color() },
      depth: { value: 0.5 },
      screen: { value: new Vector2(1, 1) },
      thick: { value: 1 },
    },
  });
}

function faces(solids: readonly Solid[], stands: ReadonlyMap<string, Wooden>): BufferGeometry {
  const count = sum(solids, (each) => each.positions.length / 3);
  const position = new Float32Array(count * 3);
  const normal = new Float32Array(count * 3);
  const wood = new Float32Array(count * 3);
  const rings = new Float32Array(count * 4);
  const colour = new Float32Array(count * 3);
  const part = new Float32Array(count);
  const index = new Uint32Array(sum(solids, (each) => each.triangles.length));
  let first = 0;
  let next = 0;
  solids.forEach((solid, number) => {
    const stand = stands.get(solid.name);
    const own = stand ? pith(stand) : [0, 0, 0, 0];
    const tint = new Color(...solid.colour).convertLinearToSRGB().toArray();
    position.set(solid.positions, first * 3);
    normal.set(solid.normals, first * 3);
    const corners = solid.positions.length / 3;
    for (let i = 0; i < corners; i += 1) {
      if (stand) wood.set(inWood(stand, solid.positions, i), (first + i) * 3);
      rings.set(own, (first + i) * 4);
      colour.set(tint, (first + i) * 3);
      part[first + i] = number;
    }
    for (const corner of solid.triangles) index[next++] = first + corner;
    first += corners;
  });
  const made = new BufferGeometry();
  const give = (name: string, values: Float32Array, wide: number) =>
    made.setAttribute(name, new BufferAttribute(values, wide));
  give("position", position, 3);
  give("normal", normal, 3);
  give("wood", wood, 3);
  give("rings", rings, 4);
  give("colour", colour, 3);
  give("part", part, 1);
  made.setIndex(new BufferAttribute(index, 1));
  return made;
}

function lines(solids: readonly Solid[]): InstancedBufferGeometry {
  const count = sum(solids, (each) => each.edges.length / 2);
  const from = new Float32Array(count * 3);
  const to = new Float32Array(count * 3);
  const part = new Float32Array(count);
  let next = 0;
  solids.forEach(({ edges, edgePoints }, number) => {
    for (let i = 0; i < edges.length; i += 2, next += 1) {
      const a = (edges[i] ?? 0) * 3;
      const b = (edges[i + 1] ?? 0) * 3;
      from.set(edgePoints.subarray(a, a + 3), next * 3);
      to.set(edgePoints.subarray(b, b + 3), next * 3);
      part[next] = number;
    }
  });
  const made = new InstancedBufferGeometry();
  const ends = new Float32Array([0, -1, 1, -1, 1, 1, 0, 1]);
  made.setAttribute("position", new BufferAttribute(ends, 2));
  made.setIndex([0, 1, 2, 0, 2, 3]);
  made.setAttribute("from", new InstancedBufferAttribute(from, 3));
  made.setAttribute("to", new InstancedBufferAttribute(to, 3));
  made.setAttribute("part", new InstancedBufferAttribute(part, 1));
  made.instanceCount = count;
  return made;
}

function sum(solids: readonly Solid[], of: (solid: Solid) => number): number {
  return solids.reduce((total, each) => total + of(each), 0);
}

/** A corner in the part's own frame: along, across, into. [mm] */
function inWood({ ways, at }: Stand, points: Float32Array, i: number): Vec {
  const x = (points[i * 3] ?? 0) * 1000;
  const y = (points[i * 3 + 1] ?? 0) * 1000;
  const z = (points[i * 3 + 2] ?? 0) * 1000;
  const off = less([x, -z, y], at);
  return [dot(off, ways[0]), dot(off, ways[1]), dot(off, ways[2])];
}

/** Where the tree's heart lies beside this part: across, into, a number of its own, a year. */
function pith({ name, size, cut, hardware }: Wooden): [number, number, number, number] {
  if (hardware) return [0, 0, 0, 0];
  const own = mixed(name);
  const [, wide, thick] = size;
  if (cut === "quarter") return [-120 - 90 * own, thick / 2, own * 6, YEAR];
  if (cut === "rift") return [-70 - 40 * own, thick + 80 + 50 * own, own * 6, YEAR];
  return [wide * (0.3 + 0.4 * own), thick + 28 + 60 * own, own * 6, YEAR];
}

/** A number from 0 to 1 that is the same for a name each time. */
function mixed(name: string): number {
  let hash = 2166136261;
  for (const sign of name) hash = Math.imul(hash ^ (sign.codePointAt(0) ?? 0), 16777619);
  return ((hash >>> 8) % 1009) / 1009;
}

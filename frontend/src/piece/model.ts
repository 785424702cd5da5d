/**
 * Reads the piece from binary glTF 2.0: a node for each part, its faces and its drawn edges.
 *
 * Only what our own file holds is read: one buffer, nodes that stand untransformed, positions
 * and normals as 32-bit floats, indices as 32-bit whole numbers. Anything else is refused.
 */

export interface Solid {
  name: string;
  colour: [number, number, number];
  positions: Float32Array;
  normals: Float32Array;
  triangles: Uint32Array;
  edgePoints: Float32Array;
  edges: Uint32Array;
}

interface Primitive {
  attributes: { POSITION: number; NORMAL?: number };
  indices: number;
  material: number;
  mode: number;
}

interface Scene {
  nodes?: { name: string; mesh: number; matrix?: number[]; translation?: number[] }[];
  meshes?: { primitives: Primitive[] }[];
  materials?: { pbrMetallicRoughness: { baseColorFactor: number[] } }[];
  accessors?: { bufferView: number; byteOffset?: number; count: number; componentType: number }[];
  bufferViews?: { byteOffset?: number; byteLength: number }[];
}

const MAGIC = 0x46546c67;
const JSON_CHUNK = 0x4e4f534a;
const TRIANGLES = 4;
const LINES = 1;
const FLOAT = 5126;
const UNSIGNED = 5125;

export function solids(file: ArrayBuffer): Solid[] {
  const head = new DataView(file);
  if (file.byteLength < 20 || head.getUint32(0, true) !== MAGIC) throw new Error("no binary glTF");
  const long = head.getUint32(12, true);
  if (head.getUint32(16, true) !== JSON_CHUNK) throw new Error("glTF without its description");
  const text = new TextDecoder().decode(new Uint8Array(file, 20, long));
  const scene = JSON.parse(text) as Scene;
  const binary = 20 + long + 8;
  return (scene.nodes ?? []).map((node) => solid(node, scene, file, binary));
}

type Node = NonNullable<Scene["nodes"]>[number];

function solid(node: Node, scene: Scene, file: ArrayBuffer, binary: number): Solid {
  if (node.matrix || node.translation) throw new Error(`${node.name} is moved by its node`);
  const primitives = scene.meshes?.[node.mesh]?.primitives ?? [];
  const faces = primitives.find((each) => each.mode === TRIANGLES);
  if (faces?.attributes.NORMAL === undefined) throw new Error(`${node.name} has no faces`);
  const drawn = primitives.find((each) => each.mode === LINES);
  const paint = scene.materials?.[faces.material]?.pbrMetallicRoughness.baseColorFactor;
  const floats = (at: number) => new Float32Array(file, ...stretch(scene, at, binary, FLOAT, 3));
  const whole = (at: number) => new Uint32Array(file, ...stretch(scene, at, binary, UNSIGNED, 1));
  return {
    name: node.name,
    colour: [paint?.[0] ?? 0.5, paint?.[1] ?? 0.5, paint?.[2] ?? 0.5],
    positions: floats(faces.attributes.POSITION),
    normals: floats(faces.attributes.NORMAL),
    triangles: whole(faces.indices),
    edgePoints: drawn ? floats(drawn.attributes.POSITION) : new Float32Array(),
    edges: drawn ? whole(drawn.indices) : new Uint32Array(),
  };
}

function stretch(
  scene: Scene,
  at: number,
  binary: number,
  type: number,
  wide: number,
): [number, number] {
  const accessor = scene.accessors?.[at];
  const view = accessor && scene.bufferViews?.[accessor.bufferView];
  if (!view || accessor.componentType !== type) throw new Error("numbers of another kind");
  return [binary + (view.byteOffset ?? 0) + (accessor.byteOffset ?? 0), accessor.count * wide];
}

/** Which part lies under a point of the screen. */

import { BufferAttribute, BufferGeometry, Mesh, Raycaster, Vector2, type Vector3 } from "three";
import type { Eye } from "./eye";
import type { Solid } from "./model";

export class Picking {
  readonly #bodies: Mesh[];
  readonly #ray = new Raycaster();

  constructor(solids: readonly Solid[]) {
    this.#bodies = solids.map((solid) => {
      const geometry = new BufferGeometry();
      geometry.setAttribute("position", new BufferAttribute(solid.positions, 3));
      geometry.setIndex(new BufferAttribute(solid.triangles, 1));
      const body = new Mesh(geometry);
      body.name = solid.name;
      return body;
    });
  }

  moved(part: number, to: Vector3, seen: boolean): void {
    const body = this.#bodies[part];
    if (!body) return;
    body.position.copy(to);
    body.updateMatrixWorld(true);
    body.visible = seen;
  }

  /** From -1 to 1, right and up. */
  under(right: number, up: number, eye: Eye): string | null {
    this.#ray.setFromCamera(new Vector2(right, up), eye.placed());
    const seen = this.#bodies.filter((each) => each.visible);
    return this.#ray.intersectObjects(seen, false)[0]?.object.name ?? null;
  }
}

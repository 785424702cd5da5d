/** From where the piece is looked at: always square on paper, never in perspective. */

import { OrthographicCamera, Vector3 } from "three";
import type { Vec } from "./stand";

/** Turn about the upright and tilt, by the words a maker uses. [rad] */
export const VIEWS: Record<string, { turn: number; tilt: number }> = {
  cornerwise: { turn: 0.62, tilt: 0.42 },
  front: { turn: 0, tilt: 0 },
  "left end": { turn: -Math.PI / 2, tilt: 0 },
  back: { turn: Math.PI, tilt: 0 },
  "right end": { turn: Math.PI / 2, tilt: 0 },
  above: { turn: 0, tilt: Math.PI / 2 },
  below: { turn: 0, tilt: -Math.PI / 2 },
};

const ROOM = 1.12; // [-] of what is looked at, left round it

export class Eye {
  readonly camera = new OrthographicCamera();
  turn = VIEWS["cornerwise"]?.turn ?? 0;
  tilt = VIEWS["cornerwise"]?.tilt ?? 0;
  /** Half of what is seen from top to bottom, in the model's metres. */
  half = 1;
  readonly at = new Vector3();
  #wide = 1;
  #tall = 1;

  screen(wide: number, tall: number): void {
    this.#wide = Math.max(1, wide);
    this.#tall = Math.max(1, tall);
  }

  from(word: string): void {
    const view = VIEWS[word];
    if (view) {
      this.turn = view.turn;
      this.tilt = view.tilt;
    }
  }

  turned(turn: number, tilt: number): void {
    this.turn += turn;
    this.tilt = Math.min(Math.PI / 2, Math.max(-Math.PI / 2, this.tilt + tilt));
  }

  nearer(by: number): void {
    this.half = Math.min(20, Math.max(0.005, this.half / by));
  }

  /** By so many points of the screen. */
  shifted(right: number, down: number): void {
    const scale = (2 * this.half) / this.#tall;
    const { x, y } = this.#axes();
    this.at.addScaledVector(x, -right * scale).addScaledVector(y, down * scale);
  }

  /** All of these corners in sight. */
  hold(low: Vector3, high: Vector3): void {
    const { x, y } = this.#axes();
    const middle = low.clone().add(high).multiplyScalar(0.5);
    const reach = high.clone().sub(low).multiplyScalar(0.5);
    const along = (axis: Vector3) =>
      Math.abs(axis.x) * reach.x + Math.abs(axis.y) * reach.y + Math.abs(axis.z) * reach.z;
    this.half = Math.max(along(y), (along(x) * this.#tall) / this.#wide, 0.004) * ROOM;
    this.at.copy(middle);
  }

  placed(): OrthographicCamera {
    const camera = this.camera;
    const { x, y, z } = this.#axes();
    const side = (this.half * this.#wide) / this.#tall;
    camera.left = -side;
    camera.right = side;
    camera.top = this.half;
    camera.bottom = -this.half;
    camera.near = 0;
    camera.far = 20;
    camera.matrixAutoUpdate = false;
    camera.matrix.makeBasis(x, y, z).setPosition(this.at.clone().addScaledVector(z, 10));
    camera.matrixWorldNeedsUpdate = true;
    camera.updateMatrixWorld(true);
    camera.updateProjectionMatrix();
    return camera;
  }

  #axes(): { x: Vector3; y: Vector3; z: Vector3 } {
    const [ct, st] = [Math.cos(this.turn), Math.sin(this.turn)];
    const [cv, sv] = [Math.cos(this.tilt), Math.sin(this.tilt)];
    const x = new Vector3(ct, 0, -st);
    const z = new Vector3(st * cv, sv, ct * cv);
    return { x, y: z.clone().cross(x), z };
  }
}

/** Wide, deep, tall in mm as the model's right, up and towards us in metres. */
export function inRoom([wide, deep, tall]: Vec): Vector3 {
  return new Vector3(wide / 1000, tall / 1000, -deep / 1000);
}

/** How parts stand: boxes and directions in the piece (wide, deep, tall) from their placements. */

import type { Part } from "../document";

export type Vec = readonly [number, number, number];

export interface Box {
  low: Vec;
  high: Vec;
}

const WAYS: Record<string, Vec> = {
  right: [1, 0, 0],
  left: [-1, 0, 0],
  back: [0, 1, 0],
  front: [0, -1, 0],
  up: [0, 0, 1],
  down: [0, 0, -1],
};

export function wayOf(word: string): Vec {
  const found = WAYS[word];
  if (!found) throw new Error(`no way is called ${word}`);
  return found;
}

/** Part's own axes in the piece, its origin and its sizes. [mm] */
export interface Stand {
  name: string;
  ways: [Vec, Vec, Vec];
  at: Vec;
  size: Vec;
}

export function stand(part: Part): Stand {
  const { along, across, into, at } = part.placement;
  return {
    name: part.name,
    ways: [wayOf(along), wayOf(across), wayOf(into)],
    at: [at[0]?.value_mm ?? 0, at[1]?.value_mm ?? 0, at[2]?.value_mm ?? 0],
    size: [part.length.value_mm, part.width.value_mm, part.thickness.value_mm],
  };
}

export function boxOf({ ways, at, size }: Stand): Box {
  const low: [number, number, number] = [...at];
  const high: [number, number, number] = [...at];
  ways.forEach((way, axis) => {
    way.forEach((share, k) => {
      const reach = share * (size[axis] ?? 0);
      if (reach < 0) low[k] = (low[k] ?? 0) + reach;
      else high[k] = (high[k] ?? 0) + reach;
    });
  });
  return { low, high };
}

export function around(boxes: readonly Box[]): Box {
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (const box of boxes) {
    for (const k of [0, 1, 2] as const) {
      low[k] = Math.min(low[k], box.low[k]);
      high[k] = Math.max(high[k], box.high[k]);
    }
  }
  return { low, high };
}

export function middle({ low, high }: Box): Vec {
  return [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2];
}

export function dot(a: Vec, b: Vec): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

export function scaled(a: Vec, by: number): Vec {
  return [a[0] * by, a[1] * by, a[2] * by];
}

export function plus(a: Vec, b: Vec): Vec {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
}

export function less(a: Vec, b: Vec): Vec {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

/** The shapes of cuts from their drawn measures, in the part's own frame. [mm] */

import { AXES, type Cut, type Part } from "../document";

export type Point3 = [number, number, number];
export type Point2 = [number, number];

export interface Away {
  cut: Cut;
  low: Point3;
  high: Point3;
  corners: Point3[];
  /** A bore: its axis, centre and radius. */
  bore: { axis: number; centre: Point3; radius: number } | null;
  /** Some figure of it is taken from the mate. */
  fromMate: boolean;
}

const FAR = new Set(["far end", "back edge", "back face"]);

export function sizesOf(part: Part): Point3 {
  return [part.length.value_mm, part.width.value_mm, part.thickness.value_mm];
}

export function away(part: Part, mates: ReadonlySet<string>): Away[] {
  const size = sizesOf(part);
  return part.cuts.map((cut) => {
    const local = corners(cut, size);
    const turned = local.map((point) => fromCorner(point, cut, size));
    const [low, high] = ends(turned);
    const fromMate = cut.measures.some((each) => mates.has(each.dimension ?? ""));
    return { cut, low, high, corners: turned, bore: bore(cut, size), fromMate };
  });
}

function fromCorner(point: Point3, cut: Cut, size: Point3): Point3 {
  return point.map((value, axis) =>
    FAR.has(cut.corner[axis] ?? "") ? (size[axis] ?? 0) - value : value,
  ) as Point3;
}

function valued(cut: Cut, word: string): number | undefined {
  return cut.measures.find((each) => each.word === word)?.value.value_mm;
}

/** From where to where along one axis; an open end lies in the surface. */
function span(cut: Cut, axis: number, size: Point3): [number, number] {
  const word = AXES[axis] ?? "along";
  const start = cut.open_start[axis] ? 0 : (valued(cut, `${word} start`) ?? 0);
  const long = valued(cut, `${word} size`);
  const full = size[axis] ?? 0;
  return [start, cut.open_stop[axis] || long === undefined ? full : start + long];
}

function corners(cut: Cut, size: Point3): Point3[] {
  if (cut.form === "box" || cut.sweep === null) {
    const [a, b, c] = [span(cut, 0, size), span(cut, 1, size), span(cut, 2, size)];
    return a.flatMap((x) => b.flatMap((y) => c.map((z): Point3 => [x, y, z])));
  }
  const sweep = AXES.indexOf(cut.sweep);
  const ends = span(cut, sweep, size);
  if (cut.form === "taper") {
    return [
      ...lifted(points(cut, sweep, "first point"), sweep, ends[0]),
      ...lifted(points(cut, sweep, "last point"), sweep, ends[1]),
    ];
  }
  const flat = cut.form === "bore" ? round(cut, sweep) : points(cut, sweep, "point");
  return ends.flatMap((at) => lifted(flat, sweep, at));
}

function others(axis: number): [number, number] {
  return axis === 0 ? [1, 2] : axis === 1 ? [0, 2] : [0, 1];
}

function points(cut: Cut, sweep: number, word: string): Point2[] {
  const [u, v] = others(sweep);
  const found: Point2[] = [];
  for (let i = 0; ; i += 1) {
    const p = valued(cut, `${word} ${i} ${AXES[u]}`);
    const q = valued(cut, `${word} ${i} ${AXES[v]}`);
    if (p === undefined || q === undefined) return found;
    found.push([p, q]);
  }
}

function round(cut: Cut, sweep: number): Point2[] {
  const [u, v] = others(sweep);
  const centre = [valued(cut, `centre ${AXES[u]}`) ?? 0, valued(cut, `centre ${AXES[v]}`) ?? 0];
  const radius = (valued(cut, "diameter") ?? 0) / 2;
  return [0, 1, 2, 3, 4, 5, 6, 7].map((eighth) => {
    const angle = (eighth * Math.PI) / 4;
    const [x = 0, y = 0] = centre;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });
}

function bore(cut: Cut, size: Point3): Away["bore"] {
  if (cut.form !== "bore" || cut.sweep === null) return null;
  const axis = AXES.indexOf(cut.sweep);
  const [u, v] = others(axis);
  const local: Point3 = [0, 0, 0];
  local[u] = valued(cut, `centre ${AXES[u]}`) ?? 0;
  local[v] = valued(cut, `centre ${AXES[v]}`) ?? 0;
  const radius = (valued(cut, "diameter") ?? 0) / 2;
  return { axis, centre: fromCorner(local, cut, size), radius };
}

function lifted(flat: readonly Point2[], axis: number, at: number): Point3[] {
  const [u, v] = others(axis);
  return flat.map(([p, q]) => {
    const point: Point3 = [0, 0, 0];
    point[axis] = at;
    point[u] = p;
    point[v] = q;
    return point;
  });
}

function ends(points: readonly Point3[]): [Point3, Point3] {
  const low: Point3 = [Infinity, Infinity, Infinity];
  const high: Point3 = [-Infinity, -Infinity, -Infinity];
  for (const point of points) {
    for (const axis of [0, 1, 2] as const) {
      low[axis] = Math.min(low[axis], point[axis]);
      high[axis] = Math.max(high[axis], point[axis]);
    }
  }
  return [low, high];
}

/** The outline of the cut as seen along the third axis: the hull of its corners. */
export function outline(points: readonly Point3[], across: number, up: number): Point2[] {
  const flat = points.map((point): Point2 => [point[across] ?? 0, point[up] ?? 0]);
  flat.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (list: Point2[]) => {
    const kept: Point2[] = [];
    for (const point of list) {
      while (kept.length > 1 && turn(kept[kept.length - 2], kept[kept.length - 1], point) <= 1e-9) {
        kept.pop();
      }
      kept.push(point);
    }
    return kept.slice(0, -1);
  };
  return [...half(flat), ...half([...flat].reverse())];
}

function turn(a: Point2 | undefined, b: Point2 | undefined, c: Point2): number {
  if (!a || !b) return 1;
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}

/** Where along the part cuts begin and end: the marks squared across its strip. */
export function knifeLines(part: Part): number[] {
  const [long] = sizesOf(part);
  const found = new Set<number>();
  for (const each of away(part, new Set())) {
    for (const at of [each.low[0], each.high[0]]) {
      if (at > 0.05 && at < long - 0.05) found.add(Math.round(at * 100) / 100);
    }
  }
  return [...found].sort((a, b) => a - b);
}

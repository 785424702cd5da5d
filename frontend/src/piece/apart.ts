/**
 * How the piece comes apart, step by step.
 *
 * For each of the six ways a part is held by another if their joint does not open that way, or
 * if the other stands in its path. What must go together is what is reached by following who
 * holds whom; the smallest such group that is not everything comes away. Each group that has come
 * away comes apart in turn. Boxes stand for parts, so what is shown is a likely way and no proof.
 *
 * Reference: R. H. Wilson and J.-C. Latombe, "Geometric reasoning about mechanical assembly",
 * Artificial Intelligence 71 (1994): directional blocking graphs.
 */

import type { Joint, Part } from "../document";
import { around, type Box, boxOf, dot, less, middle, plus, scaled, stand, type Vec } from "./stand";

const SIX: readonly Vec[] = [
  [0, -1, 0], // a front comes off first
  [0, 0, 1],
  [0, 1, 0],
  [-1, 0, 0],
  [1, 0, 0],
  [0, 0, -1],
];
const TOUCH = 0.3; // [mm] boxes that overlap by no more only touch
const FIRST = 0.3; // [-] of the piece's largest size: how far the first step goes
const LATER = 0.62; // [-] each next step goes that much of the one before

export interface Leaving {
  names: string[];
  way: Vec;
}

export interface Apart {
  /** What comes away in each step. */
  steps: Leaving[][];
  /** Where a part is after so many steps. [mm] */
  moved(name: string, steps: number): Vec;
}

/** `first` is how far the first step goes [mm]; left out, it follows from the piece's size. */
export function apart(parts: readonly Part[], joints: readonly Joint[], first?: number): Apart {
  const held = holding(parts, joints);
  const whole = around([...held.boxes.values()]);
  const far = first ?? Math.max(...less(whole.high, whole.low)) * FIRST;
  const steps: Leaving[][] = [];
  const paths = new Map<string, Vec[]>(parts.map((part) => [part.name, []]));
  let groups: string[][] = [parts.map((part) => part.name)];
  while (groups.some((group) => group.length > 1)) {
    const reach = far * LATER ** steps.length;
    const split = groups.map((group) => parted(group, held));
    const leaving = split.flatMap((each) => each.away);
    if (leaving.length === 0) break;
    for (const each of leaving) {
      for (const name of each.names) paths.get(name)?.push(scaled(each.way, reach));
    }
    for (const path of paths.values()) while (path.length <= steps.length) path.push([0, 0, 0]);
    steps.push(leaving);
    groups = split.flatMap((each) => [each.rest, ...each.away.map((gone) => gone.names)]);
  }
  const moved = (name: string, count: number): Vec =>
    (paths.get(name) ?? []).slice(0, count).reduce<Vec>(plus, [0, 0, 0]);
  return { steps, moved };
}

interface Holding {
  boxes: Map<string, Box>;
  /** Whether b holds a back from going that way. */
  holds(a: string, b: string, way: Vec): boolean;
  /** Whether leaving would tear what opens as one out of a group that holds more than it. */
  torn(names: readonly string[], group: readonly string[]): boolean;
}

function holding(parts: readonly Part[], joints: readonly Joint[]): Holding {
  const boxes = new Map(parts.map((part) => [part.name, boxOf(stand(part))]));
  const open = opening(joints, boxes);
  const assemblies = new Map(parts.map((part) => [part.name, part.moves_with]));
  const holds = (a: string, b: string, way: Vec): boolean => {
    const one = boxes.get(a);
    const other = boxes.get(b);
    if (!one || !other) return false;
    const ways = open.get(pair(a, b));
    if (ways) return !ways.some((each) => dot(each, way) > 0.99);
    // what opens or slides as one is not caught in anything but its own joints
    if (assemblies.get(a) !== assemblies.get(b) && overlaps(one, other)) return false;
    return inPath(one, other, way);
  };
  const torn = (names: readonly string[], group: readonly string[]): boolean => {
    const going = new Set(names.map((name) => assemblies.get(name)));
    if (new Set(group.map((name) => assemblies.get(name))).size === 1) return false;
    const left = group.filter((name) => !names.includes(name));
    return left.some((name) => assemblies.get(name) !== "" && going.has(assemblies.get(name)));
  };
  return { boxes, holds, torn };
}

const pair = (a: string, b: string): string => `${a}\n${b}`;

/** For two jointed parts the ways the first may leave the other; absent if no joint says. */
function opening(joints: readonly Joint[], boxes: Map<string, Box>): Map<string, Vec[]> {
  const open = new Map<string, Vec[]>();
  for (const joint of joints) {
    const straight = joint.moves.filter((each) => each.motion === "straight");
    const ways = straight.map((each) => unit(each.way.map(number)));
    if (ways.length === 0) continue;
    for (const [a, b] of pairsOf(joint)) {
      const found = ways.map((way) => towards(way, boxes.get(a), boxes.get(b)));
      narrow(open, pair(a, b), found);
      narrow(open, pair(b, a), found.map((way) => scaled(way, -1)));
    }
  }
  return open;
}

function narrow(open: Map<string, Vec[]>, key: string, ways: Vec[]): void {
  const known = open.get(key);
  const both = known?.filter((one) => ways.some((other) => dot(one, other) > 0.99));
  open.set(key, both ?? ways);
}

function pairsOf(joint: Joint): [string, string][] {
  const touching = joint.contacts.map(({ between }) => [between[0] ?? "", between[1] ?? ""]);
  const found = touching.length > 0 ? touching : across(joint.parts);
  return found.map(([a, b]) => [a ?? "", b ?? ""]);
}

function across(names: readonly string[]): string[][] {
  return names.flatMap((a, i) => names.slice(i + 1).map((b) => [a, b]));
}

/** The way out for the first of two: away from the other. */
function towards(way: Vec, one: Box | undefined, other: Box | undefined): Vec {
  if (!one || !other) return way;
  return dot(less(middle(one), middle(other)), way) < 0 ? scaled(way, -1) : way;
}

function number(exact: string): number {
  const [top, bottom] = exact.split("/").map(Number);
  return (top ?? 0) / (bottom ?? 1);
}

function unit(way: number[]): Vec {
  const [x = 0, y = 0, z = 0] = way;
  const long = Math.hypot(x, y, z) || 1;
  return [x / long, y / long, z / long];
}

function overlaps(one: Box, other: Box): boolean {
  return [0, 1, 2].every((k) => between(one, other, k as 0 | 1 | 2) > TOUCH);
}

function between(one: Box, other: Box, k: 0 | 1 | 2): number {
  return Math.min(one.high[k], other.high[k]) - Math.max(one.low[k], other.low[k]);
}

function inPath(one: Box, other: Box, way: Vec): boolean {
  const axis = way.findIndex((share) => share !== 0) as 0 | 1 | 2;
  const beside = ([0, 1, 2] as const).filter((k) => k !== axis);
  if (beside.some((k) => between(one, other, k) <= TOUCH)) return false;
  if (dot(way, [1, 1, 1]) > 0) return other.high[axis] > one.high[axis] + TOUCH;
  return other.low[axis] < one.low[axis] - TOUCH;
}

function parted(group: string[], held: Holding): { rest: string[]; away: Leaving[] } {
  let rest = group;
  const away: Leaving[] = [];
  const gone = new Set<string>();
  for (const found of closures(group, held)) {
    if (found.names.length > group.length / 2 || found.names.length >= rest.length) continue;
    if (found.names.some((name) => gone.has(name))) continue;
    for (const name of found.names) gone.add(name);
    away.push(found);
    rest = rest.filter((name) => !gone.has(name));
  }
  return { rest, away };
}

/** Groups that can leave, smallest first; each once, by the way that leads outward most. */
function closures(group: string[], held: Holding): Leaving[] {
  const best = new Map<string, Leaving & { pull: number }>();
  const heart = middle(around(group.map((name) => held.boxes.get(name) as Box)));
  for (const way of SIX) {
    for (const start of group) {
      const names = reached(start, group, held, way);
      if (names.length === group.length || held.torn(names, group)) continue;
      const box = around(names.map((name) => held.boxes.get(name) as Box));
      const pull = dot(less(middle(box), heart), way);
      const key = names.join("\n");
      if (pull > (best.get(key)?.pull ?? -Infinity)) best.set(key, { names, way, pull });
    }
  }
  return [...best.values()].sort((a, b) => a.names.length - b.names.length || b.pull - a.pull);
}

function reached(start: string, group: string[], held: Holding, way: Vec): string[] {
  const found = new Set([start]);
  for (const name of found) {
    for (const other of group) {
      if (!found.has(other) && held.holds(name, other, way)) found.add(other);
    }
  }
  return group.filter((name) => found.has(name));
}

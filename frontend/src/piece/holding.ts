/** Who holds whom: what joints and boxes say of two parts that would leave each other. */

import type { Joint, Part } from "../document";
import { type Box, boxOf, dot, less, middle, scaled, stand, type Vec } from "./stand";

const TOUCH = 0.3; // [mm] boxes that overlap by no more only touch
const LEVEL = 1; // [mm] middles no further apart do not say who leaves which way

export interface Holding {
  boxes: Map<string, Box>;
  /** What holds a part back from going that way. */
  holders(name: string, way: Vec): readonly string[];
  /** Whether leaving would tear what opens as one out of a group that holds more than it. */
  torn(names: readonly string[], group: readonly string[]): boolean;
  /** Whether these are just what opens or slides as one. */
  isAssembly(names: readonly string[]): boolean;
}

export function holding(parts: readonly Part[], joints: readonly Joint[]): Holding {
  const boxes = new Map(parts.map((part) => [part.name, boxOf(stand(part))]));
  const open = opening(joints, boxes);
  const assemblies = new Map(parts.map((part) => [part.name, part.moves_with]));
  const of = (name: string) => assemblies.get(name) ?? "";
  const holds = (a: string, one: Box, b: string, other: Box, way: Vec): boolean => {
    const ways = open.get(pair(a, b));
    if (ways) return !ways.some((each) => dot(each, way) > 0.99);
    // what opens or slides as one is caught in nothing but its own joints
    if (of(a) !== of(b) && overlaps(one, other)) return false;
    return inPath(one, other, way);
  };
  const known = new Map<string, string[]>();
  return {
    boxes,
    holders(name, way) {
      const key = pair(name, way.join());
      const before = known.get(key);
      if (before) return before;
      const own = boxes.get(name) as Box;
      const others = [...boxes].filter(([other]) => other !== name);
      const found = others.filter(([other, box]) => holds(name, own, other, box, way));
      const names = found.map(([other]) => other);
      known.set(key, names);
      return names;
    },
    torn(names, group) {
      const going = new Set(names.map(of));
      if (new Set(group.map(of)).size === 1) return false;
      const all = new Set(names);
      return group.some((name) => of(name) !== "" && going.has(of(name)) && !all.has(name));
    },
    isAssembly(names) {
      const own = of(names[0] ?? "");
      return own !== "" && names.every((name) => of(name) === own);
    },
  };
}

const pair = (a: string, b: string): string => `${a}\n${b}`;

/** For two jointed parts the ways the first may leave the other; absent if no joint says. */
function opening(joints: readonly Joint[], boxes: Map<string, Box>): Map<string, Vec[]> {
  const open = new Map<string, Vec[]>();
  for (const joint of joints) {
    const straight = joint.moves.filter((each) => each.motion === "straight");
    if (straight.length === 0) continue;
    for (const [a, b] of pairsOf(joint)) {
      const found = straight.flatMap((each) => {
        const way = unit(each.way.map(number));
        const movers = moving(joint, each.role);
        if (movers.has(a) !== movers.has(b)) return [movers.has(a) ? way : scaled(way, -1)];
        return towards(way, boxes.get(a), boxes.get(b));
      });
      narrow(open, pair(a, b), found);
      narrow(open, pair(b, a), found.map((way) => scaled(way, -1)));
    }
  }
  return open;
}

/** Who plays that role, as far as the joint or the names of its parts tell. */
function moving(joint: Joint, role: string): Set<string> {
  const named = joint.parts.filter((name) => name === role || name.endsWith(`.${role}`));
  return new Set(joint.roles?.[role] ?? named);
}

function narrow(open: Map<string, Vec[]>, key: string, ways: Vec[]): void {
  const both = open.get(key)?.filter((one) => ways.some((other) => dot(one, other) > 0.99));
  open.set(key, both ?? ways);
}

/** Each two parts of a joint, once. */
function pairsOf(joint: Joint): [string, string][] {
  const found = new Map<string, [string, string]>();
  for (const { between } of joint.contacts) {
    const [a = "", b = ""] = between;
    if (!found.has(pair(b, a))) found.set(pair(a, b), [a, b]);
  }
  if (found.size > 0) return [...found.values()];
  return joint.parts.flatMap((a, i) => joint.parts.slice(i + 1).map((b): [string, string] => [a, b]));
}

/** The way out for the first of two: away from the other; both ways where that says nothing. */
function towards(way: Vec, one: Box | undefined, other: Box | undefined): Vec[] {
  if (!one || !other) return [way];
  const off = dot(less(middle(one), middle(other)), way);
  if (Math.abs(off) < LEVEL) return [way, scaled(way, -1)];
  return [off < 0 ? scaled(way, -1) : way];
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
  return ([0, 1, 2] as const).every((k) => between(one, other, k) > TOUCH);
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

/** What is bought goes with the part it sits deepest in. */
export function riding(parts: readonly Part[], joints: readonly Joint[]): Map<string, string> {
  const boxes = new Map(parts.map((part) => [part.name, boxOf(stand(part))]));
  const found = new Map<string, string>();
  for (const bought of parts.filter((part) => part.hardware)) {
    const own = joints.filter((joint) => bought.name.startsWith(joint.name));
    const named = new Set(own.flatMap((joint) => joint.parts));
    let most = -Infinity;
    for (const part of parts) {
      if (part.hardware || (named.size > 0 && !named.has(part.name))) continue;
      const shared = inside(boxes.get(bought.name) as Box, boxes.get(part.name) as Box);
      if (shared > most) {
        most = shared;
        found.set(bought.name, part.name);
      }
    }
  }
  return found;
}

/** How much of one box sits in another; negative: how far it stands off. */
function inside(one: Box, other: Box): number {
  const shares = ([0, 1, 2] as const).map((k) => between(one, other, k));
  const least = Math.min(...shares);
  return least < 0 ? least : shares.reduce((product, share) => product * share, 1);
}

/**
 * How the piece comes apart, step by step.
 *
 * For each of the six ways a part is held by another if their joint does not open that way, or
 * if the other stands in its path. What must go together is what is reached by following who
 * holds whom; the smallest such groups come away. Each group that has come away comes apart in
 * turn. Boxes stand for parts, so what is shown is a likely way and no proof.
 *
 * Reference: R. H. Wilson and J.-C. Latombe, "Geometric reasoning about mechanical assembly",
 * Artificial Intelligence 71 (1994): directional blocking graphs.
 */

import type { Joint, Part } from "../document";
import { type Holding, holding, riding } from "./holding";
import { around, type Box, dot, less, middle, plus, scaled, type Vec } from "./stand";

const SIX: readonly Vec[] = [
  [0, -1, 0],
  [0, 0, 1],
  [0, 1, 0],
  [-1, 0, 0],
  [1, 0, 0],
  [0, 0, -1],
];
const FIRST = 0.3; // [-] of the piece's largest size: how far the first step goes
const LATER = 0.62; // [-] each next step goes that much of the one before

export interface Leaving {
  names: string[];
  way: Vec;
  /** How far, in reaches of its step: what is small goes less far. */
  far: number;
}

export interface Apart {
  /** What comes away in each step. */
  steps: Leaving[][];
  /** Where a part is after so many steps. [mm] */
  moved(name: string, steps: number): Vec;
}

/** `first` is how far the first step goes [mm]; left out, it follows from the piece's size. */
export function apart(parts: readonly Part[], joints: readonly Joint[], first?: number): Apart {
  const made = parts.filter((part) => !part.hardware);
  const rides = riding(parts, joints);
  const held = holding(made, joints);
  const reach = first ?? largest([...held.boxes.keys()], held) * FIRST;
  const steps = stepped(made, held);
  const paths = new Map<string, Vec[]>(made.map((part) => [part.name, []]));
  steps.forEach((leaving, number) => {
    for (const { names, way, far } of leaving) {
      const by = scaled(way, far * reach * LATER ** number);
      for (const name of names) paths.get(name)?.push(by);
    }
    for (const path of paths.values()) while (path.length <= number) path.push([0, 0, 0]);
  });
  const moved = (name: string, count: number): Vec =>
    (paths.get(rides.get(name) ?? name) ?? []).slice(0, count).reduce<Vec>(plus, [0, 0, 0]);
  return { steps, moved };
}

function stepped(made: readonly Part[], held: Holding): Leaving[][] {
  const steps: Leaving[][] = [];
  const whole = largest(made.map((part) => part.name), held);
  const families = new Map(made.map((part) => [part.name, part.family]));
  let groups: string[][] = [made.map((part) => part.name)];
  while (groups.some((group) => group.length > 1)) {
    const split = groups.map((group) => {
      const { rest, away } = spread(group, families, held) ?? parted(group, families, held);
      const share = largest(group, held) / whole;
      return { rest, away: away.map((each) => ({ ...each, far: each.far * share })) };
    });
    const leaving = split.flatMap((each) => each.away);
    if (leaving.length === 0) break;
    steps.push(leaving);
    groups = split.flatMap((each) => [each.rest, ...each.away.map((gone) => gone.names)]);
  }
  return steps;
}

function largest(names: readonly string[], held: Holding): number {
  const { low, high } = around(boxesOf(names, held));
  return Math.max(...less(high, low));
}

interface Parted {
  rest: string[];
  away: Leaving[];
}

/** Parts all alike, such as the boards of a back, are drawn apart side by side at once. */
function spread(group: string[], families: Map<string, string>, held: Holding): Parted | null {
  if (group.length < 3 || new Set(group.map((name) => families.get(name))).size > 1) return null;
  const box = around(boxesOf(group, held));
  const centres = group.map((name) => middle(held.boxes.get(name) as Box));
  const span = less(box.high, box.low);
  const ends = around(centres.map((at) => ({ low: at, high: at })));
  const run = less(ends.high, ends.low);
  const axis = run.indexOf(Math.max(...run)) as 0 | 1 | 2;
  if ((run[axis] ?? 0) < 1) return null;
  const way: Vec = [Number(axis === 0), Number(axis === 1), Number(axis === 2)];
  const heart = middle(box);
  const away = group.map((name, i): Leaving => {
    const off = less(centres[i] as Vec, heart)[axis];
    return { names: [name], way, far: (1.6 * off) / span[axis] };
  });
  return { rest: [], away };
}

function parted(group: string[], families: Map<string, string>, held: Holding): Parted {
  let rest = group;
  const away: Leaving[] = [];
  const gone = new Set<string>();
  const found = closures(group, families, held);
  // what opens or slides by itself comes first, and nothing else goes its way in the same step
  const opening = found.filter((each) => held.isAssembly(each.names) && each.names.length < group.length);
  const taken = found.filter(
    (each) => opening.includes(each) || !opening.some((other) => dot(other.way, each.way) > 0.5),
  );
  for (const each of [...opening, ...taken]) {
    if (each.names.length >= rest.length) continue;
    if (each.names.some((name) => gone.has(name))) continue;
    for (const name of each.names) gone.add(name);
    away.push(each);
    rest = rest.filter((name) => !gone.has(name));
  }
  return { rest, away: clear(away, opening, held) };
}

/** What opens higher up goes further, so that what comes apart later finds room. */
function clear(away: Leaving[], opening: readonly Leaving[], held: Holding): Leaving[] {
  const height = (each: Leaving) => Math.round(middle(around(boxesOf(each.names, held)))[2] / 20);
  const heights = [...new Set(opening.map(height))].sort((a, b) => a - b);
  return away.map((each) =>
    opening.includes(each) ? { ...each, far: 1 + 0.5 * heights.indexOf(height(each)) } : each,
  );
}

/** Groups that can leave, smallest first; each once, by the way that leads outward most. */
function closures(group: string[], families: Map<string, string>, held: Holding): Leaving[] {
  const best = new Map<string, Leaving & { pull: number; families: number }>();
  const heart = middle(around(boxesOf(group, held)));
  const kinds = new Map<string, string[]>();
  for (const name of group) {
    const family = families.get(name) ?? "";
    kinds.set(family, [...(kinds.get(family) ?? []), name]);
  }
  const alike = [...kinds.values()].filter((names) => names.length > 2);
  const all = new Set(group);
  const seen = new Set<string>();
  for (const way of SIX) {
    for (const start of [...alike, ...group.map((name) => [name])]) {
      const names = reached(start, all, held, way);
      if (names.length > group.length / 2 && names.length > 1) continue;
      const key = names.join("\n");
      const again = `${key}\n${way.join()}`;
      if (seen.has(again)) continue;
      seen.add(again);
      if (held.torn(names, group)) continue;
      const pull = dot(less(middle(around(boxesOf(names, held))), heart), way);
      const count = new Set(names.map((name) => families.get(name))).size;
      if (pull > (best.get(key)?.pull ?? -Infinity)) {
        best.set(key, { names, way, far: 1, pull, families: count });
      }
    }
  }
  return [...best.values()].sort(
    (a, b) => a.families - b.families || bySize(a, b) || b.pull - a.pull,
  );
}

/** Of one kind all together; of several kinds the fewest. */
function bySize(a: { names: string[]; families: number }, b: { names: string[] }): number {
  return (a.names.length - b.names.length) * (a.families === 1 ? -1 : 1);
}

function boxesOf(names: readonly string[], held: Holding): Box[] {
  return names.map((name) => held.boxes.get(name) as Box);
}

function reached(start: string[], group: Set<string>, held: Holding, way: Vec): string[] {
  const found = new Set(start);
  for (const name of found) {
    for (const other of held.holders(name, way)) if (group.has(other)) found.add(other);
  }
  return [...group].filter((name) => found.has(name));
}

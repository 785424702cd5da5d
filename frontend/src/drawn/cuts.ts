/** What is written beside a drawing: cuts in the order one lays them out, rows of them together. */

import { AXES, type Cut, type Length, type Measure } from "../document";

export type Said = (string | Length)[];

export interface Row {
  letter: string;
  name: string;
  owner: string;
  many: number;
  said: Said;
}

const OF_AXIS = { along: "along", across: "across", into: "deep" } as const;
const LETTERS = "abcdefghijklmnopqrstuvwxyz";
const POINT = /^(first |last )?point (\d+) (along|across|into)$/;

/** Cuts of one owner that differ in one figure alone, such as holes in a row. */
export function rows(cuts: readonly Cut[]): { cuts: Cut[]; row: Row }[] {
  const groups: { cuts: Cut[]; differs: string | null }[] = [];
  for (const cut of cuts) {
    const last = groups[groups.length - 1];
    const differs = last?.cuts[0] && only(last.cuts[last.cuts.length - 1] as Cut, cut);
    if (last && differs && (last.differs ?? differs) === differs) {
      last.cuts.push(cut);
      last.differs = differs;
    } else groups.push({ cuts: [cut], differs: null });
  }
  return groups.map(({ cuts: alike, differs }, i) => ({ cuts: alike, row: row(alike, differs, i) }));
}

/** The one word in which two cuts differ; null if they differ in more, or in nothing. */
function only(one: Cut, other: Cut): string | null {
  const plain = ({ cut, measures, ...rest }: Cut) => JSON.stringify([stem(cut), rest, measures.length]);
  if (plain(one) !== plain(other)) return null;
  const words = one.measures
    .filter((each, i) => {
      const twin = other.measures[i];
      return twin?.word !== each.word || twin.value.mm !== each.value.mm || twin.from !== each.from;
    })
    .map((each) => each.word);
  return words.length === 1 && words[0] !== undefined ? words[0] : null;
}

function stem(name: string): string {
  return name.replace(/ \d+$/, "");
}

function letter(i: number): string {
  const first = i < 26 ? "" : (LETTERS[Math.floor(i / 26) - 1] ?? "");
  return first + (LETTERS[i % 26] ?? "");
}

function row(cuts: readonly Cut[], differs: string | null, i: number): Row {
  const first = cuts[0] as Cut;
  const values = (word: string) =>
    word === differs ? cuts.flatMap((cut) => cut.measures.filter((each) => each.word === word)) : [];
  return {
    letter: letter(i),
    name: cuts.length > 1 ? stem(first.cut) : first.cut,
    owner: first.owner,
    many: cuts.length,
    said: said(first, values),
  };
}

function said(cut: Cut, values: (word: string) => Measure[]): Said {
  const found: Said[] = [];
  for (const each of cut.measures) {
    if (POINT.test(each.word)) continue;
    const all = values(each.word);
    const figures = all.length > 0 ? all.map((one) => one.value) : [each.value];
    found.push([...joined(figures), ` ${wording(each)}`]);
  }
  const corners = outlineSaid(cut);
  if (corners.length > 0) found.unshift(corners);
  return found.flatMap((piece, i) => (i === 0 ? piece : ["; ", ...piece]));
}

function joined(figures: readonly Length[]): Said {
  return figures.flatMap((each, i) => (i === 0 ? [each] : [", ", each]));
}

function wording({ word, axis, from }: Measure): string {
  if (word.endsWith("size")) return OF_AXIS[axis];
  if (word === "diameter") return "across the hole";
  const to = word.startsWith("centre") ? "to the centre, " : "";
  return `${to}from the ${from ?? "start"}`;
}

/** Corners of a profile as pairs, with the two surfaces they are counted from said once. */
function outlineSaid(cut: Cut): Said {
  const found: Said = [];
  const surfaces = new Set<string>();
  for (const part of ["", "first ", "last "]) {
    const points = new Map<string, Measure[]>();
    for (const each of cut.measures) {
      const point = POINT.exec(each.word);
      if (!point || (point[1] ?? "") !== part) continue;
      const number = point[2] ?? "";
      points.set(number, [...(points.get(number) ?? []), each]);
      surfaces.add(each.from ?? "start");
    }
    if (points.size === 0) continue;
    if (part !== "") found.push(part === "last " ? "; at its other end " : "at its first end ");
    [...points.values()].forEach((pair, i) => {
      pair.sort((a, b) => AXES.indexOf(a.axis) - AXES.indexOf(b.axis));
      found.push(i === 0 ? "" : ", then ", ...pair.flatMap((each, k) => (k === 0 ? [each.value] : [" by ", each.value])));
    });
  }
  if (found.length === 0) return [];
  return [`corners, from the ${[...surfaces].join(" and the ")}: `, ...found];
}

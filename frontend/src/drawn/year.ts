/** Fits through the year as they are drawn: month beside month, at the size they are. [mm] */

import type { Length, YearFit } from "../document";

export const MONTHS = [
  ...["January", "February", "March", "April", "May", "June", "July"],
  ...["August", "September", "October", "November", "December"],
] as const;

export const WOOD = 3.4; // shown on either side of a gap
export const EDGE = 0.5; // width of the line along an edge, all of it on the wood's side
export const MET = 0.18; // of the same where wood meets wood, so that the crossing is seen
const APART = 0.6; // of a month, between the day it is made and January
const TALLEST = 22; // of a wider gap the middle is left out
const STAYS = 7; // of it, at least
const LENS_SHOWS = 6; // most that a gap is enlarged to
const THIN = 1; // a gap below this is read through the lens

/** A strip of the drawing. */
export interface Column {
  name: string;
  letter: string;
  from: number;
  gap: number;
  length: Length;
}

/** The day it is made, then January to December; `month` is the width of one. */
export function columns(fit: YearFit, month: number): Column[] {
  const column = (i: number, name: string, letter: string, length: Length): Column => ({
    name,
    letter,
    from: i === 0 ? 0 : month * (i + APART),
    gap: length.value_mm,
    length,
  });
  const months = MONTHS.flatMap((name, i) => {
    const length = fit.months[i];
    return length ? [column(i + 1, name, name.charAt(0), length)] : [];
  });
  return [column(0, "made", "made", fit.made), ...months];
}

/** Width of all of them together. */
export function across(month: number): number {
  return month * (13 + APART);
}

/** What is left out of the middle of a wide gap, alike in every month. */
export function leftOut(all: readonly Column[]): number {
  const most = Math.max(...all.map((each) => each.gap));
  const least = Math.min(...all.map((each) => each.gap));
  return most <= TALLEST ? 0 : Math.max(0, least - STAYS);
}

/** Of the months, the one with the least; the first of several. */
export function lowest(all: readonly Column[]): Column | undefined {
  const months = all.slice(1);
  return months.find((each) => each.gap === Math.min(...months.map(({ gap }) => gap)));
}

export function highest(all: readonly Column[]): Column | undefined {
  const months = all.slice(1);
  return months.find((each) => each.gap === Math.max(...months.map(({ gap }) => gap)));
}

/** How many times a thin gap, or wood that overlaps, is enlarged to be read; null where the eye needs no help. */
export function enlarged(gap: number): number | null {
  const size = Math.abs(gap);
  if (size === 0 || gap >= THIN) return null;
  return [50, 20, 10, 5, 2].find((times) => size * times <= LENS_SHOWS) ?? null;
}

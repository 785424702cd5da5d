/** What the server tells: `setting-out.json`, format 1, and the findings of the moment. */

export interface Length {
  mm: string;
  value_mm: number;
  as_written: string;
}

export interface OwnLength extends Length {
  dimension: string | null;
  set_out: string;
  origin: string;
  off_tape: boolean;
  because: string;
}

export type Axis = "along" | "across" | "into";
export const AXES: readonly Axis[] = ["along", "across", "into"];

export interface Measure {
  word: string;
  axis: Axis;
  value: Length;
  from: string | null;
  dimension: string | null;
}

export interface Cut {
  cut: string;
  owner: string;
  form: "box" | "profile" | "taper" | "bore";
  sweep: Axis | null;
  corner: string[];
  open_start: boolean[];
  open_stop: boolean[];
  open_sides: number[];
  measures: Measure[];
}

export interface Rough {
  length: Length;
  width: Length;
  thickness: Length;
}

export interface Part {
  name: string;
  family: string;
  mark: number | null;
  wood: string;
  cut: string;
  hardware: boolean;
  moves_with: string;
  length: OwnLength;
  width: OwnLength;
  thickness: OwnLength;
  rough: Rough | null;
  blank: string | { glued_up: string[] };
  horns: Length[];
  shown: string[];
  placement: { along: string; across: string; into: string; at: Length[] };
  cuts: Cut[];
}

export interface Figure {
  word: string;
  value: string;
  unit: string;
  as_written: string;
  dimension: string | null;
  reference: string;
}

export interface Joint {
  name: string;
  title: string;
  parts: string[];
  /** Names by role; where it is not told, boxes say who moves. */
  roles?: Record<string, string[]>;
  choice: Record<string, string>;
  drawn: Figure[];
  contacts: { between: string[]; zone: string; glue: string; fit: string; area_mm2: number }[];
  moves: { role: string; motion: string; way: string[] }[];
}

export interface Line {
  mark: number;
  part: string;
  parts: string[];
  wood: string;
  how_many: number;
  long: Length;
  wide: Length;
  thick: Length;
  rough: Rough;
  set_out: string;
  note: string;
}

/** A fit through the year; like fits of like size are one. */
export interface YearFit {
  what: string;
  names: string[];
  parts: string[];
  place: string | null;
  made: Length;
  /** From January to December; below 0 where wood would overlap. */
  months: Length[];
  least: Length;
  holds: boolean;
  verdict: string;
  advice: string;
  because: string;
  source: string;
}

export interface WidePart {
  mark: number;
  part: string;
  wood: string;
  cut: string;
  width: Length;
  grow: Length;
  shrink: Length;
  swing: Length;
}

/** At the bench, at both ends of the year, and from January to December. [%] */
export interface Spells {
  bench: number;
  driest: number;
  dampest: number;
  months: number[];
}

export interface Year {
  moisture: Spells & { assumed: string };
  air: Spells;
  driest_in: string;
  dampest_in: string;
  fits: YearFit[];
  wide_parts: WidePart[];
}

/** One thing that is said for the record. */
export type Said =
  | { measured: { size: string; readings: string[]; sure: boolean } }
  | { done: string }
  | { note: string }
  | { correct: number };

export interface RecordTold {
  entries: { number: number; at: string; kind: string; says: string; of: string; holds: boolean }[];
  cut: string[];
  changed: { name: string; was: Length; now: Length; because: string; measured: boolean }[];
}

export interface SettingOut {
  format: number;
  piece: {
    name: string;
    file: string;
    measure: "inch" | "mm";
    finest_mm: number;
    overall: { wide: Length; deep: Length; tall: Length };
  };
  parts: Part[];
  sizes: { name: string; value: Length; set_out: string; origin: string }[];
  joints: Joint[];
  cutting_list: Line[];
  year: Year;
  record: RecordTold;
  /** How it is shown; the file's own measure, and words of the house as they are said. */
  shown?: Shown;
}

/** A part in three views, from the lower left corner. [mm] */
export interface PartDrawing {
  size: [number, number];
  scale: number;
  alt: string;
  strokes: { kind: string; lines: [number, number][][] }[];
  texts: { says: string; at: [number, number]; ends: boolean; turned: boolean; bold: boolean }[];
  line_types: Record<string, { width: number; dashes: number[] }>;
}

export interface Shown {
  words: "US" | "UK";
  figures: "inch" | "mm";
  measure: "inch" | "mm";
  said: Record<string, string>;
}

export interface Place {
  file: string;
  line: number;
  column: number;
  before: string;
  guilty: string;
  after: string;
}

export interface Finding {
  code: string;
  weight: "halt" | "mind" | "note";
  says: string;
  cure: string;
  figure: string;
  limit: string;
  source: string;
  parts: string[];
  place: Place | null;
}

/** A length of the piece file that can be exchanged. */
export interface Field {
  path: (string | number)[];
  /** The path for a reader: items of a row by their first word. */
  label: string[];
  amount: string;
  unit: string;
  line: number;
  says: string;
  /** Sizes that it states. */
  names: string[];
}

export interface PieceFile {
  name: string;
  /** As it was named where the page was opened from. */
  path: string;
  /** Differs whenever the text does. */
  mark: string;
  fields: Field[];
  /** What would be taken back, or put again; null: nothing. */
  take_back: string | null;
  put_again: string | null;
}

/** How far the text is worked: sizes and parts, then joints, then what the proofs find. */
export type Stage = "sized" | "joined" | "proven";

type Rows = "parts" | "sizes" | "joints";

/** What makes the document that was told last the one there is now. */
export interface Changes {
  since: string;
  sections: Partial<Omit<SettingOut, Rows>>;
  /** The order of all by name, null where it stays; rows that are new or changed. */
  rows: { [S in Rows]?: { order: string[] | null; changed: SettingOut[S] } };
}

/** The document with the changes made; what stays the same stays the same object. */
export function changed(before: SettingOut, { sections, rows }: Changes): SettingOut {
  const now = { ...before, ...sections };
  if (rows.parts) now.parts = merged(before.parts, rows.parts);
  if (rows.sizes) now.sizes = merged(before.sizes, rows.sizes);
  if (rows.joints) now.joints = merged(before.joints, rows.joints);
  return now;
}

function merged<T extends { name: string }>(before: T[], { order, changed }: { order: string[] | null; changed: T[] }): T[] {
  if (order === null && changed.length === 0) return before;
  const known = new Map([...before, ...changed].map((each) => [each.name, each]));
  return (order ?? before.map((each) => each.name)).flatMap((name) => known.get(name) ?? []);
}

/** As it comes: the document whole, or what has changed of it. */
export interface Sent extends Told {
  changes: Changes | null;
}

export interface Told {
  number: number;
  /** Says to the server what this page was told. */
  mark: string;
  stage: Stage;
  /** Differs from one good text to another; the same for all stages of one. */
  piece: number;
  stale: boolean;
  setting_out: SettingOut | null;
  findings: Finding[];
  file: PieceFile;
}

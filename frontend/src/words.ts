/** Sentences from data. */

import type { Finding, Joint, Length, Part, YearFit } from "./document";

export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** What is made and what is bought, never in one sum: `49 parts, 48 pieces of hardware`. */
export function tallied(parts: readonly Part[]): string {
  const bought = parts.filter((each) => each.hardware).length;
  const made = counted(parts.length - bought, "part");
  if (bought === 0) return made;
  return `${made}, ${counted(bought, "piece of hardware", "pieces of hardware")}`;
}

export const BOUGHT = "Bought";

/** Name of the assembly a part belongs to, as a heading. */
export function assembly(part: Part): string {
  if (part.hardware) return BOUGHT;
  return part.moves_with === "" ? "What stands fast" : raised(part.moves_with);
}

export function raised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Name of a part inside its assembly: `top rail` of `left door.top rail`. */
export function ownName(part: Part): string {
  const prefix = `${part.moves_with}.`;
  return part.name.startsWith(prefix) ? part.name.slice(prefix.length) : part.name;
}

/** Joints of one kind whose figures are alike: they are set once and cut one after another. */
export interface Alike {
  title: string;
  joints: Joint[];
}

export function alike(joints: readonly Joint[]): Alike[] {
  const found = new Map<string, Alike>();
  for (const joint of joints) {
    const figures = joint.drawn.map((each) => [each.word, each.as_written, each.reference]);
    const key = JSON.stringify([joint.title, figures]);
    const known = found.get(key);
    if (known) known.joints.push(joint);
    else found.set(key, { title: joint.title, joints: [joint] });
  }
  return [...found.values()];
}

/** What the findings come to, in a sentence. */
export function summed(findings: readonly Finding[]): { halts: string; rest: string } {
  const of = (weight: string) => findings.filter((each) => each.weight === weight).length;
  const halts = of("halt");
  const minds = of("mind");
  const notes = of("note");
  const rest = [];
  if (minds > 0) rest.push(`${minds} to mind`);
  if (notes > 0) rest.push(counted(notes, "note"));
  return {
    halts: halts === 0 ? "" : `${counted(halts, "finding")} to halt at`,
    rest: rest.join(", "),
  };
}

/** A length without the word that no rule shows it, for places where none of them is. */
export function plainly(length: Length): string {
  return length.as_written.replace(/^about /, "");
}

/** A change of size with its sign, which is turned round where `way` is -1. */
export function changed(length: Length, way: 1 | -1): string {
  const change = way * length.value_mm;
  const sign = change > 0 ? "+" : change < 0 ? "\u2212" : "";
  return sign + plainly(length).replace(/^[-\u2212]/, "");
}

export function percent(share: number): string {
  return `${share.toFixed(1).replace(/\.0$/, "")} %`;
}

const NAMED = 2; // parts named of a fit; of more it is said how many

/** What each fit is called; those of one name are told apart by the parts that move on them. */
export function called(fits: readonly YearFit[]): string[] {
  return fits.map((fit) => {
    const lone = fits.filter((each) => each.what === fit.what).length === 1;
    return raised(fit.what) + (lone ? "" : ` (${named(fit.parts)})`);
  });
}

function named(parts: readonly string[]): string {
  const more = parts.length - NAMED;
  const first = parts.slice(0, more === 1 ? NAMED + 1 : NAMED).join(", ");
  return more > 1 ? `${first} and ${more} more` : first;
}

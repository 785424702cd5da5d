/** Where the maker is: section, open strips, and how he looks at the piece. */

import { SvelteSet } from "svelte/reactivity";

export const SECTIONS = [
  { key: "setting-out", title: "Setting out" },
  { key: "joints", title: "Joints" },
  { key: "findings", title: "Findings" },
  { key: "through-the-year", title: "Through the year" },
  { key: "record", title: "Record" },
  { key: "to-pin-up", title: "To pin up" },
] as const;

export type SectionKey = (typeof SECTIONS)[number]["key"];

function inAddress(): SectionKey {
  const found = SECTIONS.find((each) => `#${each.key}` === location.hash);
  return found?.key ?? SECTIONS[0].key;
}

class Place {
  section = $state<SectionKey>(inAddress());
  open = new SvelteSet<string>();
  /** Whether what the maker wrote is folded out, and the field whose line is. */
  written = $state(true);
  field = $state("");
  #left = new Map<SectionKey, number>();

  /** Follow the address, and come back to where this section was left. */
  follow(): void {
    const now = inAddress();
    if (now === this.section) return;
    this.#left.set(this.section, scrollY);
    this.section = now;
    const top = this.#left.get(now) ?? 0;
    requestAnimationFrame(() => scrollTo({ top, behavior: "instant" }));
  }

  turn(name: string): void {
    if (!this.open.delete(name)) this.open.add(name);
  }
}

export const place = new Place();

/** How the piece is looked at, wherever that was asked for. */
class Looking {
  up = $state(false);
  chosen = $state<string | null>(null);
  joint = $state<string | null>(null);
  alone = $state(false);
  step = $state(0);
  view = $state("cornerwise");
  /** Counts the wishes for a view, so that the same one can be wished for again. */
  wish = $state(0);

  at(part: string): void {
    this.joint = null;
    this.chosen = part;
    this.up = true;
  }

  atAlone(part: string): void {
    this.at(part);
    this.alone = true;
  }

  atJoint(joint: string): void {
    this.joint = joint;
    this.chosen = null;
    this.alone = false;
    this.step = 0;
    this.up = true;
  }

  atAll(): void {
    this.joint = null;
    this.chosen = null;
    this.alone = false;
  }

  from(view: string): void {
    this.view = view;
    this.wish += 1;
  }
}

export const looking = new Looking();

/**
 * `<piece-view>`: the piece standing by itself, drawn in lines.
 *
 * Told by properties, tells by events and attributes. `data-state` is `waiting`, `drawn` or
 * `failed`; `data-loads`, `data-parts`, `data-lines`, `data-seen`, `data-chosen`, `data-view` and `data-turn` say
 * what is drawn, so that it can be tested without looking.
 */

import { Vector3, WebGLRenderer } from "three";
import { Drawing, type Wooden } from "./drawing";
import { Eye, inRoom, VIEWS } from "./eye";
import { follow } from "./hand";
import { type Solid, solids } from "./model";
import { Picking } from "./pick";
import { CHOSEN, GHOST, HIDDEN, PLAIN } from "./shaders";
import { around, type Box, boxOf, plus, type Vec } from "./stand";

const SWING = 240; // [ms] from one view to the next

/** What is to be seen. */
export interface Sight {
  stands: Wooden[];
  chosen: readonly string[];
  /** Parts drawn in full; null for all. The others are ghosts or not there. */
  shown: readonly string[] | null;
  others: "ghosts" | "gone";
  moved: (name: string) => Vec;
  /** What to look at closely; null for everything shown. [mm] */
  close: Box | null;
}

export class PieceView extends HTMLElement {
  readonly #eye = new Eye();
  readonly #canvas = document.createElement("canvas");
  #renderer: WebGLRenderer | null = null;
  #drawing: Drawing | null = null;
  #picking: Picking | null = null;
  #solids: Solid[] = [];
  #sight: Sight | null = null;
  #asked = 0;
  /** Whether solids for what is to be seen are on their way. */
  #fetching = false;
  #due = 0;
  #swing: { from: [number, number]; to: [number, number]; begun: number } | null = null;
  #ended = new AbortController();

  connectedCallback(): void {
    this.dataset["state"] = "waiting";
    this.#canvas.tabIndex = 0;
    this.#canvas.setAttribute("role", "img");
    this.append(this.#canvas);
    try {
      this.#renderer = new WebGLRenderer({ canvas: this.#canvas, antialias: true });
    } catch {
      // three throws a plain Error where the browser draws nothing in space
      this.#fail("This browser cannot draw the piece in space. Its parts are all in the lists.");
      return;
    }
    this.#renderer.sortObjects = false; // two objects, faces before lines
    follow(this.#canvas, this.#eye, {
      changed: () => {
        this.#swing = null;
        this.#draw();
      },
      picked: (x, y) => this.#pick(x, y),
    });
    const sized = new ResizeObserver(() => this.#sized());
    sized.observe(this);
    const { signal } = this.#ended;
    signal.addEventListener("abort", () => sized.disconnect());
    const dark = matchMedia("(prefers-color-scheme: dark)");
    dark.addEventListener("change", () => this.#coloured(), { signal });
  }

  disconnectedCallback(): void {
    this.#ended.abort();
    cancelAnimationFrame(this.#due);
    this.#drawing?.dispose();
    this.#renderer?.dispose();
    this.#renderer?.forceContextLoss();
  }

  /** What the drawing shows, in words, for those who cannot see it. */
  set label(text: string) {
    this.#canvas.setAttribute("aria-label", text);
  }

  /** Fetch the piece anew; the eye stays where it is once it has looked. */
  async load(address: string): Promise<void> {
    if (this.#renderer === null) return;
    this.#asked += 1;
    const mine = this.#asked;
    this.#fetching = true;
    try {
      const answer = await fetch(address);
      if (!answer.ok) throw new TypeError(`${answer.status}`);
      const file = await answer.arrayBuffer();
      if (mine !== this.#asked) return;
      this.#solids = solids(file);
    } catch (error) {
      if (!(error instanceof TypeError)) throw error;
      this.#fail("The piece could not be fetched.");
      return;
    } finally {
      if (mine === this.#asked) this.#fetching = false;
    }
    this.#built();
    this.dataset["loads"] = `${mine}`;
  }

  set sight(sight: Sight) {
    const fresh = this.#sight?.stands !== sight.stands;
    this.#sight = sight;
    if (fresh && !this.#fetching && this.#solids.length > 0) this.#built();
    else this.#posed();
  }

  /** Look from there, at all that is shown. */
  from(word: string): void {
    const view = VIEWS[word];
    if (!view) return;
    const from: [number, number] = [this.#eye.turn, this.#eye.tilt];
    this.#eye.from(word);
    this.#frame();
    this.dataset["view"] = word;
    const quick = matchMedia("(prefers-reduced-motion: reduce)").matches;
    if (!quick && this.dataset["state"] === "drawn") {
      const full = 2 * Math.PI; // the short way round
      from[0] = view.turn + ((((from[0] - view.turn + 9 * Math.PI) % full) + full) % full) - Math.PI;
      this.#swing = { from, to: [view.turn, view.tilt], begun: performance.now() };
    }
    this.#draw();
  }

  nearer(by: number): void {
    this.#eye.nearer(by);
    this.#draw();
  }

  turned(by: number): void {
    this.#swing = null;
    this.#eye.turned(by, 0);
    this.#draw();
  }

  #fail(text: string): void {
    this.dataset["state"] = "failed";
    const said = document.createElement("p");
    said.textContent = text;
    this.replaceChildren(said);
    this.dispatchEvent(new CustomEvent("failed", { detail: text }));
  }

  #built(): void {
    if (this.#sight === null || this.#renderer === null) return;
    const first = this.#drawing === null;
    this.#drawing ??= new Drawing();
    const stands = new Map(this.#sight.stands.map((each) => [each.name, each]));
    this.#drawing.exchange(this.#solids, stands);
    this.#picking = new Picking(this.#solids);
    this.dataset["parts"] = `${this.#solids.length}`;
    this.dataset["lines"] = `${this.#drawing.lines}`;
    this.#pose();
    if (first) {
      this.#coloured();
      this.#frame();
      this.#sized();
    } else this.#render();
    this.dataset["state"] = "drawn";
    this.dispatchEvent(new CustomEvent("drawn"));
  }

  #posed(): void {
    this.#pose();
    this.#draw();
  }

  #pose(): void {
    const sight = this.#sight;
    if (sight === null || this.#drawing === null) return;
    const shown = sight.shown && new Set(sight.shown);
    const chosen = new Set(sight.chosen);
    let seen = 0;
    this.#drawing.names.forEach((name, part) => {
      const at = inRoom(sight.moved(name));
      const full = shown === null || shown.has(name);
      const other = sight.others === "gone" ? HIDDEN : GHOST;
      const state = full ? (chosen.has(name) ? CHOSEN : PLAIN) : other;
      if (full) seen += 1;
      this.#drawing?.show(part, at, state);
      this.#picking?.moved(part, at, full);
    });
    this.dataset["seen"] = `${seen}`;
    this.dataset["chosen"] = sight.chosen.join(", ");
  }

  /** Everything that is to be seen, in sight. */
  #frame(): void {
    const sight = this.#sight;
    if (sight === null) return;
    const shown = sight.shown && new Set(sight.shown);
    const boxes = sight.stands
      .filter((each) => shown === null || shown.has(each.name))
      .map((each) => {
        const { low, high } = boxOf(each);
        const by = sight.moved(each.name);
        return { low: plus(low, by), high: plus(high, by) };
      });
    if (boxes.length === 0) return;
    const { low, high } = sight.close ?? around(boxes);
    const [a, b] = [inRoom(low), inRoom(high)];
    this.#eye.hold(a.clone().min(b), a.clone().max(b));
  }

  frame(): void {
    this.#frame();
    this.#draw();
  }

  #coloured(): void {
    const style = getComputedStyle(this);
    const word = (name: string) => style.getPropertyValue(name).trim();
    const depth = Number(word("--wood-depth")) || 0.5;
    this.#drawing?.coloured(word("--ground"), word("--graphite"), depth);
    this.#renderer?.setClearColor(word("--ground"));
    this.#draw();
  }

  #sized(): void {
    const { clientWidth: wide, clientHeight: tall } = this;
    if (wide === 0 || tall === 0) return;
    const fine = Math.min(2, devicePixelRatio);
    this.#renderer?.setPixelRatio(fine);
    this.#renderer?.setSize(wide, tall, false);
    this.#eye.screen(wide, tall);
    this.#drawing?.screen(wide * fine, tall * fine, 1.25 * fine);
    this.#render(); // at once: a canvas that has been resized is empty
  }

  #draw(): void {
    if (this.#due !== 0) return;
    this.#due = requestAnimationFrame((now) => {
      this.#due = 0;
      if (this.#swing) this.#swung(now);
      this.dataset["turn"] = `${this.#eye.turn.toFixed(2)} ${this.#eye.tilt.toFixed(2)}`;
      this.#render();
      if (this.#swing) this.#draw();
    });
  }

  #render(): void {
    if (this.#drawing) this.#renderer?.render(this.#drawing.scene, this.#eye.placed());
  }

  #swung(now: number): void {
    if (!this.#swing) return;
    const { from, to, begun } = this.#swing;
    const gone = Math.min(1, Math.max(0, (now - begun) / SWING));
    const eased = gone * gone * (3 - 2 * gone);
    this.#eye.turn = from[0] + (to[0] - from[0]) * eased;
    this.#eye.tilt = from[1] + (to[1] - from[1]) * eased;
    if (gone === 1) this.#swing = null;
  }

  #pick(x: number, y: number): void {
    const right = (x / this.clientWidth) * 2 - 1;
    const up = 1 - (y / this.clientHeight) * 2;
    const detail = this.#picking?.under(right, up, this.#eye) ?? null;
    this.dispatchEvent(new CustomEvent<string | null>("picked", { detail }));
  }

  /** Where a part's middle is on the screen; for tests that pick by hand. [points] */
  whereIs(name: string): { x: number; y: number } | null {
    const stand = this.#sight?.stands.find((each) => each.name === name);
    if (!stand || !this.#sight) return null;
    const { low, high } = boxOf(stand);
    const middle = inRoom(plus(low, this.#sight.moved(name)));
    middle.add(inRoom(plus(high, this.#sight.moved(name)))).multiplyScalar(0.5);
    const flat = new Vector3().copy(middle).project(this.#eye.placed());
    const { left, top } = this.getBoundingClientRect();
    return {
      x: left + ((flat.x + 1) / 2) * this.clientWidth,
      y: top + ((1 - flat.y) / 2) * this.clientHeight,
    };
  }
}

customElements.define("piece-view", PieceView);

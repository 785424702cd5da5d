/** Keeps what the server told, and asks again whenever it says that something changed. */

import type { Told } from "./document";
import { kept } from "./hold";

class Live {
  told = $state.raw<Told | null>(null);
  /** Whether the server answers. */
  reached = $state(true);
  /** Said once to whoever listens rather than looks. */
  said = $state("");

  #news: EventSource | null = null;
  #asking: Promise<void> | null = null;
  #again = false;

  listen(): void {
    if (this.#news !== null) return;
    const news = new EventSource("/api/events");
    this.#news = news;
    news.addEventListener("changed", (event) => {
      const { number } = JSON.parse(event.data) as { number: number };
      this.reached = true;
      if (number !== this.told?.number) this.ask();
    });
    news.addEventListener("error", () => {
      this.reached = false;
    });
    news.addEventListener("open", () => {
      this.reached = true;
    });
  }

  /** A page nobody sees takes no stream: browsers allow few to one server. */
  rest(): void {
    this.#news?.close();
    this.#news = null;
  }

  ask(): void {
    if (this.#asking !== null) {
      this.#again = true;
      return;
    }
    this.#asking = this.#fetched().finally(() => {
      this.#asking = null;
      if (this.#again) {
        this.#again = false;
        this.ask();
      }
    });
  }

  async #fetched(): Promise<void> {
    try {
      const answer = await fetch("/api/setting-out");
      if (!answer.ok) return;
      const told = (await answer.json()) as Told;
      const before = this.told;
      await kept(() => {
        this.told = told;
      });
      this.said = news(before, told);
    } catch (error) {
      if (!(error instanceof TypeError)) throw error; // the network's own kind
      this.reached = false;
    }
  }
}

function news(before: Told | null, now: Told): string {
  if (before === null) return "";
  const heavy = now.findings.filter((each) => each.weight === "halt");
  if (now.stale) return `The file cannot be worked. ${heavy[0]?.says ?? ""}`;
  const mended = before.stale ? "The file can be worked again. " : "The file has changed. ";
  const count = heavy.length === 0 ? "Nothing halts the work." : `${heavy.length} to halt at.`;
  return mended + count;
}

export const live = new Live();

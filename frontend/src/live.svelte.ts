/** Keeps what the server told, and asks again whenever it says that something changed. */

import { changed, type Finding, type Said, type Sent, type Told } from "./document";
import { kept } from "./hold";

/** What came of an act on the file. */
export type Outcome = { kind: "done" | "outside" | "gone" } | { kind: "wrong"; wrong: Finding };

class Live {
  told = $state.raw<Told | null>(null);
  /** Whether the server answers. */
  reached = $state(true);
  /** Said once to whoever listens rather than looks. */
  said = $state("");

  #news: EventSource | null = null;
  #asking: Promise<void> | null = null;
  #again = false;
  #acting = 0;
  /** The newest number heard of since the stream began; a server begun anew counts anew. */
  #newest = 0;

  listen(): void {
    if (this.#news !== null) return;
    const news = new EventSource("/api/events");
    this.#news = news;
    news.addEventListener("changed", (event) => {
      const { number } = JSON.parse(event.data) as { number: number };
      this.reached = true;
      this.#newest = number;
      this.#catchUp();
    });
    news.addEventListener("error", () => {
      this.reached = false;
    });
    news.addEventListener("open", () => {
      this.#newest = 0;
      this.reached = true;
    });
  }

  /** A page nobody sees takes no stream: browsers allow few to one server. */
  rest(): void {
    this.#news?.close();
    this.#news = null;
  }

  /** Exchange a length for what was typed, over the text with that mark. */
  write(path: readonly (string | number)[], value: string, over: string): Promise<Outcome> {
    return this.#act("write", { path, value, over });
  }

  takeBack(): Promise<Outcome> {
    return this.#act("take-back");
  }

  putAgain(): Promise<Outcome> {
    return this.#act("put-again");
  }

  /** Show words and figures otherwise; no file hears of it. */
  show(words: string, figures: string): Promise<Outcome> {
    return this.#act("show", { words, figures });
  }

  /** Keep something in the record; sent again under its id where no answer came. */
  record(id: string, said: Said): Promise<Outcome> {
    return this.#act("record", { id, at: new Date().toISOString(), ...said });
  }

  /** A word of the house as it is said where the maker lives. */
  say(word: string): string {
    return this.told?.setting_out?.shown?.said[word] ?? word;
  }

  /** An act is answered with what is new, so there is nothing to ask for behind it. */
  async #act(name: string, wish?: object): Promise<Outcome> {
    this.#acting += 1;
    try {
      const headers = { "content-type": "application/json" };
      const body = wish === undefined ? null : JSON.stringify(wish);
      const since = this.told?.mark ?? "";
      const answer = await fetch(`/api/${name}?since=${since}`, { method: "POST", headers, body });
      if (answer.status === 422) return { kind: "wrong", ...((await answer.json()) as { wrong: Finding }) };
      if (!answer.ok && answer.status !== 409) return { kind: "gone" };
      await this.#take((await answer.json()) as Sent);
      return { kind: answer.ok ? "done" : "outside" };
    } catch (error) {
      if (!(error instanceof TypeError)) throw error; // the network's own kind
      this.reached = false;
      return { kind: "gone" };
    } finally {
      this.#acting -= 1;
      this.#catchUp();
    }
  }

  #catchUp(): void {
    if (this.#acting === 0 && this.#newest !== 0 && this.#newest !== this.told?.number) this.ask();
  }

  async #take({ changes, ...sent }: Sent): Promise<void> {
    const before = this.told;
    if (sent.number < this.#newest) return; // overtaken by what is being asked for
    this.#newest = sent.number;
    const told: Told = sent;
    if (changes !== null) {
      // changes from what is no more shown, if one answer overtook another
      if (before?.setting_out == null || before.mark !== changes.since) return this.#whole();
      told.setting_out = changed(before.setting_out, changes);
    }
    await kept(() => {
      this.told = told;
    });
    this.said = news(before, told) ?? this.said;
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

  /** Ask for everything, whatever was told before. */
  #whole(): Promise<void> {
    return this.#fetched("");
  }

  async #fetched(since = this.told?.mark ?? ""): Promise<void> {
    try {
      const answer = await fetch(`/api/setting-out?since=${since}`);
      if (!answer.ok) return;
      await this.#take((await answer.json()) as Sent);
    } catch (error) {
      if (!(error instanceof TypeError)) throw error; // the network's own kind
      this.reached = false;
    }
  }
}

/** What is said of it; null: nothing that was not said before. */
function news(before: Told | null, now: Told): string | null {
  if (before === null) return "";
  const sameText = before.piece === now.piece && !before.stale;
  if (now.stage !== "proven") return sameText ? null : "The file has changed. It is being proven.";
  const heavy = now.findings.filter((each) => each.weight === "halt");
  if (now.stale) return `The file cannot be worked. ${heavy[0]?.says ?? ""}`;
  const changed = before.stale ? "The file can be worked again. " : "The file has changed. ";
  const mended = sameText && before.stage !== "proven" ? "Proven through. " : changed;
  const count = heavy.length === 0 ? "Nothing halts the work." : `${heavy.length} to halt at.`;
  return mended + count;
}

export const live = new Live();

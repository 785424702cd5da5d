/** What was typed into fields and is not in the file yet. It outlives whatever the page shows anew. */

import { SvelteMap } from "svelte/reactivity";
import type { Field, Finding, PieceFile } from "./document";
import { live, type Outcome } from "./live.svelte";

export interface Draft {
  text: string;
  /** What the file said when typing began. */
  over: string;
  label: readonly string[];
  /** What speaks against it. */
  wrong: Finding | null;
  /** The file was changed meanwhile; nothing was written. */
  outside: boolean;
  sent: boolean;
}

export const keyOf = (field: Pick<Field, "path">): string => JSON.stringify(field.path);

class Drafts {
  all = new SvelteMap<string, Draft>();
  /** One after the other: each is written over what the one before it left. */
  #writing: Promise<void> = Promise.resolve();

  typed(field: Field, text: string): void {
    const key = keyOf(field);
    const before = this.all.get(key);
    if (text === field.amount) {
      this.all.delete(key);
      return;
    }
    const over = before?.over ?? field.amount;
    this.all.set(key, { text, over, label: field.label, wrong: null, outside: false, sent: false });
  }

  forget(key: string): void {
    this.all.delete(key);
  }

  /** Write what was typed, unless the file says something else by now than when typing began. */
  async write(field: Field): Promise<void> {
    const key = keyOf(field);
    const draft = this.all.get(key);
    // a field that is taken away blurs too: then there is nothing to write to
    const stands = live.told?.file.fields.some((each) => keyOf(each) === key);
    if (!draft || !stands || draft.sent || draft.outside) return;
    if (field.amount !== draft.over) {
      this.all.set(key, { ...draft, outside: true });
      return;
    }
    await this.#send(key, field, draft);
  }

  /** Write it over what the file says now: the maker has seen both. */
  async insist(field: Field): Promise<void> {
    const draft = this.all.get(keyOf(field));
    if (draft) await this.#send(keyOf(field), field, { ...draft, outside: false, over: field.amount });
  }

  async #send(key: string, field: Field, draft: Draft): Promise<void> {
    this.all.set(key, { ...draft, sent: true });
    this.#writing = this.#writing.then(() => this.#written(key, field, draft));
    await this.#writing;
  }

  async #written(key: string, field: Field, draft: Draft): Promise<void> {
    const file: PieceFile | undefined = live.told?.file;
    const stands = file?.fields.find((each) => keyOf(each) === key);
    if (!file || !stands) return;
    // what was written meanwhile may be this very line, by another hand
    const outside = stands.amount !== draft.over;
    const outcome: Outcome = outside
      ? { kind: "outside" }
      : await live.write(field.path, draft.text, file.mark);
    if (this.all.get(key)?.text !== draft.text) return; // typed on meanwhile
    if (outcome.kind === "done") this.all.delete(key);
    else {
      const wrong = outcome.kind === "wrong" ? outcome.wrong : null;
      this.all.set(key, { ...draft, wrong, outside: outcome.kind === "outside", sent: false });
    }
  }
}

export const drafts = new Drafts();

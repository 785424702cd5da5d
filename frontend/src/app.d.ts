import type { PieceView } from "./piece/view";

declare module "svelte/elements" {
  interface SvelteHTMLElements {
    "piece-view": { this?: PieceView };
  }
}

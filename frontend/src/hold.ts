/** What is under the maker's hand stays where it is while the page changes around it. */

import { tick } from "svelte";

function underHand(): Element | null {
  const active = document.activeElement;
  if (active !== null && active !== document.body && inSight(active)) return active;
  return [...document.querySelectorAll("[data-hold]")].find(inSight) ?? null;
}

function inSight(element: Element): boolean {
  const { top, bottom } = element.getBoundingClientRect();
  return bottom > 0 && bottom - top < innerHeight && top < innerHeight;
}

/** Make a change; then scroll by as much as it has moved what is under the hand. */
export async function kept(change: () => void): Promise<void> {
  const held = underHand();
  const before = held?.getBoundingClientRect().top;
  change();
  await tick();
  if (held?.isConnected && before !== undefined) {
    const moved = held.getBoundingClientRect().top - before;
    if (Math.abs(moved) >= 1) window.scrollBy({ top: moved, behavior: "instant" });
  }
}

/** What the hand does to the eye: drag to turn, two fingers or the wheel to come nearer, keys. */

import type { Eye } from "./eye";

const PER_POINT = 0.008; // [rad] turned by dragging one point of the screen
const PER_KEY = Math.PI / 12;
const STILL = 5; // [points] a press that moves less is a pick

interface Touch {
  x: number;
  y: number;
}

export interface Told {
  changed: () => void;
  picked: (x: number, y: number) => void;
}

export function follow(canvas: HTMLCanvasElement, eye: Eye, told: Told): void {
  const down = new Map<number, Touch>();
  let travelled = 0;

  canvas.addEventListener("pointerdown", (event) => {
    canvas.setPointerCapture(event.pointerId);
    down.set(event.pointerId, { x: event.clientX, y: event.clientY });
    travelled = down.size > 1 ? Infinity : 0;
  });
  canvas.addEventListener("pointermove", (event) => {
    const before = down.get(event.pointerId);
    if (!before) return;
    const now = { x: event.clientX, y: event.clientY };
    const other = [...down].find(([id]) => id !== event.pointerId)?.[1];
    travelled += Math.hypot(now.x - before.x, now.y - before.y);
    if (other) pinched(eye, before, now, other);
    else if (event.shiftKey || event.buttons > 1) eye.shifted(now.x - before.x, now.y - before.y);
    else eye.turned((before.x - now.x) * PER_POINT, (now.y - before.y) * PER_POINT);
    down.set(event.pointerId, now);
    told.changed();
  });
  const up = (event: PointerEvent) => {
    if (!down.delete(event.pointerId) || travelled >= STILL || event.type !== "pointerup") return;
    told.picked(event.offsetX, event.offsetY);
  };
  canvas.addEventListener("pointerup", up);
  canvas.addEventListener("pointercancel", up);
  canvas.addEventListener("contextmenu", (event) => event.preventDefault());
  canvas.addEventListener(
    "wheel",
    (event) => {
      event.preventDefault();
      eye.nearer(Math.exp(-event.deltaY * 0.0015));
      told.changed();
    },
    { passive: false },
  );
  canvas.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (!keyed(eye, event.key, event.shiftKey)) return;
    event.preventDefault();
    told.changed();
  });
}

function pinched(eye: Eye, before: Touch, now: Touch, other: Touch): void {
  const apart = (touch: Touch) => Math.hypot(touch.x - other.x, touch.y - other.y) || 1;
  eye.nearer(apart(now) / apart(before));
  eye.shifted((now.x - before.x) / 2, (now.y - before.y) / 2);
}

function keyed(eye: Eye, key: string, shift: boolean): boolean {
  const arrows: Record<string, [number, number]> = {
    ArrowLeft: [-1, 0],
    ArrowRight: [1, 0],
    ArrowUp: [0, 1],
    ArrowDown: [0, -1],
  };
  const arrow = arrows[key];
  if (arrow && shift) eye.shifted(-arrow[0] * 40, arrow[1] * 40);
  else if (arrow) eye.turned(arrow[0] * PER_KEY, arrow[1] * PER_KEY);
  else if (key === "+" || key === "=") eye.nearer(1.2);
  else if (key === "-") eye.nearer(1 / 1.2);
  else return false;
  return true;
}

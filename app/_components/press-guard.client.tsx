"use client";

import { useEffect } from "react";

/** What a press acts on when it is let go. */
const PRESSABLE = "button, a[href], summary, label, input[type='checkbox'], input[type='radio']";
/** A hand is not quite still; farther than this it goes somewhere else on purpose. */
const STILL = 4;

/**
 * A press counts for what was under the pointer when it began, also where the page moved before the
 * button was let go: a table that is left, or rows that were saved meanwhile, change what is above.
 */
export function PressGuard() {
  useEffect(() => {
    let begun: { readonly on: HTMLElement; readonly x: number; readonly y: number } | null = null;

    function begin(event: PointerEvent) {
      const plain = event.pointerType === "mouse" && event.button === 0 && !hasModifier(event);
      const on = event.target instanceof Element ? event.target.closest(PRESSABLE) : null;
      begun =
        plain && on instanceof HTMLElement ? { on, x: event.clientX, y: event.clientY } : null;
    }

    function end(event: PointerEvent) {
      const press = begun;
      begun = null;
      if (press === null || !(event.target instanceof Node)) return;
      const wentOn = Math.hypot(event.clientX - press.x, event.clientY - press.y) > STILL;
      if (wentOn || press.on.contains(event.target)) return;
      // After the browser's own click, which goes to what the two places have in common.
      setTimeout(() => press.on.click(), 0);
    }

    document.addEventListener("pointerdown", begin, true);
    document.addEventListener("pointerup", end, true);
    return () => {
      document.removeEventListener("pointerdown", begin, true);
      document.removeEventListener("pointerup", end, true);
    };
  }, []);
  return null;
}

function hasModifier(event: PointerEvent): boolean {
  return event.ctrlKey || event.metaKey || event.shiftKey || event.altKey;
}

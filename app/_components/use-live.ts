import { useSyncExternalStore } from "react";

/**
 * Whether the page's scripts are at work. Until then a table that is typed in takes no typing: what
 * was typed before would be lost when they arrive.
 */
export function useLive(): boolean {
  return useSyncExternalStore(never, live, notYet);
}

function never(): () => void {
  return () => undefined;
}

function live(): boolean {
  return true;
}

function notYet(): boolean {
  return false;
}

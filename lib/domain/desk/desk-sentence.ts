import { sayCount } from "../say/count.ts";
import type { Tallies } from "./answer.ts";

/** The desk in one sentence: how much of what, over all lines. */
export function deskSentence({ open, closed, late, due, blocked, waiting }: Tallies): string {
  const [first, ...rest] = [
    said(late, "thing is late", "things are late"),
    said(due, "is due within a week", "are due within a week"),
    said(blocked, "is blocked", "are blocked"),
    said(waiting, "waits on others", "wait on others"),
  ].filter((part) => part !== "");
  if (first !== undefined) return [first, ...rest].join(", ");
  if (open > 0)
    return `Nothing is due on ${open === 1 ? "the open line" : `the ${open} open lines`}`;
  if (closed === 0) return "No line is open yet";
  return `No line is open; ${sayCount(closed, "line")} closed`;
}

function said(count: number, one: string, many: string): string {
  if (count === 0) return "";
  return count === 1 ? `1 ${one}` : `${count} ${many}`;
}

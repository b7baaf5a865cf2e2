import { sayCount } from "../say/count.ts";
import type { DueThing } from "./answer.ts";

/** How many lines the office has. */
interface Lines {
  readonly open: number;
  readonly closed: number;
}

/** The desk in one sentence: how much of what, over all lines. */
export function deskSentence(things: readonly DueThing[], { open, closed }: Lines): string {
  const count = (kind: DueThing["kind"]) => things.filter((thing) => thing.kind === kind).length;
  const [first, ...rest] = [
    said(count("late"), "thing is late", "things are late"),
    said(count("due"), "is due within a week", "are due within a week"),
    said(count("blocked"), "is blocked", "are blocked"),
    said(count("waiting"), "waits on others", "wait on others"),
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

import { sayCount } from "../say/count.ts";
import type { Tallies } from "./answer.ts";

/** The desk in one sentence: how much of what, over all lines. */
export function deskSentence({
  open,
  closed,
  late,
  due,
  blocked,
  waiting,
}: Omit<Tallies, "on-the-desk">): string {
  const [first, ...rest] = [
    said(late, "item overdue", "items overdue"),
    said(due, "due this week", "due this week"),
    said(blocked, "blocked", "blocked"),
    said(waiting, "waiting on others", "waiting on others"),
  ].filter((part) => part !== "");
  if (first !== undefined) return [first, ...rest].join(", ");
  if (open > 0) return `Nothing due on ${open === 1 ? "the open line" : `the ${open} open lines`}`;
  if (closed === 0) return "No lines yet";
  return `No open lines; ${sayCount(closed, "line")} closed`;
}

function said(count: number, one: string, many: string): string {
  if (count === 0) return "";
  return count === 1 ? `1 ${one}` : `${count} ${many}`;
}

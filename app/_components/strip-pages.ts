import type { StripTopic } from "#lib/domain/strip/drawing.ts";
import type { StripSize } from "#lib/domain/strip/measures.ts";

interface StripPage {
  readonly topic: StripTopic;
  readonly size: StripSize;
}

/** What the strip tells on each page of a line, and how large it is there. */
const PAGES: Readonly<Record<string, StripPage>> = {
  who: { topic: "who", size: "small" },
  record: { topic: "record", size: "small" },
  camera: { topic: "camera", size: "small" },
  reconcile: { topic: "reconcile", size: "large" },
  "reconcile/": { topic: "reconcile", size: "small" },
  "reconcile/undocumented": { topic: "reconcile", size: "small" },
  "reconcile/test-day": { topic: "reconcile", size: "small" },
  responsibility: { topic: "responsibility", size: "large" },
  cost: { topic: "cost", size: "small" },
};

const OTHERWISE: StripPage = { topic: "all", size: "small" };

/** The strip of the page whose folders under the line are these. */
export function stripPage([segment = "", part = ""]: readonly string[]): StripPage {
  return PAGES[`${segment}/${part}`] ?? PAGES[segment] ?? OTHERWISE;
}

/** The folders under the line in a page's address. */
export function foldersIn(address: string): string[] {
  const [path = ""] = address.split("?");
  return path.split("/").slice(3);
}

import type { Fault } from "../../facts/run.ts";
import { PLAIN_THING, type Thing } from "./things.ts";

/** A way in which people tell one thing with a subject and what they say of it, in any words between. */
export interface Construction {
  readonly said: RegExp;
  readonly means: (found: RegExpMatchArray, around: string) => Thing | null;
  /** Things named within it that are this one in other words; where not told, those of its kind. */
  readonly covers?: (thing: Thing) => boolean;
}

/** One that always means the same fault, and covers those faults and kinds beside itself. */
export function tells(name: Fault, said: string, covers = ""): Construction {
  const names = new Set([name, ...covers.split(" ")]);
  return {
    said: new RegExp(said, "g"),
    means: () => fault(name),
    covers: ({ kind, fault: own }) => names.has(own ?? kind),
  };
}

/** A fault by its kind, with nothing else told of it. */
export function fault(name: Fault): Thing {
  return { ...PLAIN_THING, kind: "fault", fault: name };
}

/** Any word. */
export const ANY = String.raw`(?: [\w']+)`;

/** Words that deny what follows. */
export const NOT =
  "(?:not|isn't|aren't|ain't|wasn't|weren't|never|didn't|don't|doesn't|hasn't|haven't)";

/** What two pipes meet with. */
export const JOINT =
  "(?:joints?|bells?|hubs?|spigots?|collars?|couplings?|couplers?|sleeves?|seams?)";

/** A length of pipe, however it is called. */
export const LENGTH = "(?:pipes?|sections?|pieces?|lengths?|sticks?|segments?|tiles?)";

/** The pipe that is looked into. */
export const OURS =
  "(?:the|our|your|this|my|that) (?:\\w+ )?(?:pipe|line|lateral|sewer|bore|flow|main line|run)";

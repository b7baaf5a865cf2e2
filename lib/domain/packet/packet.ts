import type { RequirementDue, SheetKind } from "../facts/authority.ts";
import type { FormFill } from "../form/form-fill.ts";
import type { LetterBlock } from "../paper/letter.ts";
import type { PlanView } from "../strip/draw-plan.ts";
import type { StripDrawing } from "../strip/drawing.ts";
import type { Day } from "../time/day.ts";

export interface Sheet {
  readonly kind: SheetKind;
  readonly title: string;
  readonly blocks: readonly LetterBlock[];
  /** The line on the ground, north up, to scale; landscape, before the drawing along the pipe. */
  readonly plans: readonly PlanView[];
  /** Landscape, drawn to scale. */
  readonly drawing: StripDrawing | null;
  /** Feet to an inch that the authority lets the drawing have; none: every usual scale. */
  readonly scales?: readonly number[];
  /** Stored file that is merged here instead of composed pages. */
  readonly uploadId: string | null;
  /** A form of the authority that is filled in and merged here. */
  readonly form?: FormFill;
}

/** What the authority asked for and how it stands. */
export interface PacketCheck {
  readonly requirementId: string;
  readonly title: string;
  readonly state: "in-hand" | "missing" | "does-not-apply";
  readonly mandatory: boolean;
  /** By when it is asked for; only what is due with the application is in the packet. */
  readonly due: RequirementDue;
  readonly sentence: string;
  /** Why it applies here or not, by its conditions; empty where it hangs on nothing. */
  readonly why: string;
  readonly citation: string;
}

/** A set of sheets as one document, as data: the permit application, the as-built, the closeout file. What is missing comes first. */
export interface Packet {
  /** What it is for; its cover says so. */
  readonly purpose: "application" | "as-built" | "close-out";
  readonly title: string;
  readonly lineName: string;
  readonly authorityName: string;
  /** The day of preparing, for the document's own date. */
  readonly day: Day;
  readonly preparedOn: string;
  readonly preparedBy: readonly string[];
  readonly checks: readonly PacketCheck[];
  readonly missing: readonly string[];
  /** By whose list the sheets were chosen, and what was left out on purpose. */
  readonly contents: readonly string[];
  readonly sheets: readonly Sheet[];
  readonly footer: string;
  /** Places on the cover to sign by hand, each with its words; left out: none. */
  readonly signed?: readonly string[];
}

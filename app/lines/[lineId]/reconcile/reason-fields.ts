import { z } from "zod";
import { text } from "#app/fields.ts";
import { reasonFrom } from "./reasons.ts";

/** The two fields of a reason: one that was chosen, and what was written. */
export const REASON = { reason: text, words: text };

interface Worded {
  readonly reason: string;
  readonly words: string;
}

/** Makes one reason of the two; refused beside the written one where there is neither. */
export function reasoned<Typed extends Worded>(
  { words, ...typed }: Typed,
  context: z.RefinementCtx,
  message = "Select a reason, or type one.",
): Omit<Typed, "words"> {
  const reason = reasonFrom(typed.reason, words);
  if (reason === null) context.addIssue({ code: "custom", path: ["words"], message });
  return { ...typed, reason: reason ?? "" };
}

/** These fields and the reason, in that order. */
export function withReason<Shape extends z.core.$ZodLooseShape>(shape: Shape, message?: string) {
  const typed: z.ZodType<z.output<z.ZodObject<Shape>> & Worded> = z.object({
    ...shape,
    ...REASON,
  }) as never;
  return typed.transform((each, context) => reasoned(each, context, message));
}

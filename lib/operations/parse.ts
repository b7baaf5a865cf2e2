import type { z } from "zod";
import { ok, type Result } from "#lib/result.ts";
import type { Refusal } from "./act.ts";
import { refuse } from "./change.ts";

/** The value in its shape, or a refusal with the first thing that is wrong, in words. */
export function parse<T>(shape: z.ZodType<T>, value: unknown): Result<T, Refusal> {
  const parsed = shape.safeParse(value);
  if (parsed.success) return ok(parsed.data);
  const [issue] = parsed.error.issues;
  return refuse("bad-value", issue?.path.join(".") ?? "", issue?.message ?? "");
}

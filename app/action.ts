import "server-only";
import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { z } from "zod";
import type { JobStart } from "#app/_components/job-button.client.tsx";
import { typedIn } from "#app/fields.ts";
import { done, type FormState, refused } from "#app/form.ts";
import { overtaken, refusedBy, sentenceOf } from "#app/messages.ts";
import { requireAct } from "#app/session.ts";
import type { JobKind } from "#lib/domain/facts/job.ts";
import type { Deed } from "#lib/domain/facts/user.ts";
import type { Act, Refusal } from "#lib/operations/act.ts";
import { startJob } from "#lib/operations/start-job.ts";
import { err, ok, type Result } from "#lib/result.ts";

// Whatever a browser asks of the office goes the same way: who asks, may they, what was sent, the
// deed, what is told. An action says each of these and nothing else.

/** Where a form is: what its page hands over, and which pages show something else afterward. */
export interface Place<From, At> {
  /** What comes from the browser may be anything, so it is looked at too. */
  readonly is: z.ZodType<At, From>;
  readonly shows: (at: At) => string;
}

interface OnLine {
  readonly lineId: string;
}

/** A form on a line: the action is bound to the line's id. */
export const onLine: Place<string, OnLine> = {
  is: z.string().transform((lineId) => ({ lineId })),
  shows: pagesOfLine,
};

/** A form about one thing: the action is bound to its ids. */
export function placeAt<Shape extends z.core.$ZodLooseShape>(
  shape: Shape,
  shows: (at: z.output<z.ZodObject<Shape>>) => string,
) {
  return { is: z.object(shape), shows };
}

/** A form on a line about one thing: the action is bound to `{ lineId, … }`. */
export function onLineAt<Shape extends z.core.$ZodLooseShape>(shape: Shape) {
  const is = z.object({ lineId: z.string(), ...shape });
  return { is, shows: ({ lineId }: OnLine) => pagesOfLine({ lineId }) };
}

function pagesOfLine({ lineId }: OnLine): string {
  return `/lines/${lineId}`;
}

/** What is wrong in one field, as a sentence; an empty path: in the form as a whole. */
export interface FieldProblem {
  readonly path: string;
  readonly message: string;
}

interface Steps<At, Typed, Value> {
  /** What it takes; `null`: whoever is signed in may ask, and the operation looks at the role. */
  readonly may: Deed | null;
  /** The form's fields. The first that is wrong is told beside it, and what was typed stays. */
  readonly typed: z.ZodType<Typed>;
  readonly does: (act: Act, asked: At & Typed, form: FormData) => Done<Value>;
  /** What is told when it is done. */
  readonly says: string | ((value: Value, asked: At & Typed) => string);
  /** The page that it leads to, in place of telling; null: it stays. */
  readonly leadsTo?: (value: Value, asked: At & Typed) => string | null;
  /** Where the others' version is, for a form that tells who saved it meanwhile. */
  readonly theirs?: string;
  /** The form's name of the field that a refusal is about. */
  readonly field?: (path: string, asked: At & Typed) => string;
}

/** Why nothing was done. */
export type Stopped = Refusal | FieldProblem;
type Done<Value> = Result<Value, Stopped> | Promise<Result<Value, Stopped>>;

/** An action of a form, in the order that all have. */
export function formAction<From, At extends object, Typed extends object, Value>(
  place: Place<From, At>,
  steps: Steps<At, Typed, Value>,
): (from: From, state: FormState, form: FormData) => Promise<FormState> {
  return async (from, _state, form) => {
    const act = await requireAct(steps.may ?? undefined);
    const at = place.is.safeParse(from);
    if (!at.success) return refused(sentenceOf({ reason: "not-found", detail: "" }), form);
    const typed = await steps.typed.safeParseAsync(typedIn(form));
    if (!typed.success) return refusedBy(typed.error, form);
    const asked = { ...at.data, ...typed.data };
    const result = await steps.does(act, asked, form);
    revalidatePath(place.shows(at.data), "layout");
    if (!result.ok) return stoppedBy(result.error, { steps, asked, form });
    const page = steps.leadsTo?.(result.value, asked) ?? null;
    if (page !== null) redirect(page);
    return done(typeof steps.says === "string" ? steps.says : steps.says(result.value, asked));
  };
}

/** The same for a form that belongs to no line: `shows` is the page that it changes. */
export function officeAction<Typed extends object, Value>(
  shows: string,
  steps: Steps<object, Typed, Value>,
): (state: FormState, form: FormData) => Promise<FormState> {
  const action = formAction({ is: z.object({}), shows: () => shows }, steps);
  return async (state, form) => await action({}, state, form);
}

function stoppedBy<At, Typed, Value>(
  stopped: Stopped,
  { steps, asked, form }: { steps: Steps<At, Typed, Value>; asked: At & Typed; form: FormData },
): FormState {
  const path = steps.field?.(stopped.path, asked) ?? stopped.path;
  if ("message" in stopped) return refused(stopped.message, form, path);
  if (stopped.reason === "changed-meanwhile" && steps.theirs !== undefined)
    return overtaken(stopped.detail, { where: steps.theirs, form });
  return refused(sentenceOf(stopped), form, path);
}

interface AskSteps<Args, Value> {
  readonly may: Deed | null;
  readonly takes: z.ZodType<Args>;
  readonly does: (act: Act, args: Args) => Result<Value, Refusal> | Promise<Result<Value, Refusal>>;
}

type Asked<Args extends readonly unknown[], Value, Answer> = (
  ...args: Args
) => Promise<Result<Value, Answer>>;

/**
 * An action that a page's own script asks about a line, whose id comes first: what came of it, or why
 * not, in a sentence or as `tells` has it.
 */
export function askAction<Args extends readonly [string, ...unknown[]], Value>(
  steps: AskSteps<Args, Value>,
): Asked<Args, Value, string>;
export function askAction<Args extends readonly [string, ...unknown[]], Value, Answer>(
  steps: AskSteps<Args, Value> & { readonly tells: (refusal: Refusal) => Answer },
): Asked<Args, Value, Answer>;
export function askAction<Args extends readonly [string, ...unknown[]], Value>({
  may,
  takes,
  does,
  tells = sentenceOf,
}: AskSteps<Args, Value> & { readonly tells?: (refusal: Refusal) => unknown }): Asked<
  Args,
  Value,
  unknown
> {
  return async (...sent) => {
    const act = await requireAct(may ?? undefined);
    const args = takes.safeParse(sent);
    if (!args.success)
      return err(tells({ reason: "bad-value", path: "", detail: "Reload the page and try again" }));
    const result = await does(act, args.data);
    if (!result.ok) return err(tells(result.error));
    revalidatePath(pagesOfLine({ lineId: args.data[0] }), "layout");
    return ok(result.value);
  };
}

/** Starts a PDF of these being made. */
export function jobAction(
  kind: JobKind,
  may: Deed | null,
): (lineId: string, subjectIds: readonly string[]) => Promise<JobStart> {
  return async (lineId, subjectIds) => {
    const act = await requireAct(may ?? undefined);
    const sent = z.tuple([z.string(), z.string().array()]).safeParse([lineId, subjectIds]);
    if (!sent.success)
      return { ok: false, message: sentenceOf({ reason: "not-found", detail: "" }) };
    const [line, subjects] = sent.data;
    const started = startJob(act, { kind, lineId: line, subjectIds: subjects });
    if (!started.ok) return { ok: false, message: sentenceOf(started.error) };
    return { ok: true, jobId: started.value.jobId };
  };
}

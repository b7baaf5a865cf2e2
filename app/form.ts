/** What a form shows after its action ran. */
export interface FormState {
  readonly status: "idle" | "done" | "refused";
  /** One or two sentences: what happened, why, what to do. */
  readonly message: string;
  /** Name of the field that the message is about; empty for the whole form. */
  readonly path: string;
  /** What was typed, for a page that comes back without scripts. */
  readonly values: Readonly<Record<string, string>>;
}

export type FormAction = (state: FormState, form: FormData) => Promise<FormState>;

export const IDLE: FormState = { status: "idle", message: "", path: "", values: {} };

export function done(message: string): FormState {
  return { status: "done", message, path: "", values: {} };
}

/** The form comes back with a sentence, beside the field `path`, and with everything that was typed. */
export function refused(message: string, form: FormData, path = ""): FormState {
  const values: Record<string, string> = {};
  for (const [name, value] of form) {
    if (typeof value === "string" && !/password/i.test(name)) values[name] = value;
  }
  return { status: "refused", message, path, values };
}

/** A field as text, trimmed; empty where it was not sent. */
export function textOf(form: FormData, name: string): string {
  const value = form.get(name);
  return typeof value === "string" ? value.trim() : "";
}

/** A field as text, or null where it was left empty. */
export function textOrNull(form: FormData, name: string): string | null {
  const text = textOf(form, name);
  return text === "" ? null : text;
}

/** Whether a box was ticked. */
export function ticked(form: FormData, name: string): boolean {
  return form.get(name) !== null;
}

/** Every value of a field that may be there more than once. */
export function textsOf(form: FormData, name: string): string[] {
  return form.getAll(name).filter((value): value is string => typeof value === "string");
}

/** The value, if it is one of a closed set. */
export function oneOf<T extends string>(options: readonly T[], value: string): T | null {
  return options.find((option) => option === value) ?? null;
}

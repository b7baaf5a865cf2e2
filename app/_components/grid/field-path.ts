import type { GridRow } from "./column.ts";

type Step =
  | { readonly kind: "field"; readonly name: string }
  | { readonly kind: "member"; readonly by: string; readonly is: string };

/** `shares[propertyId=p1].parts` → the steps to it. */
function stepsOf(path: string): Step[] {
  const steps: Step[] = [];
  for (const part of path.matchAll(/\[([^=\]]+)=([^\]]*)\]|([^.[\]]+)/g)) {
    const [, by, is, name] = part;
    if (name !== undefined) steps.push({ kind: "field", name });
    else steps.push({ kind: "member", by: by ?? "", is: is ?? "" });
  }
  return steps;
}

/** What a row holds at a path; null where some step of it is not there. */
export function valueAt(row: GridRow, path: string): unknown {
  let here: unknown = row;
  for (const step of stepsOf(path)) {
    here = step.kind === "field" ? fieldOf(here, step.name) : memberOf(here, step);
    if (here === undefined || here === null) return null;
  }
  return here;
}

/**
 * The row with another value at a path. An address that was null becomes one when something is
 * typed into it, and null again when all of it is emptied and `blank` says null. A member of a list
 * appears when it gets a value and goes when it loses it.
 */
export function withValueAt(
  row: GridRow,
  path: string,
  { value, siblings, blank }: { value: unknown; siblings: readonly string[]; blank: GridRow },
): GridRow {
  const [first, ...rest] = stepsOf(path);
  if (first === undefined || first.kind !== "field") return row;
  if (rest.length === 0) return { ...row, [first.name]: value };
  const inner = row[first.name];
  const changed = Array.isArray(inner)
    ? withMember(inner, rest, value)
    : withField(inner, { rest, value, names: namesUnder(first.name, siblings) });
  const nullable = blank[first.name] === null;
  return { ...row, [first.name]: nullable && isAllEmpty(changed) ? null : changed };
}

function fieldOf(from: unknown, name: string): unknown {
  return typeof from === "object" && from !== null
    ? (from as Record<string, unknown>)[name]
    : undefined;
}

function memberOf(from: unknown, step: { by: string; is: string }): unknown {
  if (!Array.isArray(from)) return undefined;
  return from.find((member) => fieldOf(member, step.by) === step.is);
}

function namesUnder(first: string, siblings: readonly string[]): string[] {
  return siblings
    .filter((sibling) => sibling.startsWith(`${first}.`))
    .map((sibling) => sibling.slice(first.length + 1));
}

function withField(
  inner: unknown,
  { rest, value, names }: { rest: readonly Step[]; value: unknown; names: readonly string[] },
): unknown {
  const [step] = rest;
  if (step === undefined || step.kind !== "field") return inner;
  const empty = Object.fromEntries(names.map((name) => [name, ""]));
  const old = typeof inner === "object" && inner !== null ? inner : empty;
  return { ...old, [step.name]: value };
}

function withMember(list: readonly unknown[], rest: readonly Step[], value: unknown): unknown {
  const [step, field] = rest;
  if (step?.kind !== "member" || field?.kind !== "field") return list;
  const others = list.filter((member) => fieldOf(member, step.by) !== step.is);
  if (value === null || value === "") return others;
  const old = memberOf(list, step);
  const member = {
    ...(typeof old === "object" ? old : {}),
    [step.by]: step.is,
    [field.name]: value,
  };
  return old === undefined
    ? [...list, member]
    : list.map((one) => (fieldOf(one, step.by) === step.is ? member : one));
}

function isAllEmpty(value: unknown): boolean {
  if (typeof value !== "object" || value === null) return true;
  return Object.values(value).every((one) => one === "" || one === null);
}

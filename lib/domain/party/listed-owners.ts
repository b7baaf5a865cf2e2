import type { ListedFields } from "./listed-row.ts";
import { type OwnerNamed, type OwnersNamed, ownersNamed } from "./owner-names.ts";

/** The owners of a row with how they were read. */
export interface ListedOwners extends OwnersNamed {
  readonly said: readonly string[];
}

/** All owners that a row names in its two columns; a trustee beside a named trust signs for it. */
export function listedOwners(fields: ListedFields): ListedOwners {
  const order = fields.order ?? "first-last";
  const read = [fields.owner ?? "", fields.owner2 ?? ""].map((text) => ownersNamed(text, order));
  const owners = withTrustee(onlyOnce(read.flatMap((each) => each.owners)));
  const heldWith = joined(read.map((each) => each.heldWith));
  const typed = (fields.careOf ?? "").replace(/^\s*(?:C\/O|CARE OF|ATTN:?|%)\s*/i, "").trim();
  const careOf = joined([...read.map((each) => each.careOf), ownersCase(typed)]);
  const tenure = read.flatMap((each) => each.tenure);
  const said = [...saidOf({ owners, heldWith, tenure }), ...lastNamesSaid(fields, owners)];
  return { owners, heldWith, careOf, tenure, said };
}

/** `QUINTANILLA RIVAS MARIA DEL CARMEN`: where one last name ends and a second begins, no list says. */
function lastNamesSaid(fields: ListedFields, owners: readonly OwnerNamed[]): string[] {
  if (fields.order !== "last-first" || `${fields.owner} ${fields.owner2}`.includes(",")) return [];
  const long = owners.filter(
    ({ kind, name }) =>
      kind === "person" && name.split(" ").filter((word) => /\p{L}{2}/u.test(word)).length > 3,
  );
  return long.map(({ name }) => `${name}: read with one last name. If there are two, correct it.`);
}

function ownersCase(typed: string): string {
  return typed === "" ? "" : (ownersNamed(`C/O ${typed}`, "first-last").careOf ?? "");
}

function joined(parts: readonly string[]): string {
  return [...new Set(parts.filter((part) => part !== ""))].join(", ");
}

function onlyOnce(owners: readonly OwnerNamed[]): OwnerNamed[] {
  return owners.filter(
    ({ name }, at) =>
      owners.findIndex((each) => each.name.toLowerCase() === name.toLowerCase()) === at,
  );
}

const TRUSTEE = /, (trustees?)$/;

function withTrustee(owners: readonly OwnerNamed[]): OwnerNamed[] {
  const trust = owners.find(({ kind, name }) => kind === "trust" && !TRUSTEE.test(name));
  const trustee = owners.find(({ kind, name }) => kind === "trust" && TRUSTEE.test(name));
  if (trust === undefined || trustee === undefined) return [...owners];
  const [, word = "trustee"] = TRUSTEE.exec(trustee.name) ?? [];
  const capacity = `${word} ${trustee.name.replace(TRUSTEE, "")}`;
  return owners
    .filter((each) => each !== trustee)
    .map((each) => (each === trust ? { ...each, capacity } : each));
}

function saidOf({ owners, heldWith, tenure }: Omit<OwnersNamed, "careOf">): string[] {
  const unnamed = owners.find(({ kind, name }) => kind === "trust" && TRUSTEE.test(name));
  return [
    heldWith === ""
      ? ""
      : `Title also held by: ${heldWith}. Ask for the name; every owner must sign.`,
    unnamed === undefined ? "" : "Held in a trust that the list does not name. Ask for its name.",
    tenure.length === 0 ? "" : `Kept as a note: ${tenure.join(", ")}.`,
  ].filter((words) => words !== "");
}

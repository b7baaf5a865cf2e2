import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { LIST_NAMES } from "#lib/domain/facts/list-name.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import type { Names } from "./read-detail.ts";

/** What every row of the file is called. */
export function namesIn(file: LineFile): Names {
  const names = new Map<string, string>();
  for (const list of LIST_NAMES) {
    if (list === "history") continue;
    for (const { id } of file[list]) names.set(id, nameRow(file, list, id));
  }
  for (const named of [file.authority, ...authorityParts(file)]) {
    if (named !== null) names.set(named.id, "title" in named ? named.title : named.name);
  }
  return names;
}

function authorityParts(file: LineFile): { readonly id: string; readonly title: string }[] {
  const { authority } = file;
  return authority === null ? [] : [...authority.rules, ...authority.requirements];
}

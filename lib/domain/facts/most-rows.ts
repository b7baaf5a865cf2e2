import { LIST_NAMES, type ListName } from "./list-name.ts";
import { LISTS } from "./lists.ts";
import type { Nonsense } from "./nonsense.ts";

/** Lists that are longer than a line's can be, at the first row too many. */
export function tooManyRows(file: Readonly<Record<ListName, readonly unknown[]>>): Nonsense[] {
  return LIST_NAMES.flatMap((list) => {
    const message = tooManyWords(file[list].length, list);
    return message === null ? [] : [{ list, row: LISTS[list].most, path: "", message }];
  });
}

/** Null where so many rows are taken. */
export function tooManyWords(count: number, list: ListName): string | null {
  const { most, one } = LISTS[list];
  if (count <= most) return null;
  const number = (value: number) => value.toLocaleString("en-US");
  return `These are ${number(count)} rows, and one line takes at most ${number(most)} of them (${one}); leave out what does not belong to this line, or make two lines of it`;
}

import type { HistoryEntry } from "#lib/domain/facts/history-entry.ts";

/** The entries that hold every word of the search, whoever's accents and capitals; newest first. */
export function matching(
  history: readonly HistoryEntry[],
  { words, by }: { readonly words: string; readonly by: string },
): HistoryEntry[] {
  const wanted = plain(words)
    .split(/\s+/)
    .filter((word) => word !== "");
  return history
    .filter((entry) => by === "" || entry.by === by)
    .filter((entry) => {
      const text = plain(`${entry.sentence} ${entry.by} ${entry.action} ${entry.detail}`);
      return wanted.every((word) => text.includes(word));
    })
    .toSorted((one, other) => other.at.localeCompare(one.at));
}

/** Everybody who ever wrote to the file, by name. */
export function peopleIn(history: readonly HistoryEntry[]): string[] {
  return [...new Set(history.map((entry) => entry.by))].toSorted((one, other) =>
    one.localeCompare(other),
  );
}

function plain(text: string): string {
  return text.normalize("NFD").replaceAll(/\p{M}/gu, "").replaceAll(/ł/gi, "l").toLowerCase();
}

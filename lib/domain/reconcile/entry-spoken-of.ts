import type { RecordEntry } from "../facts/record.ts";
import type { EntryFinding } from "../findings/report.ts";
import type { Cft } from "../length/station.ts";
import type { RecordSaid } from "../narration/log/draft.ts";
import { distanceIn } from "../narration/meaning/distance-in.ts";

/** Farther from an entry, hundredths of a foot, what was said hardly speaks of it. */
const ABOUT = 500;

type Said = Pick<RecordSaid, "aboutRecord" | "fromMain">;

/**
 * The record entry that words about the record speak of. Where they name a distance (`the card has it
 * at sixteen`) it is the entry with that distance as written on its record, or at that station; else
 * the one nearest to where the row lies, on the line’s own axis, whichever end the record measures from.
 * Null where none is within 5 ft, where distance and station tell of two, or where the words say that
 * it is on no record.
 */
export function entrySpokenOf(
  entries: readonly RecordEntry[],
  findings: readonly EntryFinding[],
  { aboutRecord, fromMain }: Said,
): RecordEntry | null {
  const stations = new Map(findings.map((each) => [each.entryId, each.recordStation]));
  const byStation = (at: Cft) => nearest(entries, at, ({ id }) => stations.get(id) ?? null);
  const told = toldOnRecord(aboutRecord, fromMain);
  if (told !== null) {
    const written = nearest(entries, told, ({ distance }) => distance);
    const there = byStation(told);
    return written !== null && there !== null && written !== there ? null : (written ?? there);
  }
  return fromMain === null || DENIED.test(aboutRecord) ? null : byStation(fromMain);
}

/** What the words give as the record’s own distance: said after the record is named, else before, but not the row’s. */
function toldOnRecord(words: string, fromMain: Cft | null): Cft | null {
  const named = RECORD.exec(words);
  const after = named === null ? null : distanceIn(words.slice(named.index));
  if (after !== null) return after;
  const before = distanceIn(words);
  return before === fromMain ? null : before;
}

const RECORD =
  /\b(card|permit|record|records|drawing|map|plan|plans|as-?built|tarjeta|permiso|plano)\b/i;

const DENIED =
  /\b(not|isn't|isn’t|ain't|ain’t|no|nothing|never|doesn't|doesn’t|don't|don’t|wasn't|wasn’t|negative)\b|\bno está\b/i;

function nearest(
  entries: readonly RecordEntry[],
  at: Cft,
  placeOf: (entry: RecordEntry) => Cft | null,
): RecordEntry | null {
  const near = entries
    .flatMap((entry) => {
      const place = placeOf(entry);
      return place === null ? [] : [{ entry, off: Math.abs(place - at) }];
    })
    .filter(({ off }) => off <= ABOUT)
    .toSorted((a, b) => a.off - b.off);
  return near[0]?.entry ?? null;
}

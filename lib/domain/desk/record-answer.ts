import type { LineFile } from "../facts/line-file.ts";
import type { PermitRecord, RecordKind } from "../facts/record.ts";
import { forCount, sayCount, sayParts } from "../say/count.ts";
import { sayList } from "../say/say-list.ts";
import { type Opening, PRESSING, type Reply, replyWith } from "./reply.ts";

const KIND_WORDS: Record<RecordKind, string> = {
  card: "card",
  drawing: "drawing",
  permit: "permit",
  "as-built": "as-built",
  other: "record",
};

/** `5 entries on 2 cards, 1958 and 1994`. */
export function recordAnswer(file: LineFile): Reply {
  const { records, entries } = file;
  if (records.length === 0)
    return replyWith("No record yet", [
      {
        closes: "Get the authority’s card or drawing of the line and enter it",
        pressing: PRESSING.stalls,
      },
    ]);
  const unplaced = entries.filter(({ distance }) => distance === null).length;
  const sentence = sayParts([
    `${sayCount(entries.length, "entry", "entries")} on ${recordWords(records)}`,
    unplaced === 0 ? "" : `${unplaced} without a distance`,
  ]);
  return replyWith(sentence, openings(file));
}

function recordWords(records: readonly PermitRecord[]): string {
  const kinds = new Set(records.map(({ kind }) => kind));
  const [only] = kinds.size === 1 ? kinds : [];
  const counted = sayCount(records.length, only === undefined ? "record" : KIND_WORDS[only]);
  const years = [...new Set(records.flatMap(({ dated }) => /\d{4}/.exec(dated)?.[0] ?? []))];
  return years.length === 0 ? counted : `${counted}, ${sayList(years.toSorted(), 4)}`;
}

/** Its title; with its number where another record has the same title. */
function recordWord(record: PermitRecord, among: readonly PermitRecord[]): string {
  const title = record.title.trim() || `the ${KIND_WORDS[record.kind]}`;
  const isOnly = among.every(({ id, title: other }) => id === record.id || other !== record.title);
  return isOnly ? title : `${title} ${record.number}`.trim();
}

function openings(file: LineFile): Opening[] {
  return [...startless(file), ...bareRecords(file)];
}

/** Records with distances of which nobody said where they start: not one can be compared. */
function startless({ records, entries }: LineFile): Opening[] {
  const unsaid = records.filter(
    ({ id, measuredFrom }) =>
      measuredFrom === "unknown" &&
      entries.some(({ recordId, distance }) => recordId === id && distance !== null),
  );
  if (unsaid.length === 0) return [];
  const titles = sayList(unsaid.map((record) => recordWord(record, records)));
  const it = forCount(unsaid.length, "it measures", "they measure");
  return [
    {
      closes: `Read off ${titles} where ${it} from, the main or the upper end`,
      pressing: PRESSING.stalls,
    },
  ];
}

function bareRecords({ records, entries }: LineFile): Opening[] {
  const bare = records.filter(({ id }) => !entries.some(({ recordId }) => recordId === id));
  if (bare.length === 0) return [];
  const titles = sayList(bare.map((record) => recordWord(record, records)));
  const it = forCount(bare.length, "it shows", "they show");
  return [
    {
      closes: `Enter the connections on ${titles}, or note that ${it} none`,
      pressing: PRESSING.ordinary,
    },
  ];
}

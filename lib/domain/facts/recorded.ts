import type { LineFile } from "./line-file.ts";

/** Lists whose rows count as proof, and what of them may change without being told row by row. */
const PROVEN = {
  ledger: [],
  consents: [],
  replies: [],
  deliveries: [],
  permitSteps: [],
  agreementSteps: [],
  waivers: [],
  splits: ["sentAt"],
} as const satisfies Partial<Record<keyof LineFile, readonly string[]>>;

type Proven = keyof typeof PROVEN;

/** By what fields a recorded row of a list that is never shortened is known. */
const NEVER_SHORTENED = {
  ledger: ["number", "enteredBy"],
  consents: ["partyId", "stateOn"],
  replies: ["noticeId", "receivedOn"],
  deliveries: ["noticeId", "sentOn"],
  permitSteps: ["permitId", "on"],
  agreementSteps: ["agreementId", "on"],
  splits: ["basis", "shares"],
  signatures: ["documentHash", "hash"],
} as const satisfies Partial<Record<keyof LineFile, readonly string[]>>;

/** A row that the history recorded and that is no longer there. */
export interface Gone {
  readonly list: keyof typeof NEVER_SHORTENED;
  readonly id: string;
}

/** A row that is not as the history recorded it. */
export interface Contradiction {
  readonly list: Proven;
  readonly id: string;
  /** The fields in which it differs from what was recorded last. */
  readonly fields: readonly string[];
}

type Row = Readonly<Record<string, unknown>>;

/**
 * Rows that count as proof and are not what the line's own history says was written, or are gone:
 * somebody changed them without the program. A row of which the history keeps no copy is not judged;
 * `unrecorded` counts those.
 */
export function contradictions(file: LineFile): {
  readonly found: readonly Contradiction[];
  readonly gone: readonly Gone[];
  readonly unrecorded: number;
} {
  const recorded = recordedRows(file);
  const found: Contradiction[] = [];
  let unrecorded = 0;
  for (const list of Object.keys(PROVEN) as Proven[]) {
    const free: readonly string[] = PROVEN[list];
    for (const row of file[list] as unknown as readonly (Row & { readonly id: string })[]) {
      const copies = recorded.get(row.id) ?? [];
      const last = copies.at(-1);
      if (last === undefined) unrecorded += 1;
      else if (!copies.some((copy) => differing(row, copy, free).length === 0))
        found.push({ list, id: row.id, fields: differing(row, last, free) });
    }
  }
  return { found, gone: goneFrom(file, recorded), unrecorded };
}

function goneFrom(file: LineFile, recorded: ReadonlyMap<string, readonly Row[]>): Gone[] {
  const lists = Object.keys(NEVER_SHORTENED) as Gone["list"][];
  const there = new Set(
    lists.flatMap((list) => (file[list] as readonly { readonly id: string }[]).map(({ id }) => id)),
  );
  return [...recorded].flatMap(([id, copies]) => {
    if (there.has(id)) return [];
    const list = lists.find((each) =>
      copies.some((copy) => NEVER_SHORTENED[each].every((field) => field in copy)),
    );
    return list === undefined ? [] : [{ list, id }];
  });
}

function differing(row: Row, copy: Row, free: readonly string[]): string[] {
  return Object.keys(row).filter(
    (field) =>
      field in copy &&
      !free.includes(field) &&
      JSON.stringify(row[field]) !== JSON.stringify(copy[field]),
  );
}

/** Every object with an id that the history keeps, oldest first. */
function recordedRows({ history }: Pick<LineFile, "history">): Map<string, Row[]> {
  const rows = new Map<string, Row[]>();
  for (const { detail } of history) collect(parsed(detail), rows);
  return rows;
}

function collect(value: unknown, into: Map<string, Row[]>): void {
  if (typeof value !== "object" || value === null) return;
  if (!Array.isArray(value)) {
    const row = value as Row;
    const { id } = row;
    if (typeof id === "string" && Object.keys(row).length > 2)
      into.set(id, [...(into.get(id) ?? []), row]);
  }
  for (const inner of Object.values(value)) collect(inner, into);
}

function parsed(detail: string): unknown {
  try {
    return JSON.parse(detail);
  } catch {
    return null;
  }
}

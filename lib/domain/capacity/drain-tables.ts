import type { PlumbingCode, SlopeName, TableSource } from "../facts/plumbing-code.ts";

/** Largest load in drainage fixture units, by inside diameter in inches and slope. */
export interface LoadTable extends TableSource {
  readonly rows: readonly LoadRow[];
}

export interface LoadRow {
  readonly diameter: number;
  readonly most: Partial<Record<SlopeName, number>>;
}

/** As public transcriptions of the model codes have the tables. */
export const BUILDING_SEWER_LOADS: Record<PlumbingCode, LoadTable> = {
  ipc: {
    title: "IPC Table 710.1(1), building drains and sewers",
    edition: "model code, 2018 and 2021 read alike",
    source: "International Plumbing Code",
    rows: [
      ipcRow(1.25, [null, null, 1, 1]),
      ipcRow(1.5, [null, null, 3, 3]),
      ipcRow(2, [null, null, 21, 26]),
      ipcRow(2.5, [null, null, 24, 31]),
      ipcRow(3, [null, 36, 42, 50]),
      ipcRow(4, [null, 180, 216, 250]),
      ipcRow(5, [null, 390, 480, 575]),
      ipcRow(6, [null, 700, 840, 1000]),
      ipcRow(8, [1400, 1600, 1920, 2300]),
      ipcRow(10, [2500, 2900, 3500, 4200]),
      ipcRow(12, [3900, 4600, 5600, 6700]),
      ipcRow(15, [7000, 8300, 10_000, 12_000]),
    ],
  },
  upc: {
    title: "UPC Table 703.2, horizontal drainage",
    edition: "model code, 1/4 in per foot; larger or flatter pipe is in other tables",
    source: "Uniform Plumbing Code",
    rows: [
      upcRow(1.5, 1),
      upcRow(2, 8),
      upcRow(2.5, 14),
      upcRow(3, 35),
      upcRow(4, 216),
      upcRow(5, 428),
      upcRow(6, 720),
    ],
  },
};

function ipcRow(
  diameter: number,
  most: readonly [number | null, number | null, number | null, number | null],
): LoadRow {
  const names: readonly SlopeName[] = [
    "sixteenth-inch",
    "eighth-inch",
    "quarter-inch",
    "half-inch",
  ];
  const pairs = names.flatMap((name, place) => {
    const load = most[place] ?? null;
    return load === null ? [] : [[name, load] as const];
  });
  return { diameter, most: Object.fromEntries(pairs) };
}

function upcRow(diameter: number, atQuarter: number): LoadRow {
  return { diameter, most: { "quarter-inch": atQuarter } };
}

/** The least slope by diameter. */
interface SlopeTable extends TableSource {
  /** Rising; a row holds up to and including its diameter. */
  readonly rows: readonly { readonly upTo: number; readonly least: SlopeName }[];
}

const LEAST_SLOPES: Record<PlumbingCode, SlopeTable> = {
  ipc: {
    title: "IPC Table 704.1, slope of horizontal drainage pipe",
    edition: "as adopted in Chicago 18-29-704.1",
    source: "https://codelibrary.amlegal.com/codes/chicago/latest/chicago_il/0-0-0-2691996",
    rows: [
      { upTo: 2.5, least: "quarter-inch" },
      { upTo: 7.99, least: "eighth-inch" },
      { upTo: Number.POSITIVE_INFINITY, least: "sixteenth-inch" },
    ],
  },
  upc: {
    title: "UPC 708, grade of horizontal drainage",
    edition:
      "model code; 1/8 in per foot needs the authority’s approval, where 1/4 in is not possible",
    source: "Uniform Plumbing Code, as public pages give it",
    rows: [{ upTo: Number.POSITIVE_INFINITY, least: "quarter-inch" }],
  },
};

/** The least slope that a code asks for a pipe of this inside diameter (inches). */
export function leastSlope(code: PlumbingCode, diameter: number): SlopeName {
  const row = LEAST_SLOPES[code].rows.find((each) => diameter <= each.upTo);
  return row?.least ?? "quarter-inch";
}

/** Where the least slopes of a code are written. */
export function leastSlopeSource(code: PlumbingCode): TableSource {
  return LEAST_SLOPES[code];
}

import type { SlopeName } from "./slope.ts";

export const PLUMBING_CODES = ["ipc", "upc"] as const;
export type PlumbingCode = (typeof PLUMBING_CODES)[number];

/** How sure the figures are: read in a public copy, or written down from memory. */
export type Certainty = "read-in-a-public-copy" | "from-memory" | "partly-from-memory";

/** Where a table comes from. States and cities amend it: the authority's own edition decides. */
export interface TableSource {
  readonly title: string;
  readonly edition: string;
  readonly source: string;
  readonly certainty: Certainty;
}

/** Largest load in drainage fixture units, by inside diameter in inches and slope. */
export interface LoadTable extends TableSource {
  readonly rows: readonly LoadRow[];
}

export interface LoadRow {
  readonly diameter: number;
  readonly most: Partial<Record<SlopeName, number>>;
}

export const BUILDING_SEWER_LOADS: Record<PlumbingCode, LoadTable> = {
  ipc: {
    title: "IPC Table 710.1(1), building drains and sewers",
    edition: "model code, 2018 and 2021 read alike",
    source: "International Plumbing Code; rows for 2 to 8 in read in a public transcription",
    certainty: "partly-from-memory",
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
    title: "UPC Tables 703.2 and 717.1, horizontal drainage and building sewers",
    edition: "model code; the footnote for 1/8 in per foot (0.8 of the load) is applied",
    source: "Uniform Plumbing Code; 4 and 8 in of 703.2 read in a public discussion of the table",
    certainty: "partly-from-memory",
    rows: [
      upcRow(1.5, 1),
      upcRow(2, 8),
      upcRow(2.5, 14),
      upcRow(3, 35),
      upcRow(4, 216),
      upcRow(5, 428),
      upcRow(6, 720),
      { diameter: 8, most: { "sixteenth-inch": 1950, "eighth-inch": 2800, "quarter-inch": 3900 } },
      { diameter: 10, most: { "sixteenth-inch": 3400, "eighth-inch": 4900, "quarter-inch": 6800 } },
      {
        diameter: 12,
        most: { "sixteenth-inch": 5600, "eighth-inch": 8000, "quarter-inch": 11_200 },
      },
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

/** At 1/8 in per foot the UPC allows 0.8 of the load, and only from 4 in on. */
function upcRow(diameter: number, atQuarter: number): LoadRow {
  const most: Partial<Record<SlopeName, number>> = { "quarter-inch": atQuarter };
  if (diameter >= 4) most["eighth-inch"] = Math.floor((atQuarter * 8) / 10);
  return { diameter, most };
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
    certainty: "read-in-a-public-copy",
    rows: [
      { upTo: 2.5, least: "quarter-inch" },
      { upTo: 7.99, least: "eighth-inch" },
      { upTo: Number.POSITIVE_INFINITY, least: "sixteenth-inch" },
    ],
  },
  upc: {
    title: "UPC 708.1 and 718.1, grade of horizontal drainage",
    edition: "model code; 1/8 in per foot for 4 in and larger needs the authority’s approval",
    source: "Uniform Plumbing Code, quoted in a public discussion",
    certainty: "partly-from-memory",
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

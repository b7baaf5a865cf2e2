import fc from "fast-check";
import { expect, test } from "vitest";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { LETTER_KINDS, type LetterKind } from "#lib/domain/facts/notice.ts";
import type { SplitOutcome } from "#lib/domain/findings/outcome.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { composeLetter } from "#lib/domain/paper/compose.ts";
import type { Letter, LetterBlock } from "#lib/domain/paper/letter.ts";
import { letterText } from "#lib/domain/paper/text.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { LANGUAGES } from "#lib/domain/say/language.ts";
import {
  aFile,
  anAddress,
  anOffice,
  aParty,
  aProperty,
  aRole,
  aScopeItem,
  aSplit,
  aTieIn,
} from "#tests/support/file.ts";
import { SAMPLE_AMOUNTS, sampleLine, sampleNotice } from "#tests/support/sample-line.ts";

type Overrides = Parameters<typeof sampleNotice>[2];

function letterTo(
  [party, property]: readonly [string, string | null],
  kind: LetterKind,
  overrides: Overrides = {},
): Letter {
  const notice = sampleNotice(party, property, { kind, tieInId: "T3", ...overrides });
  return composeLetter({ ...sampleLine(), notice });
}

function everyLetter(overrides: Overrides = {}): Letter[] {
  return LETTER_KINDS.flatMap((kind) =>
    LANGUAGES.map((language) => letterTo(["lodz", "p18"], kind, { language, ...overrides })),
  );
}

function cautionTitles(letter: Letter): string[] {
  return letter.blocks.flatMap((block) => (block.kind === "caution" ? [block.title] : []));
}

function moneyIn(text: string): Set<string> {
  return new Set(text.match(/\$[\d,]+\.\d\d/g) ?? []);
}

const STANDING_CAUTIONS: Record<LetterKind, readonly string[]> = {
  finding: [
    "How far this can be relied on",
    "Please do not cap or plug any drain yet",
    "A gas pipe may run through a sewer",
  ],
  "tie-in-inquiry": [
    "How far this can be relied on",
    "Please do not cap or plug any drain yet",
    "Not legal advice",
  ],
  "test-visit": ["About the dye", "If smoke is used"],
  "proposed-split": ["A proposal, not a decision", "How far this can be relied on"],
  "entry-consent": ["What this consent does not do", "Open trench"],
  "joint-agreement": ["Not legal advice"],
  "work-start": ["Open trench", "Sewage carries disease", "A gas pipe may run through a sewer"],
  "drain-pause": ["Do not use water or toilets during the stated time", "Sewage carries disease"],
  spill: ["Sewage carries disease", "A gas pipe may run through a sewer"],
  "share-demand": ["Not legal advice", "How far this can be relied on"],
  "authority-response": ["How far this can be relied on", "Not legal advice"],
  "close-out": ["Not legal advice", "How far this can be relied on"],
  "drains-back": ["Sewage carries disease"],
  meeting: ["Not legal advice"],
  "landlord-entry": ["Not legal advice"],
  "street-parking": ["Open trench"],
  "change-order": ["Not legal advice"],
  "invoice-cover": ["Not legal advice"],
  "statutory-notice": ["Not legal advice"],
};

test("composeLetter() puts the standing cautions into every kind, whatever the office adds", () => {
  for (const kind of LETTER_KINDS) {
    for (const ownWords of ["", "Leave out all warnings, please.\n\nThank you."]) {
      const letter = letterTo(["lodz", "p18"], kind, { ownWords });
      expect(cautionTitles(letter)).toEqual(expect.arrayContaining([...STANDING_CAUTIONS[kind]]));
    }
  }
});

test("composeLetter() has as many cautions in Spanish as in English", () => {
  for (const kind of LETTER_KINDS) {
    const [english, spanish] = LANGUAGES.map((language) =>
      cautionTitles(letterTo(["lodz", "p18"], kind, { language })),
    );
    expect(spanish).toHaveLength(english?.length ?? 0);
    expect(spanish).not.toEqual(english);
  }
});

test("composeLetter() warns of a crossing where a run could not rule one out, and only there", () => {
  const { file, report, office } = sampleLine();
  const notice = sampleNotice("lodz", "p18", { kind: "finding" });
  const clear = {
    ...file,
    runs: file.runs.map((run) => ({ ...run, crossingSeen: "no" as const })),
  };
  const title = "Something crosses this pipe";
  expect(cautionTitles(composeLetter({ file, report, office, notice }))).toContain(title);
  expect(cautionTitles(composeLetter({ file: clear, report, office, notice }))).not.toContain(
    title,
  );
});

test("composeLetter() says no other party's amount in any kind of letter", () => {
  const others = Object.values(SAMPLE_AMOUNTS).filter((amount) => amount !== SAMPLE_AMOUNTS.p18);
  for (const letter of everyLetter()) {
    const said = moneyIn(JSON.stringify(letter));
    for (const amount of others) expect(said).not.toContain(formatCents(amount));
  }
});

test("composeLetter() never tells neighbors what somebody needs, notes, or what caused the fault", () => {
  const { file, report, office } = sampleLine();
  const secret = {
    ...file,
    parties: file.parties.map((party) => ({ ...party, needs: "SECRET", note: "SECRET" })),
    properties: file.properties.map((property) => ({ ...property, note: "SECRET" })),
    scope: file.scope.map((item) => ({ ...item, allegedCause: "SECRET", note: "SECRET" })),
    observations: file.observations.map((seen) => ({ ...seen, note: "SECRET" })),
    tests: file.tests.map((test) => ({ ...test, note: "SECRET" })),
  };
  for (const kind of LETTER_KINDS) {
    const notice = sampleNotice("lodz", "p18", { kind, tieInId: "T3" });
    const letter = composeLetter({ file: secret, report, office, notice });
    expect(JSON.stringify(letter)).not.toContain("SECRET");
  }
});

test("composeLetter() blames nobody and promises no ruling, in any letter", () => {
  const blame = /\b(at fault|your fault|guilty|illegal|violation|culpa|culpable|ilegal)\b/i;
  for (const letter of everyLetter()) expect(JSON.stringify(letter)).not.toMatch(blame);
});

test("composeLetter() names nobody's address for an undocumented tie-in below level 5", () => {
  const { file, report, office } = sampleLine();
  const guessed = {
    ...report,
    tieIns: report.tieIns.map((finding) =>
      finding.tieIn.id === "T3" ? { ...finding, propertyId: "p11", level: 4 as const } : finding,
    ),
  };
  for (const kind of LETTER_KINDS) {
    const notice = sampleNotice("ottilie", "p12", { kind, tieInId: null });
    const letter = composeLetter({ file, report: guessed, office, notice });
    const agreement = kind === "joint-agreement";
    if (!agreement) expect(JSON.stringify(letter)).not.toContain("11 Ropewalk Lane");
  }
});

test("composeLetter() gives a finding its days, its people and what is not yet known", () => {
  const text = letterText(letterTo(["ottilie", "p12"], "finding")).replace(/\s+/g, " ");
  expect(text).toContain("On November 3, 2026 and November 10, 2026 we ran a camera");
  expect(text).toContain("Marek Sandoval");
  expect(text).toContain("12 Fennel Row drains into this pipe at T1, 18.2 ft");
  expect(text).toContain("We saw a connection, T3, that is not on any permit record");
  expect(text).toContain("that the camera did not see: House 20");
  expect(text).toContain(
    "the condition of the pipe 33.0 to 39.0 ft from the city’s main: under water",
  );
  expect(text).toContain(
    "It is not clear who is responsible for the pipe 77.25 to 96.0 ft from the city’s main",
  );
  expect(text).toContain("It accuses no one, and we are not asking for money.");
});

test("composeLetter() tells the owner of a crossed lot that the building is not shown to use the pipe", () => {
  const text = letterText(letterTo(["georgina", "p9"], "finding")).replace(/\s+/g, " ");
  expect(text.match(/crosses the lot of 9 Ropewalk Lane/g)).toHaveLength(1);
  expect(text).toContain("Nothing seen so far shows that the building there uses it.");
});

test("composeLetter() asks about the tie-in without saying whose it is", () => {
  const text = letterText(letterTo(["nils", "p11"], "tie-in-inquiry")).replace(/\s+/g, " ");
  expect(text).toContain(
    "joins the shared sewer pipe 43.1 ft ± 1.0 ft from the city’s main, on the right if you look upstream, away from the public main",
  );
  expect(text).toContain("We are not saying the branch is yours.");
});

test("composeLetter() shows the reader's share, its steps and its sum in a proposed split", () => {
  const letter = letterTo(["lodz", "p18"], "proposed-split");
  expect(letter.blocks).toContainEqual({
    kind: "amount",
    words: "Share of 18 Fennel Row",
    amount: "$7,200.00",
  });
  const steps = tables(letter).find(({ head }) => head[2] === "Shared");
  expect(steps?.rows).toEqual([
    ["Replace pipe, 10.0 to 30.0 ft", "$950.00", "you only", "$950.00"],
    ["Mend broken place, 61.5 ft", "$6,250.00", "you only", "$6,250.00"],
    ["Total", "", "", "$7,200.00"],
  ]);
});

test("composeLetter() rounds every step to the cent, says so, and leaves fractions to the statement", () => {
  const letter = letterTo(["ottilie", "p12"], "proposed-split");
  const steps = tables(letter).find(({ head }) => head[2] === "Shared");
  expect(steps?.rows.map((row) => row.at(-1))).toEqual(["$205.00", "$2,978.33", "$3,183.33"]);
  expect(JSON.stringify(letter)).not.toContain("¢");
  expect(letterText(letter).replace(/\s+/g, " ")).toContain(
    "Amounts are rounded to the cent. A leftover cent goes to the shares rounded down the most.",
  );
});

test("composeLetter() gives a Spanish reader the same steps as an English one", () => {
  const steps = (language: "en" | "es") =>
    tables(letterTo(["jesus", "p14"], "proposed-split", { language }))
      .find(({ totals }) => totals === 1)
      ?.rows.map((row) => [row[1], row[3]]);
  expect(steps("en")?.length).toBeGreaterThan(1);
  expect(steps("es")).toEqual(steps("en"));
});

test("composeLetter() opens on what is asked and by when, before the office’s own note", () => {
  const asks: Partial<Record<LetterKind, RegExp>> = {
    finding: /^Please tell us by Wednesday, December 9, 2026 what you know/,
    "tie-in-inquiry": /^Please tell us by Wednesday, December 9, 2026 where the drains/,
    "test-visit": /^Please tell us by Wednesday, December 9, 2026 whether we may come/,
    "proposed-split": /^Please tell us by Wednesday, December 9, 2026 .* \$7,200.00/,
    "entry-consent": /^Please tell us by Wednesday, December 9, 2026 whether we may enter/,
    "joint-agreement": /^Please tell us by Wednesday, December 9, 2026 whether you will sign/,
    "work-start": /^Work starts on Wednesday, December 2, 2026/,
    "drain-pause": /^Do not let any water .* Monday, December 7, 2026, 8:00 AM to 3:30 PM/,
    "share-demand": /^Please pay \$[\d,.]+ .* by Wednesday, December 9, 2026/,
  };
  for (const kind of LETTER_KINDS) {
    const [first, second] = letterTo(["lodz", "p18"], kind, { ownWords: "A note." }).blocks;
    const wanted = asks[kind];
    if (wanted === undefined) continue;
    expect(first).toMatchObject({ lead: true, text: expect.stringMatching(wanted) });
    expect(second).toMatchObject({ kind: "paragraph", text: "A note." });
  }
});

test("composeLetter() leaves the steps out, and says so, once the facts have changed", () => {
  const { file, report, office } = sampleLine();
  const stale = {
    ...report,
    splits: report.splits.map((outcome) => ({ ...outcome, basis: "other" })),
  };
  const notice = sampleNotice("lodz", "p18", { kind: "proposed-split" });
  const letter = composeLetter({ file, report: stale, office, notice });
  expect(tables(letter).some(({ head }) => head[2] === "Shared")).toBe(false);
  expect(letterText(letter).replace(/\s+/g, " ")).toContain(
    "the facts have changed since the amounts were set",
  );
  expect(letterText(letter)).toContain("$7,200.00");
});

function tables(letter: Letter): Extract<LetterBlock, { kind: "table" }>[] {
  return letter.blocks.filter((block) => block.kind === "table");
}

test("composeLetter() writes to a tenant at the unit, in capitals, in five lines at most", () => {
  const letter = letterTo(["tenant", "p16"], "drain-pause");
  expect(letter.to[0]).toBe("BEATRIX HOLLOWAY");
  expect(letter.to.join(" ")).toMatch(/16 FENNEL ROW.*UNIT B/);
  expect(letter.to.length).toBeLessThanOrEqual(5);
});

test("composeLetter() writes to the mailing address where there is one", () => {
  expect(letterTo(["lodz", "p18"], "finding").to).toContain("PO BOX 118");
});

test("composeLetter() says in Spanish what it says in English", () => {
  const letter = letterTo(["jesus", "p14"], "proposed-split");
  expect(letter.language).toBe("es");
  expect(letter.date).toBe("25 de noviembre de 2026");
  expect(letter.answerBy).toBe("miércoles 9 de diciembre de 2026");
  expect(letterText(letter)).toContain("Parte de 14 Fennel Row: $3,183.33");
});

test("composeLetter() says “not set yet” where a day is missing, and never a guess", () => {
  const { file, report, office } = sampleLine();
  const bare = { ...file, events: [], locateTickets: [] };
  for (const kind of ["test-visit", "work-start", "drain-pause"] as const) {
    const notice = sampleNotice("tenant", "p16", { kind, tieInId: "T3" });
    expect(letterText(composeLetter({ file: bare, report, office, notice }))).toMatch(
      /not set yet/,
    );
  }
});

test("composeLetter() ends with signature and slip where an answer is asked for", () => {
  const kinds = letterTo(["lodz", "p18"], "proposed-split").blocks.map(({ kind }) => kind);
  expect(kinds.slice(-2)).toEqual(["signature", "answer-slip"]);
  const closing = letterTo(["lodz", "p18"], "close-out").blocks.map(({ kind }) => kind);
  expect(closing).not.toContain("answer-slip");
});

test("composeLetter() throws on a notice to a party that the file has not", () => {
  expect(() => letterTo(["nobody", "p18"], "finding")).toThrow("unknown party nobody");
});

/** A line with houses every few feet, odd prices, and the split that its rule gives. */
const lines = fc
  .record({
    houses: fc.integer({ min: 2, max: 6 }),
    rate: fc.integer({ min: 1_001, max: 99_999 }),
    general: fc.integer({ min: 10_007, max: 999_983 }),
    gap: fc.integer({ min: 400, max: 1_700 }),
    rule: fc.constantFrom("portion-used" as const, "equal" as const, "weights" as const),
  })
  .map(({ houses, rate, general, gap, rule }) => {
    const ids = Array.from({ length: houses }, (_, index) => `h${index + 1}`);
    const file = aFile({
      line: { upperEnd: (houses + 1) * gap },
      properties: ids.map((id, index) =>
        aProperty(id, { address: anAddress(`${index + 10} Fennel Row`), weight: index + 3 }),
      ),
      parties: ids.map((id) => aParty(`owner-${id}`)),
      roles: ids.map((id) => aRole(`owner-${id}`, id)),
      tieIns: ids.map((id, index) =>
        aTieIn(`T${index + 1}`, {
          station: (index + 1) * gap,
          propertyId: id,
          ownerAccepted: true,
        }),
      ),
      scope: [
        aScopeItem("pipe", { from: 0, to: houses * gap, quantity: houses * gap, rate }),
        aScopeItem("general", {
          place: "general",
          from: null,
          to: null,
          quantity: 100,
          unit: "job",
          rate: general,
        }),
      ],
    });
    return { file, rule, ids };
  });

function withSplit(file: LineFile, outcome: SplitOutcome): LineFile {
  const version = aSplit("chosen", {
    ...outcome.choice,
    total: outcome.total,
    basis: outcome.basis,
    shares: outcome.shares.map(({ propertyId, tieInId, amount, recoverable }) => ({
      propertyId,
      tieInId,
      amount,
      recoverable,
    })),
  });
  return { ...file, splits: [version] };
}

test("composeLetter() says only its reader's amounts, on any line and under any rule", () => {
  fc.assert(
    fc.property(
      lines,
      fc.constantFrom(...LETTER_KINDS),
      fc.constantFrom(...LANGUAGES),
      (made, kind, language) => {
        const outcome = reportOn(made.file, "2026-11-25").splits.find(
          ({ choice }) => choice.rule === made.rule,
        );
        expect(outcome?.refusal).toBeNull();
        if (!outcome) return;
        const file = withSplit(made.file, outcome);
        const report = reportOn(file, "2026-11-25");
        for (const id of made.ids) {
          const notice = sampleNotice(`owner-${id}`, id, { kind, language, splitId: "chosen" });
          const letter = composeLetter({ file, report, office: anOffice(), notice });
          const said = moneyIn(JSON.stringify(letter));
          for (const secret of secretsFrom(report.splits, id)) expect(said).not.toContain(secret);
        }
      },
    ),
    { numRuns: 60 },
  );
});

/** Amounts of others under any rule, less those that are also the reader's own or the job's. */
function secretsFrom(splits: readonly SplitOutcome[], reader: string): string[] {
  const worked = splits.filter(({ refusal }) => refusal === null);
  const amounts = (mine: boolean) =>
    worked.flatMap(({ shares }) =>
      shares.filter(({ propertyId }) => (propertyId === reader) === mine),
    );
  const own = new Set(
    amounts(true).flatMap(({ amount, exact, steps }) => [
      formatCents(amount),
      wholeCents(exact),
      ...moneyIn(JSON.stringify(steps)),
      ...steps.map((step) => wholeCents(step.exact)),
    ]),
  );
  const job = new Set(worked.map(({ total }) => formatCents(total)));
  return amounts(false)
    .map(({ amount }) => formatCents(amount))
    .filter((amount) => !own.has(amount) && !job.has(amount) && amount !== "$0.00");
}

function wholeCents(exact: string): string {
  const [top = "0", bottom = "1"] = exact.split("/");
  return formatCents(Number(BigInt(top) / BigInt(bottom)));
}

import { describe, expect, test } from "vitest";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { LetterKind } from "#lib/domain/facts/notice.ts";
import { composeLetter } from "#lib/domain/paper/compose.ts";
import { letterGaps } from "#lib/domain/paper/gaps.ts";
import { recipientsOf } from "#lib/domain/paper/recipients.ts";
import { letterText } from "#lib/domain/paper/text.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { LANGUAGES, type Language } from "#lib/domain/say/language.ts";
import {
  aConsent,
  aFile,
  aNotice,
  anEvent,
  anOffice,
  aParty,
  aProperty,
  aRole,
  aScopeItem,
  aSpillStep,
  aSplit,
  aTestDay,
  aTestStop,
} from "#tests/support/file.ts";
import { aLedgerEntry } from "#tests/support/ledger.ts";

const TODAY = "2026-11-25";
const OFFICE = anOffice({ payee: "Example Drain LLC", payMethods: ["check"] });

/** 12 is lived in by its owner; 14 is let to Bea. */
function aRow(rest: Omit<Partial<LineFile>, "line"> = {}): LineFile {
  return aFile({
    properties: [aProperty("12"), aProperty("14")],
    parties: [aParty("ott"), aParty("ned"), aParty("bea")],
    roles: [
      aRole("ott", "12"),
      aRole("ott", "12", { role: "occupant" }),
      aRole("ned", "14"),
      aRole("bea", "14", { role: "occupant" }),
    ],
    ...rest,
  });
}

interface Wish {
  readonly to?: readonly [partyId: string, propertyId: string];
  readonly language?: Language;
}

function input(file: LineFile, kind: LetterKind, { to = ["ott", "12"], language = "en" }: Wish) {
  const [partyId, propertyId] = to;
  const splitId = file.splits.at(-1)?.id ?? null;
  const notice = aNotice("n", { kind, partyId, propertyId, splitId, language });
  return { file, report: reportOn(file, TODAY), office: OFFICE, notice };
}

function textOf(file: LineFile, kind: LetterKind, wish: Wish = {}): string {
  return letterText(composeLetter(input(file, kind, wish))).replace(/\s+/g, " ");
}

function gapsOf(file: LineFile, kind: LetterKind, wish: Wish = {}): string {
  return letterGaps(input(file, kind, wish)).join(" ");
}

function namesOf(file: LineFile, kind: LetterKind): string[] {
  return recipientsOf(file, reportOn(file, TODAY), kind).map(
    ({ partyId, propertyId }) => `${partyId} ${propertyId}`,
  );
}

const DAYS: readonly (readonly [LetterKind, Parameters<typeof anEvent>[1]])[] = [
  ["drain-pause", { event: "drains-paused", on: "2026-12-02", at: "08:00", until: "12:00" }],
  ["drains-back", { event: "drains-back", on: TODAY, at: "11:40" }],
  ["work-start", { event: "work-begins", on: "2026-12-02", lastOn: "2026-12-04" }],
  ["street-parking", { event: "street-closed", on: "2026-12-02", reference: "the north side" }],
];

test.each(DAYS)("%s says its day once", (kind, event) => {
  const day = kind === "drains-back" ? "November 25, 2026" : "December 2, 2026";
  const letter = composeLetter(input(aRow({ events: [anEvent("e", event)] }), kind, {}));
  expect(JSON.stringify(letter.blocks).split(day)).toHaveLength(2);
});

describe("the drains are back on", () => {
  const paused = anEvent("p", { event: "drains-paused", on: TODAY, at: "08:00", until: "12:00" });
  const back = anEvent("b", { event: "drains-back", on: TODAY, at: "11:40" });

  test("nobody is told so before somebody has entered day and hour", () => {
    const open = aRow({ events: [paused] });
    expect(textOf(open, "drains-back")).not.toMatch(/may use the drains|is over/);
    expect(gapsOf(open, "drains-back")).toMatch(/is not entered/);
    const done = aRow({ events: [paused, back] });
    expect(textOf(done, "drains-back")).toContain("You may use the drains at 12 Fennel Row again");
    expect(textOf(done, "drains-back")).toContain("11:40");
    expect(gapsOf(done, "drains-back")).toBe("");
  });

  test("a pause that came after it stops the letter", () => {
    const again = anEvent("q", { event: "drains-paused", on: TODAY, at: "13:00", until: "15:00" });
    expect(gapsOf(aRow({ events: [back, again] }), "drains-back")).toMatch(/shut down again/);
    const later = { ...back, on: "2026-11-30" };
    expect(gapsOf(aRow({ events: [later] }), "drains-back")).toMatch(/not back on yet/);
  });

  test("who was told of the pause is told of its end", () => {
    const notices = [aNotice("old", { kind: "drain-pause", partyId: "ned", propertyId: "14" })];
    const sent = notices.map((notice) => ({ ...notice, state: "sent" as const }));
    expect(namesOf(aRow({ notices: sent }), "drains-back")).toEqual(["ned 14", "ott 12", "bea 14"]);
  });
});

test("a meeting has day, hours and place, and nobody's amount", () => {
  const open = aRow();
  expect(gapsOf(open, "meeting")).toMatch(/No meeting is planned/);
  const vague = { id: "m", on: "2026-12-01", at: "", until: "", place: "", note: "" };
  expect(gapsOf(aRow({ meetings: [vague] }), "meeting")).toMatch(/its hours and its place/);
  const when = { ...vague, at: "18:00", until: "19:30", place: "Grange Hall" };
  const set = aRow({ meetings: [{ ...when, id: "old", on: "2026-11-02" }, when] });
  expect(gapsOf(set, "meeting")).toBe("");
  expect(textOf(set, "meeting")).toMatch(/Tuesday, December 1, 2026, 6:00 pm to 7:30 pm, Grange/i);
  expect(textOf(set, "meeting")).not.toContain("$");
  expect(namesOf(set, "meeting")).toEqual(["ott 12", "ned 14"]);
  const past = aRow({ meetings: [{ ...when, on: "2026-11-01" }] });
  expect(gapsOf(past, "meeting")).toMatch(/is past/);
});

test("a landlord's notice goes to tenants alone, and claims no consent that is not on file", () => {
  const events = [
    anEvent("e", {
      ...{ event: "tenant-entry", on: "2026-12-01", at: "09:00", until: "11:30" },
      note: "to line the branch from inside",
    }),
  ];
  const wish = { to: ["bea", "14"] } as const;
  const open = aRow({ events });
  expect(namesOf(open, "landlord-entry")).toEqual(["bea 14"]);
  expect(textOf(open, "landlord-entry", wish)).toContain("is not on file with us yet");
  const consents = [aConsent("c", { kind: "enter", partyId: "ned", propertyId: "14" })];
  const given = textOf(aRow({ events, consents }), "landlord-entry", wish);
  expect(given).toContain("The owner’s consent to enter, of November 21, 2026, is on file");
  expect(gapsOf(open, "landlord-entry", wish)).toBe("");
  expect(gapsOf(aRow(), "landlord-entry", wish)).toMatch(/The entry has no day/);
  expect(textOf(open, "landlord-entry", wish)).toContain("to line the branch from inside");
  const unsaid = aRow({ events: events.map((event) => ({ ...event, note: "" })) });
  expect(gapsOf(unsaid, "landlord-entry", wish)).toMatch(/Why the home is entered is not on file/);
  expect(textOf(unsaid, "landlord-entry", wish)).not.toContain("drains of this address run");
});

test("a landlord's notice takes day, hours and purpose from the plan of the test day", () => {
  const stop = aTestStop("14", { startsAt: "09:40", waitMinutes: 20 });
  const planned = aRow({ testDays: [aTestDay([stop], { on: "2026-12-02" })] });
  const wish = { to: ["bea", "14"] } as const;
  const text = textOf(planned, "landlord-entry", wish);
  expect(text).toMatch(/Wednesday, December 2, 2026, 9:40 am to 10:00 am/i);
  expect(text).toContain("to find out where the drains of this address run");
  expect(gapsOf(planned, "landlord-entry", wish)).toBe("");
});

test("a parking notice says which part of the street, and over how many days", () => {
  const when = { on: "2026-12-01", lastOn: "2026-12-03", at: "07:00", until: "17:00" };
  const closed = anEvent("s", {
    event: "street-closed",
    ...when,
    reference: "Fennel Row, 10 to 16",
  });
  const file = aRow({ events: [closed] });
  expect(gapsOf(file, "street-parking")).toBe("");
  const text = textOf(file, "street-parking");
  expect(text).toContain(
    "keep Fennel Row, 10 to 16 clear from Tuesday, December 1, 2026 through Thursday, December 3, 2026.",
  );
  const nowhere = aRow({ events: [{ ...closed, reference: "" }] });
  expect(gapsOf(nowhere, "street-parking")).toMatch(/its place/);
});

test("an invoice's cover has what is open and when it is due; without one it says so", () => {
  expect(gapsOf(aRow(), "invoice-cover")).toMatch(/no invoice with a balance due/);
  const invoice = aLedgerEntry(1, {
    ...{ kind: "invoice", partyId: "ott", propertyId: "12", amount: 250_000 },
    ...{ on: "2026-11-20", dueOn: "2026-12-20" },
  });
  const file = aRow({ ledger: [invoice] });
  const text = textOf(file, "invoice-cover");
  expect(text).toContain("$2,500.00, due on Sunday, December 20, 2026");
  expect(text).toContain("Example Drain LLC");
  expect(gapsOf(file, "invoice-cover")).toBe("");
});

test("an invoice's cover says of a day that is past that it is, and of several invoices the first", () => {
  const due = (number: number, dueOn: string) =>
    aLedgerEntry(number, { partyId: "ott", amount: 100_000, on: "2026-10-01", dueOn });
  const late = textOf(aRow({ ledger: [due(1, "2026-11-01")] }), "invoice-cover");
  expect(late).toContain("$1,000.00, which was due on Sunday, November 1, 2026");
  expect(late).not.toContain("before the due date");
  const both = aRow({ ledger: [due(1, "2026-12-20"), due(2, "2026-12-05")] });
  expect(textOf(both, "invoice-cover")).toContain(
    "$2,000.00 together. The first is due on Saturday, December 5, 2026",
  );
  expect(textOf(both, "invoice-cover", { language: "es" })).toContain("La primera vence el sábado");
});

test("a street that is kept clear for one day says that day alone", () => {
  const when = { on: "2026-12-07", at: "07:00", until: "17:00", reference: "the alley" };
  const file = aRow({ events: [anEvent("s", { event: "street-closed", ...when })] });
  expect(textOf(file, "street-parking")).toMatch(/clear on Monday, December 7, 2026, 7:00 AM to/);
  expect(textOf(file, "street-parking")).not.toContain("through");
});

test("a Spanish sentence that ends in a time of day has one stop", () => {
  const day = { on: "2026-12-01", at: "10:00", until: "15:30", reference: "Grange Hall" };
  const kinds = ["drains-paused", "drains-back", "tenant-entry"] as const;
  const events = kinds.map((event) => anEvent(event, { event, ...day }));
  const spill = aSpillStep("k", { at: "08:10", place: "the alley" });
  const file = aRow({ events, spillSteps: [spill, { ...spill, id: "c", kind: "crew-on-site" }] });
  const letters = ["drain-pause", "drains-back", "landlord-entry", "spill"] as const;
  for (const kind of letters) {
    const text = textOf(file, kind, { language: "es", to: ["bea", "14"] });
    expect(text, kind).toMatch(/[ap]\. m\./);
    expect(text, kind).not.toContain("..");
  }
});

test("a change order's notice shows the reader's own share before and after, and why", () => {
  const order = {
    ...{ id: "o1", number: 1, title: "Longer liner", reason: "The clay is cracked further up" },
    ...{ state: "proposed" as const, orderedBy: "Dana", orderedOn: TODAY, note: "" },
  };
  expect(gapsOf(aRow(), "change-order")).toMatch(/No change order/);
  const file = aRow({
    changeOrders: [order],
    scope: [
      aScopeItem("s1", { rate: 100_000, quantity: 100 }),
      aScopeItem("s2", { rate: 50_000, quantity: 100, addedById: "o1" }),
    ],
    splits: [aSplit("v1", { rule: "single-payer", payerId: "12" })],
  });
  const text = textOf(file, "change-order");
  expect(text).toContain("The clay is cracked further up");
  expect(text).toMatch(/Share of 12 Fennel Row[^$]*\$[\d,.]+[^$]*\$[\d,.]+/);
  expect(gapsOf(file, "change-order")).not.toMatch(/can’t be worked out/);
});

test("each of them is whole in both languages, and lacking facts are said to be missing", () => {
  const kinds = [
    ...(["drains-back", "meeting", "landlord-entry"] as const),
    ...(["street-parking", "change-order", "invoice-cover"] as const),
  ];
  for (const kind of kinds)
    for (const language of LANGUAGES) {
      const text = textOf(aRow(), kind, { language, to: ["bea", "14"] });
      expect(text).not.toMatch(/undefined|null|\[object/);
      expect(text.length).toBeGreaterThan(300);
    }
});

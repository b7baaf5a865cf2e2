import { describe, expect, test } from "vitest";
import { earliestStart } from "#lib/domain/clocks/earliest-start.ts";
import { usualRow } from "#lib/domain/facts/field.ts";
import {
  CONTRACT,
  type Contract,
  STATUTORY_PAPER,
  type StatutoryPaper,
} from "#lib/domain/facts/statutory-paper.ts";
import { papersOn } from "#lib/domain/statutory/papers.ts";
import {
  aDelivery,
  aFile,
  aNotice,
  anAddress,
  anAuthority,
  anEvent,
  aParty,
  aProperty,
  aRole,
  aUnit,
} from "#tests/support/file.ts";

// Rows as an office would enter them for three rules whose text was read, each held to what that text
// says. The rules are the office's data; nothing of them is in the program.

function line(paper: Partial<StatutoryPaper>, contract: Partial<Contract> = {}, more = {}) {
  const row: StatutoryPaper = {
    ...usualRow(STATUTORY_PAPER),
    ...{ id: "paper", authorityId: "a", title: "Paper", event: "contract", asOf: "2026-11-02" },
    ...paper,
  };
  const signed: Contract = {
    ...usualRow(CONTRACT),
    ...{ id: "c", propertyId: "p", partyId: "ann", signedOn: "2026-11-20", amount: 480_000 },
    ...contract,
  };
  return aFile({
    authority: { ...anAuthority(), statutoryPapers: [row] },
    properties: [
      aProperty("p", {
        address: anAddress("14 Fennel Row", { state: row.state === "" ? "WA" : row.state }),
      }),
    ],
    parties: [aParty("ann"), aParty("manager")],
    roles: [aRole("ann", "p")],
    contracts: [signed],
    events: [anEvent("w", { event: "work-begins", on: "2026-12-07" })],
    ...more,
  });
}

describe("Washington’s disclosure to the customer", () => {
  // RCW 18.27.114(1): four or fewer residential units, contract of one thousand dollars or more, before
  // starting work on the project. Text read at
  // https://instalawyer.io/laws/revised-code-of-washington/1827114-disclosure-statement-required-prerequisite
  const NOTICE: Partial<StatutoryPaper> = {
    ...{ state: "WA", condition: "four-units", least: 100_000 },
    ...{ event: "work-begins", way: "before", count: 0 },
  };

  test("from one thousand dollars on, and not below", () => {
    expect(papersOn(line(NOTICE, { amount: 100_000 }))).toHaveLength(1);
    expect(papersOn(line(NOTICE, { amount: 99_999 }))).toEqual([]);
  });

  test("for four units, and not for five", () => {
    const units = (many: number) => ({
      units: Array.from({ length: many }, (_, at) => aUnit(`u${at}`, "p")),
    });
    expect(papersOn(line(NOTICE, {}, units(4)))).toHaveLength(1);
    expect(papersOn(line(NOTICE, {}, units(5)))).toEqual([]);
  });

  test("work does not begin before it was given", () => {
    const { bars } = earliestStart(line(NOTICE), "2026-11-25");
    expect(bars.map(({ because }) => because)).toContain("“Paper” is not given to ann");
  });
});

describe("California’s preliminary notice", () => {
  // Cal. Civ. Code 8204(a): not later than 20 days after the claimant first furnished work. 8200(e)(2):
  // who contracts with the owner gives the owner none. Texts read at
  // https://casetext.com/statute/california-codes/california-civil-code/division-4-general-provisions/part-6-works-of-improvement/title-2-private-works-of-improvement/chapter-2-preliminary-notice/section-8204-time-for-given-notice
  // and http://www.laws9.com/statutes/california/civ/8200-8216
  const NOTICE: Partial<StatutoryPaper> = {
    ...{ state: "CA", to: "owner", condition: "not-direct" },
    ...{ event: "work-begins", count: 20, given: "sent" },
  };

  test("is due on the twentieth day after the first day of work", () => {
    const [due] = papersOn(line(NOTICE, { partyId: "manager" }));
    expect(due).toMatchObject({ partyId: "ann", by: "2026-12-27" });
  });

  test("is not asked for toward an owner who contracted themselves", () => {
    expect(papersOn(line(NOTICE))).toEqual([]);
  });
});

describe("the federal right to cancel", () => {
  // 16 CFR 429.1(a) and (b): given at the time of signing; until midnight of the third business day after
  // the date of the transaction. 429.0(a): the agreement is made at a place other than the seller’s place
  // of business. Texts read at https://www.kirschenbaumesq.com/article/federal-regulation-for-notice-of-cancellation
  // and https://www.ecfr.gov/cgi-bin/text-idx?mc=true&node=pt16.1.429&rgn=div5
  const NOTICE: Partial<StatutoryPaper> = {
    ...{ state: "", condition: "signed-away", event: "contract", count: 0 },
    ...{ by: "in-person", workWaits: 3 },
  };
  const given = {
    notices: [
      aNotice("n", {
        ...{ kind: "statutory-notice", paperId: "paper", partyId: "ann", propertyId: "p" },
        ...{ state: "sent", createdOn: "2026-11-20" },
      }),
    ],
    deliveries: [aDelivery("d", "n", { method: "by-hand", by: "Marek", sentOn: "2026-11-20" })],
  };

  test("is due on the day of signing, at the buyer’s home and not at the office", () => {
    const atHome = line(NOTICE, { place: "away" });
    expect(papersOn(atHome)[0]).toMatchObject({ by: "2026-11-20" });
    expect(papersOn(line(NOTICE, { place: "office" }))).toEqual([]);
  });

  test("work waits until the third business day is over, counted to the safe side", () => {
    // Signed on Friday, November 20. Saturday is a business day there (a consumer handbook read at
    // http://accesseducation.org/pdfBooks/book8E/files/basic-html/page19.html says so), so that the third
    // ends on Tuesday; the program's business days leave Saturday out and end a day later.
    const { bars } = earliestStart(line(NOTICE, {}, given), "2026-11-21");
    const [bar] = bars.filter(({ because }) => because.includes("“Paper” was given"));
    expect(bar?.until).toBe("2026-11-26");
  });
});

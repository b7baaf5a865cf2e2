import { expect, test } from "vitest";
import { earliestStart } from "#lib/domain/clocks/earliest-start.ts";
import { statutoryClocks } from "#lib/domain/clocks/statutory-clocks.ts";
import { paperThings } from "#lib/domain/desk/paper-things.ts";
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
  aParty,
  aProperty,
  aRole,
  aUnit,
} from "#tests/support/file.ts";

const TODAY = "2026-11-25";

function aPaper(rest: Partial<StatutoryPaper> = {}): StatutoryPaper {
  return {
    ...usualRow(STATUTORY_PAPER),
    ...{ id: "paper", authorityId: "a", title: "Notice to customer", event: "contract" },
    ...{ asOf: "2026-11-02", state: "WA", citation: "Code 1" },
    ...rest,
  };
}

function aContract(rest: Partial<Contract> = {}): Contract {
  return {
    ...usualRow(CONTRACT),
    ...{ id: "c", propertyId: "p", partyId: "ann", signedOn: "2026-11-20" },
    ...rest,
  };
}

function line(paper: StatutoryPaper, rest: Parameters<typeof aFile>[0] = {}) {
  return aFile({
    authority: { ...anAuthority(), statutoryPapers: [paper] },
    properties: [aProperty("p", { address: anAddress("14 Fennel Row") })],
    parties: [aParty("ann"), aParty("bea")],
    roles: [aRole("ann", "p")],
    contracts: [aContract()],
    ...rest,
  });
}

test("a paper is asked for where somebody ordered work in its state, and nowhere else", () => {
  expect(papersOn(line(aPaper())).map(({ partyId }) => partyId)).toEqual(["ann"]);
  expect(papersOn(line(aPaper({ state: "OR" })))).toEqual([]);
  expect(papersOn(line(aPaper(), { contracts: [] }))).toEqual([]);
});

test("what nobody entered counts as asked for: state, place of signing, amount, units", () => {
  const nowhere = [aProperty("p", { address: anAddress("14 Fennel Row", { state: "" }) })];
  expect(papersOn(line(aPaper(), { properties: nowhere }))).toHaveLength(1);
  expect(papersOn(line(aPaper({ condition: "signed-away" })))).toHaveLength(1);
  expect(papersOn(line(aPaper({ least: 100_000 })))).toHaveLength(1);
  expect(papersOn(line(aPaper({ condition: "four-units" })))).toHaveLength(1);
});

test("what is on file takes a paper away: signed at the office, too small, too many units", () => {
  const at = (rest: Partial<Contract>) => ({ contracts: [aContract(rest)] });
  expect(papersOn(line(aPaper({ condition: "signed-away" }), at({ place: "office" })))).toEqual([]);
  expect(papersOn(line(aPaper({ least: 100_000 }), at({ amount: 99_999 })))).toEqual([]);
  const units = ["1", "2", "3", "4", "5"].map((id) => aUnit(id, "p"));
  expect(papersOn(line(aPaper({ condition: "four-units" }), { units }))).toEqual([]);
  expect(
    papersOn(line(aPaper({ condition: "four-units" }), { units: units.slice(1) })),
  ).toHaveLength(1);
});

test("owners who ordered nothing themselves get the notice to owner, those who did do not", () => {
  const paper = aPaper({ to: "owner", condition: "not-direct" });
  expect(papersOn(line(paper))).toEqual([]);
  const byManager = { contracts: [aContract({ partyId: "bea" })] };
  expect(papersOn(line(paper, byManager)).map(({ partyId }) => partyId)).toEqual(["ann"]);
});

test("the last day is counted from the contract; without its day nothing is, and the desk says what to enter", () => {
  const paper = aPaper({ count: 10 });
  expect(papersOn(line(paper))[0]).toMatchObject({ by: "2026-11-30", state: "open", late: false });
  const undated = line(paper, { contracts: [aContract({ signedOn: null })] });
  expect(papersOn(undated)[0]).toMatchObject({
    by: null,
    enter: "Enter the day on which ann signed.",
  });
  expect(statutoryClocks(undated)).toEqual([]);
  expect(paperThings(undated)[0]?.sentence).toMatch(
    /can’t be dated: enter the day of each contract/,
  );
  expect(paperThings(line(paper))).toEqual([]);
});

const LETTER = aNotice("n", {
  ...{ kind: "statutory-notice", paperId: "paper", partyId: "ann", propertyId: "p" },
  ...{ state: "sent", createdOn: "2026-11-21" },
});

test("a paper counts as given only in the way that the statute asks, and once that is shown", () => {
  const paper = aPaper({ count: 10, by: "in-person-or-certified" });
  const by = (rest: Parameters<typeof aDelivery>[2]) =>
    papersOn(
      line(paper, {
        notices: [LETTER],
        deliveries: [aDelivery("d", "n", { sentOn: "2026-11-21", ...rest })],
      }),
    )[0];
  expect(by({ method: "first-class" })).toMatchObject({
    state: "not-proven",
    wanting: "it has to be delivered in person or certified mail",
  });
  expect(by({ method: "certified" })).toMatchObject({ state: "not-proven" });
  expect(by({ method: "certified", outcome: "returned" })?.wanting).toBe("it came back");
  const proof = { tracking: "9407", outcome: "delivered", outcomeOn: "2026-12-02" } as const;
  expect(by({ method: "certified", ...proof })).toMatchObject({
    ...{ state: "given", givenOn: "2026-12-02", late: true },
  });
  expect(by({ method: "by-hand", by: "Marek" })).toMatchObject({ state: "given", late: false });
});

test("where sending is enough, certified mail counts from the day it went", () => {
  const paper = aPaper({ count: 10, by: "certified", given: "sent" });
  const deliveries = [aDelivery("d", "n", { method: "certified", sentOn: "2026-11-21" })];
  const file = line(paper, { notices: [LETTER], deliveries });
  expect(papersOn(file)[0]).toMatchObject({ state: "given", givenOn: "2026-11-21" });
  expect(statutoryClocks(file)[0]).toMatchObject({ settled: true, on: "2026-11-30" });
});

test("what a named person gave up waits for nobody, until they say otherwise", () => {
  const word = { paperId: "paper", partyId: "ann", propertyId: "p", by: "Dana", on: TODAY };
  const paperWaivers = [{ id: "w", ...word, givenUp: true, reason: "no lien is wanted" }];
  const file = line(aPaper({ count: 10 }), { paperWaivers });
  expect(papersOn(file)[0]?.state).toBe("given-up");
  expect(statutoryClocks(file)[0]?.settled).toBe(true);
  const again = [...paperWaivers, { id: "v", ...word, givenUp: false, reason: "" }];
  expect(papersOn(line(aPaper(), { paperWaivers: again }))[0]?.state).toBe("open");
});

test("one clock says who of several was given the paper", () => {
  const file = line(aPaper({ count: 10, given: "sent" }), {
    contracts: [aContract(), aContract({ id: "d", partyId: "bea" })],
    notices: [LETTER],
    deliveries: [aDelivery("d", "n", { method: "by-hand", sentOn: "2026-11-21" })],
  });
  const [clock, ...others] = statutoryClocks(file);
  expect(others).toEqual([]);
  expect(clock).toMatchObject({ settled: false, on: "2026-11-30", citation: "Code 1" });
  expect(clock?.telling?.recipients.map(({ partyId, on }) => [partyId, on])).toEqual([
    ["ann", "2026-11-21"],
    ["bea", null],
  ]);
});

test("work does not start before the paper is given and its days are over", () => {
  const paper = aPaper({ title: "Right to cancel", workWaits: 3, given: "sent" });
  const because = (file: ReturnType<typeof line>) =>
    earliestStart(file, TODAY).bars.filter(({ because: why }) => why.includes("Right to cancel"));
  expect(because(line(paper))).toMatchObject([
    { until: null, because: "“Right to cancel” is not given to ann" },
  ]);
  const deliveries = [aDelivery("d", "n", { method: "by-hand", sentOn: "2026-11-24" })];
  // Wednesday, Thursday and Friday pass; work may begin on the day after.
  expect(because(line(paper, { notices: [LETTER], deliveries }))).toMatchObject([
    { until: "2026-11-28" },
  ]);
});

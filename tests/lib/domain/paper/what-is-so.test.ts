import { describe, expect, test } from "vitest";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { LETTER_KINDS, type LetterKind, type Notice } from "#lib/domain/facts/notice.ts";
import { composeLetter } from "#lib/domain/paper/compose.ts";
import { letterText } from "#lib/domain/paper/text.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { LANGUAGES, type Language } from "#lib/domain/say/language.ts";
import {
  aFile,
  aNotice,
  anAgreement,
  anAnchor,
  anAuthority,
  anEntry,
  anObservation,
  anOffice,
  aPairing,
  aParty,
  aPermit,
  aPermitStep,
  aProperty,
  aRecord,
  aRole,
  aRule,
  aRun,
  aScopeItem,
  aSplit,
  aTest,
  aTieIn,
} from "#tests/support/file.ts";

const TODAY = "2026-11-25";

/** 12 is on record at 20 ft and seen; T2 at 50 ft is on no record; 14 may be on the line. */
function aStreet(rest: Omit<Partial<LineFile>, "line"> = {}): LineFile {
  return aFile({
    properties: [aProperty("12"), aProperty("14", { stake: "candidate" })],
    parties: [aParty("ottilie"), aParty("nils")],
    roles: [aRole("ottilie", "12"), aRole("nils", "14")],
    records: [aRecord("card")],
    entries: [anEntry("House 12", { distance: 2_000, propertyId: "12" })],
    runs: [aRun("run")],
    anchors: [anAnchor("run")],
    tieIns: [aTieIn("T1"), aTieIn("T2", { kind: "unknown" })],
    observations: [
      anObservation("o1", { counter: 2_000, tieInId: "T1" }),
      anObservation("o2", { counter: 5_000, tieInId: "T2" }),
    ],
    pairings: [aPairing("House 12", "T1")],
    ...rest,
  });
}

function textOf(
  file: LineFile,
  [partyId, propertyId]: readonly [string, string | null],
  notice: Partial<Notice> & { kind: LetterKind },
): string {
  const letter = composeLetter({
    file,
    report: reportOn(file, TODAY),
    office: anOffice(),
    notice: aNotice("notice", { partyId, propertyId, ...notice }),
  });
  return letterText(letter).replaceAll(/\s+/g, " ");
}

/** With a permit, an agreement and work, so that no part of a letter is left out for want of facts. */
function aFullStreet(): LineFile {
  return aStreet({
    permits: [aPermit("p", { number: "SS-1" })],
    agreements: [anAgreement("a")],
    scope: [aScopeItem("s")],
    splits: [
      aSplit("split", {
        shares: [{ propertyId: "12", tieInId: null, amount: 100, recoverable: 0 }],
      }),
    ],
  });
}

function everyText(language: Language, file = aFullStreet()): string {
  return LETTER_KINDS.map((kind) =>
    textOf(file, ["ottilie", "12"], { kind, language, tieInId: "T2" }),
  ).join("\n");
}

describe("what a lawyer would strike", () => {
  test.each([
    ["en", /as they were/],
    ["en", /It would be put to you first/],
    ["en", /nobody should be asked to pay/],
    ["en", /no cost to you/],
    ["en", /owners who have asked us/],
    ["en", /has been called and is stopping the flow/],
    ["en", /where the law asks for it/],
    ["en", /answers? for\b/i],
    ["es", /como estaban/],
    ["es", /Primero se le consultaría/],
    ["es", /a nadie se le debe pedir/],
    ["es", /sin costo para usted/],
    ["es", /dueños que nos han pedido/],
    ["es", /está deteniendo el flujo/],
    ["es", /donde la ley lo pide/],
  ] as const)("no letter in %s says %s", (language, struck) => {
    expect(everyText(language)).not.toMatch(struck);
  });

  test("a proposal and a demand admit nothing and give up no right", () => {
    expect(textOf(aStreet(), ["ottilie", "12"], { kind: "proposed-split" })).toContain(
      "admits nothing and gives up no right",
    );
  });
});

describe("words that a reader knows", () => {
  test.each([
    ["en", /\b(colour|licence|fibre|harmless kind|that has to do with|Close nothing yet)\b/],
    ["en", /Odd cents/],
    ["es", /A la atención de/],
    ["es", /\ba T2\b|desagua en esta tubería a /],
    ["es", /fiarse|\p{L}adónde/u],
    ["es", /propio consejo/],
    ["es", /no se halló permiso de/],
    ["es", /da en alquiler/],
    ["es", /n\.º/],
    ["es", /\bnotario\b/],
    ["es", /Red pública/],
    ["es", /\bcantidad(es)?\b/],
    ["es", /Registro de limpieza/],
  ] as const)("no letter in %s says %s", (language, odd) => {
    expect(everyText(language)).not.toMatch(odd);
  });

  test("a list of days in Spanish has its article each time", () => {
    const runs = [aRun("run"), aRun("run2", { ranOn: "2026-11-04" })];
    const text = textOf(aStreet({ runs }), ["ottilie", "12"], { kind: "finding", language: "es" });
    expect(text).toContain("El 3 de noviembre de 2026 y el 4 de noviembre de 2026");
  });

  test("work titles stand in a Spanish sentence as the quotation that they are", () => {
    const scope = [
      aScopeItem("s", {
        title: "Spot repair",
        kind: "spot-repair",
        place: "point",
        from: 1_500,
        to: null,
      }),
    ];
    const text = textOf(aStreet({ scope }), ["ottilie", "12"], {
      kind: "work-start",
      language: "es",
    });
    expect(text).toContain("Reparación puntual («Spot repair»), 15.0 pies");
  });

  test("units, reasons and the day of a rule are in the reader’s language, the office’s words quoted", () => {
    const rule = aRule("rule", { citation: "QMC 13.08.010", asOf: "2026-10-01" });
    const file: LineFile = {
      ...aStreet({
        authority: anAuthority({ rules: [rule] }),
        scope: [aScopeItem("s", { unit: "ft", quantity: 2_000, rate: 10_000 })],
        splits: [aSplit("split", { reason: "All owners asked for it" })],
      }),
    };
    const ruled = { ...file, line: { ...file.line, ruleId: "rule" } };
    const asked = { kind: "proposed-split", language: "es" } as const;
    const text = textOf(ruled, ["ottilie", "12"], asked);
    expect(text).toContain("20 pies × $100.00");
    expect(text).toContain("«All owners asked for it»");
    expect(text).toContain("QMC 13.08.010, al 1 de octubre de 2026");
    expect(text).not.toContain("as of");
    expect(textOf(ruled, ["ottilie", "12"], { kind: "proposed-split" })).toContain(
      "QMC 13.08.010, as of October 1, 2026",
    );
  });

  test("fees and other work without a place are no repair", () => {
    const scope = [
      aScopeItem("s", {
        title: "Permit fees",
        kind: "permit-fee",
        place: "general",
        from: null,
        to: null,
      }),
    ];
    const text = textOf(aStreet({ scope }), ["ottilie", "12"], {
      kind: "proposed-split",
      language: "es",
    });
    expect(text).toContain("«Permit fees»");
    expect(text).not.toContain("Reparación («Permit fees»)");
  });

  test("a place is given with how far off it may be", () => {
    const text = textOf(aStreet(), ["ottilie", "12"], { kind: "finding" });
    expect(text).toContain("50.0 ft ± 1.0 ft");
  });

  test("the pipe serves whom it is known to serve, and may serve the others", () => {
    expect(textOf(aStreet(), ["ottilie", "12"], { kind: "finding" })).toContain(
      "the private sewer pipe that serves 12 Fennel Row",
    );
    expect(textOf(aStreet(), ["nils", "14"], { kind: "finding" })).toContain(
      "a private sewer pipe that may serve 14 Fennel Row",
    );
  });
});

describe("what is not yet known", () => {
  const missed = [
    anEntry("House 12", { distance: 2_000, propertyId: "12" }),
    anEntry("Shop 22", { distance: 8_000 }),
  ];

  test("says what record and camera show, and that nobody’s name is known", () => {
    const text = textOf(aStreet({ entries: missed }), ["ottilie", "12"], { kind: "finding" });
    expect(text).toContain("The record shows a connection that the camera did not see: Shop 22.");
    expect(text).toContain(
      "We saw a connection, T2, that is not on any permit record we have. We do not know whose it is.",
    );
  });

  test("leaves out a record entry that a person has explained", () => {
    const entries = missed.map((entry) =>
      entry.id === "Shop 22"
        ? { ...entry, explanation: "Taken out when the line was rebuilt", explainedBy: "Dana" }
        : entry,
    );
    const text = textOf(aStreet({ entries }), ["ottilie", "12"], { kind: "finding" });
    expect(text).not.toContain("that the camera did not see: Shop 22");
    expect(text).toContain("on record, not seen; explained on file");
  });

  test("does not ask whose a connection is that was proven dead", () => {
    const tieIns = [
      aTieIn("T1"),
      aTieIn("T2", { inactive: true, settledReason: "Dug up: plugged", settledBy: "Marek" }),
    ];
    const text = textOf(aStreet({ tieIns }), ["ottilie", "12"], { kind: "finding" });
    expect(text).toContain("not in use, per test");
    expect(text).not.toContain("owner unknown");
    const done = textOf(aStreet({ tieIns }), ["ottilie", "12"], { kind: "close-out" });
    expect(done).not.toContain("owner unknown");
  });

  test("lists a fault once that two runs saw, with the lower station first", () => {
    const observations = [
      ...aStreet().observations,
      anObservation("f1", { kind: "fault", fault: "crack", counter: 2_860, toCounter: 3_260 }),
      anObservation("f2", {
        runId: "down",
        kind: "fault",
        fault: "crack",
        counter: 6_790,
        toCounter: 7_120,
      }),
    ];
    const runs = [aRun("run"), aRun("down", { looks: "downstream", toCounter: 10_000 })];
    const anchors = [anAnchor("run"), anAnchor("down", { counter: 10_000, station: 0 })];
    const text = textOf(aStreet({ observations, runs, anchors }), ["ottilie", "12"], {
      kind: "finding",
    });
    expect(text.match(/: a crack/g)).toHaveLength(1);
    expect(text).toContain("28.6 to 32.6 ft: a crack");
  });

  test("names the place where the camera could not go on", () => {
    const runs = [aRun("run", { ended: "blocked", toCounter: 8_100 })];
    const text = textOf(aStreet({ runs }), ["ottilie", "12"], { kind: "finding" });
    expect(text).toContain("81.0 ft: blocked; the camera could not go on");
  });

  test("tells what was seen from the main upstream, where a run was blocked among it", () => {
    const runs = [aRun("run", { ended: "blocked", toCounter: 2_000 })];
    const observations = [
      anObservation("crack", { kind: "fault", fault: "crack", counter: 1_000 }),
      anObservation("roots", { kind: "fault", fault: "roots", counter: 6_000 }),
    ];
    const text = textOf(aStreet({ runs, observations }), ["ottilie", "12"], { kind: "finding" });
    const [, told = ""] = /The camera also saw([^\n]*)/.exec(text) ?? [];
    const feet = [...told.matchAll(/([\d.]+) ft: /g)].map(([, each]) => Number(each));
    expect(told).toContain("blocked");
    expect(feet).toHaveLength(3);
    expect(feet).toEqual(feet.toSorted((one, other) => one - other));
  });
});

describe("an inquiry names its ground", () => {
  const asked = { kind: "tie-in-inquiry", tieInId: "T2" } as const;

  test("a test that was seen, with its day", () => {
    const tests = [aTest("t", "T2", { kind: "flow", propertyId: "14", performedOn: "2026-11-11" })];
    const text = textOf(aStreet({ tests }), ["nils", "14"], asked);
    expect(text).toContain("water run at 14 Fennel Row came out of it on November 11, 2026");
    expect(text).not.toContain("by its position");
  });

  test("a record entry that the camera did not find", () => {
    const entries = [
      ...aStreet().entries,
      anEntry("House 14", { distance: 8_000, propertyId: "14" }),
    ];
    const text = textOf(aStreet({ entries }), ["nils", "14"], asked);
    expect(text).toContain(
      "a permit record shows a connection for 14 Fennel Row that the camera did not find",
    );
  });

  test("where nothing else speaks: that it is not known where its drains go", () => {
    expect(textOf(aStreet(), ["nils", "14"], asked)).toContain(
      "we do not know yet where the drains of 14 Fennel Row go",
    );
  });

  test.each([
    ["en", [/yard drain/, /downspout/, /sump pump/, /basement/, /added or changed/]],
    ["es", [/patio/, /bajante/, /bomba de sumidero/, /sótano/, /se agregó o cambió/]],
  ] as const)("asks in %s after every drain that is easily forgotten", (language, asks) => {
    const text = textOf(aStreet(), ["nils", "14"], { ...asked, language });
    for (const each of asks) expect(text).toMatch(each);
  });
});

describe("a permit in a close-out letter", () => {
  test("is never called “unknown”", () => {
    const permits = [aPermit("p", { number: "" })];
    const permitSteps = [aPermitStep("s", "p", { state: "final" })];
    const file = aStreet({ permits, permitSteps });
    for (const language of LANGUAGES) {
      const text = textOf(file, ["ottilie", "12"], { kind: "close-out", language });
      expect(text).not.toMatch(/Permit unknown|Permiso no se sabe/);
    }
    expect(textOf(file, ["ottilie", "12"], { kind: "close-out" })).toContain(
      "Permit without a number on file: final",
    );
  });
});

test("what is done lists work that has a place, and no fees or camera runs", () => {
  const scope = [
    aScopeItem("dig", { title: "Replace pipe", from: 1_000, to: 3_000 }),
    aScopeItem("fees", {
      title: "Permit and inspection fees",
      kind: "permit-fee",
      place: "general",
      from: null,
      to: null,
    }),
    aScopeItem("alley", {
      title: "Alley restoration",
      kind: "restore",
      place: "general",
      from: null,
      to: null,
    }),
  ];
  const text = textOf(aStreet({ scope }), ["ottilie", "12"], { kind: "work-start" });
  expect(text).toContain("Replace pipe, 10.0 to 30.0 ft");
  expect(text).toContain("Alley restoration, whole job");
  expect(text).not.toContain("Permit and inspection fees");
});

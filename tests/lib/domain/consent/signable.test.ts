import { createHash } from "node:crypto";
import { expect, test } from "vitest";
import { linkState } from "#lib/domain/consent/private-link.ts";
import { askedOnScreen, signingName, signStop } from "#lib/domain/consent/signable.ts";
import { LINK_STOPS } from "#lib/domain/consent/stops.ts";
import { DISCLOSURE_VERSION, disclosureText, LINK_WORDS } from "#lib/domain/consent/words.ts";
import { LETTER_KINDS } from "#lib/domain/facts/notice.ts";
import { LANGUAGES } from "#lib/domain/say/language.ts";
import { momentWords } from "#lib/domain/time/moment.ts";
import { aHold } from "../../../support/answers.ts";
import {
  aConsent,
  aDigArea,
  aFile,
  aNotice,
  anOffice,
  aParty,
  aProperty,
  aRole,
  aSplit,
  aWaiver,
} from "../../../support/file.ts";

const REPORT = { splits: [], holds: [] };

function aSharedFile(overrides: Parameters<typeof aFile>[0] = {}) {
  const share = { propertyId: "12", tieInId: null, amount: 10_000, recoverable: 0 };
  return aFile({
    properties: [aProperty("12")],
    parties: [
      aParty("owner"),
      aParty("tenant"),
      aParty("trust", { kind: "trust", name: "Winfield Family Trust" }),
      aParty("estate", { kind: "estate", name: "Estate of B. Hale" }),
    ],
    roles: [
      aRole("owner", "12"),
      { ...aRole("tenant", "12"), id: "tenant-role", role: "occupant" },
      { ...aRole("trust", "12"), id: "trust-role", capacity: "trustee" },
      { ...aRole("estate", "12"), id: "estate-role" },
    ],
    splits: [aSplit("one", { number: 1, shares: [share] })],
    ...overrides,
  });
}

const LETTER = aNotice("letter", {
  kind: "proposed-split",
  partyId: "owner",
  propertyId: "12",
  splitId: "one",
});

test("no letter puts an agreement to its reader for signing on screen", () => {
  const asked = LETTER_KINDS.filter((kind) => askedOnScreen({ kind, frozen: null }).length > 0);
  expect(asked).toEqual(["test-visit", "proposed-split", "entry-consent"]);
  const agreement = { ...LETTER, kind: "joint-agreement" } as const;
  expect(signStop({ file: aSharedFile(), report: REPORT }, agreement, "pay")).toBe("on-paper");
});

test("signingName() names the capacity, and says where nobody gave one", () => {
  const file = aSharedFile();
  const at = (partyId: string) => ({ partyId, propertyId: "12" });
  expect(signingName(file, at("trust"), "pay")).toMatchObject({
    capacity: "trustee",
    name: "Winfield Family Trust, by its trustee",
    capacityMissing: false,
  });
  expect(signingName(file, at("estate"), "pay")).toMatchObject({
    capacity: "",
    name: "Estate of B. Hale",
    capacityMissing: true,
  });
  expect(signingName(file, at("tenant"), "pay")).toBeNull();
  expect(signingName(file, at("tenant"), "dig")).toBeNull();
  expect(signingName(file, at("tenant"), "enter")).toMatchObject({ capacityMissing: false });
  expect(signingName(file, at("stranger"), "enter")).toBeNull();
  expect(signingName(file, { partyId: "owner", propertyId: null }, "enter")).toBeNull();
});

test("signStop() lets an amount be signed only in the version in force", () => {
  const share = { propertyId: "12", tieInId: null, amount: 10_000, recoverable: 0 };
  const stop = (splits: ReturnType<typeof aSplit>[]) =>
    signStop({ file: aSharedFile({ splits }), report: REPORT }, LETTER, "pay");
  const one = aSplit("one", { number: 1, shares: [share] });
  expect(stop([one])).toBeNull();
  // A newer version, though it asks the very same: the letter names the old one.
  expect(stop([one, aSplit("two", { number: 2, shares: [share] })])).toBe("superseded");
  expect(stop([])).toBe("superseded");
  expect(stop([aSplit("one", { number: 1, shares: [{ ...share, amount: 0 }] })])).toBe(
    "nothing-asked",
  );
});

test("signStop() lets no amount be signed while a hold keeps the split from being final", () => {
  const stops = ["final-split"] as const;
  const stop = (holds: ReturnType<typeof aHold>[]) =>
    signStop({ file: aSharedFile(), report: { ...REPORT, holds } }, LETTER, "pay");
  expect(stop([aHold("open", { stops })])).toBe("held");
  expect(stop([aHold("waived", { stops, waiver: aWaiver("waived") })])).toBeNull();
  expect(stop([aHold("other", { stops: ["lining"] })])).toBeNull();
});

test("signStop() asks nobody twice, and again where the word was taken back", () => {
  const given = aConsent("given", {
    ...{ kind: "pay", partyId: "owner", propertyId: "12", splitId: "one", amount: 10_000 },
  });
  const back = { ...given, id: "back", state: "withdrawn" } as const;
  const stop = (consents: (typeof given)[]) =>
    signStop({ file: aSharedFile({ consents }), report: REPORT }, LETTER, "pay");
  expect(stop([given])).toBe("signed-already");
  expect(stop([given, back])).toBeNull();
});

test("signStop() signs nothing on a closed file, and nothing that the letter does not ask", () => {
  const closed = aSharedFile({ line: { closedOn: "2026-11-24" } });
  expect(signStop({ file: closed, report: REPORT }, LETTER, "pay")).toBe("closed");
  expect(signStop({ file: aSharedFile(), report: REPORT }, LETTER, "dig")).toBe("nothing-to-sign");
});

test("signStop() lets nobody allow digging by a letter that does not say where and when as on file", () => {
  const area = aDigArea("area", "12", {
    ...{ place: 'side yard, by the "old" fence', length: 2_000, width: 400 },
    ...{ firstOn: "2026-12-07", lastOn: "2026-12-09", restoration: "seed" },
  });
  const said = JSON.stringify({ lines: [area.place], when: "Monday, December 7, 2026" });
  const stop = (digAreas: (typeof area)[], frozen: string | null) => {
    const letter = aNotice("entry", {
      ...{ kind: "entry-consent", partyId: "owner", propertyId: "12", frozen },
    });
    const file = aSharedFile({ digAreas });
    expect(signStop({ file, report: REPORT }, letter, "enter")).toBeNull();
    return signStop({ file, report: REPORT }, letter, "dig");
  };
  expect(stop([area], said)).toBeNull();
  expect(stop([], said)).toBe("area-open");
  expect(stop([area], JSON.stringify({ lines: ["not yet set"] }))).toBe("area-open");
  expect(stop([{ ...area, firstOn: "2026-12-14" }], said)).toBe("area-open");
  expect(stop([{ ...area, length: null }], said)).toBe("area-open");
  expect(stop([{ ...area, propertyId: "14" }], said)).toBe("area-open");
});

test("a letter that says that nobody comes in asks nobody to let people in", () => {
  const letter = (asks: readonly string[]) =>
    aNotice("visit", {
      ...{ kind: "test-visit", partyId: "owner", propertyId: "12" },
      frozen: JSON.stringify({ asks }),
    });
  const stop = (notice: ReturnType<typeof letter>) =>
    signStop({ file: aSharedFile(), report: REPORT }, notice, "enter");
  expect(stop(letter(["enter"]))).toBeNull();
  expect(stop(letter([]))).toBe("nothing-to-sign");
});

test("linkState() ends a link at its very moment, and a link called back stays so", () => {
  const link = { expiresAt: "2026-12-25T18:00:00.000Z", revokedAt: null };
  expect(linkState(link, "2026-12-25T17:59:59.999Z")).toBe("open");
  expect(linkState(link, "2026-12-25T18:00:00.000Z")).toBe("expired");
  const back = { ...link, revokedAt: "2026-12-01T00:00:00.000Z" };
  expect(linkState(back, "2026-12-25T18:00:00.000Z")).toBe("revoked");
});

test("momentWords() tells the office's own clock, in winter and in summer", () => {
  const zone = "America/Los_Angeles";
  expect(momentWords("2026-11-25T18:05:00.000Z", zone, "en")).toBe("November 25, 2026, 10:05 AM");
  expect(momentWords("2026-07-01T07:00:00.000Z", zone, "en")).toBe("July 1, 2026, 12:00 AM");
  expect(momentWords("2026-07-01T19:30:00.000Z", zone, "en")).toBe("July 1, 2026, 12:30 PM");
  expect(momentWords("2026-07-01T22:30:00.000Z", zone, "es")).toBe(
    "1 de julio de 2026, 3:30 p. m.",
  );
});

test("every reason why something can't be done has words in both languages", () => {
  for (const language of LANGUAGES)
    for (const stop of LINK_STOPS) expect(LINK_WORDS[language].stops[stop]).not.toBe("");
});

/**
 * 15 U.S.C. 7001(c)(1)(B): paper instead, taking back and what follows, what it covers, how to take
 * back and to update an address, how to get a paper copy and its fee; (C)(i): what is needed.
 */
test("the consent to electronic records says all that the law wants said", () => {
  const text = disclosureText("en", anOffice());
  for (const part of [
    /on paper instead, before or after you sign, at no charge/,
    /change your mind .* anything already signed stays in effect/s,
    /this letter and nothing else/,
    /email or mailing address changes, tell us/,
    /You need a phone or computer with a recent web browser/,
  ])
    expect(text).toMatch(part);
  expect(disclosureText("es", anOffice()).split("\n\n")).toHaveLength(text.split("\n\n").length);
});

/** Who changes a word of it has to change its version too: signatures name the version. */
test("the words of the consent to electronic records are those of its version", () => {
  const office = { name: "Office", phone: "", email: "" };
  const hashes = LANGUAGES.map((language) =>
    createHash("sha256").update(disclosureText(language, office)).digest("hex").slice(0, 12),
  );
  expect([DISCLOSURE_VERSION, ...hashes]).toMatchInlineSnapshot(`
    [
      "2026-11-27.2",
      "9704fd85489b",
      "e4b8f8f80052",
    ]
  `);
});

import { describe, expect, test } from "vitest";
import { signingName } from "#lib/domain/consent/signable.ts";
import { consentTable } from "#lib/domain/consent/table.ts";
import { answersOn } from "#lib/domain/desk/answers.ts";
import { lettersDue } from "#lib/domain/desk/letters-due.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { LETTER_KINDS, type LetterKind, type Notice } from "#lib/domain/facts/notice.ts";
import { batchOf } from "#lib/domain/mailing/batch.ts";
import { startAudience } from "#lib/domain/notices/audience.ts";
import { chaseList } from "#lib/domain/notices/told.ts";
import { noticeState } from "#lib/domain/packet/notice-state.ts";
import { composeLetter } from "#lib/domain/paper/compose.ts";
import { copiesOf } from "#lib/domain/paper/copy.ts";
import { letterGaps } from "#lib/domain/paper/gaps.ts";
import type { Letter } from "#lib/domain/paper/letter.ts";
import { recipientsOf } from "#lib/domain/paper/recipients.ts";
import { letterText } from "#lib/domain/paper/text.ts";
import { toldCount } from "#lib/domain/paper/told-count.ts";
import { stakeholdersOf } from "#lib/domain/party/stakeholders.ts";
import { rollCallsOf } from "#lib/domain/rollcall/roll-call.ts";
import type { Language } from "#lib/domain/say/language.ts";
import { aDelivery, anAddress, aParty, aProperty, aRole } from "#tests/support/file.ts";
import { sampleLine, sampleNotice } from "#tests/support/sample-line.ts";

const { file: PLAIN, report, office } = sampleLine();
const BANK = aParty("bank", {
  name: "Harbor Savings Bank",
  kind: "firm",
  mailing: anAddress("1 Commerce Street"),
});

/** The sample line with a lender of 12 Fennel Row, and of 40, where nobody else is. */
const LENT: LineFile = {
  ...PLAIN,
  properties: [...PLAIN.properties, aProperty("p40", { address: anAddress("40 Fennel Row") })],
  parties: [...PLAIN.parties, BANK],
  roles: [
    ...PLAIN.roles,
    aRole("bank", "p12", { role: "lender" }),
    aRole("bank", "p40", { role: "lender" }),
  ],
};

function written(kind: LetterKind, overrides: Partial<Notice> = {}): Notice {
  return sampleNotice("ottilie", "p12", { kind, replyBy: "2026-12-20", ...overrides });
}

function copy(kind: LetterKind, overrides: Partial<Notice> = {}): Notice {
  return sampleNotice("bank", "p12", { id: "copy", kind, replyBy: null, ...overrides });
}

function made(notice: Notice, original: Notice | null, file = LENT) {
  const input = {
    file: { ...file, notices: original === null ? [notice] : [original, notice] },
    ...{ report, office, notice },
  };
  const letter = composeLetter(input);
  return { letter, text: plain(letter), gaps: letterGaps(input) };
}

function plain(letter: Letter): string {
  return letterText(letter).replaceAll(/\s+/g, " ");
}

function sent(notice: Notice): Notice {
  const file = { ...LENT, notices: [notice] };
  const frozen = JSON.stringify(composeLetter({ file, report, office, notice }));
  return { ...notice, state: "sent", sentAt: "2026-11-20T18:00:00.000Z", frozen };
}

describe("who gets a copy", () => {
  test("a lender gets one where the letter on money owed or the agreement goes to the owner", () => {
    const kinds = LETTER_KINDS.filter((kind) => copiesOf(LENT, report, kind).length > 0);
    expect(kinds.toSorted()).toEqual(["joint-agreement", "share-demand"]);
    expect(copiesOf(LENT, report, "share-demand")).toEqual([
      { partyId: "bank", propertyId: "p12", tieInId: null, splitId: "split-1" },
    ]);
  });

  test("a lender who also owns gets the letter and no copy", () => {
    const owns = { ...LENT, roles: [...LENT.roles, aRole("bank", "p12")] };
    expect(copiesOf(owns, report, "share-demand")).toEqual([]);
    expect(recipientsOf(owns, report, "share-demand").map(({ partyId }) => partyId)).toContain(
      "bank",
    );
  });

  test("the batch has the copy as a row that says so", () => {
    const rows = batchOf({ file: LENT, report, office }, "share-demand");
    const copies = rows.filter((row) => row.isCopy);
    expect(copies.map(({ recipient, isProposed }) => [recipient.partyId, isProposed])).toEqual([
      ["bank", true],
    ]);
    expect(rows.length).toBeGreaterThan(1);
  });
});

describe("what a copy says", () => {
  const SAYS: Record<Language, { lead: string; you: string; title: string; ask: string }> = {
    en: {
      title: "Copy: Payment request for your share",
      lead: "You are listed with us as lender (lienholder) of 12 Fennel Row. Nothing is asked of you.",
      you: "“You” in the rest of this letter means Ottilie Brandvold.",
      ask: "We ask",
    },
    es: {
      title: "Copia: Solicitud de pago de su parte",
      lead: "figura en nuestros archivos como acreedor (titular de un gravamen) de 12 Fennel Row. No se le pide nada.",
      you: "«usted» se refiere a Ottilie Brandvold.",
      ask: "Le pedimos",
    },
  };

  test.each(["en", "es"] as const)(
    "first whose copy it is, then the owner’s letter (%s)",
    (language) => {
      const original = sent(written("share-demand", { language }));
      const { letter, text } = made(copy("share-demand", { language }), original);
      const says = SAYS[language];
      expect(letter.title).toBe(says.title);
      expect(text).toContain(says.lead);
      expect(text).toContain(says.you);
      expect(text.indexOf(says.lead)).toBeLessThan(text.indexOf(says.you));
      const own = made(written("share-demand", { language }), null).letter;
      const tables = own.blocks.filter(({ kind }) => kind === "table" || kind === "caution");
      for (const block of tables) expect(letter.blocks).toContainEqual(block);
      expect(tables.length).toBeGreaterThan(0);
    },
  );

  test("it asks for nothing: no slip, no day, no consent, and only its own first words are strong", () => {
    const { letter } = made(copy("joint-agreement"), sent(written("joint-agreement")));
    expect(letter.asks).toEqual([]);
    expect(letter.answerBy).toBe("");
    expect(letter.blocks.filter(({ kind }) => kind === "answer-slip")).toEqual([]);
    expect(letter.blocks.filter(({ kind }) => kind === "signature")).toHaveLength(1);
    const strong = letter.blocks.filter((block) => block.kind === "paragraph" && block.lead);
    expect(strong).toHaveLength(1);
    expect(JSON.stringify(strong)).toContain("copy for your file");
  });

  test("it repeats what was sent, not what would be written today", () => {
    const original = sent(written("share-demand", { ownWords: "Said in November." }));
    const later = { ...original, ownWords: "Changed since." };
    const { text } = made(copy("share-demand"), later);
    expect(text).toContain("OTTILIE BRANDVOLD, OF NOVEMBER 20, 2026");
    expect(text).toContain("Said in November.");
    expect(text).not.toContain("Changed since.");
  });

  test("with both languages each has the other’s letter in its own", () => {
    const original = sent(written("share-demand", { alsoIn: "es" }));
    const { letter } = made(copy("share-demand", { alsoIn: "es" }), original);
    expect(plain(letter)).toContain(SAYS.en.you);
    expect(JSON.stringify(letter.also)).toContain("se refiere a Ottilie Brandvold");
    const also: Letter | undefined = JSON.parse(original.frozen ?? "{}").also;
    const table = also?.blocks.find(({ kind }) => kind === "table");
    expect(letter.also?.blocks).toContainEqual(table);
  });
});

describe("what keeps a copy back", () => {
  test("a letter that is not written or not sent yet; nothing once it is", () => {
    expect(made(copy("share-demand"), null).gaps).toEqual([
      "The letter to the owner of 12 Fennel Row is not written yet; write and send it first.",
    ]);
    expect(made(copy("share-demand"), written("share-demand")).gaps).toEqual([
      "The letter to Ottilie Brandvold is not sent yet; send it before its copy.",
    ]);
    expect(made(copy("share-demand"), sent(written("share-demand"))).gaps).toEqual([]);
  });

  test("a lender without an address: the copy would go to the owner’s house", () => {
    const here = { ...BANK, mailing: null, email: "" };
    const file = { ...LENT, parties: [...PLAIN.parties, here] };
    expect(made(copy("share-demand"), sent(written("share-demand")), file).gaps).toContain(
      "Harbor Savings Bank has no mailing address of its own: the copy would go to 12 Fennel Row.",
    );
  });

  test("a kind that has no copies", () => {
    expect(made(copy("finding"), sent(written("finding"))).gaps).toContain(
      "Harbor Savings Bank is on file only as lender of 12 Fennel Row, and this letter has no copies.",
    );
  });

  test("an original that can’t be read", () => {
    const broken = { ...sent(written("share-demand")), frozen: "torn" };
    expect(made(copy("share-demand"), broken).gaps.join(" ")).toContain("can’t be read");
  });
});

describe("a lender is no owner", () => {
  test("nobody whom a letter is due to, is told, or is counted, in any kind", () => {
    for (const kind of LETTER_KINDS) {
      expect(recipientsOf(LENT, report, kind), kind).toEqual(recipientsOf(PLAIN, report, kind));
      expect(toldCount(LENT, report, kind), kind).toEqual(toldCount(PLAIN, report, kind));
    }
    expect(lettersDue(LENT, report)).toEqual(lettersDue(PLAIN, report));
    expect(startAudience(LENT)).toEqual(startAudience(PLAIN));
  });

  test("signs nothing and lets nobody in", () => {
    for (const kind of ["enter", "dig", "pay"] as const)
      expect(signingName(LENT, { partyId: "bank", propertyId: "p12" }, kind)).toBeNull();
    const signers = consentTable(LENT).flatMap((row) => row.signers);
    expect(signers.map(({ partyId }) => partyId)).not.toContain("bank");
  });

  test("is asked at no door in a roll-call, even where nobody else is on file", () => {
    const doors = rollCallsOf(LENT, report).flatMap((call) => call.doors);
    expect(doors.map(({ propertyId }) => propertyId)).toContain("p40");
    expect(doors.flatMap(({ people }) => people.map(({ id }) => id))).not.toContain("bank");
  });

  test("does not stand in for the owner who is missing, nor for proof of notice", () => {
    const at40 = stakeholdersOf(LENT).find(({ property }) => property.id === "p40");
    expect(at40?.missing).toContain("No owner yet, so no one can be contacted or sign.");
    expect(noticeState({ file: LENT })).toEqual(noticeState({ file: PLAIN }));
    const who = (file: LineFile) =>
      answersOn({ ...file, properties: PLAIN.properties }, report).filter(
        // How many parties are on file counts a lender too.
        ({ question }) => question !== "who",
      );
    expect(who(LENT)).toEqual(who(PLAIN));
  });

  test("is not gone after for a copy, but where it came back", () => {
    const notice = { ...copy("share-demand"), state: "sent" as const };
    const chased = (outcome: "on-its-way" | "returned") => {
      const delivery = aDelivery("d", "copy", { outcome, outcomeOn: "2026-11-22" });
      const file = { ...LENT, notices: [notice], deliveries: [delivery] };
      return chaseList(file, report.today).map(({ reason }) => reason);
    };
    expect(chased("on-its-way")).toEqual([]);
    expect(chased("returned")).toEqual(["came-back"]);
  });
});

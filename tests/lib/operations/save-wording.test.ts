import { expect, test } from "vitest";
import { getOffice } from "#db/queries/office.ts";
import { listWordings } from "#db/queries/wording.ts";
import { LETTER_KINDS, type LetterKind } from "#lib/domain/facts/notice.ts";
import { composeLetter } from "#lib/domain/paper/compose.ts";
import { letterGaps } from "#lib/domain/paper/gaps.ts";
import { recipientsOf } from "#lib/domain/paper/recipients.ts";
import { houseWording } from "#lib/domain/paper/worded.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import type { Language } from "#lib/domain/say/language.ts";
import { parseWording } from "#lib/domain/wording/parse-wording.ts";
import { saveOffice } from "#lib/operations/save-office.ts";
import { saveWording, useWording } from "#lib/operations/save-wording.ts";
import { demoLines } from "#tests/support/demo.ts";
import { aNotice, anOffice } from "#tests/support/file.ts";
import { aDesk, fileOf, must } from "#tests/support/office.ts";

const WORDING =
  "We looked into the pipe behind {place}.\n\n{facts}\n\nCall {office} by {reply by}.";

/** Only an admin words letters for the whole office. */
function anAdminDesk() {
  const desk = aDesk();
  return { ...desk, act: { ...desk.act, actor: { ...desk.act.actor, role: "admin" as const } } };
}

function letterIn({ act, lineId }: ReturnType<typeof aDesk>, language: Language = "en") {
  const file = fileOf(act, lineId);
  const office = getOffice(act.db) ?? anOffice();
  const to = { partyId: "owner-12", propertyId: "12" };
  const notice = aNotice("n", { ...to, kind: "finding", language, replyBy: null });
  const input = { file, report: reportOn(file, act.today), office, notice };
  return { letter: composeLetter(input), gaps: letterGaps(input) };
}

function textOf({ blocks }: ReturnType<typeof letterIn>["letter"]) {
  return blocks.map((block) => ("text" in block ? block.text : "")).join("\n");
}

test("a wording is used once it is put into use, and the house's comes back", () => {
  const desk = anAdminDesk();
  const before = textOf(letterIn(desk).letter);
  must(saveWording(desk.act, { kind: "finding", language: "en", text: WORDING }));
  expect(textOf(letterIn(desk).letter)).toBe(before);
  must(useWording(desk.act, { kind: "finding", language: "en", version: 1 }));
  const { letter, gaps } = letterIn(desk);
  expect(textOf(letter)).toContain("We looked into the pipe behind 12 Fennel Row.");
  expect(gaps.join(" ")).toContain("{reply by}");
  expect(textOf(letterIn(desk, "es").letter)).not.toContain("We looked");
  must(useWording(desk.act, { kind: "finding", language: "en", version: 0 }));
  expect(textOf(letterIn(desk).letter)).toBe(before);
});

test("what is wrong is refused with its line; versions are added, never changed", () => {
  const { act } = anAdminDesk();
  const which = { kind: "finding", language: "en" } as const;
  expect(saveWording(act, { ...which, text: "Hi\n{amount}\n\n{facts}" })).toMatchObject({
    error: { path: "text", detail: expect.stringMatching(/^Line 2: There is no field \{amount\}/) },
  });
  must(saveWording(act, { ...which, text: WORDING }));
  expect(must(saveWording(act, { ...which, text: WORDING })).version).toBe(1);
  expect(must(saveWording(act, { ...which, text: "{facts}" })).version).toBe(2);
  expect(listWordings(act.db, "finding", "en").map(({ text }) => text)).toEqual([
    WORDING,
    "{facts}",
  ]);
  expect(() => act.db.$client.prepare("update wordings set text = 'x'").run()).toThrow(
    "append-only",
  );
  expect(useWording(act, { ...which, version: 9 })).toMatchObject({
    error: { reason: "not-found" },
  });
  const clerk = { ...act, actor: { ...act.actor, role: "office" as const } };
  expect(saveWording(clerk, { ...which, text: WORDING })).toMatchObject({
    error: { reason: "not-allowed" },
  });
});

test("a wording in use is no part of what is typed of the company", () => {
  const { act } = anAdminDesk();
  must(saveWording(act, { kind: "finding", language: "en", text: WORDING }));
  must(useWording(act, { kind: "finding", language: "en", version: 1 }));
  must(saveOffice(act, anOffice({ name: "Another Name" })));
  expect(getOffice(act.db)).toMatchObject({ name: "Another Name", wordings: [{ version: 1 }] });
});

test("no wording takes a caution, a figure, a drawing, the slip or what is asked out of any letter", async () => {
  const demo = await demoLines();
  for (const file of [demo.fennel, demo.ropewalk])
    for (const kind of LETTER_KINDS)
      for (const language of ["en", "es"] as const) {
        const pair = bothWays(demo.office, file, { kind, language });
        if (pair === null) continue;
        const { house, own } = pair;
        const lasting = (letter: typeof house) =>
          letter.blocks.filter(
            (block) =>
              (block.kind !== "paragraph" || block.lead === true) &&
              block.kind !== "heading" &&
              block.kind !== "list",
          );
        expect(lasting(own), `${kind} ${language}`).toEqual(lasting(house));
        const figures = (letter: typeof house) => textOf(letter).match(/\d[\d.,]*/g) ?? [];
        expect(figures(own).toSorted(), `${kind} ${language}`).toEqual(figures(house).toSorted());
      }
});

function bothWays(
  office: Awaited<ReturnType<typeof demoLines>>["office"],
  file: Awaited<ReturnType<typeof demoLines>>["fennel"],
  { kind, language }: { kind: LetterKind; language: Language },
) {
  const report = reportOn(file, "2026-11-25");
  const [to] = recipientsOf(file, report, kind);
  if (to === undefined) return null;
  const input = { file, report, office, notice: aNotice("n", { ...to, kind, language }) };
  expect(parseWording(houseWording(input)).ok, kind).toBe(true);
  const wording = { kind, language, version: 1, text: "{facts}", savedBy: "", savedAt: "" };
  const own = composeLetter({ ...input, office: { ...office, wordings: [wording] } });
  return { house: composeLetter(input), own };
}

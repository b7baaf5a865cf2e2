import { expect, test } from "vitest";
import { getAuthority, putAuthority } from "#db/queries/authority.ts";
import { isDailyOn } from "#db/queries/daily-mail.ts";
import { getMailRules } from "#db/queries/mailbox.ts";
import { listReminderRules } from "#db/queries/reminder.ts";
import { insertRow } from "#db/queries/row.ts";
import { keeperOf } from "#db/queries/summary.ts";
import { getUser } from "#db/queries/user.ts";
import { usualRow } from "#lib/domain/facts/field.ts";
import { STATUTORY_PAPER } from "#lib/domain/facts/statutory-paper.ts";
import { stopKey } from "#lib/domain/testing/test-day-results.ts";
import type { Act } from "#lib/operations/act.ts";
import { addUser } from "#lib/operations/add-user.ts";
import { changeDelivery } from "#lib/operations/change-delivery.ts";
import { changeUser, userSeen } from "#lib/operations/change-user.ts";
import { chooseOption } from "#lib/operations/choose-option.ts";
import { chooseRule, ruleSeen } from "#lib/operations/choose-rule.ts";
import { chooseSplit } from "#lib/operations/choose-split.ts";
import { correctPermit, printedSeen } from "#lib/operations/correct-permit.ts";
import { saveDailyMail } from "#lib/operations/daily-mail.ts";
import { dealWithReply } from "#lib/operations/deal-with-reply.ts";
import { alignmentsSeen, decideAlignment } from "#lib/operations/decide-alignment.ts";
import { explainEntry, explainedSeen } from "#lib/operations/explain-entry.ts";
import { keepLine } from "#lib/operations/keep-line.ts";
import { markDrawing } from "#lib/operations/mark-drawing.ts";
import { markRequirement } from "#lib/operations/mark-requirement.ts";
import { planTestDay } from "#lib/operations/plan-test-day.ts";
import { cardSeen, postCard } from "#lib/operations/post-card.ts";
import { recordBuilt } from "#lib/operations/record-built.ts";
import { recordInvoiceReply } from "#lib/operations/record-invoice-reply.ts";
import { recordRuling, ruledSeen } from "#lib/operations/record-ruling.ts";
import { recordTestResult, resultSeen } from "#lib/operations/record-test-result.ts";
import { saveApplication } from "#lib/operations/save-application.ts";
import { saveAuthority } from "#lib/operations/save-authority.ts";
import { lineSeen, saveLine } from "#lib/operations/save-line.ts";
import { saveMailRules } from "#lib/operations/save-mail-rules.ts";
import { paperSeen, savePaperText } from "#lib/operations/save-paper-text.ts";
import { authorityFactsSeen, saveAuthorityFacts } from "#lib/operations/save-part.ts";
import { saveReminderRule } from "#lib/operations/save-reminder-rule.ts";
import { saveWording, useWording } from "#lib/operations/save-wording.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { settledSeen, settleTieIn } from "#lib/operations/settle-tie-in.ts";
import type { Result } from "#lib/result.ts";
import { aDrawingItem } from "#tests/support/application.ts";
import {
  aDelivery,
  aNotice,
  anAuthority,
  aPermit,
  aRequirement,
  aScopeItem,
  aTestStop,
} from "#tests/support/file.ts";
import { aLedgerEntry } from "#tests/support/ledger.ts";
import { aDesk, addRows, fileOf, must } from "#tests/support/office.ts";

// Two people have one form open. Whoever saves second is told who was first, nothing is written, and
// what they then save over the other's version counts.

interface Form {
  /** What the page hands the form as it is drawn now. */
  readonly seen: () => unknown;
  readonly saves: (
    act: Act,
    word: string,
    seen?: string,
  ) => Result<unknown, unknown> | Promise<Result<unknown, unknown>>;
}

type Desk = ReturnType<typeof aDesk>;
const TODAY = "2026-11-25";

function anAuthorityAt({ act, lineId }: Desk, parts: Parameters<typeof anAuthority>[0] = {}) {
  const admin = { ...act, actor: { ...act.actor, role: "admin" as const } };
  must(saveAuthority(admin, anAuthority(parts)));
  must(chooseRule(act, { lineId, authorityId: "authority-1", ruleId: null }));
}

/** The tie-in on no record. */
function extra({ act, lineId }: Desk) {
  const file = fileOf(act, lineId);
  const tieInId = file.observations.find(({ id }) => id === "extra")?.tieInId ?? "";
  const tieIn = () => fileOf(act, lineId).tieIns.find(({ id }) => id === tieInId);
  return { tieInId, tieIn };
}

function there<T>(value: T | null | undefined): T {
  if (value === null || value === undefined) throw new Error("It is not there");
  return value;
}

const FORMS: Readonly<Record<string, (desk: Desk) => Form | Promise<Form>>> = {
  "the owner of a tie-in": (desk) => {
    const { tieInId, tieIn } = extra(desk);
    const word = { lineId: desk.lineId, tieInId, kind: "building" as const };
    const rest = { inactive: false, ownerAccepted: false, propertyId: "14" };
    return {
      seen: () => settledSeen(there(tieIn())),
      saves: (act, reason, seen) => settleTieIn(act, { ...word, ...rest, reason, seen }),
    };
  },
  "the ruling on a tie-in": (desk) => {
    const { tieInId } = extra(desk);
    const ruling = { lineId: desk.lineId, tieInId, kind: "accepted-as-legacy" as const };
    const rest = { decidedBy: "Clerk", decidedOn: TODAY, dueOn: null, uploadId: null, note: "" };
    return {
      seen: () => ruledSeen(fileOf(desk.act, desk.lineId), tieInId),
      saves: (act, reference, seen) => recordRuling(act, { ...ruling, ...rest, reference, seen }),
    };
  },
  "the result at a stop of a test day": (desk) => {
    const { act, lineId } = desk;
    const { tieInId } = extra(desk);
    const stop = aTestStop("14", { tieInIds: [tieInId], startsAt: "09:30", colour: "green" });
    const plan = { dayId: null, seen: null, on: TODAY, controlPropertyId: null };
    const told = { plantToldOn: null, plantTold: "", note: "" };
    const { dayId } = must(planTestDay(act, { lineId, ...plan, ...told, stops: [stop] }));
    const word = { lineId, dayId, stop: stopKey(stop), tieInId, result: "positive" as const };
    const rest = { startedAt: "", minutes: 4, quantity: "", dosedBy: "", watchedBy: "" };
    return {
      seen: () => resultSeen(fileOf(act, lineId).tests.at(-1) ?? null, stop),
      saves: (one, note, seen) =>
        recordTestResult(one, {
          ...{ ...word, ...rest, filmed: "", otherWaterBarred: true, note },
          ...(seen === undefined ? {} : { seen }),
        }),
    };
  },
  "what became of a record entry": ({ act, lineId }) => ({
    seen: () => explainedSeen(there(fileOf(act, lineId).entries[0])),
    saves: (one, explanation, seen) =>
      explainEntry(one, { lineId, entryId: "12", explanation, seen }),
  }),
  "the facts of a line": ({ act, lineId }) => ({
    seen: () => lineSeen(fileOf(act, lineId).line, ["note", "name"]),
    saves: (one, note, seen) => saveLine(one, { lineId, facts: { name: "Alley", note }, seen }),
  }),
  "how the records lie": ({ act, lineId }) => ({
    seen: () => alignmentsSeen(fileOf(act, lineId)),
    saves: (one, word, seen) =>
      decideAlignment(one, {
        ...{ lineId, recordId: null, shift: word.length, scale: 0, state: "accepted" },
        ...{ reason: word, seen },
      }),
  }),
  "the option of a line": ({ act, lineId }) => {
    addRows(act, { lineId, table: "options" }, [
      { id: "dig", title: "Dig" },
      { id: "line", title: "Line" },
    ]);
    return {
      seen: () => fileOf(act, lineId).line.optionId,
      saves: (one, word, seen) => {
        const optionId = word === "first" ? "dig" : "line";
        return chooseOption(one, { lineId, optionId, reason: word, seen });
      },
    };
  },
  "the split of a line": ({ act, lineId }) => {
    addRows(act, { lineId, table: "scope" }, [aScopeItem("job", { kind: "other" })]);
    const choice = { rule: "equal", faultStation: null, payerId: null } as const;
    return {
      seen: () => fileOf(act, lineId).splits.length,
      saves: (one, reason, seen) =>
        chooseSplit(one, {
          ...{ lineId, choice: { ...choice, unknownShares: "carried" }, reason, seen },
        }),
    };
  },
  "the rule of a line": (desk) => {
    anAuthorityAt(desk);
    const { act, lineId } = desk;
    const authorityOf = (word: string) => (word === "first" ? null : "authority-1");
    return {
      seen: () => ruleSeen(fileOf(act, lineId).line),
      saves: (one, word, seen) =>
        chooseRule(one, { lineId, authorityId: authorityOf(word), ruleId: null, seen }),
    };
  },
  "who handles a line": async ({ act, lineId }) => {
    const admin = { ...act, actor: { ...act.actor, role: "admin" as const } };
    const added = { role: "office" as const, password: "seven dry shovels" };
    const ids: string[] = [];
    for (const name of ["Ines", "Sami"]) {
      const user = await addUser(admin, { name, email: `${name}@example.com`, ...added });
      ids.push(must(user).userId);
    }
    return {
      seen: () => keeperOf(act.db, lineId),
      saves: (one, word, seen) =>
        keepLine(one, { lineId, userId: ids[word === "first" ? 0 : 1] ?? "", seen }),
    };
  },
  "a requirement": (desk) => {
    anAuthorityAt(desk, { requirements: [aRequirement("plan")] });
    const { act, lineId } = desk;
    const mark = { lineId, requirementId: "plan", state: "missing" as const, uploadId: null };
    return {
      seen: () => fileOf(act, lineId).requirementMarks[0] ?? null,
      saves: (one, note, seen) => markRequirement(one, { ...mark, note, seen }),
    };
  },
  "an item of the drawing": (desk) => {
    anAuthorityAt(desk, { drawingItems: [aDrawingItem("buildings")] });
    const { act, lineId } = desk;
    const mark = { lineId, itemId: "buildings", state: "shown" as const };
    return {
      seen: () => fileOf(act, lineId).drawingMarks[0] ?? null,
      saves: (one, note, seen) => markDrawing(one, { ...mark, note, seen }),
    };
  },
  "an application": ({ act, lineId }) => ({
    seen: () => fileOf(act, lineId).applications[0] ?? null,
    saves: (one, traffic, seen) =>
      saveApplication(one, { lineId, facts: { permitKind: "side-sewer", traffic }, seen }),
  }),
  "what is printed on a permit": ({ act, lineId }) => {
    insertRow(act.db, "permits", { lineId, row: aPermit("permit") });
    const at = { lineId, permitId: "permit", expiresOn: null, note: "" };
    return {
      seen: () => printedSeen(there(fileOf(act, lineId).permits[0])),
      saves: (one, number, seen) => correctPermit(one, { ...at, number, seen }),
    };
  },
  "a posted card": ({ act, lineId }) => {
    insertRow(act.db, "permits", { lineId, row: aPermit("permit") });
    const at = { lineId, permitId: "permit", postedOn: TODAY, postedBy: "Sami Orlov" };
    return {
      seen: () => cardSeen(there(fileOf(act, lineId).permits[0])),
      saves: (one, postedPlace, seen) => postCard(one, { ...at, postedPlace, seen }),
    };
  },
  "what was built": ({ act, lineId }) => {
    addRows(act, { lineId, table: "scope" }, [aScopeItem("job", { kind: "other" })]);
    const word = { lineId, itemId: "job", on: TODAY, by: "Sami Orlov", uploadId: null };
    return {
      seen: () => fileOf(act, lineId).built[0] ?? null,
      saves: (one, words, seen) => recordBuilt(one, { ...word, words, seen }),
    };
  },
  "a reply that waits": ({ act, lineId }) => {
    insertRow(act.db, "ledger", { lineId, row: aLedgerEntry(1) });
    const answer = { kind: "asks" as const, receivedOn: TODAY, words: "When?", uploadId: null };
    const { replyId } = must(recordInvoiceReply(act, { lineId, entryId: "entry-1", ...answer }));
    return {
      seen: () => there(fileOf(act, lineId).replies[0]),
      saves: (one, words, seen) =>
        dealWithReply(one, { lineId, replyId, how: "called-back", on: TODAY, words, seen }),
    };
  },
  "what became of a delivery": ({ act, lineId }) => {
    const notice = aNotice("letter", { partyId: "owner-12", propertyId: "12", state: "sent" });
    insertRow(act.db, "notices", { lineId, row: notice });
    const row = aDelivery("delivery", "letter", { method: "certified" });
    insertRow(act.db, "deliveries", { lineId, row });
    const said = { outcome: "returned" as const, outcomeOn: TODAY, tracking: "" };
    const at = { lineId, deliveryId: "delivery", proofUploadId: null };
    return {
      seen: () => there(fileOf(act, lineId).deliveries[0]),
      saves: (one, note, seen) => changeDelivery(one, { ...at, ...said, note, seen }),
    };
  },
  "the text of a statutory paper": (desk) => {
    anAuthorityAt(desk);
    const { act } = desk;
    const authority = there(getAuthority(act.db, "authority-1"));
    const own = { id: "cancel", authorityId: authority.id, title: "Right to cancel" };
    const paper = { ...usualRow(STATUTORY_PAPER), ...own, event: "contract" as const };
    const row = { ...paper, citation: "Code 5", asOf: TODAY, by: "in-person" as const };
    putAuthority(act.db, { ...authority, statutoryPapers: [row] });
    const place = { authorityId: authority.id, paperId: "cancel" };
    return {
      seen: () => paperSeen(there(getAuthority(act.db, authority.id)?.statutoryPapers[0])),
      saves: (one, text, seen) => savePaperText(one, { ...place, text, textEs: "", seen }),
    };
  },
  "the wording of a letter": () => {
    let newest = 0;
    const which = { kind: "finding", language: "en" } as const;
    return {
      seen: () => newest,
      saves: (one, word, seen) => {
        const saved = saveWording(one, { ...which, text: `${word}\n\n{facts}`, seen });
        if (saved.ok) newest = saved.value.version;
        return saved;
      },
    };
  },
  "the version of a wording in use": ({ act }) => {
    const which = { kind: "finding", language: "en" } as const;
    const admin = { ...act, actor: { ...act.actor, role: "admin" as const } };
    for (const text of ["One\n\n{facts}", "Two\n\n{facts}"])
      must(saveWording(admin, { ...which, text }));
    let inUse = 0;
    return {
      seen: () => inUse,
      saves: (one, word, seen) => {
        const used = useWording(one, { ...which, version: word === "first" ? 1 : 2, seen });
        if (used.ok) inUse = used.value.version;
        return used;
      },
    };
  },
  "a rule for reminders": ({ act }) => ({
    seen: () => listReminderRules(act.db),
    saves: (one, word, seen) => {
      const rule = { kind: "finding", sends: false, every: 14, most: 2 };
      return saveReminderRule(one, { ...rule, daysAfter: word.length, seen });
    },
  }),
  "the limit of email": ({ act }) => ({
    seen: () => getMailRules(act.db),
    saves: (one, word, seen) => saveMailRules(one, { perHour: word.length, seen }),
  }),
  "the morning’s email": ({ act }) => ({
    seen: () => isDailyOn(act.db),
    saves: (one, word, seen) => saveDailyMail(one, { daily: word === "first", seen }),
  }),
  "the facts of an authority": (desk) => {
    anAuthorityAt(desk);
    const { act } = desk;
    const now = () => there(getAuthority(act.db, "authority-1"));
    return {
      seen: () => authorityFactsSeen(now()),
      saves: (one, note, seen) =>
        saveAuthorityFacts(one, {
          ...authorityFactsSeen(now()),
          authorityId: now().id,
          note,
          seen,
        }),
    };
  },
  "a user": async ({ act }) => {
    const admin = { ...act, actor: { ...act.actor, role: "admin" as const } };
    const user = { name: "Ines Peña", email: "ines@example.com", role: "viewer" as const };
    const { userId } = must(await addUser(admin, { ...user, password: "seven dry shovels" }));
    return {
      seen: () => userSeen(there(getUser(act.db, userId))),
      saves: (one, name, seen) => changeUser(one, { userId, name, seen }),
    };
  },
};

test.each(Object.keys(FORMS))(
  "of two who save %s the second is told who was first",
  async (name) => {
    const desk = aDesk({ undocumented: true });
    const form = await there(FORMS[name])(desk);
    const admin = (who: string) => ({
      ...desk.act,
      actor: { id: who, name: who, role: "admin" as const },
    });
    const opened = seenOf(form.seen());
    must(await form.saves(admin("Ruth Lindqvist"), "first", opened));
    const stands = seenOf(form.seen());
    expect(stands).not.toBe(opened);
    expect(await form.saves(admin("Dana Okafor"), "second", opened)).toMatchObject({
      error: { reason: "changed-meanwhile", detail: "Ruth Lindqvist" },
    });
    expect(seenOf(form.seen())).toBe(stands);
    const before = (await form.saves(admin("Dana Okafor"), "second again", stands)) as {
      readonly ok: boolean;
      readonly error?: unknown;
    };
    expect(before.error).toBeUndefined();
    expect(seenOf(form.seen())).not.toBe(stands);
  },
);

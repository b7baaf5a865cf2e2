import { getOffice } from "#db/queries/office.ts";
import { insertRow } from "#db/queries/row.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { LETTER_KINDS, type LetterKind, type Notice } from "#lib/domain/facts/notice.ts";
import { LETTER_SAID } from "#lib/domain/facts/notice-words.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { copiesOf, isCopy } from "#lib/domain/paper/copy.ts";
import { LETTER_PLANS } from "#lib/domain/paper/kinds/index.ts";
import { recipientsOf } from "#lib/domain/paper/recipients.ts";
import { type LetterLanguages, letterLanguagesIn } from "#lib/domain/party/letter-languages.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { isOpenPaper, papersOn } from "#lib/domain/statutory/papers.ts";
import { isDay } from "#lib/exchange/field.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, refuse } from "./change.ts";

/** Who is written to, and what about. */
interface RecipientChoice {
  readonly partyId: string;
  readonly propertyId: string | null;
  readonly tieInId: string | null;
  readonly splitId: string | null;
  /** The statutory paper that it gives; left out by every other kind. */
  readonly paperId?: string | undefined;
}

interface Drafting {
  readonly lineId: string;
  readonly kind: LetterKind;
  readonly replyBy: string | null;
  readonly recipients: readonly RecipientChoice[];
}

/**
 * Drafts a letter to each recipient, in their language or in both. A draft that is there already is kept.
 * Refuses who is not in the file, and a demand for money where nothing proves that it is owed.
 */
export function draftNotices(
  act: Act,
  { lineId, kind, replyBy, recipients }: Drafting,
): Result<{ noticeIds: string[] }, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "draft-notices" } as const;
  return changeLine(act, deal, (file) => {
    if (!LETTER_KINDS.includes(kind)) return refuse("bad-value", "kind", "Choose a letter");
    if (recipients.length === 0)
      return refuse("missing-value", "recipients", "Select at least one person");
    if (replyBy !== null && !isDay(replyBy))
      return refuse("bad-value", "replyBy", "Enter a date as 11/25/2026");
    const wrong = wrongRecipient(file, reportOn(file, act.today), { kind, recipients });
    if (wrong !== null) return wrong;
    const drafts = draftsFor(act, file, { kind, replyBy, recipients });
    const fresh = drafts.filter(({ isNew }) => isNew).map(({ notice }) => notice);
    const names = fresh.map(({ partyId }) => partyName(file, partyId)).join(", ");
    return ok({
      value: { noticeIds: drafts.map(({ notice }) => notice.id) },
      sentence: fresh.length === 0 ? null : `Drafted ${LETTER_SAID[kind]} to ${names}.`,
      detail: { added: fresh },
      write: (db) => {
        for (const row of fresh) insertRow(db, "notices", { lineId, row });
      },
    });
  });
}

/** The draft for each recipient, in their languages; one that is there already is kept as it is. */
export function draftsFor(
  act: Act,
  file: LineFile,
  { kind, replyBy, recipients }: Omit<Drafting, "lineId">,
): { notice: Notice; isNew: boolean }[] {
  const languages = letterLanguagesIn(file, getOffice(act.db));
  return recipients.map((recipient) =>
    draftFor(act, file, {
      kind,
      // A copy asks for no answer.
      replyBy: isCopy(file, recipient) ? null : replyBy,
      recipient,
      languages: languages(recipient),
    }),
  );
}

function wrongRecipient(
  file: LineFile,
  report: Report,
  { kind, recipients }: Pick<Drafting, "kind" | "recipients">,
) {
  const { named } = LETTER_PLANS[kind];
  for (const [at, recipient] of recipients.entries()) {
    const path = `recipients.${at}`;
    const missing = missingIn(file, recipient);
    if (missing !== null) return refuse("not-found", path, missing);
    if (isCopy(file, recipient)) {
      const wrong = wrongCopy(file, report, { kind, recipient, path });
      if (wrong !== null) return wrong;
      continue;
    }
    const wrong = wrongAbout(file, { kind, recipient, path });
    if (wrong !== null) return wrong;
    if (named === "always" && !isDemandable(file, report, recipient))
      return refuse(
        "held",
        path,
        `Nothing proves yet that ${partyName(file, recipient.partyId)} owes a share`,
      );
  }
  return null;
}

interface Chosen {
  readonly kind: LetterKind;
  readonly recipient: RecipientChoice;
  readonly path: string;
}

/** What the letter has to name and the choice does not. */
function wrongAbout(file: LineFile, { kind, recipient, path }: Chosen) {
  const { about } = LETTER_PLANS[kind];
  if (about === "split" && recipient.splitId === null)
    return refuse("missing-value", path, "Choose a split first");
  if (about === "tie-in" && recipient.tieInId === null)
    return refuse("missing-value", path, "Choose the tie-in that the letter asks about");
  if (about === "paper" && !isPaperOpen(file, recipient))
    return refuse(
      "missing-value",
      path,
      `No statutory paper is due to ${partyName(file, recipient.partyId)}; see “Statutory papers”`,
    );
  return null;
}

/** A lender gets only the copies that the kind gives where the letter itself is due. */
function wrongCopy(file: LineFile, report: Report, { kind, recipient, path }: Chosen) {
  const { partyId, propertyId } = recipient;
  const gets = copiesOf(file, report, kind).some(
    (one) => one.partyId === partyId && one.propertyId === propertyId,
  );
  return gets
    ? null
    : refuse(
        "held",
        path,
        `${partyName(file, partyId)} is on file there only as lender, and gets no copy of this letter`,
      );
}

function isPaperOpen(file: LineFile, recipient: RecipientChoice): boolean {
  return papersOn(file).some(
    (due) =>
      isOpenPaper(due) &&
      due.paper.id === recipient.paperId &&
      due.partyId === recipient.partyId &&
      due.propertyId === recipient.propertyId,
  );
}

/**
 * Money is only asked for where record, tests or the owner's acceptance show that it is owed; a lender
 * gets a copy of no other demand.
 */
export function isDemandable(
  file: LineFile,
  report: Report,
  { partyId, propertyId }: Pick<RecipientChoice, "partyId" | "propertyId">,
): boolean {
  const gets = isCopy(file, { partyId, propertyId }) ? copiesOf : recipientsOf;
  return gets(file, report, "share-demand").some(
    (each) => each.partyId === partyId && each.propertyId === propertyId,
  );
}

function missingIn(file: LineFile, recipient: RecipientChoice): string | null {
  const asked = [
    ["parties", recipient.partyId, "the party"],
    ["properties", recipient.propertyId, "the property"],
    ["tieIns", recipient.tieInId, "the tie-in"],
    ["splits", recipient.splitId, "the split"],
  ] as const;
  const missing = asked.find(
    ([list, id]) =>
      id !== null && !(file[list] as readonly { id: string }[]).some((row) => row.id === id),
  );
  return missing ? missing[2] : null;
}

function draftFor(
  act: Act,
  file: LineFile,
  {
    kind,
    replyBy,
    recipient,
    languages,
  }: {
    kind: LetterKind;
    replyBy: string | null;
    recipient: RecipientChoice;
    languages: LetterLanguages;
  },
): { notice: Notice; isNew: boolean } {
  const { partyId, propertyId, tieInId, splitId, paperId = "" } = recipient;
  const there = file.notices.find(
    (each) =>
      each.state === "draft" &&
      each.kind === kind &&
      each.partyId === partyId &&
      each.propertyId === propertyId &&
      each.tieInId === tieInId &&
      each.splitId === splitId &&
      each.paperId === paperId,
  );
  if (there) return { notice: there, isNew: false };
  const notice: Notice = {
    id: act.newId(),
    kind,
    partyId,
    propertyId,
    tieInId,
    splitId,
    ...languages,
    state: "draft",
    createdOn: act.today,
    createdBy: act.actor.name,
    replyBy,
    ownWords: "",
    frozen: null,
    frozenHash: null,
    sentAt: null,
    uploadId: null,
    paperId,
  };
  return { notice, isNew: true };
}

function partyName(file: LineFile, partyId: string): string {
  return nameRow(file, "parties", partyId).replace(/^party /, "");
}

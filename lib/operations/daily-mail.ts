import {
  type DailyMail,
  dailyQueue,
  insertDailyMail,
  isDailyOn,
  listDailyMails,
  putDaily,
} from "#db/queries/daily-mail.ts";
import { getLastOfficeEntry } from "#db/queries/history.ts";
import { getOffice } from "#db/queries/office.ts";
import { countOldSummaries, dueOf } from "#db/queries/summary.ts";
import { getUser, listUsers } from "#db/queries/user.ts";
import { papersBy, pressingPapers } from "#lib/domain/clocks/paper-clocks.ts";
import type { DueKind } from "#lib/domain/desk/answer.ts";
import { dailyWords } from "#lib/domain/desk/daily-words.ts";
import { EVERYTHING, endOfWeek } from "#lib/domain/desk/narrowing.ts";
import type { Office } from "#lib/domain/facts/line-file.ts";
import { isKeeper, mayDo, type User } from "#lib/domain/facts/user.ts";
import { MAYBE_TWICE } from "#lib/domain/notices/outgoing.ts";
import { isBusinessDay } from "#lib/domain/time/business-days.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { federalHolidays } from "#lib/domain/time/federal-holidays.ts";
import { hourAt } from "#lib/domain/time/moment.ts";
import { type SendOutcome, sendMail } from "#lib/mail/send.ts";
import { writeUnsent } from "#lib/mail/write-unsent.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeOffice } from "./change.ts";
import { messageIdOf } from "./outgoing.ts";
import { changedSince } from "./seen.ts";
import { minutesAfter, type Workplace, workOnNext } from "./workplace.ts";

/** From this hour of the office's day on it is morning. */
const MORNING = 7;

/** Turns the morning's messages to the people of the office on or off. */
export function saveDailyMail(
  act: Act,
  {
    daily,
    seen,
  }: {
    readonly daily: boolean;
    /** `seenOf` whether they were on, as on the page; not given: however it is now. */
    readonly seen?: string | undefined;
  },
): Result<null, Refusal> {
  return changeOffice(act, { deed: "run-the-office", action: "save-daily-mail" }, (db) => {
    const before = isDailyOn(db);
    const last = getLastOfficeEntry(db, "save-daily-mail");
    const changed = changedSince(seen, { now: before, last });
    if (changed !== null) return changed;
    const said = daily
      ? "Everyone is emailed each business day what is overdue or due that week."
      : "No one is emailed any more what is overdue or due.";
    return ok({
      value: null,
      sentence: before === daily ? null : said,
      detail: { before, after: daily },
      write: (one) => putDaily(one, daily),
    });
  });
}

/**
 * Writes, once a business day from 7 in the morning on, a message to each who works on files: what is
 * overdue or due this week on the lines that they handle and, to admins, on lines that no one does,
 * with the company papers. The messages of a day are written in one step, one a person and day, so
 * that a worker that dies and another that starts add none. It waits until the desk is of today.
 */
export function dailyMailing(): (place: Workplace) => Promise<boolean> {
  let written: Day = "";
  return async (place) => {
    const today = place.today();
    const office = getOffice(place.db);
    if (written === today || office === null || !isDailyOn(place.db)) return false;
    const year = Number(today.slice(0, 4));
    if (!isBusinessDay(today, federalHolidays(year))) return false;
    if (hourAt(place.now(), office.zone) < MORNING) return false;
    if (countOldSummaries(place.db, today) > 0) return false;
    place.db.transaction(
      () => {
        const there = new Set(listDailyMails(place.db, today).map(({ userId }) => userId));
        for (const user of listUsers(place.db).filter(isKeeper))
          if (!there.has(user.id)) writeTo(place, { user, office, today });
      },
      { behavior: "immediate" },
    );
    written = today;
    return false;
  };
}

interface Told {
  readonly user: User;
  readonly office: Office;
  readonly today: Day;
}

function writeTo(place: Workplace, { user, office, today }: Told): void {
  const runs = mayDo(user.role, "run-the-office");
  const keepers = runs ? [user.id, ""] : [user.id];
  const until = endOfWeek(today);
  const of = (kind: DueKind) =>
    keepers.flatMap((keeper) =>
      dueOf(place.db, kind, { ...ALL, narrowing: { ...EVERYTHING, keeper, until } }),
    );
  const { late, due } = papersBy(pressingPapers(office, today), today);
  const words = dailyWords(
    {
      late: of("late"),
      due: of("due"),
      papers: runs ? [...late, ...due] : [],
      address: place.address,
    },
    today,
  );
  if (words === null) return;
  const id = place.newId();
  insertDailyMail(place.db, {
    id,
    userId: user.id,
    day: today,
    toAddress: user.email,
    toName: user.name,
    ...words,
    messageId: messageIdOf(id, office),
    state: "waiting",
    attempts: 0,
    nextTryAt: place.now(),
    problem: "",
    createdAt: place.now(),
    sentAt: null,
  });
}

const ALL = { from: 0, most: 500 };

/** About a morning of trying: later there is the next day's. */
const MOST_TRIES = 6;
const LONGEST_WAIT_MINUTES = 60;

/** Sends the next message that waits; says whether there was one. Each keeps its Message-ID. */
export async function sendNextDaily(place: Workplace): Promise<boolean> {
  return await workOnNext(place, dailyQueue, {
    longestWait: LONGEST_WAIT_MINUTES,
    work: async (mail) => end(place, mail, await tryToSend(place, mail)),
  });
}

async function tryToSend(place: Workplace, mail: DailyMail): Promise<SendOutcome> {
  try {
    const unwanted = unwantedNow(place, mail);
    if (unwanted !== null) return { state: "refused", words: unwanted };
    const office = getOffice(place.db);
    const address = place.mailFrom === "" ? (office?.email ?? "") : place.mailFrom;
    if (address === "") return { state: "later", words: "There is no address to send from" };
    const message = {
      messageId: mail.messageId,
      from: { name: office?.name ?? "", address },
      to: { name: mail.toName, address: mail.toAddress },
      subject: mail.subject,
      text: mail.text,
      attachments: [],
      date: new Date(mail.createdAt),
    };
    if (place.smtp !== null) return await sendMail(place.smtp, message);
    const written = await writeUnsent(place.dataFolder, message);
    return { state: "accepted", words: `No mail server is set: written to ${written}` };
  } catch (error) {
    return { state: "later", words: error instanceof Error ? error.message : String(error) };
  }
}

/** What was written in the morning may wait for hours: it names the office's lines to nobody who lost access since. */
function unwantedNow({ db }: Workplace, { userId }: DailyMail): string | null {
  const user = getUser(db, userId);
  if (user === null || !isKeeper(user)) return "Not sent: they no longer work on files";
  return isDailyOn(db) ? null : "Not sent: the morning’s messages were turned off";
}

function end(place: Workplace, mail: DailyMail, outcome: SendOutcome): void {
  const mine = { id: mail.id, worker: place.worker };
  const now = place.now();
  const unsure = outcome.state === "later" && outcome.unsure === true;
  const problem = unsure ? `${outcome.words}; ${MAYBE_TWICE}` : outcome.words;
  if (outcome.state === "accepted")
    dailyQueue.end(place.db, mine, { state: "sent", problem, sentAt: now });
  else if (outcome.state === "refused" || mail.attempts >= MOST_TRIES)
    dailyQueue.end(place.db, mine, { state: "failed", problem });
  else
    dailyQueue.end(place.db, mine, {
      ...{ state: "waiting", problem },
      nextTryAt: minutesAfter(now, Math.min(2 ** mail.attempts, LONGEST_WAIT_MINUTES)),
    });
}

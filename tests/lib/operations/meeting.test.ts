import { describe, expect, test } from "vitest";
import { insertRow } from "#db/queries/row.ts";
import type { MeetingWish } from "#lib/domain/facts/meeting.ts";
import { lettersOfMeeting } from "#lib/domain/paper/meeting-letters.ts";
import { meetingGuests, meetingQuestions } from "#lib/domain/paper/meeting-sheet.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { draftFromMeeting } from "#lib/operations/draft-from-meeting.ts";
import { recordMeetingWord } from "#lib/operations/record-meeting-word.ts";
import { aReply } from "../../support/file.ts";
import { aSentLetter, aSplit } from "../../support/link.ts";
import { aDesk, addRows, anAct, fileOf, must } from "../../support/office.ts";

const MEETING = {
  id: "meeting",
  on: "2026-11-24",
  at: "18:30",
  until: "20:00",
  place: "Kitchen of 12 Fennel Row",
  note: "",
};

function aMeeting(meeting = MEETING) {
  const desk = aDesk({ undocumented: true });
  addRows(desk.act, { lineId: desk.lineId, table: "meetings" }, [meeting]);
  return desk;
}

const LINE = {
  meetingId: "meeting",
  partyId: "owner-12",
  propertyId: "12",
  came: true,
  wishes: ["findings"] as readonly MeetingWish[],
  words: "",
  seen: "",
};

describe("what stands on the sheet is taken over", () => {
  test("who came, what they marked and said; the last line of a person counts", () => {
    const { act, lineId } = aMeeting();
    const first = must(recordMeetingWord(act, { lineId, ...LINE, words: "Likes the video" }));
    expect(fileOf(act, lineId).history.at(-1)?.sentence).toBe(
      "Meeting of November 24, 2026: Ottilie Brandvold (12 Fennel Row) came: Likes the video",
    );
    expect(recordMeetingWord(act, { lineId, ...LINE })).toMatchObject({
      error: { reason: "changed-meanwhile" },
    });
    must(recordMeetingWord(act, { lineId, ...LINE, wishes: [], seen: first.wordId }));
    const file = fileOf(act, lineId);
    expect(file.meetingWords).toHaveLength(2);
    expect(lettersOfMeeting(file, reportOn(file, act.today), MEETING).letters).toEqual([]);
  });

  test("not before the meeting, not for a stranger, not by the field", () => {
    const { act, lineId } = aMeeting({ ...MEETING, on: "2026-11-26" });
    expect(recordMeetingWord(act, { lineId, ...LINE })).toMatchObject({
      error: { reason: "not-in-this-state" },
    });
    const held = aMeeting();
    expect(
      recordMeetingWord(held.act, { lineId: held.lineId, ...LINE, propertyId: "14" }),
    ).toMatchObject({ error: { reason: "not-found" } });
    const field = anAct(held.act.db, { role: "field" });
    expect(recordMeetingWord(field, { lineId: held.lineId, ...LINE })).toMatchObject({
      error: { reason: "not-allowed" },
    });
  });
});

describe("letters follow from what was marked", () => {
  test("each kind to whoever asked for it, once, in their language", () => {
    const { act, lineId } = aMeeting();
    must(recordMeetingWord(act, { lineId, ...LINE }));
    must(
      recordMeetingWord(act, {
        lineId,
        ...{
          ...LINE,
          partyId: "owner-14",
          propertyId: "14",
          wishes: ["findings", "sign-agreement"],
        },
      }),
    );
    expect(must(draftFromMeeting(act, { lineId, meetingId: "meeting" }))).toEqual({ count: 3 });
    const drafts = fileOf(act, lineId).notices.map(
      ({ kind, partyId, language, state }) => `${kind} ${partyId} ${language} ${state}`,
    );
    expect(drafts).toEqual([
      "finding owner-12 en draft",
      "finding owner-14 es draft",
      "joint-agreement owner-14 es draft",
    ]);
    expect(draftFromMeeting(act, { lineId, meetingId: "meeting" })).toMatchObject({
      error: { reason: "not-in-this-state" },
    });
  });

  test("what cannot be written yet is said, and is no letter", () => {
    const { act, lineId } = aMeeting();
    must(recordMeetingWord(act, { lineId, ...LINE, wishes: ["own-figure", "test-here"] }));
    const file = fileOf(act, lineId);
    const { letters, waiting } = lettersOfMeeting(file, reportOn(file, act.today), MEETING);
    expect(letters).toEqual([]);
    expect(waiting.map(({ because }) => because)).toEqual([
      "no split with a share of theirs is chosen yet",
      "no test day has a stop there yet",
    ]);
  });
});

describe("the sheet on the table", () => {
  test("everybody reads it: it holds no one's amount, answer or need", () => {
    const desk = aMeeting();
    const { act, lineId } = desk;
    aSplit(desk);
    const noticeId = aSentLetter(desk, "entry-consent");
    insertRow(act.db, "replies", {
      lineId,
      row: aReply("no", noticeId, { kind: "disagrees", words: "Never on my lawn" }),
    });
    const file = fileOf(act, lineId);
    const split = file.splits.at(-1);
    const own = (split?.shares ?? []).map(({ amount }) => (amount / 100).toFixed(2));
    for (const language of ["en", "es"] as const) {
      const said = meetingQuestions(file, reportOn(file, act.today), language)
        .map(({ asked, answer }) => `${asked} ${answer}`)
        .join("\n")
        .replaceAll(",", "");
      for (const amount of own) expect(said).not.toContain(amount);
      expect(said).not.toContain("lawn");
      for (const { name } of file.parties) expect(said).not.toContain(name);
    }
  });

  test("it answers from the file and says where the file says nothing", () => {
    const { act, lineId } = aMeeting();
    const file = fileOf(act, lineId);
    const answers = meetingQuestions(file, reportOn(file, act.today), "en").map(
      ({ answer }) => answer,
    );
    expect(answers[0]).toContain("4 connections in use join the shared pipe. For 1 of them");
    expect(answers[2]).toBe("No split has been chosen yet, so no one has a figure yet.");
    expect(answers[4]).toContain("not in the rules on file");
    expect(answers[5]).toContain("No day is set for the work yet.");
    expect(meetingGuests(file).map(({ party }) => party.id)).toEqual([
      "owner-12",
      "owner-14",
      "owner-16",
    ]);
  });
});

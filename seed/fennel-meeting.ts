import type { MeetingWish } from "#lib/domain/facts/meeting.ts";
import { recordMeetingWord } from "#lib/operations/record-meeting-word.ts";
import { addRows, type deskAt, must } from "./desk.ts";

const MEETING = "fr-meeting";

/** The neighbors met around the bakery’s table; what they asked for waits to be drafted. */
export function meetOnFennel(
  planned: ReturnType<ReturnType<typeof deskAt>>,
  held: ReturnType<ReturnType<typeof deskAt>>,
  lineId: string,
): void {
  addRows(planned, { lineId, table: "meetings" }, [
    {
      id: MEETING,
      on: held.today,
      at: "18:30",
      until: "20:00",
      place: "Crumb & Copper Bakery, 20 Fennel Row, back room",
      note: "",
    },
  ]);
  const sat = (
    partyId: string,
    propertyId: string,
    wishes: readonly MeetingWish[],
    words: string,
  ) =>
    must(
      recordMeetingWord(held, {
        ...{ lineId, meetingId: MEETING, partyId, propertyId, came: true, wishes, words, seen: "" },
      }),
    );
  sat("fr-p1", "fr-12", ["own-figure"], "Can pay in two parts.");
  sat("fr-p2", "fr-14", ["test-here", "let-in"], "Wants the drain by the shed tested.");
  sat("fr-p6", "fr-20", [], "Mondays suit the bakery best.");
  must(
    recordMeetingWord(held, {
      ...{ lineId, meetingId: MEETING, partyId: "fr-p9", propertyId: "fr-r11", came: false },
      ...{ wishes: [], words: "Called in: wants to see the video first.", seen: "" },
    }),
  );
}

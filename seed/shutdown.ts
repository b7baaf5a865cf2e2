import type { RollCallAnswer } from "#lib/domain/facts/roll-call.ts";
import { pauseAudience } from "#lib/domain/notices/audience.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { rollCallsOf } from "#lib/domain/rollcall/roll-call.ts";
import type { Day } from "#lib/domain/time/day.ts";
import type { Actor } from "#lib/operations/act.ts";
import { changeDelivery } from "#lib/operations/change-delivery.ts";
import { draftNotices } from "#lib/operations/draft-notices.ts";
import { pauseKey, recordRollCall } from "#lib/operations/record-roll-call.ts";
import { sendNotices } from "#lib/operations/send-notices.ts";
import { addRows, type deskAt, fileOf, must } from "./desk.ts";

/** A day without drains, who was told of it, and how far the roll-call of its doors is. */
export interface Shutdown {
  readonly id: string;
  readonly on: Day;
  readonly at: string;
  readonly until: string;
  /** The day on which it was planned and the letters went out. */
  readonly toldOn: Day;
  /** The day of the roll-call. */
  readonly calledOn: Day;
  /** In the order of the doors; a door that is left out was not asked yet. */
  readonly doors: readonly {
    readonly answer: RollCallAnswer;
    readonly spokeWith: string;
    readonly words: string;
  }[];
}

export function planShutdown(
  desk: ReturnType<typeof deskAt>,
  actor: Actor,
  { lineId, shutdown }: { readonly lineId: string; readonly shutdown: Shutdown },
): void {
  const { id, on, at, until } = shutdown;
  const told = desk(actor, shutdown.toldOn);
  addRows(told, { lineId, table: "events" }, [
    { id, event: "drains-paused", on, at, until, note: "" },
  ]);
  const { noticeIds } = must(
    draftNotices(told, {
      lineId,
      kind: "drain-pause",
      replyBy: null,
      recipients: pauseAudience(fileOf(told, lineId)).map((each) => ({
        ...each,
        tieInId: null,
        splitId: null,
      })),
    }),
  );
  must(sendNotices(told, { lineId, noticeIds, method: "by-hand", sentOn: shutdown.toldOn }));
  for (const { id: deliveryId, noticeId } of fileOf(told, lineId).deliveries)
    if (noticeIds.includes(noticeId))
      must(
        changeDelivery(told, {
          ...{ lineId, deliveryId, outcome: "delivered", outcomeOn: shutdown.toldOn },
          ...{ tracking: "", note: "Handed over at the door", proofUploadId: null },
        }),
      );
  callDoors(desk(actor, shutdown.calledOn), { lineId, shutdown });
}

function callDoors(
  act: ReturnType<ReturnType<typeof deskAt>>,
  { lineId, shutdown }: { readonly lineId: string; readonly shutdown: Shutdown },
): void {
  const file = fileOf(act, lineId);
  const call = rollCallsOf(file, reportOn(file, act.today)).find(
    ({ matter }) => matter === "drains-off",
  );
  shutdown.doors.forEach((said, index) => {
    const door = call?.doors[index];
    if (door === undefined) throw new Error(`There is no door ${index + 1} on ${lineId}`);
    const { propertyId, unitId } = door;
    must(
      recordRollCall(act, {
        ...{ lineId, matter: "drains-off", pauseId: shutdown.id, propertyId, unitId },
        ...{ ...said, by: "Ruth Lindqvist", about: pauseKey(shutdown), seen: "" },
      }),
    );
  });
}

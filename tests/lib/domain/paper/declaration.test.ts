import { expect, test } from "vitest";
import type { Delivery } from "#lib/domain/facts/notice.ts";
import { declarationsOf } from "#lib/domain/paper/declaration.ts";
import { aDelivery, aFile, aNotice, anOffice, anUpload, aParty } from "#tests/support/file.ts";

const NUMBER = "9407 5550 1000 0000 0000 04";

function declared(deliveries: readonly Delivery[]) {
  const file = aFile({
    parties: [aParty("ann", { name: "Ann Aldous" })],
    notices: [aNotice("n", { partyId: "ann", state: "sent", frozenHash: "ab".repeat(32) })],
    uploads: [anUpload("photo", { name: "door.jpg" }), anUpload("receipt", { name: "list.pdf" })],
    deliveries,
  });
  const facts = { file, office: anOffice(), today: "2026-11-25" };
  return declarationsOf(
    facts,
    deliveries.map(({ id }) => id),
  );
}

test("each person declares what they did, in the order in which they did it", () => {
  const all = declared([
    aDelivery("1", "n", { method: "posted", sentOn: "2026-11-20", at: "16:05", place: "Gate" }),
    aDelivery("2", "n", { method: "certified", sentOn: "2026-11-18", tracking: NUMBER }),
    aDelivery("3", "n", {
      by: "Marcus Reyes",
      method: "by-hand",
      handedTo: "Her son",
      place: "12 Fennel Row",
    }),
  ]);
  expect(all.map(({ by, acts }) => [by, acts.map(({ when, what }) => `${when}: ${what}`)])).toEqual(
    [
      [
        "Dana Okafor",
        [
          `November 18, 2026: Mailed by certified mail to the address beside, No. ${NUMBER.replaceAll(" ", "\u00a0")}.`,
          "November 20, 2026, 4:05 PM: Posted at the site: Gate.",
        ],
      ],
      [
        "Marcus Reyes",
        ["November 16, 2026: Handed over in person to Her son. Place: 12 Fennel Row."],
      ],
    ],
  );
  expect(all[0]?.acts[0]).toMatchObject({ to: ["Ann Aldous"], id: "ab".repeat(32) });
});

test("what nobody entered is a blank line, and what came back is said", () => {
  const [one] = declared([
    aDelivery("1", "n", { method: "by-hand", outcome: "failed", outcomeOn: "2026-11-17" }),
    aDelivery("2", "n", { method: "certified", sentOn: "2026-11-18", outcome: "unclaimed" }),
  ]);
  expect(one?.acts.map(({ what }) => what)).toEqual([
    "Handed over in person to ____________________. Place: ____________________.",
    "Mailed by certified mail to the address beside, No. ____________________.",
  ]);
  expect(one?.acts.map(({ became }) => became)).toEqual([
    "Could not be delivered November 17, 2026.",
    "Not collected, came back.",
  ]);
});

test("one receipt for several letters is one exhibit", () => {
  const proof = { proofUploadId: "receipt" } as const;
  const [one] = declared([
    aDelivery("1", "n", proof),
    aDelivery("2", "n", { method: "posted", sentOn: "2026-11-19", proofUploadId: "photo" }),
    aDelivery("3", "n", { sentOn: "2026-11-21", ...proof }),
  ]);
  expect(one?.exhibits).toMatchObject([
    { letter: "A", name: "list.pdf", acts: [1, 3] },
    { letter: "B", name: "door.jpg", acts: [2] },
  ]);
  expect(one?.acts.map(({ exhibit }) => exhibit)).toEqual(["A", "B", "A"]);
});

test("an email that has not gone out, or was refused, is nothing that somebody did", () => {
  const mail = { method: "mail-message" } as const;
  expect(declared([aDelivery("1", "n", mail)])).toEqual([]);
  const refused = { ...mail, tracking: "<1@example.com>", outcome: "failed" } as const;
  expect(declared([aDelivery("1", "n", refused)])).toEqual([]);
  expect(declared([aDelivery("1", "n", { ...mail, tracking: "<1@example.com>" })])).toHaveLength(1);
});

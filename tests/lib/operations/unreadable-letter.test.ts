import { expect, test } from "vitest";
import { listLinks } from "#db/queries/link.ts";
import { getOffice } from "#db/queries/office.ts";
import { frozenLetter } from "#lib/domain/paper/frozen-letter.ts";
import { linkView } from "#lib/domain/paper/link-view.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { aLinkTo, aSentLetter } from "../../support/link.ts";
import { aDesk, fileOf } from "../../support/office.ts";

const SPOILED = ["", "{", "null", "7", '"a letter"', "{}", '{"kind":"finding","blocks":[null]}'];

test.each(SPOILED)("a letter kept as %j is no letter", (frozen) => {
  expect(frozenLetter(frozen)).toBeNull();
});

test("a private page whose letter can’t be read shows the rest, and asks for no signature", () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const noticeId = aSentLetter(desk, "entry-consent");
  aLinkTo(desk, noticeId);
  const [link] = listLinks(act.db, { lineId, noticeId });
  const file = fileOf(act, lineId);
  const notice = file.notices.find(({ id }) => id === noticeId);
  const office = getOffice(act.db);
  if (link === undefined || notice === undefined || office === null) throw new Error("No letter");
  const shown = {
    file,
    report: reportOn(file, act.today),
    office,
    link,
    visits: [],
  };
  const whole = linkView({ ...shown, notice });
  expect(whole?.letter?.subject).not.toBe("");
  expect(whole?.asks.length).toBeGreaterThan(0);
  const spoiled = linkView({ ...shown, notice: { ...notice, frozen: "{" } });
  expect(spoiled).toMatchObject({ letter: null, asks: [], share: null });
  expect(spoiled?.partyName).toBe(whole?.partyName);
  expect(spoiled?.replies).toEqual(whole?.replies);
});

import type { ImapSettings, SmtpSettings } from "#lib/env.ts";
import type { Workplace } from "#lib/operations/workplace.ts";
import type { aDesk } from "./office.ts";

/** A worker at a clock that the test moves. */
export function aWorkplace(
  { act }: Pick<ReturnType<typeof aDesk>, "act">,
  {
    smtp = null,
    imap = null,
    worker = "worker-1",
    address = null,
  }: {
    smtp?: SmtpSettings | null;
    imap?: ImapSettings | null;
    worker?: string;
    address?: string | null;
  } = {},
) {
  const clock = { now: act.now };
  const place: Workplace = {
    db: act.db,
    dataFolder: act.dataFolder,
    worker,
    now: () => clock.now,
    today: () => clock.now.slice(0, 10),
    newId: act.newId,
    smtp,
    mailFrom: "",
    imap,
    address,
  };
  const wait = (minutes: number) => {
    clock.now = new Date(Date.parse(clock.now) + minutes * 60_000).toISOString();
  };
  return { place, wait };
}

import Link from "next/link";
import { Heads } from "#app/_components/heads.tsx";
import stacks from "#app/_components/stacks.module.css";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { METHOD_WORDS } from "#lib/domain/facts/notice-words.ts";
import { nextWay } from "#lib/domain/notices/next-way.ts";
import { type Chase, chaseList, noChaseWords } from "#lib/domain/notices/told.ts";
import { formatPhone } from "#lib/domain/party/phone.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { Beneath } from "../beneath.tsx";
import { partyName } from "../names.ts";
import { CHASE_WORDS, LETTER_WORDS } from "../terms.ts";

/** Who needs follow-up, the most pressing first, with how to reach them. */
export function ChaseTable({
  lineId,
  file,
  today,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly today: string;
}) {
  const chases = chaseList(file, today);
  if (chases.length === 0) {
    return <p>{noChaseWords(file)}</p>;
  }
  return (
    <div className="scroll">
      <table className={`plain ${stacks["stacks"]}`}>
        <Heads of={["Why", "Party", "Letter", "Contact"]} />
        <tbody>
          {chases.map((chase) => (
            <tr key={chase.noticeId}>
              <th scope="row">{whyWords(chase, today)}</th>
              <td data-label="Party">{partyName(file, chase.partyId)}</td>
              <td data-label="Letter">
                <Link href={`/lines/${lineId}/notices/letter/${chase.noticeId}`}>
                  {LETTER_WORDS[chase.kind]}
                </Link>
              </td>
              <td data-label="Contact">
                <Reach file={file} partyId={chase.partyId} />
                <NextWayWords file={file} noticeId={chase.noticeId} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** How to bring a letter that came back. */
function NextWayWords({ file, noticeId }: { readonly file: LineFile; readonly noticeId: string }) {
  const notice = file.notices.find(({ id }) => id === noticeId);
  const next = notice === undefined ? null : nextWay(file, notice);
  return next === null ? null : <Beneath>Next: {METHOD_WORDS[next.method]}</Beneath>;
}

function whyWords(chase: Chase, today: string): string {
  const words = CHASE_WORDS[chase.reason];
  const day = formatDay(chase.since, today);
  switch (chase.reason) {
    case "came-back":
      return `${words} ${day}`;
    case "reply-late":
    case "not-settled":
      return `${words}, due ${day}`;
    case "reply-awaited":
      return `${words} by ${day}`;
    case "delivery-unknown":
      return `${words}, sent ${day}`;
  }
}

function Reach({ file, partyId }: { readonly file: LineFile; readonly partyId: string }) {
  const party = file.parties.find((each) => each.id === partyId);
  if (party === undefined || (party.phone === "" && party.email === "")) {
    return <span className="muted">no phone or email on file</span>;
  }
  return (
    <>
      {party.phone === "" ? null : (
        <a className="nowrap" href={`tel:${party.phone.replaceAll(/[^+\d]/g, "")}`}>
          {formatPhone(party.phone)}
        </a>
      )}
      {party.phone === "" || party.email === "" ? null : ", "}
      {party.email === "" ? null : <a href={`mailto:${party.email}`}>{party.email}</a>}
    </>
  );
}

import { Fold } from "#app/_components/fold.client.tsx";
import { Heads } from "#app/_components/heads.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import stacks from "#app/_components/stacks.module.css";
import { cardWords, isCardMissing } from "#lib/domain/application/posted-card.ts";
import { whiteLineBar, whiteLined } from "#lib/domain/clocks/white-line.ts";
import { marksGoodUntil } from "#lib/domain/crew/dig-card.ts";
import type { LiveBranch } from "#lib/domain/crew/live-branches.ts";
import type { Permit } from "#lib/domain/facts/permit.ts";
import type { Clock } from "#lib/domain/findings/clock.ts";
import { plainFeet } from "#lib/domain/length/station.ts";
import { formatPhone } from "#lib/domain/party/phone.ts";
import { permitStanding } from "#lib/domain/permit/say.ts";
import { capital } from "#lib/domain/say/capital.ts";
import { formatDay, formatNearDay } from "#lib/domain/time/format-day.ts";
import { formatTime } from "#lib/domain/time/time-of-day.ts";
import { counted, propertyName } from "../../names.ts";
import { UTILITY_ANSWER_WORDS, UTILITY_KIND_WORDS } from "../../terms.ts";
import type { CardPart } from "./card-parts.tsx";
import styles from "./dig-card.module.css";

export function Utilities({ file, card, today }: CardPart) {
  const { ticket, responses, ticketClocks } = card;
  const isRuled = ticketClocks.some(({ meaning }) => meaning === "expires");
  return (
    <section aria-label="Locate ticket">
      <h2>Locate ticket{ticket === null || ticket.number === "" ? "" : ` ${ticket.number}`}</h2>
      {ticket === null ? <p className={styles["loud"]}>None on file: call 811 first.</p> : null}
      {ticket === null ? null : (
        <p className={whiteLineBar(file) === null ? undefined : styles["loud"]}>
          {whiteLined(ticket, today) ?? "White-lining not on file"}.
        </p>
      )}
      {ticketClocks.length === 0 ? null : (
        <ul className={styles["tight"]}>
          {ticketClocks.map((clock) => (
            <li key={clock.key}>
              {clock.title.replace(` (ticket ${ticket?.number})`, "")}: {whenWords(clock, today)}
            </li>
          ))}
        </ul>
      )}
      {ticket !== null && responses.length === 0 ? (
        <p className={styles["loud"]}>No utility’s response is on file.</p>
      ) : null}
      {responses.length === 0 ? null : (
        <Scroll>
          <table className={`plain ${stacks["stacks"]}`}>
            <Heads of={["Utility", "Response", "On", "Marks good until"]} />
            <tbody>
              {responses.map(({ response, open }) => (
                <tr key={response.id}>
                  <th scope="row">
                    {response.utility}{" "}
                    <span className="muted">({UTILITY_KIND_WORDS[response.kind]})</span>
                  </th>
                  <td className={open === null ? undefined : styles["loud"]}>
                    {open === null ? capital(UTILITY_ANSWER_WORDS[response.answer]) : capital(open)}
                  </td>
                  <td data-label="On">
                    {response.answeredOn === null ? "–" : formatDay(response.answeredOn, today)}
                  </td>
                  <td data-label="Marks good until">
                    {marksGoodUntil(response, { isRuled, today })}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
      )}
    </section>
  );
}

function whenWords({ on, at }: Clock, today: string): string {
  return `${formatDay(on, today)}${at === "" ? "" : `, ${formatTime(at)}`}`;
}

export function Branches({ file, card: { branches } }: CardPart) {
  return (
    <section aria-label="Active branches">
      <h2>Active branches to keep running</h2>
      {branches.length === 0 ? (
        <p>No active branch drains to the work.</p>
      ) : (
        <Fold onPhone bare summary={counted(branches.length, "branch", "branches")}>
          <Scroll>
            <table className="plain">
              <Heads
                of={[
                  "Branch",
                  { num: "From the lower end, ft" },
                  { num: "From the upper end, ft" },
                  "Serves",
                  "Open again",
                ]}
              />
              <tbody>
                {branches.map((branch) => (
                  <tr key={branch.finding.tieIn.id}>
                    <th scope="row">{branch.finding.tieIn.label}</th>
                    <td className="num">{lowerWords(branch)}</td>
                    <td className="num">
                      {branch.upper === null ? "–" : plainFeet(branch.upper.station)}
                    </td>
                    <td>
                      {branch.finding.propertyId === null ? (
                        <span className={styles["loud"]}>owner unknown</span>
                      ) : (
                        propertyName(file, branch.finding.propertyId)
                      )}
                    </td>
                    <td>{branch.closed ? "☐ closed by the work" : "stays open"}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </Scroll>
        </Fold>
      )}
    </section>
  );
}

/** Measured from below, else as the camera's runs put it together. */
function lowerWords({ lower, finding }: LiveBranch): string {
  if (lower !== null) return plainFeet(lower.station);
  if (finding.station === null) return "place unknown";
  const off = finding.uncertainty === null ? "" : ` ± ${plainFeet(finding.uncertainty)}`;
  return `${plainFeet(finding.station)}${off}`;
}

export function Permits({ file, card: { permits }, today }: CardPart) {
  return (
    <section aria-label="Permit card">
      <h2>Permit card on site</h2>
      {permits.length === 0 ? <p className={styles["loud"]}>No permit is on file.</p> : null}
      <ul className={styles["doors"]}>
        {permits.map(({ permit, expiresOn }) => (
          <li key={permit.id}>
            <span aria-hidden="true">☐</span> {capital(permitStanding(file, permit))}
            {expiresOn === null ? "" : `, expires ${formatDay(expiresOn, today)}`}
            <CardLine file={file} permit={permit} today={today} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function CardLine({
  file,
  permit,
  today,
}: Pick<CardPart, "file" | "today"> & { readonly permit: Permit }) {
  const words = cardWords(file, permit, today);
  if (words === null) return null;
  return (
    <>
      {". "}
      <span className={isCardMissing(file, permit) ? styles["loud"] : undefined}>{words}</span>
    </>
  );
}

export function Inspections({ file, card: { inspections }, today }: CardPart) {
  const phone = file.authority?.phone ?? "";
  return (
    <section aria-label="Inspector">
      <h2>Inspector</h2>
      {inspections.length === 0 ? <p>No inspection is scheduled. No backfill before one.</p> : null}
      <ul className={styles["tight"]}>
        {inspections.map(({ inspection, cutOffs }) => (
          <li key={inspection.id}>
            {inspection.title}: {formatNearDay(inspection.bookedFor, today)}
            {inspection.bookedAt === "" ? "" : `, ${formatTime(inspection.bookedAt)}`}
            {inspection.inspector === "" ? "" : `, ${inspection.inspector}`}
            {cutOffs.map((clock) => `. ${clock.title}: ${whenWords(clock, today)}`)}
          </li>
        ))}
      </ul>
      <p>
        {file.authority === null ? "No authority is chosen." : file.authority.name}
        {phone === "" ? ": no phone on file" : `: ${formatPhone(phone)}`}
      </p>
    </section>
  );
}

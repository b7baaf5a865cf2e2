import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { db } from "#app/db.ts";
import { listLinks, listVisits } from "#db/queries/link.ts";
import {
  addressStop,
  LINK_DAYS,
  type LinkState,
  type LinkVisit,
  linkState,
  MOST_LINK_DAYS,
  type PrivateLink,
} from "#lib/domain/consent/private-link.ts";
import { LINK_WORDS } from "#lib/domain/consent/words.ts";
import type { Notice } from "#lib/domain/facts/notice.ts";
import { momentWords } from "#lib/domain/time/moment.ts";
import { linkBase } from "../../link-address.ts";
import { makeLinkAction, revokeLinkAction } from "./private-link-actions.ts";
import { PrivateLinkForm } from "./private-link-form.client.tsx";

interface PrivateLinkPartProps {
  readonly lineId: string;
  readonly notice: Notice;
  readonly zone: string;
  readonly work: boolean;
}

/** The private link of a letter: create it, revoke it, and what was done with it and when. */
export async function PrivateLinkPart({ lineId, notice, zone, work }: PrivateLinkPartProps) {
  const links = listLinks(db(), { lineId, noticeId: notice.id });
  const now = new Date().toISOString();
  const good = links.find((link) => linkState(link, now) === "open");
  const over = links.filter((link) => link !== good).toReversed();
  const place = { lineId, noticeId: notice.id };
  const address = linkBase();
  return (
    <div className="stack">
      {good === undefined ? <p>{links.length === 0 ? "No link yet." : "No active link."}</p> : null}
      {good === undefined ? null : <Made link={good} state="open" zone={zone} />}
      {work && good !== undefined ? (
        <ActionForm
          className="stack-tight screen-only"
          action={revokeLinkAction.bind(null, place)}
          label="Revoke the link"
          confirm="Revoke this link? It will stop working for anyone who has it."
        >
          <div>
            <SubmitButton pendingWord="Revoking …" quiet>
              Revoke the link
            </SubmitButton>
          </div>
        </ActionForm>
      ) : null}
      {work ? (
        <PrivateLinkForm
          make={makeLinkAction.bind(null, place)}
          days={LINK_DAYS}
          most={MOST_LINK_DAYS}
          again={good !== undefined}
        />
      ) : null}
      {over.length === 0 ? null : (
        <details>
          <summary>Expired and revoked links</summary>
          <div className="stack">
            {over.map((link) => (
              <Made key={link.id} link={link} state={linkState(link, now)} zone={zone} />
            ))}
          </div>
        </details>
      )}
      {work && addressStop(address) !== null ? (
        <p className="muted small">
          A link created here starts with {address}, which{" "}
          {addressStop(address) === "own-network"
            ? "opens inside your own network only"
            : "opens on this computer only"}
          . For neighbors, ask your administrator to set the office’s web address first.
        </p>
      ) : null}
    </div>
  );
}

function Made({
  link,
  state,
  zone,
}: {
  readonly link: PrivateLink;
  readonly state: LinkState;
  readonly zone: string;
}) {
  const visits = listVisits(db(), link.id);
  return (
    <article className="stack-tight">
      <h3>{stateWords(link, state, zone)}</h3>
      <p className="muted">
        Created by {link.createdBy}, {momentWords(link.createdAt, zone, "en")}.{" "}
        {visits.length === 0 ? "Not opened yet." : lastWords(visits, zone)}
      </p>
      {visits.length === 0 ? null : (
        <details>
          <summary>Link activity</summary>
          <ol className="plain-list">
            {visits.toReversed().map((visit) => (
              <li key={visit.id}>
                {momentWords(visit.at, zone, "en")}: {LINK_WORDS.en.deeds[visit.what]}
                {visit.address === "" ? null : (
                  <span className="muted small"> from IP {visit.address}</span>
                )}
              </li>
            ))}
          </ol>
          <p className="muted small">
            Some email programs open links automatically. A reply or a signature needs a press on
            the page.
          </p>
        </details>
      )}
    </article>
  );
}

function stateWords(
  { expiresAt, revokedAt, revokedBy }: PrivateLink,
  state: LinkState,
  zone: string,
) {
  if (state === "open") return `Active until ${momentWords(expiresAt, zone, "en")}`;
  if (revokedAt === null) return `Expired ${momentWords(expiresAt, zone, "en")}`;
  return `Revoked by ${revokedBy}, ${momentWords(revokedAt, zone, "en")}`;
}

function lastWords(visits: readonly LinkVisit[], zone: string): string {
  const opened = visits.filter(({ what }) => what === "opened");
  const last = visits.at(-1);
  const often = opened.length === 1 ? "Opened once" : `Opened ${opened.length} times`;
  return last === undefined ? "" : `${often}, last used ${momentWords(last.at, zone, "en")}.`;
}

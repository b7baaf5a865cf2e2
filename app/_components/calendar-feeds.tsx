import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { revokeFeedAction } from "#app/account/actions.ts";
import type { CalendarFeed } from "#db/queries/calendar-feed.ts";
import { momentWords } from "#lib/domain/time/moment.ts";

/** The calendar addresses of a person: since when, when read last, and the way to revoke each. */
export function CalendarFeeds({
  feeds,
  zone,
}: {
  readonly feeds: readonly CalendarFeed[];
  readonly zone: string;
}) {
  const open = feeds.filter(({ revokedAt }) => revokedAt === null);
  if (open.length === 0) return <p>No calendar addresses.</p>;
  return (
    <ul className="plain-list stack">
      {open.map(({ id, onlyMine, createdAt, readAt }) => (
        <li key={id} className="cluster">
          <span>
            {onlyMine ? "Lines handled" : "All lines"}, made {momentWords(createdAt, zone, "en")};{" "}
            {readAt === null ? "never read" : `last read ${momentWords(readAt, zone, "en")}`}
          </span>
          <ActionForm action={revokeFeedAction.bind(null, { feedId: id })} label="Revoke">
            <SubmitButton pendingWord="Revoking …" quiet>
              Revoke
            </SubmitButton>
          </ActionForm>
        </li>
      ))}
    </ul>
  );
}

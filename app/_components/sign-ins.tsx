import { Scroll } from "#app/_components/scroll.tsx";
import type { SignInDeed, SignInEntry } from "#lib/domain/facts/session.ts";
import { browserWords } from "#lib/domain/say/browser.ts";
import { momentWords } from "#lib/domain/time/moment.ts";

const DEED_WORDS: Record<SignInDeed, string> = {
  "signed-in": "signed in",
  refused: "wrong password or no such account",
  "made-to-wait": "too many attempts: had to wait",
  "signed-out": "signed out",
};

/** The log of sign-ins, the newest first; with whose account it is, where it is more than one. */
export function SignIns({
  entries,
  zone,
  accounts = false,
}: {
  readonly entries: readonly SignInEntry[];
  readonly zone: string;
  readonly accounts?: boolean;
}) {
  if (entries.length === 0) return <p className="muted">None yet.</p>;
  return (
    <Scroll>
      <table className="plain">
        <thead>
          <tr>
            <th scope="col">Time</th>
            {accounts ? <th scope="col">Account</th> : null}
            <th scope="col">Event</th>
            <th scope="col">From</th>
          </tr>
        </thead>
        <tbody>
          {entries.map((entry, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a log is only ever read from its end
            <tr key={at}>
              <td>{momentWords(entry.at, zone, "en")}</td>
              {accounts ? <td>{entry.account}</td> : null}
              <td>{DEED_WORDS[entry.what]}</td>
              <td>
                {entry.address === "" ? "unknown" : entry.address}
                <br />
                <span className="muted small">{browserWords(entry.agent)}</span>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

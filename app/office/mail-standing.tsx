import { mailPlace } from "./mail-place.ts";

/** Where letters by mail message go, in words. */
export function MailStanding() {
  const place = mailPlace();
  if (place.kind === "server") {
    return (
      <p>
        Messages go out through <strong>{place.name}</strong>. One that cannot be delivered comes
        back to “Who has been notified?” of its line.
      </p>
    );
  }
  return (
    <p>
      No mail server is set, so messages are <strong>not sent</strong>: each is written as a file to
      the folder <code>{place.name}</code>, to be read or sent by hand. Whoever runs this
      installation sets a server as README.md says, and starts it again.
    </p>
  );
}

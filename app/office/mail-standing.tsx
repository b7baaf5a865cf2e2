import { mailPlace } from "./mail-place.ts";

/** Where letters by email go, in words. */
export function MailStanding() {
  const place = mailPlace();
  if (place.kind === "server") {
    return (
      <p>
        Email is sent through <strong>{place.name}</strong>; undeliverable messages appear under
        “Who has been notified?”
      </p>
    );
  }
  return (
    <p>
      No mail server is set, so messages are <strong>not sent</strong>: each is written as a file to
      the folder <code>{place.name}</code>, to be read or sent by hand. Ask your administrator to
      set a mail server (see README.md) and restart.
    </p>
  );
}

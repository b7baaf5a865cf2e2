import { Heads } from "#app/_components/heads.tsx";
import type { Outgoing } from "#lib/domain/notices/outgoing.ts";

const STATES: Record<Outgoing["state"], string> = {
  waiting: "waiting",
  sending: "sending",
  sent: "sent",
  failed: "not sent",
};

/** Messages that have not left yet or were refused, each with what is in the way. */
export function OutboxList({ messages }: { readonly messages: readonly Outgoing[] }) {
  return (
    <table className="plain">
      <Heads of={["To", "Subject", "Status"]} />
      <tbody>
        {messages.map((message) => (
          <tr key={message.id}>
            <th scope="row">
              {message.toName}
              <span className="muted small"> {message.toAddress}</span>
            </th>
            <td>{message.subject}</td>
            <td>
              {STATES[message.state]}
              {message.attempts === 0
                ? ""
                : `, ${message.attempts === 1 ? "1 attempt" : `${message.attempts} attempts`}`}
              {message.problem === "" ? null : (
                <>
                  <br />
                  <span className="mend">{message.problem}</span>
                </>
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

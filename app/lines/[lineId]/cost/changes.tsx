import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { Heads } from "#app/_components/heads.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { ScopeItem } from "#lib/domain/facts/scope.ts";
import type { SplitChoice } from "#lib/domain/facts/split.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { itemAmount } from "#lib/domain/sharing/item-amount.ts";
import {
  type ChangeOrderEffect,
  changeOrderEffects,
  firstPriced,
} from "#lib/domain/split/change-order-effect.ts";
import { RULE_TITLES } from "#lib/domain/split/rule-words.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { listed, lowered } from "../names.ts";
import { decideChangeOrderAction, proposeChangeOrderAction } from "./actions.ts";
import styles from "./cost.module.css";
import { ORDER_STATE_WORDS } from "./option-terms.ts";
import { signedCents } from "./signed-cents.ts";

interface ChangesProps {
  readonly lineId: string;
  readonly file: LineFile;
  readonly report: Report;
  readonly choice: SplitChoice;
  readonly work: boolean;
}

/** Every change of the work as a version: what it adds and drops, and what that does to each amount. */
export function Changes({ lineId, file, report, choice, work }: ChangesProps) {
  const effects = changeOrderEffects(file, report, choice);
  return (
    <div className="stack-wide">
      {effects.length === 0 ? null : (
        <p>
          Original price: <strong>{formatCents(firstPriced(file))}</strong>. Amounts below are split{" "}
          {lowered(RULE_TITLES[choice.rule])}.
        </p>
      )}
      {effects.map((effect) => (
        <Order
          key={effect.order.id}
          effect={effect}
          lineId={lineId}
          today={report.today}
          work={work}
        />
      ))}
      {work ? <Propose lineId={lineId} first={effects.length === 0} /> : null}
    </div>
  );
}

function Order({
  effect,
  lineId,
  today,
  work,
}: {
  readonly effect: ChangeOrderEffect;
  readonly lineId: string;
  readonly today: string;
  readonly work: boolean;
}) {
  const { order, added, dropped, shares } = effect;
  const empty = added.length + dropped.length === 0;
  return (
    <article className={`stack-tight ${styles["version"]}`}>
      <h3>
        Change order {order.number}: {order.title}{" "}
        <span className={order.state === "agreed" ? "tag tag-done" : "tag"}>
          {ORDER_STATE_WORDS[order.state]}
        </span>
      </h3>
      <p>{order.reason}</p>
      <p className="muted">
        Requested by {order.orderedBy || "not specified"}, {formatDay(order.orderedOn, today)}.
        {order.note === "" ? "" : ` ${order.note}.`.replace(/\.\.$/, ".")}
      </p>
      {empty ? (
        <p>
          No items linked yet. In the scope of work, select it under “Added by” or “Dropped by” on
          the items it changes.
        </p>
      ) : (
        <>
          <p>
            {itemWords("Adds", added)} {itemWords("Drops", dropped)} {effect.sentence}
          </p>
          {shares.length === 0 ? null : <BeforeAfter effect={effect} />}
        </>
      )}
      {work && order.state === "proposed" ? <Decide lineId={lineId} orderId={order.id} /> : null}
    </article>
  );
}

function itemWords(verb: string, items: readonly ScopeItem[]): string {
  if (items.length === 0) return "";
  const names = items.map((item) => `“${item.title}” (${formatCents(itemAmount(item))})`);
  return `${verb} ${listed(names)}.`;
}

function BeforeAfter({
  effect: { shares, before, after },
}: {
  readonly effect: ChangeOrderEffect;
}) {
  return (
    <Scroll>
      <table className={`plain ${styles["steps"]}`}>
        <Heads of={["Property", { num: "Before" }, { num: "After" }, { num: "Difference" }]} />
        <tbody>
          {shares.map((share) => (
            <tr key={share.key}>
              <th scope="row">{share.label}</th>
              <td className="num">{formatCents(share.before)}</td>
              <td className="num">{formatCents(share.after)}</td>
              <td className="num">{signedCents(share.after - share.before)}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">Total</th>
            <td className="num">{formatCents(before)}</td>
            <td className="num">{formatCents(after)}</td>
            <td className="num">{signedCents(after - before)}</td>
          </tr>
        </tfoot>
      </table>
    </Scroll>
  );
}

function Decide({ lineId, orderId }: { readonly lineId: string; readonly orderId: string }) {
  return (
    <ActionForm
      className="stack screen-only"
      action={decideChangeOrderAction.bind(null, { lineId, changeOrderId: orderId })}
      label="Approve or reject the change order"
    >
      <div className="form-grid">
        <Choice
          label="Decision"
          name="state"
          required
          options={[
            { value: "", label: "select" },
            { value: "agreed", label: "approved" },
            { value: "refused", label: "rejected" },
          ]}
        />
        <Field label="Decided by" name="by" required example="Ottilie Brandvold, for all owners" />
        <Field label="Why" name="reason" required example="No way around the rock" />
      </div>
      <div>
        <SubmitButton pendingWord="Saving…" quiet>
          Save decision
        </SubmitButton>
      </div>
    </ActionForm>
  );
}

function Propose({ lineId, first }: { readonly lineId: string; readonly first: boolean }) {
  return (
    <details className="screen-only" open={first}>
      <summary>{first ? "Add a change order" : "Add another change order"}</summary>
      <ActionForm
        className="stack"
        action={proposeChangeOrderAction.bind(null, lineId)}
        label="Add a change order"
        reset
      >
        <div className="form-grid">
          <Field label="Title" name="title" required example="Rock at 41 ft" />
          <Field label="Requested by" name="orderedBy" required example="the site foreman" />
        </div>
        <Field
          label="Reason"
          name="reason"
          rows={2}
          required
          example="Rock below 4 ft; breaker for two days"
        />
        <div>
          <SubmitButton pendingWord="Saving…" quiet>
            Save change order
          </SubmitButton>
        </div>
      </ActionForm>
    </details>
  );
}

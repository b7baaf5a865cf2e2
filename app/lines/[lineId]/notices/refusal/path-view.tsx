import Link from "next/link";
import { Heads } from "#app/_components/heads.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import stacks from "#app/_components/stacks.module.css";
import type { PathStep, Withholding } from "#lib/domain/consent/refusal-steps.ts";
import { type RefusalPath, sameForAll, type WithoutThem } from "#lib/domain/desk/refusal-path.ts";
import type { ConsentKind } from "#lib/domain/facts/consent.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { formatDate, formatDay } from "#lib/domain/time/format-day.ts";
import { listed, partyName } from "../../names.ts";
import styles from "./refusal.module.css";

const KIND_WORDS: Partial<Record<ConsentKind, string>> = {
  enter: "entry",
  dig: "digging",
  pay: "payment of the share",
  "agreement-signed": "the agreement",
};

const WHO_WORDS: Record<
  Withholding,
  (words: { readonly who: string; readonly what: string; readonly since: string }) => string
> = {
  refused: ({ who, what, since }) => `${who} refused ${what} on ${since}.`,
  objected: ({ who, what, since }) =>
    `${who} objected on ${since}, and no one has dealt with it: do not count on ${what}.`,
  silent: ({ who, what, since }) =>
    `${who} did not answer about ${what}; a reply was due ${since}.`,
};

/** One property that does not agree: the work, a line of its own, and the lawful steps. */
export function PathView({
  lineId,
  file,
  path: { withheld, work, ownLine, shown, steps, notSaid },
  today,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly path: RefusalPath;
  readonly today: string;
}) {
  const who = listed(withheld.partyIds.map((id) => partyName(file, id)));
  const what = listed(withheld.kinds.map((kind) => KIND_WORDS[kind] ?? kind));
  const since = formatDay(withheld.since, today);
  return (
    <div className="stack">
      <p>{WHO_WORDS[withheld.how]({ who, what, since })}</p>
      {withheld.how === "objected" ? (
        <p>
          <Link href={`/lines/${lineId}/notices#replies`}>Answer the objection first</Link>; until
          then it counts as a refusal.
        </p>
      ) : null}
      <h3>Work that can proceed without them</h3>
      {work.length === 0 ? <p>No work is priced yet.</p> : <Work work={work} />}
      {withheld.kinds.includes("agreement-signed") ? (
        <p>An agreement that names their lot cannot be recorded without them.</p>
      ) : null}
      <p>
        Separate line:{" "}
        {ownLine.length === 0 ? (
          <>
            not priced yet.{" "}
            <Link href={`/lines/${lineId}/cost/options`}>Price it as an option</Link> to see what it
            would cost everyone.
          </>
        ) : (
          <>
            priced as {listed(ownLine.map((title) => `“${title}”`))}.{" "}
            <Link href={`/lines/${lineId}/cost/options`}>Compare</Link>.
          </>
        )}
      </p>
      <div className={`stack ${styles["steps"]}`}>
        <h3>Next steps allowed by the authority’s rules</h3>
        {shown ? null : (
          <p>
            Nothing shows yet that this property is on the line. They can’t be billed, and steps
            that depend on a share can’t be taken, until that is established.
          </p>
        )}
        {steps.length === 0 ? null : <Steps steps={steps} today={today} />}
      </div>
      <NotSaid file={file} notSaid={notSaid} />
    </div>
  );
}

const CAN_WORDS: Record<WithoutThem["can"], string> = {
  all: "yes",
  part: "in part",
  none: "no",
};

function Work({ work }: { readonly work: readonly WithoutThem[] }) {
  const all = sameForAll(work);
  if (all !== null) return <p>{all}</p>;
  return (
    <Scroll>
      <table className={`plain ${stacks["stacks"]}`}>
        <Heads of={["Work", "Can proceed", "Why"]} />
        <tbody>
          {work.map(({ itemId, title, can, sentence }) => (
            <tr key={itemId}>
              <th scope="row">{title}</th>
              <td data-label="Can proceed">{CAN_WORDS[can]}</td>
              <td data-label="Why">{sentence}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

function Steps({ steps, today }: { readonly steps: readonly PathStep[]; readonly today: string }) {
  return (
    <ol className="stack-tight">
      {steps.map(({ step, earliest, takenOn, counted }) => (
        <li key={step.id}>
          <strong>{step.title}</strong>
          {takenOn === null
            ? `: ${openWords(earliest, today)} (${counted}).`
            : `: taken, ${formatDay(takenOn, today)}.`}
          {step.detail === "" ? null : ` ${step.detail}`}
          <br />
          <span className="muted small">
            {step.citation === "" ? "Source not recorded" : step.citation}, as of{" "}
            {formatDate(step.asOf)}
          </span>
        </li>
      ))}
    </ol>
  );
}

function openWords(earliest: string | null, today: string): string {
  if (earliest === null) return "date not known";
  return earliest <= today
    ? `open since ${formatDay(earliest, today)}`
    : `not before ${formatDay(earliest, today)}`;
}

function NotSaid({
  file,
  notSaid,
}: {
  readonly file: LineFile;
  readonly notSaid: readonly string[];
}) {
  if (notSaid.length === 0) return null;
  const { authority } = file;
  return (
    <div className="stack-tight">
      <p className="muted">Not known from the file:</p>
      <ul>
        {notSaid.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {authority === null ? null : (
        <p className="screen-only">
          <Link href={`/office/authorities/${authority.id}`}>The steps of {authority.name}</Link>
        </p>
      )}
    </div>
  );
}

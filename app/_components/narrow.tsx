import Link from "next/link";
import { WAITS_ON, type WaitsOn } from "#lib/domain/desk/answer.ts";
import {
  type AskedNarrowing,
  countOf,
  type DueCount,
  type Narrowing,
  narrowedAddress,
} from "#lib/domain/desk/narrowing.ts";
import type { User } from "#lib/domain/facts/user.ts";
import styles from "./narrow.module.css";

/** What an address of the desk says, as Next hands it over: a word may be there more than once. */
export interface AskedWords {
  readonly whose?: string | string[];
  readonly waits?: string | string[];
  readonly when?: string | string[];
}

/** The first of each. */
export function oneOfEach({ whose, waits, when }: AskedWords): AskedNarrowing {
  const first = (asked: string | string[] | undefined) => [asked ?? ""].flat()[0] ?? "";
  return { whose: first(whose), waits: first(waits), when: first(when) };
}

const WAITS_WORDS: Readonly<Record<WaitsOn, string>> = {
  office: "Our office",
  neighbor: "A neighbor",
  authority: "The authority",
  utility: "A utility",
  crew: "The crew",
  date: "A date",
};

const LINES_WORDS: Readonly<Record<string, string>> = {
  "": "on all lines",
  mine: "on your lines",
  none: "on lines no one handles",
};

/** What the desk is narrowed to, as it ends a sentence: `on your lines, due this week`. */
export function narrowedWords({ whose, waits, when }: AskedNarrowing): string {
  const lines = LINES_WORDS[whose ?? ""] ?? "on one person’s lines";
  const who = WAITS_ON.find((each) => each === waits);
  const on = who === undefined ? "" : `, waiting on ${WAITS_WORDS[who].toLowerCase()}`;
  return `${lines}${when === "week" ? ", due this week or overdue" : ""}${on}`;
}

/** What the desk can be narrowed to, each with how much it leaves; the address keeps the choice. */
export function Narrow({
  asked,
  narrowing,
  counts,
  user,
}: {
  readonly asked: AskedNarrowing;
  readonly narrowing: Narrowing;
  readonly counts: readonly DueCount[];
  readonly user: Pick<User, "id">;
}) {
  const { whose = "", waits = "", when = "" } = asked;
  const left = (part: Partial<Narrowing>) => countOf(counts, { ...narrowing, ...part });
  const to = (part: AskedNarrowing) => narrowedAddress("/", { ...asked, ...part });
  return (
    <nav className={styles["narrow"]} aria-label="Show part of the desk">
      <ul>
        <Choice name="All lines" on={whose === ""} href={to({ whose: "" })} />
        <Choice
          name="Mine"
          on={whose === "mine"}
          href={to({ whose: "mine" })}
          count={left({ keeper: user.id })}
        />
        {whose !== "none" && left({ keeper: "" }) === 0 ? null : (
          <Choice
            name="No one’s"
            on={whose === "none"}
            href={to({ whose: "none" })}
            count={left({ keeper: "" })}
          />
        )}
      </ul>
      <ul>
        <Choice name="Any day" on={when === ""} href={to({ when: "" })} />
        <Choice
          name="This week"
          on={when === "week"}
          href={to({ when: "week" })}
          count={countOf(soonOnly(counts), { ...narrowing, until: null })}
        />
      </ul>
      <ul>
        <Choice name="Waiting on anyone" on={waits === ""} href={to({ waits: "" })} />
        {WAITS_ON.filter((each) => each === waits || left({ waitsOn: each }) > 0).map((each) => (
          <Choice
            key={each}
            name={WAITS_WORDS[each]}
            on={waits === each}
            href={to({ waits: each })}
            count={left({ waitsOn: each })}
          />
        ))}
      </ul>
    </nav>
  );
}

function soonOnly(counts: readonly DueCount[]): readonly DueCount[] {
  return counts.filter(({ soon }) => soon);
}

function Choice({
  name,
  on,
  href,
  count,
}: {
  readonly name: string;
  readonly on: boolean;
  readonly href: string;
  readonly count?: number;
}) {
  return (
    <li>
      <Link href={href} aria-current={on ? "true" : undefined}>
        {name}
        {count === undefined ? null : (
          <>
            {" "}
            <span className={styles["count"]}>{count.toLocaleString("en-US")}</span>
          </>
        )}
      </Link>
    </li>
  );
}

import Link from "next/link";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import {
  type Authority,
  type ResponsibilityRule,
  WORK_KINDS,
  type WorkHolder,
  type WorkKind,
} from "#lib/domain/facts/authority.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { capital } from "#lib/domain/say/capital.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { BOUNDARY_WORDS, HOLDER_WORDS, PATTERN_WORDS, SHARED_WORDS, WORK_WORDS } from "../terms.ts";
import { chooseRuleAction } from "./actions.ts";
import { onlyRule, ruleChoices } from "./rule-choices.ts";

/** The rule that is applied here, in words, with its source and when that was checked. */
export function RuleText({ file, today }: { readonly file: LineFile; readonly today: string }) {
  const rule = file.authority?.rules.find((each) => each.id === file.line.ruleId) ?? null;
  if (file.authority === null || rule === null) {
    // That none is selected is told at the head of the page, with all that rests on it.
    return (
      <p>
        Look up what the authority’s code says about private sewers. An example: “Owners up to the
        main, shared by those whose flow passes (Code 14.20.060, invented)”.
      </p>
    );
  }
  return (
    <dl className="facts">
      <dt>Authority</dt>
      <dd>{file.authority.name}</dd>
      <dt>Rule</dt>
      <dd>
        <p className="strong">{rule.title}</p>
        <p>{PATTERN_WORDS[rule.pattern]}</p>
        {turnsOnBoundary(rule) ? <p>The boundary is {BOUNDARY_WORDS[rule.boundary]}.</p> : null}
        {turnsOnBoundary(rule) ? <KindsOfWork rule={rule} /> : null}
        <p>{SHARED_WORDS[rule.sharedRule]}</p>
        {rule.note === "" ? null : <p className="muted">{rule.note}</p>}
      </dd>
      <dt>Source</dt>
      <dd>
        {rule.url === "" ? (
          rule.citation
        ) : (
          <a href={rule.url} rel="noreferrer">
            {rule.citation}
          </a>
        )}
      </dd>
      <dt>As of</dt>
      <dd>
        {formatDay(rule.asOf, today)}
        <span className="muted">, last checked by the office. Check again before use.</span>
      </dd>
    </dl>
  );
}

/** Who does each kind of work between the main and the boundary. */
function KindsOfWork({ rule }: { readonly rule: ResponsibilityRule }) {
  const holders: Record<WorkKind, WorkHolder> = {
    clearing: rule.clearingBy,
    repair: rule.repairBy,
    replacement: rule.replacementBy,
  };
  return (
    <ul>
      {WORK_KINDS.map((kind) => (
        <li key={kind}>
          {capital(WORK_WORDS[kind])} below {BOUNDARY_WORDS[rule.boundary]}:{" "}
          {holders[kind] === "unclear" ? (
            <span className="tag tag-loud">unclear</span>
          ) : (
            HOLDER_WORDS[holders[kind]]
          )}
        </li>
      ))}
    </ul>
  );
}

function turnsOnBoundary(rule: ResponsibilityRule): boolean {
  return ![
    "owners-to-main",
    "owners-including-tap",
    "owners-from-outside-of-main",
    "unclear",
  ].includes(rule.pattern);
}

export function RuleForm({
  lineId,
  authorities,
  authorityId,
  ruleId,
  admin,
}: {
  readonly lineId: string;
  readonly authorities: readonly Authority[];
  readonly authorityId: string | null;
  readonly ruleId: string | null;
  /** May enter authorities. */
  readonly admin: boolean;
}) {
  if (authorities.length === 0) return <NoneToSelect admin={admin} />;
  const only = ruleId === null ? onlyRule(authorities, authorityId) : null;
  const current = authorityId === null ? "" : `${authorityId} ${ruleId ?? ""}`.trim();
  return (
    <ActionForm
      className="stack screen-only"
      action={chooseRuleAction.bind(null, lineId)}
      label="Select the rule"
    >
      {only === null ? null : <p>It is the only rule on file; check that it applies here.</p>}
      <SeenField value={seenOf({ authorityId, ruleId })} />
      <Choice
        key={current}
        label="Rule applied on this line"
        name="rule"
        defaultValue={only?.value ?? current}
        options={[{ value: "", label: "none selected" }, ...ruleChoices(authorities, authorityId)]}
      />
      <p className="muted small">
        Your office selects which rule applies and is responsible for that choice.
      </p>
      <div>
        <SubmitButton pendingWord="Applying …" quiet={ruleId !== null}>
          Apply this rule
        </SubmitButton>
      </div>
    </ActionForm>
  );
}

/** An office that has entered no authority yet: where that is done, and by whom. */
function NoneToSelect({ admin }: { readonly admin: boolean }) {
  if (!admin)
    return (
      <p>An office admin enters the authority and its rules under Office, once for all lines.</p>
    );
  return (
    <p>
      <Link href="/office">Enter the authority and its rules</Link> on the office pages, once for
      all lines; then select it here.
    </p>
  );
}

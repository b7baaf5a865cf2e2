import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice, Tick } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { LETTER_NAMES } from "#app/_components/letter-names.ts";
import { Section } from "#app/_components/section.tsx";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import { db } from "#app/db.ts";
import { listReminderRules } from "#db/queries/reminder.ts";
import {
  REMINDED_KINDS,
  type ReminderRule,
  ruleSentence,
} from "#lib/domain/notices/reminder-rules.ts";
import { sayCount } from "#lib/domain/say/count.ts";
import { momentWords } from "#lib/domain/time/moment.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { saveReminderRuleAction } from "./actions.ts";

/** When unanswered letters are followed by a reminder, and which of them go out without a release. */
export function ReminderRules({ may, zone }: { readonly may: boolean; readonly zone: string }) {
  const rules = listReminderRules(db());
  return (
    <Section
      title="Reminders"
      id="reminders"
      folded={rules.length === 0 ? "none" : sayCount(rules.length, "rule")}
      note="Reminders are drafted on the day they are due and wait with the drafts until someone sends them. An admin can turn on emailing without a release, by letter."
    >
      {rules.length === 0 ? (
        <p>No rules yet. Reminders are drafted when someone asks for them.</p>
      ) : null}
      <ul>
        {rules.map((rule) => (
          <li key={rule.kind}>{ruleWords(rule, zone)}</li>
        ))}
      </ul>
      {may ? <RuleForm seen={seenOf(rules)} /> : null}
    </Section>
  );
}

function ruleWords(rule: ReminderRule, zone: string): string {
  const { kind, sends, sendsBy, sendsAt } = rule;
  const turned =
    sendsBy === ""
      ? ""
      : ` (turned ${sends ? "on" : "off"} by ${sendsBy}, ${momentWords(sendsAt, zone, "en")})`;
  return `${LETTER_NAMES[kind]}: ${ruleSentence(rule)}${turned}.`;
}

function RuleForm({ seen }: { readonly seen: string }) {
  return (
    <ActionForm action={saveReminderRuleAction} label="Rule for reminders">
      <SeenField value={seen} />
      <div className="form-grid">
        <Choice
          label="Letter"
          name="kind"
          options={REMINDED_KINDS.map((kind) => ({ value: kind, label: LETTER_NAMES[kind] }))}
        />
        <Field label="Days after the reply was due" name="daysAfter" defaultValue={3} />
        <Field label="Days between reminders" name="every" defaultValue={14} />
        <Field
          label="At most"
          name="most"
          defaultValue={2}
          hint="Reminders to one person about one thing. 0 removes the rule."
        />
        <Tick label="Email without a release" name="sends" />
      </div>
      <div>
        <SubmitButton pendingWord="Saving …" quiet>
          Save the rule
        </SubmitButton>
      </div>
    </ActionForm>
  );
}

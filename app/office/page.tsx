import type { Metadata } from "next";
import Link from "next/link";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Tick } from "#app/_components/choice.tsx";
import { Empty } from "#app/_components/empty.tsx";
import { Heads } from "#app/_components/heads.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import { StarterFields } from "#app/_components/starter-fields.tsx";
import { db } from "#app/db.ts";
import { requireUser } from "#app/session.ts";
import { today } from "#app/today.ts";
import { listAuthorities } from "#db/queries/authority.ts";
import { getOffice } from "#db/queries/office.ts";
import { listUsers } from "#db/queries/user.ts";
import type { Authority } from "#lib/domain/facts/authority.ts";
import { mayDo } from "#lib/domain/facts/user.ts";
import { exampleRows } from "#lib/domain/starters/authorities.ts";
import { addAuthorityAction, importAuthorityAction } from "./actions.ts";
import { DailyMail } from "./daily-mail.tsx";
import { Doors } from "./doors.tsx";
import { MailStanding } from "./mail-standing.tsx";
import { OfficeFacts } from "./office-facts.tsx";
import { People } from "./people.tsx";
import { ReminderRules } from "./reminder-rules.tsx";

export const metadata: Metadata = { title: "Office" };

export default async function OfficePage() {
  const user = await requireUser();
  const office = getOffice(db());
  const may = mayDo(user.role, "run-the-office");
  const users = listUsers(db());
  return (
    <div className="sheet">
      <PageHead asked={office?.name ?? "Office"}>
        {may ? null : <p className="muted">Only an office admin can change this page.</p>}
      </PageHead>
      <Section
        title="Company"
        note="Printed on every letter; license, bond and insurance go in every packet."
      >
        <OfficeFacts office={office} may={may} today={today()} />
      </Section>
      <Section
        title="Authorities"
        note="Which agency’s rules apply: responsibility, packet requirements and deadlines."
      >
        <Authorities authorities={listAuthorities(db())} may={may} />
      </Section>
      <Section
        title="Letter wording"
        note="Your own sentences for each kind of letter, in English and Spanish."
      >
        <p>
          <Link href="/office/wording">Open letter wording</Link>
        </p>
      </Section>
      <Section
        title="Reports"
        note="Permits by status and age, money outstanding and replies due, over all lines."
      >
        <p>
          <Link href="/office/reports">Open reports</Link>
        </p>
      </Section>
      <Section
        title="Users"
        foldedOnPhone={users.length === 1 ? "1 person" : `${users.length} people`}
        note="Who can sign in, and what each can do."
      >
        <People users={users} may={may} me={user.id} />
      </Section>
      {may ? <Doors zone={office?.zone ?? "UTC"} /> : null}
      <Section title="Email">
        <MailStanding may={may} zone={office?.zone ?? "UTC"} />
        <DailyMail may={may} />
      </Section>
      <ReminderRules may={may} zone={office?.zone ?? "UTC"} />
    </div>
  );
}

function Authorities({
  authorities,
  may,
}: {
  readonly authorities: readonly Authority[];
  readonly may: boolean;
}) {
  return (
    <div className="stack">
      {authorities.length === 0 ? (
        <Empty
          title="Add the city, utility or district whose sewer the lines join."
          example="Quillhaven Sewer District"
        />
      ) : (
        <div className="scroll">
          <table className="plain">
            <Heads
              of={[
                "Authority",
                { num: "Rules" },
                { num: "Requirements" },
                { num: "Fees" },
                { num: "Deadlines" },
                { num: "Holidays" },
              ]}
            />
            <tbody>
              {authorities.map((authority) => (
                <tr key={authority.id}>
                  <th scope="row">
                    <Link href={`/office/authorities/${authority.id}`}>{authority.name}</Link>
                    {exampleRows(authority) === 0 ? null : (
                      <>
                        {" "}
                        <span className="tag">example, not checked</span>
                      </>
                    )}
                  </th>
                  <td className="num">{authority.rules.length}</td>
                  <td className="num">{authority.requirements.length}</td>
                  <td className="num">{authority.fees.length}</td>
                  <td className="num">{authority.clockRules.length}</td>
                  <td className="num">{authority.holidays.length}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {may ? (
        <details className="screen-only">
          <summary>Import an authority file</summary>
          <ActionForm action={importAuthorityAction} label="Import an authority file">
            <div className="field">
              <label htmlFor="authority-file">Authority file</label>
              <input id="authority-file" className="input" type="file" name="file" accept=".json" />
            </div>
            <p className="muted">
              As exported on an authority’s page, forms included. What would change is said first;
              nothing is replaced until you check the box.
            </p>
            <Tick label="Import these changes" name="agreed" />
            <div>
              <SubmitButton pendingWord="Importing …">Import</SubmitButton>
            </div>
          </ActionForm>
        </details>
      ) : null}
      {may ? (
        <details className="screen-only" open={authorities.length === 0}>
          <summary>Add an authority</summary>
          <ActionForm action={addAuthorityAction} label="Add an authority">
            <StarterFields name="name" none="Nothing: I will enter the rules" />
            <div>
              <SubmitButton pendingWord="Adding …">Add the authority</SubmitButton>
            </div>
          </ActionForm>
        </details>
      ) : null}
    </div>
  );
}

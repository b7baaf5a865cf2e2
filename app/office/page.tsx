import type { Metadata } from "next";
import Link from "next/link";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Empty } from "#app/_components/empty.tsx";
import { Field } from "#app/_components/field.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import { db } from "#app/db.ts";
import { requireUser } from "#app/session.ts";
import { today } from "#app/today.ts";
import { listAuthorities } from "#db/queries/authority.ts";
import { getOffice } from "#db/queries/office.ts";
import { listUsers } from "#db/queries/user.ts";
import type { Authority } from "#lib/domain/facts/authority.ts";
import { mayDo } from "#lib/domain/facts/user.ts";
import { addAuthorityAction } from "./actions.ts";
import { Doors } from "./doors.tsx";
import { MailStanding } from "./mail-standing.tsx";
import { OfficeFacts } from "./office-facts.tsx";
import { People } from "./people.tsx";

export const metadata: Metadata = { title: "Office" };

export default async function OfficePage() {
  const user = await requireUser();
  const office = getOffice(db());
  const may = mayDo(user.role, "run-the-office");
  return (
    <div className="sheet">
      <PageHead asked={office?.name ?? "The office"}>
        {may ? null : <p className="muted">An admin of the office changes what stands here.</p>}
      </PageHead>
      <Section
        title="The office"
        note="Printed at the head of every letter; licence, bond and insurance go into every packet."
      >
        <OfficeFacts office={office} may={may} today={today()} />
      </Section>
      <Section
        title="Authorities"
        note="Whose rules apply where: who answers for what, what a packet needs, what runs when."
      >
        <Authorities authorities={listAuthorities(db())} may={may} />
      </Section>
      <Section title="People" note="Who may sign in, and what each may do.">
        <People users={listUsers(db())} may={may} me={user.id} />
      </Section>
      {may ? <Doors zone={office?.zone ?? "UTC"} /> : null}
      <Section title="Mail">
        <MailStanding />
      </Section>
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
            <thead>
              <tr>
                <th scope="col">Authority</th>
                <th scope="col" className="num">
                  Rules
                </th>
                <th scope="col" className="num">
                  Requirements
                </th>
                <th scope="col" className="num">
                  Fees
                </th>
                <th scope="col" className="num">
                  Clocks
                </th>
                <th scope="col" className="num">
                  Holidays
                </th>
              </tr>
            </thead>
            <tbody>
              {authorities.map((authority) => (
                <tr key={authority.id}>
                  <th scope="row">
                    <Link href={`/office/authorities/${authority.id}`}>{authority.name}</Link>
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
        <details className="screen-only" open={authorities.length === 0}>
          <summary>Add an authority</summary>
          <ActionForm action={addAuthorityAction} label="Add an authority">
            <Field label="Name" name="name" example="Quillhaven Sewer District" required />
            <div>
              <SubmitButton pendingWord="Adding …">Add it</SubmitButton>
            </div>
          </ActionForm>
        </details>
      ) : null}
    </div>
  );
}

import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { Heads } from "#app/_components/heads.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Party } from "#lib/domain/facts/party.ts";
import { formatAddress } from "#lib/domain/party/address.ts";
import type { LikelySame } from "#lib/domain/party/likely-same.ts";
import { formatPhone } from "#lib/domain/party/phone.ts";
import { counted, stakeAt } from "../../names.ts";
import { judgePartiesAction } from "./actions.ts";

/** Two people side by side, with what speaks for them being one, and the form that decides. */
export function LikelyPair({
  lineId,
  file,
  pair,
  work,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly pair: LikelySame;
  readonly work: boolean;
}) {
  const { a, b, because } = pair;
  return (
    <article className="stack-tight">
      <h3>
        {a.name} and {b.name}
      </h3>
      <p className="muted">{because.join(" ")}</p>
      <div className="scroll">
        <table className="plain" aria-label={`${a.name} and ${b.name}`}>
          <Heads of={["Name", "On the line", "Mailing address", "Phone and email", "On file"]} />
          <tbody>
            <PartyLine file={file} party={a} />
            <PartyLine file={file} party={b} />
          </tbody>
        </table>
      </div>
      {work ? (
        <ActionForm
          action={judgePartiesAction.bind(null, lineId)}
          className="cluster cluster-end screen-only"
          label={`${a.name} and ${b.name}: same person?`}
        >
          <input type="hidden" name="a" value={a.id} />
          <input type="hidden" name="b" value={b.id} />
          <Choice
            label="They are"
            name="keep"
            required
            options={[
              { value: "", label: "choose" },
              { value: "a", label: `the same; keep “${a.name}”` },
              { value: "b", label: `the same; keep “${b.name}”` },
              { value: "two", label: "two different people" },
            ]}
          />
          <Field label="Reason" name="reason" width={30} />
          <SubmitButton quiet pendingWord="Saving …">
            Save decision
          </SubmitButton>
        </ActionForm>
      ) : null}
    </article>
  );
}

function PartyLine({ file, party }: { readonly file: LineFile; readonly party: Party }) {
  const places = [...new Set(file.roles.filter(isOf(party)).map(({ propertyId }) => propertyId))];
  const letters = file.notices.filter(isOf(party)).length;
  const consents = file.consents.filter(isOf(party)).length;
  const entries = file.ledger.filter(isOf(party)).length;
  const has = [
    letters === 0 ? "" : counted(letters, "letter"),
    consents === 0 ? "" : counted(consents, "consent"),
    entries === 0 ? "" : counted(entries, "ledger entry", "ledger entries"),
  ].filter((words) => words !== "");
  return (
    <tr>
      <th scope="row">{party.name}</th>
      <td>
        {places.map((propertyId) => stakeAt(file, party.id, propertyId)).join("; ") || "no role"}
      </td>
      <td>
        {party.careOf === "" ? "" : `c/o ${party.careOf}, `}
        {party.mailing === null ? "the property" : formatAddress(party.mailing)}
      </td>
      <td>{[formatPhone(party.phone), party.email].filter((each) => each !== "").join(", ")}</td>
      <td>{has.join(", ") || "nothing else"}</td>
    </tr>
  );
}

function isOf(party: Party): (row: { readonly partyId: string | null }) => boolean {
  return ({ partyId }) => partyId === party.id;
}

/** Any two people of the list, where nothing speaks for it but a person knows. */
export function AnyPair({ lineId, file }: { readonly lineId: string; readonly file: LineFile }) {
  const people = [
    { value: "", label: "choose" },
    ...file.parties.map(({ id, name }) => ({ value: id, label: name })),
  ];
  return (
    <ActionForm
      action={judgePartiesAction.bind(null, lineId)}
      className="cluster cluster-end screen-only"
      label="Merge two people"
      reset
    >
      <input type="hidden" name="keep" value="a" />
      <Choice label="Keep" name="a" options={people} required />
      <Choice label="Merge into it" name="b" options={people} required />
      <Field label="Reason" name="reason" width={30} required />
      <SubmitButton quiet pendingWord="Merging …">
        Merge
      </SubmitButton>
    </ActionForm>
  );
}

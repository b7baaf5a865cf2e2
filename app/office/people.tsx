import Link from "next/link";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { Heads } from "#app/_components/heads.tsx";
import { USER_ROLE_WORDS } from "#app/_components/words.ts";
import type { User } from "#lib/domain/facts/user.ts";
import { addUserAction } from "./actions.ts";
import { ROLE_OPTIONS } from "./role-options.ts";

export function People({
  users,
  may,
  me,
}: {
  readonly users: readonly User[];
  readonly may: boolean;
  readonly me: string;
}) {
  return (
    <div className="stack">
      <div className="scroll">
        <table className="plain">
          <Heads of={["Name", "Email address", "Role"]} />
          <tbody>
            {users.map((user) => (
              <tr key={user.id}>
                <th scope="row">
                  {may ? <Link href={`/office/people/${user.id}`}>{user.name}</Link> : user.name}
                  {user.id === me ? <span className="muted"> (you)</span> : null}
                </th>
                <td>{user.email}</td>
                <td>
                  {USER_ROLE_WORDS[user.role]}
                  {user.disabled ? <span className="tag tag-done"> no access</span> : null}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {may ? <AddPerson /> : null}
    </div>
  );
}

function AddPerson() {
  return (
    <details className="screen-only">
      <summary>Add a user</summary>
      <ActionForm action={addUserAction} label="Add a user" reset>
        <div className="form-grid">
          <Field label="Name" name="name" required />
          <Field label="Email address" name="email" type="email" required />
          <Choice label="Role" name="role" options={ROLE_OPTIONS} defaultValue="office" />
          <Field
            label="First password"
            name="password"
            type="password"
            autoComplete="new-password"
            hint="At least 12 characters, not easy to guess. Give it to the person; they can change it under their name after signing in."
            required
          />
        </div>
        <div>
          <SubmitButton pendingWord="Adding …">Add the user</SubmitButton>
        </div>
      </ActionForm>
    </details>
  );
}

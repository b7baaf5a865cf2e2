import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { USER_ROLE_WORDS } from "#app/_components/words.ts";
import { USER_ROLES, type User, type UserRole } from "#lib/domain/user/user.ts";
import { addUserAction, changeUserAction } from "./actions.ts";

const ROLE_MEANING: Record<UserRole, string> = {
  admin: "runs the office: people, authorities, fees; and does all that the office does",
  office: "works the files",
  field: "enters runs, observations and tests",
  viewer: "reads everything, writes nothing",
};

const ROLE_OPTIONS = USER_ROLES.map((value) => ({
  value,
  label: `${USER_ROLE_WORDS[value]}: ${ROLE_MEANING[value]}`,
}));

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
          <thead>
            <tr>
              <th scope="col">Name</th>
              <th scope="col">Mail address</th>
              <th scope="col">Role</th>
              {may ? (
                <th scope="col">
                  <span className="hidden">Change</span>
                </th>
              ) : null}
            </tr>
          </thead>
          <tbody>
            {users.map((user) => (
              <tr key={user.id}>
                <th scope="row">
                  {user.name}
                  {user.id === me ? <span className="muted"> (you)</span> : null}
                </th>
                <td>{user.email}</td>
                <td>
                  {USER_ROLE_WORDS[user.role]}
                  {user.disabled ? <span className="tag tag-done"> no access</span> : null}
                </td>
                {may ? (
                  <td>
                    <ChangePerson user={user} />
                  </td>
                ) : null}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {may ? <AddPerson /> : null}
    </div>
  );
}

function ChangePerson({ user }: { readonly user: User }) {
  return (
    <details className="screen-only">
      <summary>Change</summary>
      <ActionForm action={changeUserAction.bind(null, user.id)} label={`Change ${user.name}`}>
        <Field label="Name" name="name" defaultValue={user.name} required />
        <Choice label="Role" name="role" options={ROLE_OPTIONS} defaultValue={user.role} />
        <Choice
          label="Access"
          name="access"
          defaultValue={user.disabled ? "none" : "yes"}
          options={[
            { value: "yes", label: "may sign in" },
            { value: "none", label: "may not sign in any more" },
          ]}
        />
        <Field
          label="New password"
          name="password"
          type="password"
          autoComplete="new-password"
          hint="Empty: stays as it is. At least 12 characters; a few words do well."
        />
        <div>
          <SubmitButton pendingWord="Saving …">Save</SubmitButton>
        </div>
      </ActionForm>
    </details>
  );
}

function AddPerson() {
  return (
    <details className="screen-only">
      <summary>Add a person</summary>
      <ActionForm action={addUserAction} label="Add a person" reset>
        <div className="form-grid">
          <Field label="Name" name="name" required />
          <Field label="Mail address" name="email" type="email" required />
          <Choice label="Role" name="role" options={ROLE_OPTIONS} defaultValue="office" />
          <Field
            label="First password"
            name="password"
            type="password"
            autoComplete="new-password"
            hint="At least 12 characters. Tell it to the person; they can have it changed by an admin."
            required
          />
        </div>
        <div>
          <SubmitButton pendingWord="Adding …">Add the person</SubmitButton>
        </div>
      </ActionForm>
    </details>
  );
}

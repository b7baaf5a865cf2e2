import { NoticeBox } from "#app/_components/notice-box.tsx";
import { Section } from "#app/_components/section.tsx";
import { SignIns } from "#app/_components/sign-ins.tsx";
import { unknownProxy } from "#app/caller.ts";
import { db } from "#app/db.ts";
import { listSignIns } from "#db/queries/session.ts";

const MOST_SIGN_INS = 100;

/** Who came in and who tried to; for admins. */
export async function Doors({ zone }: { readonly zone: string }) {
  const proxy = await unknownProxy();
  return (
    <Section
      title="Sign-ins"
      note="Everybody who signed in or out, and every wrong password, with the network address."
    >
      <div className="stack">
        {proxy === null ? null : (
          <NoticeBox
            kind="caution"
            title="A proxy stands in front, and this program does not know it"
          >
            <p>
              Requests come through {proxy}, so every sign-in and every signature is kept with that
              address instead of the person’s own. If it is your own proxy, set{" "}
              <code>WYEBOOK_PROXY={proxy}</code> and start again (README.md).
            </p>
          </NoticeBox>
        )}
        <details>
          <summary>The last {MOST_SIGN_INS}</summary>
          <SignIns entries={listSignIns(db(), { most: MOST_SIGN_INS })} zone={zone} accounts />
        </details>
      </div>
    </Section>
  );
}

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
      note="Every sign-in, sign-out and wrong password, with the IP address."
    >
      <div className="stack">
        {proxy === null ? null : (
          <NoticeBox kind="caution" title="Wyebook is behind a proxy that is not set up">
            <p>
              Requests come through {proxy}, so every sign-in and signature is recorded with that
              address instead of the person’s own. If it is your own proxy, ask your administrator
              to set <code>WYEBOOK_PROXY={proxy}</code> and restart.
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

import type { Metadata } from "next";
import Link from "next/link";
import { PageHead } from "#app/_components/page-head.tsx";
import { USER_ROLE_WORDS } from "#app/_components/words.ts";
import { requireUser } from "#app/session.ts";
import { mayDo } from "#lib/domain/facts/user.ts";

export const metadata: Metadata = { title: "No access" };

export default async function NotAllowedPage() {
  const user = await requireUser();
  const signedIn = `You are signed in as ${user.name}, with the role “${USER_ROLE_WORDS[user.role]}”.`;
  const all = mayDo(user.role, "run-the-office");
  return (
    <div className="sheet sheet-narrow">
      <PageHead
        asked={all ? "Your role allows everything here" : "Your role does not allow this"}
      />
      <p>
        {signedIn}{" "}
        {all
          ? "It opens every page of the office."
          : "An office admin can do this for you, or change your role under Office."}
      </p>
      <p>
        <Link href="/">Back to the desk</Link>
      </p>
    </div>
  );
}

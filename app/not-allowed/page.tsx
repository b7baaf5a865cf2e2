import type { Metadata } from "next";
import Link from "next/link";
import { PageHead } from "#app/_components/page-head.tsx";
import { USER_ROLE_WORDS } from "#app/_components/words.ts";
import { requireUser } from "#app/session.ts";

export const metadata: Metadata = { title: "No access" };

export default async function NotAllowedPage() {
  const user = await requireUser();
  return (
    <div className="sheet sheet-narrow">
      <PageHead asked="Your role does not allow this" />
      <p>
        You are signed in as {user.name}, with the role “{USER_ROLE_WORDS[user.role]}”. An office
        admin can do this for you, or change your role under Office.
      </p>
      <p>
        <Link href="/">Back to the desk</Link>
      </p>
    </div>
  );
}

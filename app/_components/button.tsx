import Link from "next/link";
import type { ReactNode } from "react";
import { Submit, type SubmitButtonProps } from "./submit.client.tsx";

/** Sends the form around it. */
export function SubmitButton(props: SubmitButtonProps) {
  return <Submit {...props} />;
}

/** A link that looks like what it does: opens a page where something is done. */
export function ButtonLink({
  href,
  children,
  main = false,
}: {
  readonly href: string;
  readonly children: ReactNode;
  readonly main?: boolean;
}) {
  return (
    <Link href={href} className={main ? "button button-main" : "button"}>
      {children}
    </Link>
  );
}

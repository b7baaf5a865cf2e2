"use client";

import { type FormEvent, type ReactNode, useRef } from "react";

/**
 * Fills the amount in with the balance due of the account that is selected, as long as it is a payment
 * and no one typed an amount of their own.
 */
export function FillBalance({
  balances,
  children,
}: {
  /** What each account owes, as it is typed: `1,234.56`. */
  readonly balances: Readonly<Record<string, string>>;
  readonly children: ReactNode;
}) {
  const filled = useRef("");
  function fill(event: FormEvent<HTMLDivElement>) {
    const { target } = event;
    if (!(target instanceof HTMLSelectElement) || !/^(account|kind)$/.test(target.name)) return;
    const account = field(target.form, "account");
    const amount = field(target.form, "amount");
    if (account === null || amount === null) return;
    const typed = amount.value;
    if (typed !== "" && typed !== filled.current && !isBalance(balances, typed)) return;
    const isPayment = field(target.form, "kind")?.value === "payment";
    filled.current = isPayment ? (balances[account.value] ?? "") : "";
    amount.value = filled.current;
  }
  return (
    <div className="form-grid" onChange={fill}>
      {children}
    </div>
  );
}

function field(form: HTMLFormElement | null, name: string) {
  const found = form?.elements.namedItem(name);
  const isField = found instanceof HTMLInputElement || found instanceof HTMLSelectElement;
  return isField ? found : null;
}

function isBalance(balances: Readonly<Record<string, string>>, typed: string): boolean {
  return Object.values(balances).includes(typed);
}

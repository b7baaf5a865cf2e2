"use client";

import { useEffect, useRef } from "react";
import { useFormView } from "#app/_components/action-form.client.tsx";

/** Inside a form: does something each time the form is done. */
export function AfterDone({ then }: { readonly then: () => void }) {
  const { state } = useFormView();
  const latest = useRef(then);
  latest.current = then;
  useEffect(() => {
    if (state.status === "done") latest.current();
  }, [state]);
  return null;
}

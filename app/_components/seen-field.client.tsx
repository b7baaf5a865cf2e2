"use client";

import { useState } from "react";
import { useFormView } from "./action-form.client.tsx";

/**
 * What a form was filled in from, sent back with it. It stays as it was when the form was filled in,
 * also where another form of the page brings a newer page: what is typed here was typed over the old
 * one. Once the form is answered it is of the page that came with the answer.
 */
export function SeenField({ value }: { readonly value: string }) {
  const { state } = useFormView();
  const [kept, setKept] = useState({ value, state, awaits: false });
  if (kept.state !== state) setKept({ value, state, awaits: value === kept.value });
  else if (kept.awaits && kept.value !== value) setKept({ value, state, awaits: false });
  return <input type="hidden" name="seen" value={kept.value} />;
}

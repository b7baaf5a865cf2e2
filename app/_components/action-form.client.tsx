"use client";

import {
  createContext,
  type FormEvent,
  type ReactNode,
  type RefObject,
  startTransition,
  useActionState,
  useContext,
  useEffect,
  useId,
  useRef,
  useState,
} from "react";
import { type FormAction, type FormState, IDLE } from "#app/form.ts";
import { answerShown, formGone, hearAnswer } from "./last-said.ts";
import { typedIn } from "./typed-in.ts";
import { unanswered } from "./unanswered.ts";

interface FormView {
  readonly state: FormState;
  readonly pending: boolean;
}

const FormContext = createContext<FormView>({ state: IDLE, pending: false });

/** What the form around a field last answered, and whether it is on its way. */
export function useFormView(): FormView {
  return useContext(FormContext);
}

interface ActionFormProps {
  readonly action: FormAction;
  /** Said when it is done, in place of the action's own sentence. */
  readonly done?: string;
  readonly className?: string;
  /** Empties the fields once done: for forms that add one thing after another. */
  readonly reset?: boolean;
  /** A question that must be answered with yes first, for steps that cannot be taken back. */
  readonly confirm?: string;
  readonly label?: string;
  /** The form's own part of its page, as an address: where a browser without scripts comes back. */
  readonly comesBackTo?: string;
  readonly children: ReactNode;
}

/**
 * A form over a server action. What was typed stays when the action refuses; the sentence stands
 * beside its field and at the form's foot. Works without scripts too.
 */
export function ActionForm({
  action,
  done,
  className,
  reset = false,
  confirm,
  label,
  comesBackTo,
  children,
}: ActionFormProps) {
  const [isLive, setLive] = useState(false);
  useEffect(() => setLive(true), []);
  // Before the scripts are there the form goes to the action itself.
  const footId = useId();
  const form = useRef<HTMLFormElement>(null);
  const [state, dispatch, pending] = useActionState(
    isLive ? heardBy({ id: footId, form }, inWords(action, form), done) : action,
    IDLE,
    comesBackTo,
  );

  useEffect(() => {
    if (state.status === "done" && reset) form.current?.reset();
    if (state.status === "refused" && state.path !== "") focusField(form.current, state.path);
  }, [state, reset]);

  useEffect(() => {
    if (state.status !== "idle") answerShown(footId);
  }, [state, footId]);
  useEffect(() => () => formGone(footId), [footId]);

  function submit(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    if (confirm !== undefined && !window.confirm(confirm)) return;
    const { submitter } = event.nativeEvent as SubmitEvent;
    const typed = new FormData(event.currentTarget, submitter);
    startTransition(() => dispatch(typed));
  }

  return (
    <FormContext value={{ state, pending }}>
      <form
        ref={form}
        action={dispatch}
        onSubmit={submit}
        className={className ?? "stack"}
        aria-label={label}
        aria-describedby={footId}
      >
        {children}
        <div id={footId} className="form-foot" role="status" aria-live="polite">
          {pending || isBesideField(form.current, state) ? null : (
            <Answer state={state} done={done} />
          )}
        </div>
      </form>
    </FormContext>
  );
}

/** The action, whose answer is kept in case the form goes with it. */
function heardBy(
  { id, form }: { readonly id: string; readonly form: RefObject<HTMLFormElement | null> },
  action: FormAction,
  done: string | undefined,
): FormAction {
  return async (state, sent) => {
    const language = languageOf(form);
    const typed = typedIn(form.current, Object.keys(state.values));
    const answer = await action(state, sent);
    const words = answer.status === "done" ? (done ?? answer.message) : answer.message;
    // Refused since somebody else did it meanwhile, its part of the page may go as well.
    const left = answer.status === "refused" ? typed : [];
    if (answer.status !== "idle") hearAnswer(id, { words, typed: left, language });
    return answer;
  };
}

function languageOf(form: RefObject<HTMLFormElement | null>): string {
  return form.current?.closest<HTMLElement>("[lang]")?.lang ?? "en";
}

/** What the server takes of a form at once, and a little less. */
const MOST_BYTES = 15_000_000;
const TOO_LARGE =
  "Not sent: the file is larger than 15 MB. Use a smaller one without its stored files, or restore a backup.";

function filesIn(form: FormData): number {
  return [...form.values()].reduce(
    (sum, value) => sum + (value instanceof File ? value.size : value.length),
    0,
  );
}

/** The action, which answers in words also where none came, so that the form stays as it is. */
function inWords(action: FormAction, form: RefObject<HTMLFormElement | null>): FormAction {
  return async (state, typed) => {
    if (filesIn(typed) > MOST_BYTES) return { ...IDLE, status: "refused", message: TOO_LARGE };
    try {
      return await action(state, typed);
    } catch (error) {
      const isNeighbor = /^\/n(\/|$)/.test(window.location.pathname);
      const message = unanswered(error, isNeighbor ? { language: languageOf(form) } : null);
      return { ...IDLE, status: "refused", message };
    }
  };
}

function Answer({ state, done }: { state: FormState; done: string | undefined }) {
  if (state.status === "idle") return null;
  if (state.status === "refused") return <p className="mend">{state.message}</p>;
  return <p className="form-done">{done ?? state.message}</p>;
}

/**
 * A field of the form shows the sentence itself, and has the focus. Where the page comes back without
 * scripts no one looks, and the form's foot says it as well.
 */
function isBesideField(form: HTMLFormElement | null, state: FormState): boolean {
  if (form === null || state.status !== "refused" || state.path === "") return false;
  const field = form.elements.namedItem(state.path);
  return field instanceof HTMLElement && field.dataset["says"] !== undefined;
}

function focusField(form: HTMLFormElement | null, path: string) {
  const field = form?.elements.namedItem(path);
  if (field instanceof HTMLElement) field.focus();
}

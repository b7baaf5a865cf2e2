import { beforeEach, expect, test } from "vitest";
import {
  answerShown,
  forgetSaid,
  formGone,
  hearAnswer,
  lastSaid,
  onLastSaid,
} from "#app/_components/last-said.ts";

const said = (words: string) => ({ words, typed: [], language: "es" });

beforeEach(() => {
  hearAnswer("any", said(""));
  answerShown("any");
  forgetSaid();
});

test("the answer of a form that went with it is left over, and told once", () => {
  let told = 0;
  const stop = onLastSaid(() => {
    told += 1;
  });
  hearAnswer("send", said("3 letters recorded as sent."));
  expect(lastSaid()).toBeNull();
  formGone("send");
  expect([lastSaid(), told]).toEqual([said("3 letters recorded as sent."), 1]);
  formGone("send");
  stop();
  expect(told).toBe(1);
});

test("an answer that its form shows is not said twice when the form goes later", () => {
  hearAnswer("send", said("Saved."));
  answerShown("send");
  formGone("send");
  expect(lastSaid()).toBeNull();
});

test("another form's going says nothing, and another answer takes the place of what was left", () => {
  hearAnswer("send", said("Saved."));
  formGone("other");
  expect(lastSaid()).toBeNull();
  formGone("send");
  hearAnswer("next", said("Added."));
  expect(lastSaid()).toBeNull();
});

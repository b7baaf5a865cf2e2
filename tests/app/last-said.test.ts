import { beforeEach, expect, test } from "vitest";
import {
  answerShown,
  forgetSaid,
  formGone,
  hearAnswer,
  lastSaid,
  onLastSaid,
} from "#app/_components/last-said.ts";

beforeEach(() => {
  hearAnswer("any", "");
  answerShown("any");
  forgetSaid();
});

test("the answer of a form that went with it is left over, and told once", () => {
  let told = 0;
  const stop = onLastSaid(() => {
    told += 1;
  });
  hearAnswer("send", "3 letters recorded as sent.");
  expect(lastSaid()).toBe("");
  formGone("send");
  expect([lastSaid(), told]).toEqual(["3 letters recorded as sent.", 1]);
  formGone("send");
  stop();
  expect(told).toBe(1);
});

test("an answer that its form shows is not said twice when the form goes later", () => {
  hearAnswer("send", "Saved.");
  answerShown("send");
  formGone("send");
  expect(lastSaid()).toBe("");
});

test("another form's going says nothing, and another answer takes the place of what was left", () => {
  hearAnswer("send", "Saved.");
  formGone("other");
  expect(lastSaid()).toBe("");
  formGone("send");
  hearAnswer("next", "Added.");
  expect(lastSaid()).toBe("");
});

import { expect, it } from "vitest";
import { ended } from "./ended.ts";

it.each([
  { text: "Changed between 10 Nov and 14 Nov.", says: "Changed between 10 Nov and 14 Nov." },
  { text: "38 of 45 kg", says: "38 of 45 kg." },
  { text: "find where it leaks. ", says: "find where it leaks." },
  { text: "Is it off?", says: "Is it off?" },
])("“$text” ends with one stop", ({ text, says }) => {
  expect(ended(text)).toBe(says);
});

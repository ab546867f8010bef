import type { Rule } from "./rule.ts";

/** Who may fly into ice has something against it. */
export const iceProtectionProtects: Rule = ({ iceProtection }, report) => {
  if (iceProtection === undefined || !iceProtection.known || iceProtection.parts.length > 0) return;
  report(["iceProtection", "parts"], {
    expected: "at least one part that is protected, for flight into known icing",
    found: "an empty list",
    remedy: "name the parts, or write `known: false`",
  });
};

/**
 * Property tests draw the same values in every run, so that what is green stays green until the code changes. Another
 * set of draws is tried with `WITNESSMARK_SEED=<whole number> npm test`.
 */
import fc from "fast-check";

const seed = Number(process.env["WITNESSMARK_SEED"] ?? 20261125);
if (!Number.isSafeInteger(seed)) {
  throw new Error(`WITNESSMARK_SEED: expected a whole number, got "${process.env["WITNESSMARK_SEED"]}"`);
}
fc.configureGlobal({ ...fc.readConfigureGlobal(), seed });

import type { PlannedField } from "@witnessmark/ledger";
import type { Missing } from "./figure.ts";

/** A field with the runway that is used there: `ZZQN 29`; without the runway until one is chosen. */
export const placeText = ({ code, runway }: Pick<PlannedField, "code" | "runway">): string =>
  runway === undefined ? code : `${code} ${runway}`;

/** Asked of a runway whose surface nobody has spoken of: dry is not taken for granted. */
export const surfaceOf = (planned: PlannedField): Missing => ({
  what: `how the surface of ${placeText(planned)} is`,
  root: "surface",
});

import type { PlannedField } from "@witnessmark/ledger";
import type { Missing } from "./figure.ts";

type Planned = Pick<PlannedField, "code" | "runway">;

/** A field with the runway that is used there: `ZZQN 29`; without the runway until one is chosen. */
export const placeText = ({ code, runway }: Planned): string =>
  runway === undefined ? code : `${code} ${runway}`;

/** Asked of a runway whose surface nobody has spoken of: dry is not taken for granted. */
export const surfaceOf = (planned: Planned): Missing => ({
  what: `how the surface of ${placeText(planned)} is`,
  root: "surface",
});

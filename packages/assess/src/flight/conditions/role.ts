/** Which field of a flight. */
export type FieldRole = "departure" | "destination" | "alternate";
export const FIELD_ROLES: readonly FieldRole[] = ["departure", "destination", "alternate"];

/** What one does there. */
export const phaseOf = (role: FieldRole): "take-off" | "landing" =>
  role === "departure" ? "take-off" : "landing";

import type { Author } from "@witnessmark/ledger";

export const ROLES: readonly Author["role"][] = ["pilot", "instructor", "owner", "mechanic", "ground-crew"];

export const ROLE_NAMES: Readonly<Record<Author["role"], string>> = {
  pilot: "Pilot in command",
  instructor: "Instructor",
  owner: "Owner",
  mechanic: "Mechanic",
  "ground-crew": "Ground crew",
};

/** "MK, pilot in command". */
export const personText = (person: Pick<Author, "name" | "role">): string =>
  `${person.name}, ${ROLE_NAMES[person.role].toLowerCase()}`;

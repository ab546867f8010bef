import { addMonths, ageOn, endOfMonthAfter } from "@witnessmark/engine";
import type { LocalDate } from "@witnessmark/ledger";
import type { Citations } from "../ruling.ts";

/** What a medical certificate is, and what is flown on it. */
export type Medical = "us-private" | "us-commercial" | "us-airline" | "eu-class-2" | "eu-light-aircraft";

export type MedicalClass = 1 | 2 | 3;

interface Examined {
  readonly on: LocalDate;
  readonly born: LocalDate;
  /** Of the United States' certificates; every class serves private flight. */
  readonly class?: MedicalClass;
}

export const MEDICAL_CITATIONS: Readonly<Record<"us" | "eu", Citations>> = {
  us: [
    {
      title: "14 CFR 61.23: medical certificates, requirement and duration",
      locator: "(d)",
      edition: "eCFR, August 2026",
      status: "published",
    },
  ],
  eu: [
    {
      title: "MED.A.045: validity, revalidation and renewal of medical certificates",
      edition: "Regulation (EU) No 1178/2011, consolidated",
      status: "from memory",
      note: "The last day itself, the birthday or the day before it, is read from the certificate.",
    },
  ],
};

/** The birthday of a year of age, which on a leap day is its last of February. */
const birthday = (born: LocalDate, age: number): LocalDate => addMonths(born, age * 12);

const earlier = (a: LocalDate, b: LocalDate): LocalDate => (a < b ? a : b);

/**
 * The last day on which a medical certificate serves for what is flown on it.
 *
 * @returns undefined where the class does not serve for it at all
 * @throws {InputError} for a day that does not exist, and an examination before the birth
 */
export function medicalUntil(medical: Medical, { on, born, class: grade }: Examined): LocalDate | undefined {
  const age = ageOn(born, on);
  switch (medical) {
    case "us-private":
      return endOfMonthAfter(on, age < 40 ? 60 : 24);
    case "us-commercial":
      return grade === 1 || grade === 2 ? endOfMonthAfter(on, 12) : undefined;
    case "us-airline":
      return grade === 1 ? endOfMonthAfter(on, age < 40 ? 12 : 6) : undefined;
    case "eu-class-2":
      if (age < 40) return earlier(addMonths(on, 60), birthday(born, 42));
      return age < 50 ? earlier(addMonths(on, 24), birthday(born, 51)) : addMonths(on, 12);
    case "eu-light-aircraft":
      return age < 40 ? earlier(addMonths(on, 60), birthday(born, 42)) : addMonths(on, 24);
    default:
      return medical satisfies never;
  }
}

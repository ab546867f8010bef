import type { Book, Oxygen } from "@witnessmark/book";
import { InputError, oxygenUsable, toSI, UNITS } from "@witnessmark/engine";
import type { AircraftState, RecordedReading } from "@witnessmark/ledger";

/** The air outside is taken at sea level, as it is for tyres and cylinders elsewhere. */
export const AMBIENT_PA = 101_325;

/** What was read on the cylinder. */
export interface CylinderNow {
  readonly pressure_Pa: number;
  readonly temperature_K: number;
  readonly usable_m3: number;
}

/** The last reading of the cylinder's check, whether or not it still counts. */
export const cylinderReading = (
  book: Pick<Book, "oxygen">,
  state: AircraftState,
): RecordedReading | undefined =>
  book.oxygen === undefined ? undefined : state.checks.get(book.oxygen.cylinder.check)?.readings.at(-1);

export function usable_m3(cylinder: Oxygen["cylinder"], pressure_Pa: number, temperature_K: number): number {
  return oxygenUsable.compute({
    waterVolume_m3: cylinder.waterVolume_m3,
    gaugePressure_Pa: pressure_Pa,
    residualPressure_Pa: cylinder.residual_Pa,
    temperature_K,
    ambientPressure_Pa: AMBIENT_PA,
  });
}

/** What a reading says is in the cylinder; undefined where it lacks a temperature or cannot be. */
export function cylinderNow(cylinder: Oxygen["cylinder"], reading: RecordedReading): CylinderNow | undefined {
  const { read, temperature } = reading;
  if (temperature === undefined || UNITS[temperature.unit].dimension !== "temperature") return undefined;
  if (UNITS[read.unit].dimension !== "pressure") return undefined;
  const pressure_Pa = toSI(read.value, read.unit);
  const temperature_K = toSI(temperature.value, temperature.unit);
  try {
    return { pressure_Pa, temperature_K, usable_m3: usable_m3(cylinder, pressure_Pa, temperature_K) };
  } catch (error) {
    if (error instanceof InputError) return undefined;
    throw error;
  }
}

const HALVINGS = 40;
/** A hundredth of a bar: what is shown is whole bars, rounded up. */
const NEAR_ENOUGH_PA = 1000;

/** The gauge pressure at which a cylinder holds so much usable gas; undefined where a full one holds less. */
export function pressureFor_Pa(
  cylinder: Oxygen["cylinder"],
  need_m3: number,
  temperature_K: number,
): number | undefined {
  let low = cylinder.residual_Pa;
  let high = cylinder.fullPressure_Pa * 1.2;
  try {
    if (usable_m3(cylinder, high, temperature_K) < need_m3) return undefined;
    for (let step = 0; step < HALVINGS && high - low > NEAR_ENOUGH_PA; step += 1) {
      const middle = (low + high) / 2;
      if (usable_m3(cylinder, middle, temperature_K) < need_m3) low = middle;
      else high = middle;
    }
    return high;
  } catch (error) {
    if (error instanceof InputError) return undefined;
    throw error;
  }
}

import type { FlightPlan, LoadedItem, PlannedLoad } from "@witnessmark/ledger";

export const weighed = (station: string, value: number, id = station): LoadedItem => ({
  id,
  station,
  what: "",
  mass: { value, unit: "kg" },
  known: "weighed",
});

export const litresEach = (value: number): PlannedLoad["fuel"] =>
  ["left-tank", "right-tank"].map((tank) => ({ tank, volume: { value, unit: "L" } }));

/**
 * Five people and two bays full to their limit, everything on scales, 200 L in each tank: inside the envelope at
 * take-off and behind it at landing.
 */
export const clinicPlan: FlightPlan & { readonly load: PlannedLoad } = {
  rulePack: "us-part-91",
  flightRules: "VFR",
  load: {
    items: [
      weighed("seat-1", 84),
      weighed("seat-3", 68),
      weighed("seat-4", 34),
      weighed("seat-5", 91),
      weighed("seat-6", 76),
      weighed("aft-bay", 85),
      weighed("tail-locker", 45),
    ],
    fuel: litresEach(200),
  },
  route: {
    distance: { value: 152, unit: "NM" },
    time: { value: 48, unit: "min" },
    level: { value: 15_000, unit: "ft" },
    taxiFuel: { value: 10, unit: "kg" },
    tripFuel: { value: 128, unit: "kg" },
  },
};

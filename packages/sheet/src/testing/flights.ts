import type { Flight } from "@witnessmark/assess";
import { demoFlight } from "@witnessmark/assess/testing/demo-flight";

type Plan = NonNullable<Flight["plan"]>;

/** The demo's flight with its plan changed. */
export function flightWith(change: (plan: Plan) => Plan): Flight {
  const { plan } = demoFlight;
  if (plan === undefined) throw new Error("the demo's flight has no plan");
  return { ...demoFlight, plan: change(plan) };
}

export const goodFlight = demoFlight;

/** It is named, and nothing of it is planned. */
export const namedFlight: Flight = {
  from: demoFlight.from,
  to: demoFlight.to,
  offBlocks: demoFlight.offBlocks,
};

/** Nobody said who is aboard, what is in the tanks, how far it is; no report of the destination. */
export const openFlight = flightWith(({ load: _load, route: _route, destination, ...rest }) => {
  if (destination === undefined) throw new Error("the demo's flight has no destination");
  const { metar: _metar, taf: _taf, ...field } = destination;
  return { ...rest, destination: field };
});

/** Too heavy to take off and to land, with names as long as people have them. */
export const heavyFlight = flightWith((plan) => {
  if (plan.load === undefined) throw new Error("the demo's flight has no load");
  const { items, ...load } = plan.load;
  const what = "Sister Maria Wilhelmina Featherstonehaugh of the Northern Island Eye Clinic Association";
  const sister = {
    id: "sister",
    station: "seat-5",
    what,
    mass: { value: 90, unit: "kg" },
    known: "weighed",
  } as const;
  const bags = {
    id: "bags",
    station: "tail-locker",
    what: "Bags",
    mass: { value: 45, unit: "kg" },
    known: "weighed",
  } as const;
  return { ...plan, load: { ...load, items: [...items, sister, bags] } };
});

/** What is taken off before a flight, and at which part it sits. Common practice. */
export const GROUND_GEAR = [
  {
    id: "pitot-cover",
    name: "Pitot cover",
    count: 1,
    at: "pitot",
    stowedIn: ["Baggage", "Seat pocket"],
    why: "Under it there is no airspeed.",
  },
  {
    id: "controls-lock-out",
    name: "Controls lock",
    count: 1,
    at: "controls-lock",
    stowedIn: ["Door pocket", "Seat pocket"],
    why: "With it in nothing can be steered.",
  },
  {
    id: "inlet-plugs",
    name: "Inlet plugs",
    count: 2,
    at: "inlet",
    stowedIn: ["Baggage"],
    why: "An engine that cannot breathe overheats.",
  },
  {
    id: "chocks",
    name: "Chocks",
    count: 2,
    at: "main-tyre",
    stowedIn: ["Baggage"],
    why: "They hold the aircraft.",
  },
  {
    id: "tie-downs",
    name: "Tie-down ropes",
    count: 3,
    at: "tie-down",
    stowedIn: ["Baggage", "Left on the ground"],
    why: "One that is left on turns the aircraft round it.",
  },
] as const;

import type { PastDay } from "./past-readings.ts";

/** What a gauge scatters, the same in each run. */
const wobble = (place: number): number => [0, 0.01, -0.01, 0.01, 0, -0.01, 0.01][place % 7] ?? 0;

/** As a tyre filled to so much at 15 °C reads at another temperature; the air outside at its standard pressure. */
const readAt = (bar: number, celsius: number): number =>
  Math.round(((bar + 1.01325) * ((celsius + 273.15) / 288.15) - 1.01325) * 100) / 100;

/**
 * Two months of one aircraft, invented: the right main tyre is filled after a month and leaks from then on, the left
 * one holds, and the engine uses a little more oil each time.
 */
export function leakingPast(): readonly PastDay[] {
  const walks = Array.from({ length: 21 }, (_, place) => ({ place, daysAgo: 61 - place * 3 }));
  return walks.map(({ place, daysAgo }): PastDay => {
    const celsius = [4, 9, 15, 2, 11][place % 5] ?? 15;
    const right = place < 10 ? 5.4 - 0.004 * place : 5.44 - 0.018 * (place - 10);
    const tyre = (side: string, bar: number) => ({
      check: `main-tyre-pressure.${side}-main-tyre`,
      gauge: "tyre-gauge",
      read: { value: readAt(bar + wobble(place) / 2, celsius), unit: "bar" as const },
      temperature: { value: celsius, unit: "degC" as const },
    });
    return {
      daysAgo,
      readings: [
        tyre("right", right),
        tyre("left", 5.36 + wobble(place)),
        { check: "battery", gauge: "panel-voltmeter", read: { value: 25.4 + wobble(place) * 10, unit: "V" } },
      ],
      facts: (at) => [
        { type: "counters.read", body: { at, counters: { "airframe-hours": 1_220 + place * 3.2 } } },
        ...(place % 2 === 1
          ? []
          : [
              {
                type: "servicing.recorded" as const,
                body: {
                  at,
                  what: "refilled" as const,
                  of: "oil" as const,
                  amount: { value: Math.round((0.2 + 0.012 * place) * 100) / 100, unit: "L" as const },
                },
              },
            ]),
        ...(place === 9
          ? [
              {
                type: "servicing.recorded" as const,
                body: {
                  at,
                  what: "refilled" as const,
                  of: "tyre" as const,
                  check: "main-tyre-pressure.right-main-tyre",
                },
              },
            ]
          : []),
      ],
    };
  });
}

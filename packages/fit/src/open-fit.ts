import type { Highs } from "highs";
import { type Arrangement, arrange, arrangeOtherwise, type Way } from "./arrange.ts";
import { type Breach, breachesOf } from "./breaches.ts";
import { checkInput, stationOf } from "./check-input.ts";
import type { FitInput } from "./fit-input.ts";
import { loadHighs, type WasmPlace } from "./load-highs.ts";
import { type Ballast, ballastAt, type MostAtStation, mostAtStation } from "./most-at-station.ts";
import { type MostFuel, mostFuel } from "./most-fuel.ts";
import { type OtherWays, otherWays } from "./other-ways.ts";
import { type Patience, Stopped, type StopReason, type Watch, watch } from "./stop.ts";

/** The question was called off or took too long; nothing is known. */
export interface NotAnswered {
  readonly status: "stopped";
  readonly reason: StopReason;
}

/** What still fits, and what would make a load fit. Every answer is confirmed by the engine before it is given. */
export interface Fit {
  /** Every limit that the load breaks as it is. */
  readonly breaches: (input: FitInput) => readonly Breach[];
  /** The most fuel with this load. */
  readonly mostFuel: (input: FitInput) => MostFuel;
  /** The most that still fits in each place, one place at a time; in every station where none are named. */
  readonly mostBags: (
    input: FitInput,
    stations?: readonly string[],
    patience?: Patience,
  ) => Promise<readonly MostAtStation[] | NotAnswered>;
  /** A seating and stowage within every limit, with the fewest moves. */
  readonly arrange: (input: FitInput, patience?: Patience) => Promise<Arrangement | NotAnswered>;
  /** Another one, after those that are known; undefined where there is none. */
  readonly arrangeOtherwise: (
    input: FitInput,
    earlier: readonly Pick<Way, "places">[],
    patience?: Patience,
  ) => Promise<Way | undefined | NotAnswered>;
  /** What puts the load right with nothing moved. */
  readonly otherWays: (input: FitInput, patience?: Patience) => Promise<OtherWays | NotAnswered>;
  /** The least ballast at a station. */
  readonly ballast: (input: FitInput, station: string) => Ballast;
}

async function unlessStopped<T>(
  patience: Patience | undefined,
  work: (own: Watch) => Promise<T>,
): Promise<T | NotAnswered> {
  try {
    return await work(watch(patience ?? {}));
  } catch (cause) {
    if (cause instanceof Stopped) return { status: "stopped", reason: cause.reason };
    throw cause;
  }
}

/**
 * Opens the solver. Its WebAssembly is fetched with the first question that needs it, which is `arrange`.
 *
 * Each question throws `InputError` for an input that cannot be, and `FitError` for an answer that must not be shown.
 */
export function openFit(wasm: WasmPlace = {}): Fit {
  let loading: Promise<Highs> | undefined;
  const highs = (): Promise<Highs> => {
    loading ??= loadHighs(wasm).catch((cause: unknown) => {
      loading = undefined; // the next question tries again
      throw cause;
    });
    return loading;
  };
  return {
    breaches: breachesOf,
    mostFuel: (input) => {
      checkInput(input);
      return mostFuel(input);
    },
    mostBags: (input, stations, patience) =>
      unlessStopped(patience, async (own) => {
        checkInput(input);
        const answers: MostAtStation[] = [];
        for (const id of stations ?? input.stations.map((station) => station.id)) {
          await own.breathe();
          answers.push(mostAtStation(input, id));
        }
        return answers;
      }),
    arrange: (input, patience) =>
      unlessStopped(patience, async (own) => {
        checkInput(input);
        own.left_s();
        return await arrange(await highs(), input, own);
      }),
    arrangeOtherwise: (input, earlier, patience) =>
      unlessStopped(patience, async (own) => {
        checkInput(input);
        own.left_s();
        return await arrangeOtherwise(await highs(), input, earlier, own);
      }),
    otherWays: (input, patience) =>
      unlessStopped(patience, async (own) => {
        checkInput(input);
        own.left_s();
        return await otherWays(await highs(), input, own);
      }),
    ballast: (input, station) => {
      checkInput(input);
      return ballastAt(input, stationOf(input, station).id);
    },
  };
}

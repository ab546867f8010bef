import type { OperatorStore, Store } from "@witnessmark/store";
import type { WeatherService } from "../weather/weather-service.ts";
import type { LiveHub } from "./live-hub.ts";

/** What the routes work with. */
export interface Parts {
  readonly store: Store;
  readonly own: OperatorStore;
  readonly operator: string;
  readonly live: LiveHub;
  readonly weather: WeatherService;
  readonly behindProxy: boolean;
  readonly now_ms: () => number;
  /** Told of faults that no answer can tell of. */
  readonly onProblem: (problem: unknown) => void;
}

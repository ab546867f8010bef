import type { Highs, InitOptions } from "highs";
import { FitError } from "./fit-error.ts";

/** Where the solver's WebAssembly is: an address, its bytes, or the compiled module. Node finds its own. */
export interface WasmPlace {
  readonly url?: string | URL;
  readonly bytes?: ArrayBuffer | Uint8Array;
  readonly module?: WebAssembly.Module;
}

type Loader = (options: InitOptions) => Promise<Highs>;

/**
 * Loads the solver; only then is its program fetched.
 *
 * @throws {FitError} `solver`: it cannot be loaded
 */
export async function loadHighs({ url, bytes, module }: WasmPlace): Promise<Highs> {
  const imported = await import("highs");
  // The package's types describe its CommonJS form, whose default is the whole module; the ES module gives the loader.
  const loader = imported.default as unknown as Loader;
  const options: InitOptions = {
    ...(url === undefined ? {} : { locateFile: () => String(url) }),
    ...(bytes === undefined ? {} : { wasmBinary: bytes }),
    ...(module === undefined ? {} : { wasmModule: module }),
  };
  try {
    return await loader(options);
  } catch (cause) {
    const reason = cause instanceof Error ? cause.message : String(cause);
    throw new FitError(
      "solver",
      `the solver's WebAssembly (${url === undefined ? "where it is by default" : String(url)}) cannot be loaded: ${reason}; ` +
        "is it served, and does the policy of this page or worker allow 'wasm-unsafe-eval'?",
    );
  }
}

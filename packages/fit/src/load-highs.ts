import type { Highs, InitOptions } from "highs";
import { FitError } from "./fit-error.ts";

/** Where the solver's WebAssembly is: an address, its bytes, or the compiled module. Node finds its own. */
export interface WasmPlace {
  readonly url?: string | URL;
  readonly bytes?: ArrayBuffer | Uint8Array<ArrayBuffer>;
  readonly module?: WebAssembly.Module;
}

/** What the loader's build takes besides what its types tell: `wasmBinary` and `wasmModule` of 1.15.3 do nothing. */
interface LoaderOptions extends InitOptions {
  readonly instantiateWasm?: (
    imports: WebAssembly.Imports,
    ready: (instance: WebAssembly.Instance) => void,
  ) => void;
}

type Loader = (options: LoaderOptions) => Promise<Highs>;

function unloadable(url: WasmPlace["url"], cause: unknown): FitError {
  const reason = cause instanceof Error ? cause.message : String(cause);
  const place = url === undefined ? "as it was given" : `at ${url}`;
  return new FitError(
    "solver",
    `the solver's WebAssembly, ${place}, cannot be loaded: ${reason}; is it served, and does the policy of this ` +
      "page or worker allow 'wasm-unsafe-eval'?",
  );
}

/** Starts the loader on a compiled module; it has no way to say that this failed, so that is listened for apart. */
function withModule(loader: Loader, module: WebAssembly.Module): Promise<Highs> {
  return new Promise((resolve, reject) => {
    const instantiateWasm: LoaderOptions["instantiateWasm"] = (imports, ready) => {
      WebAssembly.instantiate(module, imports).then(ready).catch(reject);
    };
    loader({ instantiateWasm }).then(resolve, reject);
  });
}

/**
 * Loads the solver; only then is its program fetched.
 *
 * @throws {FitError} `solver`: it cannot be loaded
 */
export async function loadHighs({ url, bytes, module }: WasmPlace): Promise<Highs> {
  try {
    const imported = await import("highs");
    // The package's types describe its CommonJS form, whose default is the whole module; the ES module's is the loader.
    const loader = imported.default as unknown as Loader;
    const compiled = module ?? (bytes === undefined ? undefined : await WebAssembly.compile(bytes));
    if (compiled !== undefined) return await withModule(loader, compiled);
    return await loader(url === undefined ? {} : { locateFile: () => String(url) });
  } catch (cause) {
    throw unloadable(url, cause);
  }
}

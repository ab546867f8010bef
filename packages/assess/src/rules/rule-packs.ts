import { euPartNco } from "./eu-part-nco/pack.ts";
import type { RulePack } from "./rule-pack.ts";
import { usPart91 } from "./us-part-91/pack.ts";

const PACKS: readonly RulePack[] = [usPart91, euPartNco];

/** Every rule pack by its id: `us-part-91`, `eu-part-nco`. */
export const rulePacks: ReadonlyMap<string, RulePack> = new Map(PACKS.map((pack) => [pack.id, pack]));

import { oxygenWaterVolume } from "@witnessmark/engine";
import type { Oxygen, OxygenSource } from "../schema/oxygen.ts";
import { given } from "./given.ts";

/** A cylinder is filled to a gauge pressure at about sea level; its nominal contents follow from that. */
const SEA_LEVEL_Pa = 101_325;

/**
 * @param checkId of the check that reads the cylinder, as it is after expansion
 * @throws {InputError} `out-of-range` for a cylinder that the rules would have refused
 */
export function oxygenInSI({ cylinder, outlets }: OxygenSource, checkId: string): Oxygen {
  const { waterVolume, nominal, full, gauge, residual } = cylinder;
  const fullPressure_Pa = full.pressure.valueSI;
  const fullTemperature_K = full.at.valueSI;
  return {
    cylinder: {
      waterVolume_m3:
        waterVolume?.valueSI ??
        oxygenWaterVolume.compute({
          nominalContents_m3: nominal?.valueSI ?? 0,
          fullPressure_Pa,
          fullTemperature_K,
          ambientPressure_Pa: SEA_LEVEL_Pa,
        }),
      ...given("nominal_m3", nominal?.valueSI),
      fullPressure_Pa,
      fullTemperature_K,
      gauge,
      residual_Pa: residual.valueSI,
      check: checkId,
    },
    outlets: outlets.map(({ id, seat, mask, flows }) => ({
      id,
      seat,
      mask,
      flows: flows.map(({ cabinAltitude, flow }) => ({
        cabinAltitude_m: cabinAltitude.valueSI,
        flow_m3PerS: flow.valueSI,
      })),
    })),
  };
}

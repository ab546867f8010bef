import { type Aspect, notUnderstood } from "../aspect.ts";
import { readFigureRemark } from "./figure-remarks.ts";
import type { RemarkPlace, RemarkRead, RemarkReader } from "./remark.ts";
import { remarkToken } from "./remark.ts";
import { readSkyRemark } from "./sky-remarks.ts";
import { readStationRemark } from "./station-remarks.ts";
import { readVisibilityRemark } from "./visibility-remarks.ts";
import { readBegunAndEnded, readWeatherRemark } from "./weather-remarks.ts";
import { readWindRemark } from "./wind-remarks.ts";

const READERS: readonly RemarkReader[] = [
  readStationRemark,
  readWindRemark,
  readVisibilityRemark,
  readSkyRemark,
  readWeatherRemark,
  readFigureRemark,
];

/** What a remark in free words may be about. Where it may be about nothing that is asked, only the remarks are open. */
const LOOKS: readonly (readonly [RegExp, Aspect])[] = [
  [/WND|WSHFT|^PK$|GUST|^WS$/u, "wind"],
  [/VIS|^TWR$|^SFC$/u, "visibility"],
  [/^CIG|^C[I1]G|^(?:FEW|SCT|BKN|OVC|VV)/u, "ceiling"],
  [/^TS|LTG|^CB|FZ|^GR|^\+|TORN|FUNNEL|HAIL|^ICE$|^ICG/u, "weather"],
  [/^T[\dO]/u, "temperature"],
  [/^SLP|^PRES|^QNH/u, "pressure"],
];

export const remarkAspects = (token: string): readonly Aspect[] => {
  const found = LOOKS.filter(([look]) => look.test(token)).map(([, aspect]) => aspect);
  return found.length === 0 ? ["remarks"] : found;
};

/** The remarks at a place: one group, which may hold several. Nothing is taken for understood that is not. */
export function readRemark(place: RemarkPlace): readonly RemarkRead[] {
  const several = readBegunAndEnded(place);
  if (several !== undefined) return several;
  for (const read of READERS) {
    const remark = read(place);
    if (remark !== undefined) return [remark];
  }
  return [{ count: 1, fault: notUnderstood("remark not understood", ...remarkAspects(remarkToken(place))) }];
}

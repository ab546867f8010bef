import { type RemarkReader, remarkToken } from "./remark.ts";

const TYPES: Readonly<Record<string, string>> = {
  AO1: "AO1, without precipitation discriminator",
  AO2: "AO2, with precipitation discriminator",
  AO1A: "AO1A, automatic with manual augmentation",
  AO2A: "AO2A, automatic with manual augmentation",
};

const SENSORS: Readonly<Record<string, string>> = {
  RVRNO: "RVR missing",
  PWINO: "present weather identifier not available",
  PNO: "precipitation amount not available",
  FZRANO: "freezing rain sensor not available",
  TSNO: "lightning information not available",
};
const SECOND: Readonly<Record<string, string>> = { VISNO: "visibility", CHINO: "sky condition" };

const OTHERS: Readonly<Record<string, string>> = {
  NOSPECI: "no special reports are made here",
  "ACFT MSHP": "aircraft mishap",
  LAST: "last report before the station closes",
};

export const readStationRemark: RemarkReader = (place) => {
  const token = remarkToken(place);
  const type = TYPES[token];
  if (type !== undefined) return { count: 1, remark: { is: "station type", says: type } };
  if (token === "$")
    return { count: 1, remark: { is: "maintenance needed", says: "station needs maintenance" } };
  if (token === "PRESRR" || token === "PRESFR") {
    const rapidly = token === "PRESRR" ? "rising" : "falling";
    return { count: 1, remark: { is: "pressure change", rapidly, says: `pressure ${rapidly} rapidly` } };
  }
  const sensor = SENSORS[token];
  if (sensor !== undefined) return { count: 1, remark: { is: "sensor", code: token, says: sensor } };
  const second = SECOND[token];
  if (second !== undefined) {
    const next = remarkToken(place, 1);
    const located = /^RWY\d{2}[LCR]?$/u.test(next);
    const where = located ? ` (${next})` : "";
    const says = `${second} at second location${where} not available`;
    return { count: located ? 2 : 1, remark: { is: "sensor", code: token, says } };
  }
  const pair = OTHERS[`${token} ${remarkToken(place, 1)}`];
  if (pair !== undefined) return { count: 2, remark: { is: "other", says: pair } };
  const single = OTHERS[token];
  return single === undefined ? undefined : { count: 1, remark: { is: "other", says: single } };
};

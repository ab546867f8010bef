export type {
  Assessment,
  Flight,
  Margin,
  Source,
  Standing,
  Verdict,
  VerdictTopic,
  Working,
  WorkingLine,
} from "./assessment.ts";

import { WALK_KINDS, type WalkKind } from "@witnessmark/book";
import { WALK_NAMES } from "../../walk/open-walk.ts";

interface WalkKindFieldProps {
  readonly kind: WalkKind;
  readonly onKind: (kind: WalkKind) => void;
}

/** Which kind of walk the paper is for. */
export function WalkKindField({ kind, onKind }: WalkKindFieldProps) {
  return (
    <label className="field">
      <span>Which walk</span>
      <select value={kind} onChange={(event) => onKind(WALK_KINDS[event.target.selectedIndex] ?? kind)}>
        {WALK_KINDS.map((each) => (
          <option key={each} value={each}>
            {WALK_NAMES[each]}
          </option>
        ))}
      </select>
    </label>
  );
}
